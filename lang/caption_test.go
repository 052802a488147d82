package lang_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/caption"
	"trammel/stdlib"
)

// captions compiles a source and tells its steps, those without words left out.
func captions(t *testing.T, source, tag string) []string {
	t.Helper()
	r := lang.Compile("test.trm", []byte(source))
	if r.Figure == nil {
		t.Fatalf("%+v", r.Problems)
	}
	return slices.DeleteFunc(r.Figure.Tell.Steps(tag), func(s string) bool { return s == "" })
}

// TestCaptions holds the words of every kind of act, in both languages. The words
// are those of the classroom; common practice, no source.
func TestCaptions(t *testing.T) {
	const givens = "figure \"F\"\ngiven A (0, 0)\ngiven B 8 from A\n"
	const kreis = "figure \"F\"\ngiven circle k centre O (0, 0) radius 3\ngiven P 7.5 from O\n"
	for _, test := range []struct{ source, en, de string }{
		{givens + "join AB", "Given: the point A; a point B 8 cm from A.\nJoin A to B.", "Gegeben: der Punkt A; ein Punkt B, 8 cm von A entfernt.\nVerbinde A mit B."},
		{"figure \"F\"\nunit 8 mm\ngiven triangle ABC with AB = 6, AC = 5.5, angle A = 40°\njoin ABCA",
			"Given: a triangle ABC with AB = 6 units, AC = 5.5 units and angle A = 40°.\nJoin A to B, B to C and C to A.",
			"Gegeben: ein Dreieck ABC mit AB = 6 Einheiten, AC = 5,5 Einheiten und Winkel A = 40°.\nVerbinde A mit B, B mit C und C mit A."},
		{"figure \"F\"\ngiven line m through A (0, 0) and B (9, 0)\ngiven P on m, 4 from A\narc c centre P radius any cuts m at L and R\narc d centre L radius any over PL\narc e centre R radius d\nd meets e at X above m\nline n through P and X\njoin LX, RX\nmark right RPX\nmark PL = PR\nclaim n perpendicular to m\nclaim triangle PLX congruent to PRX", `Given: a line m through A and B; a point P on m, 4 cm from A.
With centre P and any radius, draw an arc cutting m at L and R.
With centre L and any radius greater than PL, draw an arc.
With centre R and the same radius, draw an arc.
Let X be the point above m where the arcs about L and R meet.
Draw the line n through P and X.
Join L to X and R to X.
Here angle RPX is a right angle, and PL = PR (equal radii). Then n is perpendicular to m, and the triangles PLX and PRX are congruent.`,
			`Gegeben: eine Gerade m durch A und B; ein Punkt P auf m, 4 cm von A entfernt.
Zeichne um P mit beliebigem Radius einen Bogen, der m in L und R schneidet.
Zeichne um L mit einem beliebigen Radius, der größer als PL ist, einen Bogen.
Zeichne um R mit demselben Radius einen Bogen.
X sei der Schnittpunkt der Bögen um L und R oberhalb von m.
Zeichne die Gerade n durch P und X.
Verbinde L mit X und R mit X.
Hier gilt: Winkel RPX ist ein rechter Winkel; PL = PR (gleiche Radien). Damit gilt: n steht senkrecht auf m; die Dreiecke PLX und PRX sind kongruent.`},
		{kreis + "S, T, s, t by tangents(k, P)\nclaim k touches s at S",
			"Given: a circle with centre O and radius 3 cm; a point P 7.5 cm from O.\nDraw the tangents from P to the circle about O. This gives S, T and s.\nThen the circle about O touches s at S.",
			"Gegeben: ein Kreis mit dem Mittelpunkt O und dem Radius 3 cm; ein Punkt P, 7,5 cm von O entfernt.\nZeichne die Tangenten von P an den Kreis um O. Das ergibt S, T und s.\nEs gilt: der Kreis um O berührt s in S."},
		{givens + "join AB\nproduce AB beyond B by 2 to C\nC' by triangleon(B, C)\nstep \"Finish at {C'}\"\n  join AC'\n  join C'B\nend",
			"Given: the point A; a point B 8 cm from A.\nJoin A to B.\nProduce AB beyond B by 2 cm to C.\nMake the equilateral triangle on BC. This gives C′.\nFinish at C′",
			"Gegeben: der Punkt A; ein Punkt B, 8 cm von A entfernt.\nVerbinde A mit B.\nVerlängere AB über B hinaus um 2 cm bis C.\nZeichne das gleichseitige Dreieck über BC. Das ergibt C′.\nFinish at C′"},
		{"figure \"F\"\ngiven A (0, 0)\ngiven B (5, 1)\ngiven C (2, 4)\nH by orthocentre(A, B, C) in full\ncircle k centre C through B\nshade k\n",
			"Given: the points A, B and C.\nDrop the perpendicular from A to BC. This gives D.\nDrop the perpendicular from B to CA. This gives E.\nDrop the perpendicular from C to AB. This gives F.\nLet H be the point where AD and BE meet.\nWith centre C, draw a circle through B.\nShade the circle.",
			"Gegeben: die Punkte A, B und C.\nFälle das Lot von A auf BC. Das ergibt D.\nFälle das Lot von B auf CA. Das ergibt E.\nFälle das Lot von C auf AB. Das ergibt F.\nH sei der Schnittpunkt von AD und BE.\nZeichne um C einen Kreis durch B.\nFärbe den Kreis."},
		{"construction own(circle k, circle l) gives circle c\n  take P centre of k\n  take Q centre of l\n  M by middle(P, Q)\n  circle c centre M radius radius k + radius l\nend\nfigure \"F\"\ngiven circle k centre O (0, 0) radius 3\ngiven circle l centre A (8, 1) radius 1\nc by own(k, l) in full\njoin OA\nlocus r 1 from OA",
			"Given: a circle with centre O and radius 3 cm; a circle with centre A and radius 1 cm.\nFind the midpoint of OA. This gives M.\nWith centre M and the sum of the radii of the circle about O and the circle about A as radius, draw a circle.\nJoin O to A.\nDraw the locus of the points 1 cm from OA.",
			"Gegeben: ein Kreis mit dem Mittelpunkt O und dem Radius 3 cm; ein Kreis mit dem Mittelpunkt A und dem Radius 1 cm.\nBestimme den Mittelpunkt von OA. Das ergibt M.\nZeichne um M mit der Summe der Radien des Kreises um O und des Kreises um A als Radius einen Kreis.\nVerbinde O mit A.\nZeichne den geometrischen Ort der Punkte im Abstand 1 cm von OA."},
		{givens + "M, n by bisect(A, B) in full",
			"Given: the point A; a point B 8 cm from A.\nWith centre A and any radius greater than half of AB, draw an arc.\nWith centre B and the same radius, draw an arc.\nLet X to the left of AB and Y to the right of AB be the points where the arcs about A and B meet.\nDraw the line through Y and X to cut AB at M.",
			"Gegeben: der Punkt A; ein Punkt B, 8 cm von A entfernt.\nZeichne um A mit einem beliebigen Radius, der größer als die Hälfte von AB ist, einen Bogen.\nZeichne um B mit demselben Radius einen Bogen.\nX links von AB und Y rechts von AB seien die Schnittpunkte der Bögen um A und B.\nZeichne die Gerade durch Y und X, die AB in M schneidet."},
		{"figure \"F\"\ngiven triangle ABC with AB = about 7, AC = 6, angle A = about 50°\nM, n by bisect(A, B)\nhide M\nchoose x from 2 to 4 by 1\narc c centre A radius x cuts AB at X nearest M",
			"Given: a triangle ABC with AB about 7 cm, AC = 6 cm and angle A about 50°.\nDraw the perpendicular bisector of AB.\nWith centre A and radius 3 cm, draw an arc cutting AB at X.",
			"Gegeben: ein Dreieck ABC mit AB ungefähr 7 cm, AC = 6 cm und Winkel A ungefähr 50°.\nZeichne die Mittelsenkrechte von AB.\nZeichne um A mit dem Radius 3 cm einen Bogen, der AB in X schneidet."},
		{givens + "arc c centre B radius half AB\ntake C on c\nclaim here not C on AB\nclaim angle BAC < 90°\n",
			"Given: the point A; a point B 8 cm from A.\nWith centre B and radius half of AB, draw an arc.\nTake a point C on the arc about B.\nThen C does not lie on AB, and angle BAC < 90°.",
			"Gegeben: der Punkt A; ein Punkt B, 8 cm von A entfernt.\nZeichne um B mit der Hälfte von AB als Radius einen Bogen.\nMarkiere einen Punkt C auf dem Bogen um B.\nEs gilt: C liegt nicht auf AB; Winkel BAC < 90°."},
		{givens + "m by erect(AB, A)\nn by erect(AB, B)\ntake C on m, 3 from A\ntake D on n, 3 from B\ntake E on m, 5 from A\nhide E\njoin ABDC\nmark right BAC, ABD\nmark right BAE",
			"Given: the point A; a point B 8 cm from A.\nErect the perpendicular to AB at A. This gives m.\nErect the perpendicular to AB at B. This gives n.\nTake a point C on m, 3 cm from A.\nTake a point D on n, 3 cm from B.\nTake a point E on m, 5 cm from A.\nJoin A to B, B to D and D to C.\nHere angles BAC and ABD are right angles.",
			"Gegeben: der Punkt A; ein Punkt B, 8 cm von A entfernt.\nErrichte in A die Senkrechte zu AB. Das ergibt m.\nErrichte in B die Senkrechte zu AB. Das ergibt n.\nMarkiere einen Punkt C auf m, 3 cm von A entfernt.\nMarkiere einen Punkt D auf n, 3 cm von B entfernt.\nMarkiere einen Punkt E auf m, 5 cm von A entfernt.\nVerbinde A mit B, B mit D und D mit C.\nHier gilt: die Winkel BAC und ABD sind rechte Winkel."},
	} {
		for tag, want := range map[string]string{"en": test.en, "de-AT": test.de} {
			if got := strings.Join(captions(t, test.source, tag), "\n"); got != want {
				t.Errorf("%s\nin %s:\n%s\nwant:\n%s", test.source, tag, got, want)
			}
		}
	}
}

// TestWritten: what is written at a part is told as what it is: of a reflex angle, and
// of what is rounded.
func TestWritten(t *testing.T) {
	r := lang.Compile("test.trm", []byte("figure \"F\"\ngiven A (0, 0)\ngiven B (8, 0)\ntake D' 6 from A at 112° to AB\ngiven E (3, 1)\njoin AD', AE\nray AB\n"+
		"label reflex angle BAD' size\nlabel angle BAD' size\nlabel angle BAE size\nlabel reflex angle BAE \"w\"\nlabel AE length\nlabel AD' length\n"))
	for tag, want := range map[string][]string{
		"en": {"The reflex angle BAD′ is 248°.", "Angle BAD′ is 112°.", "Angle BAE is about 18.4°.", "In the reflex angle BAE stands “w”.", "AE is √10 cm long.", "AD′ is 6 cm long."},
		"de": {"Der überstumpfe Winkel BAD′ misst 248°.", "Der Winkel BAD′ misst 112°.", "Der Winkel BAE misst rund 18,4°.", "Im überstumpfen Winkel BAE steht „w“.", "AE ist √10 cm lang.", "AD′ ist 6 cm lang."},
	} {
		var got []string
		for _, m := range r.Figure.Marks {
			got = append(got, r.Figure.Tell.Written(tag, m))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", tag, got, want)
		}
	}
}

// hole is what a caption must not have: a place left open, a blank too many, a
// full stop within or none at the end, a lone comma.
var hole = regexp.MustCompile(`[{}]|  | [,.;]|[,;.]{2}|\(\)|^[a-z]|[^.]$|, and \.|=\s*[.,;]`)

// TestExampleCaptions reads the captions of every example and of the whole
// library in every language: none has a hole, and each is a sentence.
func TestExampleCaptions(t *testing.T) {
	var sources []string
	for _, pattern := range []string{"../examples/*.trm", "../examples/*/*.trm"} {
		list, err := filepath.Glob(pattern)
		if err != nil || len(list) == 0 {
			t.Fatal(list, err)
		}
		sources = append(sources, list...)
	}
	for _, path := range sources {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		r := lang.Compile(path, text)
		if r.Figure == nil {
			continue // constructions only
		}
		for _, tag := range caption.Languages() {
			readAloud(t, path+" "+tag, string(text), r.Figure.Tell.Steps(tag))
		}
	}
}

// TestLibraryTold tells every construction of the library by itself.
func TestLibraryTold(t *testing.T) {
	for _, name := range stdlib.Names() {
		text, err := stdlib.Files.ReadFile(name + ".trm")
		if err != nil {
			t.Fatal(err)
		}
		for _, tag := range caption.Languages() {
			c := lang.Tell(name+".trm", text, tag)
			if c == nil {
				t.Fatalf("%s cannot be told", name)
			}
			readAloud(t, name+" "+tag, "", c.Captions)
		}
	}
}

func readAloud(t *testing.T, name, source string, captions []string) {
	t.Helper()
	if len(captions) == 0 || captions[0] == "" {
		t.Errorf("%s: the first step has no words", name)
	}
	for _, c := range captions {
		if c != "" && hole.MatchString(c) && !strings.Contains(source, "step "+`"`+c[:min(8, len(c))]) {
			t.Errorf("%s: %s", name, c)
		}
	}
}
