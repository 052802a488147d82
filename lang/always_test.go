package lang_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trammel/lang"
)

// TestReaches holds the reach of claims against theorems (Thales; Varignon; the
// centroid; Euclid I.47 as a claim of right triangles only) and against accidents.
func TestReaches(t *testing.T) {
	source := `figure "reaches"
given points A, B, C, D
K by middle(A, B)
L by middle(B, C)
M by middle(C, D)
N by middle(D, A)
claim parallelogram KLMN
claim not square KLMN
given circle k centre O (20, 0) radius 3
given S (40, 0)
arc c centre S radius any
given P on k at 0°
given R on k at 180°
given Q on k
claim angle PQR = 90°
claim PR = 6
claim AB < AC + CB
given E (30, 0)
given F 5 from E
given G above EF
n, H by drop(EF, G)
claim GH < GE
claim n perpendicular to EF
`
	// What holds here only: the opening that was chosen, read off and claimed.
	var opening string
	for _, c := range lang.Compile("reaches.trm", []byte(source)).Choices() {
		if c.Name == "arc c" {
			opening = strings.TrimPrefix(c.Value, "opening ")
		}
	}
	source += "claim here radius c = " + opening + "\n"
	r := lang.Compile("reaches.trm", []byte(source))
	if r.Figure == nil {
		t.Fatal(r.Problems[0].Text)
	}
	want := []lang.Reach{lang.Always, lang.Tried, lang.Always, lang.Fixed, lang.Tried, lang.Tried, lang.Always, lang.HereOnly}
	reaches, _ := r.Reaches(1)
	for i, reach := range reaches {
		if i < len(want) && reach != want[i] {
			t.Errorf("%s: %s, want %s", r.Claims[i].Text, reach, want[i])
		}
	}
}

// TestReachOfAccident: a claim that the source's own numbers make true by chance.
func TestReachOfAccident(t *testing.T) {
	source := `figure "accident"
given A (0, 0)
given B (8, 0)
given C above AB
claim here angle ACB < 180°
claim area of ABC > 0
arc c centre A radius any
arc d centre B radius any over half AB
claim radius c = radius d
`
	r := lang.Compile("accident.trm", []byte(source))
	if r.Figure != nil {
		t.Error("an accident that the choice avoids passed as true")
	}
}

func BenchmarkReaches(b *testing.B) {
	source := `figure "kite"
given line m
given P above m
arc c centre P radius any cuts m at L and R
arc d centre L radius any
arc e centre R radius d
d meets e at Y below m
line n through P and Y cuts m at F
claim angle PFR = 90°
claim LF = FR
claim n perpendicular to m
`
	r := lang.Compile("kite.trm", []byte(source))
	for b.Loop() {
		reaches, _ := r.Reaches(7)
		for _, reach := range reaches {
			if reach != lang.Always {
				b.Fatal(reach)
			}
		}
	}
}

// untold are theorems, by the file and what they claim, of which the formulas do not tell that they
// hold on all sides: they are tried only.
var untold = map[string]bool{
	"always-fixed-angle.trm: angle BOC = 116.5°":                        true,
	"always-fixed-angle.trm: angle BOC = 2 angle BAC":                   true,
	"always-fixed-angle.trm: angle ACB = 44°45'":                        true,
	"always-fixed-angle.trm: angle BIC = 90° + half angle BAC":          true,
	"always-fixed-angle.trm: n touches k":                               true,
	"always-fixed-angle.trm: radius m² - 2 * radius m * radius k = OI²": true,
	"always-fixed-special.trm: angle EAC = 3 angle BAD - 20°":           true,
	"always-fixed-special.trm: angle DAE = 60°":                         true,
	"always-fixed-special.trm: angle DAE = 3 angle BAD":                 true,
	"always-fixed-special.trm: 4 angle BAD = angle BAE":                 true,
	"always-midseg.trm: AD : DB = AE : EC":                              true,
	"always-orthic.trm: DA bisects angle EDF":                           true,
	"always-ptolemy.trm: AC * BD = AB * CD + BC * AD":                   true,
}

// TestTheorems: what is a theorem, by the source named in each file, holds always, but for what
// is untold.
func TestTheorems(t *testing.T) {
	paths, err := filepath.Glob(trueSources + "always-*.trm")
	if err != nil || len(paths) < 20 {
		t.Fatalf("%d theorems: %v", len(paths), err)
	}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		r := lang.Compile(path, text)
		if isFalseTwin(path) {
			continue // TestTrueSources holds it
		}
		reaches, _ := r.Reaches(1)
		for i, reach := range reaches {
			want := lang.Always
			if untold[filepath.Base(path)+": "+r.Claims[i].Text] {
				want = lang.Tried
			}
			if reach != want {
				t.Errorf("%s: %s %s, want %s", path, reach, r.Claims[i].Text, want)
			}
		}
	}
}

// BenchmarkCheck is all that check does to the README's figure: it compiles it,
// and tells of each claim how far it holds and where it fails.
func BenchmarkCheck(b *testing.B) {
	text, err := os.ReadFile("../examples/perpendicular-from-a-point.trm")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		r := lang.Compile("kite.trm", text)
		reaches, _ := r.Reaches(1)
		r.Exceptions(reaches)
	}
}

// TestFarOpenings: where the arcs of calls miss in another figure, their openings are chosen
// anew, so that what is false of many triangles is seen to be.
func TestFarOpenings(t *testing.T) {
	calls := "given triangle ABC\nk, I by incircle(A, B, C)\nj, J by excircle(A, B, C)\no, O by circumcircle(A, B, C)\n"
	for _, claim := range []string{"angle BAC < 90°", "angle BOC = 2 angle BAC"} {
		if !lang.Compile("far.trm", []byte(titled(calls+"claim "+claim))).Problems.Failed() {
			t.Errorf("%s is held of any triangle", claim)
		}
	}
}

// TestLongClaims: what is too long to decide for angles in tenths and minutes is decided
// where it holds of any angles.
func TestLongClaims(t *testing.T) {
	for _, lines := range []string{
		"given angle ABC = 56.1°\ngiven P inside ABC\nk, O by cornercircle(A, B, C, P)",
		"given triangle ABC with AB = 6, angle A = 134°, angle B = 21°38'\nk, O by circumcircle(A, B, C)\nclaim 4 OA * area of ABC = AB * BC * CA",
	} {
		if r := lang.Compile("long.trm", []byte(titled(lines))); r.Figure == nil {
			t.Errorf("%s\n%v", lines, r.Problems)
		}
	}
}
