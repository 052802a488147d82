package lang_test

import (
	"fmt"
	"math"
	"math/big"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/lang/check"
	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/solve"
	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/stdlib"
)

// shelf finds what a source calls: the library, and files beside it.
type shelf struct{ dir string }

func (s shelf) Use(path string, _ source.Span) *syntax.File {
	text, err := os.ReadFile(filepath.Join(s.dir, path))
	if err != nil {
		return nil
	}
	return syntax.Parse(source.NewFile(path, string(text)), &source.List{})
}

func (shelf) Library(name string) *syntax.File {
	text, err := stdlib.Files.ReadFile(name + ".trm")
	if err != nil {
		return nil
	}
	return syntax.Parse(source.NewFile("stdlib/"+name+".trm", string(text)), &source.List{})
}

func (shelf) LibraryNames() []string { return stdlib.Names() }

// flat is the Program of a source that may stand in a folder, or nil.
func flat(dir, text string) *program.Program {
	var problems source.List
	p := check.Check(syntax.Parse(source.NewFile("chance.trm", text), &problems), shelf{dir}, &problems, check.Options{})
	if problems.Failed() {
		return nil
	}
	return p
}

// plan is where a figure's points stand and how wide its circles are, by slots,
// and how far its points reach.
type plan struct {
	at    map[int][3]float64
	reach float64
}

// planOf runs a Program on rough numbers; false if some step fails.
func planOf(p *program.Program, inputs []*big.Rat) (plan, bool) {
	st := program.NewState(p, inputs, exact.NewRoughField())
	for _, step := range p.Steps {
		if !step.Proof && eval.Do(st, step) != nil {
			return plan{}, false
		}
	}
	out := plan{at: map[int][3]float64{}}
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for i, v := range st.Values {
		ink := p.Slots[i].Ink
		if ink == nil || p.Slots[i].Aside {
			continue
		}
		switch v := v.(type) {
		case geom.Point:
			x, y := v.X.Float(), v.Y.Float()
			out.at[i] = [3]float64{x, y}
			lo, hi = [2]float64{min(lo[0], x), min(lo[1], y)}, [2]float64{max(hi[0], x), max(hi[1], y)}
		case *program.Curve:
			if v.Circle != nil {
				out.at[i] = [3]float64{2: math.Sqrt(v.Circle.R2.Float())}
			}
		}
	}
	out.reach = math.Hypot(hi[0]-lo[0], hi[1]-lo[1])
	return out, true
}

// apart is how far the things of two plans of one figure are from each other at most.
func (a plan) apart(b plan) (most float64) {
	for i, p := range a.at {
		q := b.at[i]
		most = max(most, math.Hypot(math.Hypot(p[0]-q[0], p[1]-q[1]), p[2]-q[2]))
	}
	return most
}

var measured = regexp.MustCompile(`\d+(\.\d+)?`)

// edits are a source with one of its measures changed by a part of itself:
// numbers in givens and after radius.
func edits(text string, by float64) (all []string) {
	at := 0
	for line := range strings.Lines(text) {
		body, _, _ := strings.Cut(line, "#")
		if strings.HasPrefix(strings.TrimSpace(body), "given") || strings.Contains(body, "radius ") {
			for _, m := range measured.FindAllStringIndex(body, -1) {
				if !strings.ContainsAny(body[m[0]-1:m[0]], " (-") || strings.Contains(body[:m[0]], `"`) {
					continue // of a name, a fraction or a text
				}
				if v, _ := strconv.ParseFloat(body[m[0]:m[1]], 64); v > 0 {
					all = append(all, text[:at+m[0]]+fmt.Sprintf("%.3f", v*(1+by))+text[at+m[1]:])
				}
			}
		}
		at += len(line)
	}
	return all
}

// corpus are the sources of this package's tests and the examples, by their
// files, in order.
func corpus(t testing.TB) (names []string, texts map[string]string) {
	texts = map[string]string{}
	for _, f := range leftToChance {
		names = append(names, f.name)
		texts[f.name] = titled(f.lines)
	}
	for _, pattern := range []string{"../examples/*.trm", "../examples/*/*.trm"} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			names = append(names, file)
			texts[file] = string(text)
		}
	}
	return names, texts
}

// mostJumps is how many of a hundred edits may make some choice jump. It must,
// where a side that was nearer is so no more: an opening passes from one side of
// another to the other, say.
const mostJumps = 1

// TestSteady: when a measure of a source is changed by a few hundredths,
// whatever is left to chance follows. A picture jumps if something in it moves
// by more than four times that part of the whole, and would not, or could not
// be at all, with the choices made before.
func TestSteady(t *testing.T) {
	names, texts := corpus(t)
	steps := 0
	var jumps []string
	for _, name := range names {
		p := flat(filepath.Dir(name), texts[name])
		if p == nil || len(p.Inputs) == 0 {
			continue
		}
		some, of := jumpsOf(t, name, texts[name], solve.Inputs(p).Inputs, p)
		jumps, steps = append(jumps, some...), steps+of
	}
	say := t.Logf
	if steps < 1000 || 100*len(jumps) > mostJumps*steps {
		say = t.Errorf
	}
	say("%d of %d edits make a picture jump:\n%s", len(jumps), steps, strings.Join(jumps, "\n"))
}

// jumpsOf counts the edits of a source, and tells those that make its picture jump.
func jumpsOf(t *testing.T, name, text string, inputs []*big.Rat, p *program.Program) (jumps []string, of int) {
	old, ok := planOf(p, inputs)
	if !ok {
		t.Fatalf("%s fails", name)
	}
	for _, by := range []float64{0.025, -0.025, 0.05, -0.05} {
		bound := 4 * math.Abs(by) * old.reach
		for _, edit := range edits(text, by) {
			q := flat(filepath.Dir(name), edit)
			if q == nil || len(q.Inputs) != len(inputs) {
				continue
			}
			chosen := solve.Inputs(q).Inputs
			now, ok := planOf(q, chosen)
			held, same := planOf(q, inputs)
			if !ok {
				if same {
					t.Errorf("%s fails, and does not with what was chosen before", edit)
				}
				continue
			}
			of++
			if now.apart(old) > bound && (!same || now.apart(held) > bound) {
				jumps = append(jumps, fmt.Sprintf("%s: with %s, %s", name, edited(text, edit), farthest(p, inputs, chosen)))
			}
		}
	}
	return jumps, of
}

// edited is the line of an edit that differs from the text's.
func edited(text, edit string) string {
	was := strings.Split(text, "\n")
	for i, line := range strings.Split(edit, "\n") {
		if line != was[i] {
			return line
		}
	}
	return ""
}

// farthest tells which choice has moved by the greatest part of itself.
func farthest(p *program.Program, was, is []*big.Rat) (told string) {
	most := 0.0
	for i := range was {
		x, _ := was[i].Float64()
		y, _ := is[i].Float64()
		if part := math.Abs(x-y) / (math.Abs(x) + math.Abs(y) + 1e-9); part > most {
			line, _ := p.Inputs[i].Span.File.Position(p.Inputs[i].Span.Start)
			most, told = part, fmt.Sprintf("the choice of line %d goes from %.4g to %.4g", line, x, y)
		}
	}
	return told
}

// BenchmarkSolveExamples chooses for every example that leaves something to chance.
func BenchmarkSolveExamples(b *testing.B) {
	names, texts := corpus(b)
	for _, name := range names {
		p := flat(filepath.Dir(name), texts[name])
		if p == nil || len(p.Inputs) == 0 {
			continue
		}
		b.Run(filepath.Base(name), func(b *testing.B) {
			for b.Loop() {
				solve.Inputs(p)
			}
			b.ReportMetric(float64(len(p.Inputs)), "anys")
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(p.Inputs)), "ns/any")
		})
	}
}
