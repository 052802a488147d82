package png

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	stdpng "image/png"
	"math"
	"strings"
	"testing"

	"trammel/svg"
	"trammel/svg/svgtest"
)

func written(t testing.TB, d *svg.Doc, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, d, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func decoded(t testing.TB, file []byte) image.Image {
	t.Helper()
	picture, err := stdpng.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// The chunks are read anew here, by the format's own rules: a length, a name,
// data and a check sum.
func TestChunks(t *testing.T) {
	d := svgtest.Everything()
	for _, test := range []struct {
		dpi      int
		perMetre uint32
	}{{0, 11811}, {72, 2835}, {96, 3780}, {300, 11811}, {600, 23622}, {1200, 47244}} {
		file := written(t, d, Options{DPI: test.dpi})[8:]
		found := map[string][]byte{}
		var order []string
		for len(file) > 0 {
			n := binary.BigEndian.Uint32(file)
			name, data, sum := string(file[4:8]), file[8:8+n], binary.BigEndian.Uint32(file[8+n:])
			if sum != crc32.ChecksumIEEE(file[4:8+n]) {
				t.Errorf("the check sum of %s is wrong", name)
			}
			if found[name] == nil {
				order = append(order, name)
			}
			found[name] = append(found[name], data...)
			file = file[12+n:]
		}
		if got := strings.Join(order, " "); got != "IHDR pHYs iTXt IDAT IEND" {
			t.Errorf("the chunks are %s", got)
		}
		size := found["pHYs"]
		if x, y := binary.BigEndian.Uint32(size), binary.BigEndian.Uint32(size[4:]); x != test.perMetre || y != x || size[8] != 1 {
			t.Errorf("%d dpi: %d by %d pixels to the unit %d, want %d to the metre", test.dpi, x, y, size[8], test.perMetre)
		}
		if text := string(found["iTXt"]); !strings.Contains(text, "Title\x00\x00\x00en-GB\x00\x00"+d.Title) || !strings.Contains(text, d.Desc) {
			t.Errorf("the words in it are %q", text)
		}
	}
}

// All ink of the examples is within a pixel of where librsvg puts it,
// and the pixels differ by half a grey level of 255 in the mean: both programs
// weigh what covers a pixel, and round otherwise.
func TestDrawnAlike(t *testing.T) {
	const meanAtMost = 0.5
	docs := svgtest.Examples(t, "../../examples/curriculum")
	docs["everything"] = svgtest.Everything()
	docs["ruler"] = svgtest.Ruler()
	for name, doc := range docs {
		if name[0] > 'f' && name != "ruler" { // a third of them are enough
			continue
		}
		for _, dpi := range []int{96, 300} {
			want := svgtest.Rendered(t, doc, fmt.Sprint(dpi))
			got := decoded(t, written(t, doc, Options{DPI: dpi}))
			if more := want.Bounds().Size().Sub(got.Bounds().Size()); more.X < 0 || more.Y < 0 || more.X > 1 || more.Y > 1 {
				t.Errorf("%s: %v pixels, librsvg has %v, which it rounds up", name, got.Bounds(), want.Bounds())
			}
			mean, strays := svgtest.Difference(got, want, 1)
			if mean > meanAtMost || strays > 0 {
				t.Errorf("%s at %d dpi: pixels differ by %.3f of 255, and %d are out of place", name, dpi, mean, strays)
			}
		}
	}
}

// A line of 100 mm has 100 mm of ink, as its grey pixels count in part.
func TestTrueToScale(t *testing.T) {
	for _, dpi := range []int{96, 300, 600} {
		picture := decoded(t, written(t, svgtest.Ruler(), Options{DPI: dpi}))
		most := 0.0
		for y := range picture.Bounds().Dy() {
			row := 0.0
			for x := range picture.Bounds().Dx() {
				row += 255 - float64(color.GrayModel.Convert(picture.At(x, y)).(color.Gray).Y)
			}
			most = max(most, row/255)
		}
		mm := most*25.4/float64(dpi) - 0.5 // the round ends add the width of the pen
		if pixel := 25.4 / float64(dpi); math.Abs(mm-100) > 0.3*pixel {
			t.Errorf("at %d dpi, 100 mm come out as %.3f mm", dpi, mm)
		}
	}
}

func TestSameBytes(t *testing.T) {
	d := svgtest.Everything()
	if !bytes.Equal(written(t, d, Options{}), written(t, d, Options{})) {
		t.Error("two writings differ")
	}
}

// The check sum is that of a picture that was looked at: shapes, dashes and
// letters. It is the same on every processor.
func TestSamePixelsEverywhere(t *testing.T) {
	d := svgtest.Everything()
	d.Groups[len(d.Groups)-1].Items = []svg.Item{svg.Text{
		At: svg.XY{X: 30_000, Y: 56_000}, Runs: []svg.Run{{Text: "Q", Italic: true}, {Text: "6√", Sub: true}, {Text: "5", Over: 1}}, Size: 5000, Fill: "#0072b2",
	}}
	picture := decoded(t, written(t, d, Options{DPI: 150})).(*image.RGBA)
	const want = 0xa9e42c74
	if got := crc32.ChecksumIEEE(picture.Pix); got != want {
		t.Errorf("the pixels' sum is %#x, want %#x: look at the picture and say so here", got, want)
	}
}

func TestGround(t *testing.T) {
	clear := decoded(t, written(t, svgtest.Everything(), Options{Transparent: true}))
	if _, _, _, alpha := clear.At(0, 0).RGBA(); alpha != 0 {
		t.Error("the ground is not transparent")
	}
	white := decoded(t, written(t, svgtest.Everything(), Options{}))
	if white.At(0, 0) != (color.RGBA{255, 255, 255, 255}) {
		t.Errorf("the ground is %v", white.At(0, 0))
	}
	if _, grey := decoded(t, written(t, svgtest.Ruler(), Options{})).(*image.Gray); !grey {
		t.Error("a picture without colours is not kept as one")
	}
}

func TestRefused(t *testing.T) {
	foreign := svgtest.Ruler()
	foreign.Groups = append(foreign.Groups, svg.Group{Items: []svg.Item{svg.Text{Runs: svg.Label("中", false), Size: 3500, Fill: "#000000"}}})
	huge := svgtest.Ruler()
	huge.Width = 50_000_000
	for _, test := range []struct {
		doc  *svg.Doc
		dpi  int
		want string
	}{
		{svgtest.Ruler(), 29, "29 dpi is not from 30 to 2400"},
		{svgtest.Ruler(), 5000, "5000 dpi is not from 30 to 2400"},
		{foreign, 0, `the letter 中 of "中" is in none of the embedded faces`},
		{huge, 2400, "more than the 100 million that a picture may have"},
		{&svg.Doc{}, 0, "both must be over 0"},
	} {
		var b bytes.Buffer
		if err := Write(&b, test.doc, Options{DPI: test.dpi}); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("got %v, want %s", err, test.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: something was written all the same", test.want)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	doc := svgtest.Examples(b, "../../examples/library")["ninepoint"]
	for b.Loop() {
		written(b, doc, Options{})
	}
}
