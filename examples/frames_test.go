package examples_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"trammel/geom/figure"
	"trammel/lang"
	"trammel/svg"
	"trammel/svg/layout"
)

// TestFrames draws every example step by step: one paper for all, the finished
// picture at the end, and no word that moves or goes.
func TestFrames(t *testing.T) {
	for _, path := range find(t, ".trm") {
		r := lang.Compile(path, read(t, path))
		if r.Figure == nil {
			continue // constructions only
		}
		t.Run(path, func(t *testing.T) {
			plain := framesOf(t, r.Figure, false)
			checkPaper(t, plain)
			checkFinished(t, path, r.Figure, plain)
			checkWords(t, plain)
			checkStrokes(t, plain)
			checkTools(t, plain, framesOf(t, r.Figure, true))
		})
	}
}

func framesOf(t *testing.T, f *figure.Figure, tools bool) []layout.Frame {
	t.Helper()
	frames, _, err := layout.Frames(f, layout.FrameOptions{Options: layout.Options{ID: "x"}, Tools: tools})
	if err != nil || len(frames) < 2 {
		t.Fatalf("%d frames, %v", len(frames), err)
	}
	return frames
}

func written(t *testing.T, d *svg.Doc) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := d.Write(&b, svg.Options{}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func checkPaper(t *testing.T, frames []layout.Frame) {
	t.Helper()
	ids := map[string]bool{}
	for i, f := range frames {
		if f.Doc.Width != frames[0].Doc.Width || f.Doc.Height != frames[0].Doc.Height {
			t.Errorf("frame %d is %d × %d, the first %d × %d", i+1, f.Doc.Width, f.Doc.Height, frames[0].Doc.Width, frames[0].Doc.Height)
		}
		if f.Caption == "" && i > 0 || ids[f.Doc.ID] {
			t.Errorf("frame %d, %s, says %q", i+1, f.Doc.ID, f.Caption)
		}
		ids[f.Doc.ID] = true
		written(t, f.Doc)
	}
}

// checkFinished wants the last frame to be the picture, byte for byte.
func checkFinished(t *testing.T, path string, f *figure.Figure, frames []layout.Frame) {
	t.Helper()
	doc, _, err := layout.Draw(f, layout.Options{ID: "x"})
	if err != nil {
		t.Fatal(err)
	}
	last := frames[len(frames)-1]
	if !bytes.Equal(written(t, last.Doc), written(t, doc)) {
		t.Errorf("the last frame is not the picture of %s", path)
	}
	if slices.ContainsFunc(last.Strokes, func(s layout.Stroke) bool { return !s.Mark }) {
		t.Errorf("something is first drawn in the last frame of %s: %+v", path, last.Strokes)
	}
}

// texts are the words of a frame and where they stand.
func texts(d *svg.Doc) map[string]bool {
	all := map[string]bool{}
	for _, g := range d.Groups {
		for _, item := range g.Items {
			if w, ok := item.(svg.Text); ok {
				all[fmt.Sprint(w.String(), w.At)] = true
			}
		}
	}
	return all
}

func checkWords(t *testing.T, frames []layout.Frame) {
	t.Helper()
	for i := range frames[1:] {
		next := texts(frames[i+1].Doc)
		for word := range texts(frames[i].Doc) {
			if !next[word] {
				t.Errorf("%s stands in frame %d and not in the next", word, i+1)
			}
		}
	}
}

// checkStrokes wants every stroke to lie on the paper, and to be inked anew in
// its frame under its class.
func checkStrokes(t *testing.T, frames []layout.Frame) {
	t.Helper()
	for i, f := range frames {
		fresh, suffix := strings.Join(classes(f.Doc), "|"), " new"
		if i == len(frames)-1 {
			suffix = "" // the picture as it is built
		}
		for _, s := range f.Strokes {
			for _, p := range []svg.XY{s.Start, s.End} {
				if p.X < 0 || p.Y < 0 || p.X > f.Doc.Width || p.Y > f.Doc.Height {
					t.Errorf("frame %d: %+v leaves the paper", i+1, s)
				}
				if c := s.Centre; c != nil && math.Abs(math.Hypot(float64(p.X-c.X), float64(p.Y-c.Y))-float64(s.Radius)) > 2 {
					t.Errorf("frame %d: %+v is not round", i+1, s)
				}
			}
			if !strings.Contains(fresh, s.Class+suffix) {
				t.Errorf("frame %d: nothing of the class %s is new in %s", i+1, s.Class, fresh)
			}
		}
	}
}

func classes(d *svg.Doc) []string {
	var all []string
	for _, g := range d.Groups {
		for _, item := range g.Items {
			switch x := item.(type) {
			case svg.Path:
				all = append(all, x.Class)
			case svg.Disc:
				all = append(all, x.Class)
			}
		}
	}
	return all
}

// checkTools wants tools wherever a circle, an arc or a line is drawn by the
// hand, none in the givens and at the end, and besides them the same frames.
func checkTools(t *testing.T, plain, tools []layout.Frame) {
	t.Helper()
	for i, f := range tools {
		has := slices.ContainsFunc(f.Doc.Groups, func(g svg.Group) bool { return g.Class == "tools" })
		act := slices.ContainsFunc(plain[i].Strokes, func(s layout.Stroke) bool { return !s.Mark })
		if given := strings.HasPrefix(f.Caption, "Given: "); has != (act && !given) {
			t.Errorf("frame %d, %s: tools %v", i+1, f.Caption, has)
		}
		if len(f.Strokes) != len(plain[i].Strokes) {
			t.Errorf("frame %d: %d strokes with tools and %d without", i+1, len(f.Strokes), len(plain[i].Strokes))
		}
	}
	checkPaper(t, tools)
}
