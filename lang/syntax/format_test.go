package syntax

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"trammel/lang/source"
)

func TestFormat(t *testing.T) {
	tests := []struct{ name, from, to string }{
		{"spaces", "  join   AB ,CD\n", "join AB, CD\n"},
		{"no final line end", "join AB", "join AB\n"},
		{"line ends", "join AB\r\njoin CD\r\n", "join AB\njoin CD\n"},
		{"byte order mark", "\ufeffjoin AB\n", "join AB\n"},
		{"empty", "\n\n  \n", ""},
		{"blank lines", "\n\njoin AB\n\n\n\njoin CD\n\n", "join AB\n\njoin CD\n"},
		{"blocks", "step \"x\"\njoin AB\nrepeat i from 1 to 3\njoin P[ i ]P[i + 1]\nend\nend\njoin CD\n",
			"step \"x\"\n  join AB\n  repeat i from 1 to 3\n    join P[i]P[i+1]\n  end\nend\njoin CD\n"},
		{"construction", "construction f (line m,point P) gives points Q[i] from 1 to n-1\n\"Words {m}\"\nend",
			"construction f(line m, point P) gives points Q[i] from 1 to n - 1\n  \"Words {m}\"\nend\n"},
		{"a line that goes on", "given C 5 from A,\n4 from B, # near\n# between\nabove AB\n",
			"given C 5 from A,\n    4 from B,  # near\n    # between\n    above AB\n"},
		{"a block that goes on", "step \"x\"\ngiven C 5 from A,\nabove AB\nend", "step \"x\"\n  given C 5 from A,\n      above AB\nend\n"},
		{"comments", "#one\nstep \"x\" # two  \n# three\nend\n  # four", "#one\nstep \"x\"  # two\n  # three\nend\n# four\n"},
		{"relations", "claim AB<=CD\nclaim AB>=CD\nclaim AB!=CD\nclaim AB:CD=2:3", "claim AB ≤ CD\nclaim AB ≥ CD\nclaim AB ≠ CD\nclaim AB : CD = 2 : 3\n"},
		{"degrees", "claim angle ABC=60 deg\nclaim angle ABC = 22º30′\nclaim angle ABC = 7deg", "claim angle ABC = 60°\nclaim angle ABC = 22°30'\nclaim angle ABC = 7°\n"},
		{"arithmetic", "claim 1 / 2AB+3·CD = 2*sqrt (3)EF - 4(AB-BC)", "claim 1/2 AB + 3 * CD = 2 * sqrt(3) EF - 4 (AB - BC)\n"},
		{"minus", "given A ( − 1 ,- 1/2 )\nclaim AB = - 3 cm -2", "given A (-1, -1/2)\nclaim AB = -3 cm - 2\n"},
		{"squares", "claim AB^2+BC ² = AC^ 2", "claim AB² + BC² = AC²\n"},
		{"primes", "join X′Y’\nhide k′", "join X'Y'\nhide k'\n"},
		{"clock", "label A at 10 o’clock", "label A at 10 o'clock\n"},
		{"units", "unit 8mm\npaper 120mm by 80 mm", "unit 8 mm\npaper 120 mm by 80 mm\n"},
		{"numbers as written", "given A (0.50, 007)", "given A (0.50, 007)\n"},
		{"points apart", "hide P[1], Q", "hide P[1], Q\n"},
		{"a theme's hyphen", "theme large - print", "theme large-print\n"},
		{"call", "n by parallel( m ,P )in   full", "n by parallel(m, P) in full\n"},
	}
	for _, test := range tests {
		var problems source.List
		got, ok := Format(source.NewFile("f", test.from), &problems)
		if !ok || got != test.to {
			t.Errorf("%s: got\n%swant\n%s%s", test.name, got, test.to, texts(problems))
		}
	}
}

func TestFormatLeavesFaults(t *testing.T) {
	for _, text := range []string{"jion AB\n", "join  AB\nclaim AB = - -2", "step \"x\"", "end", "\xff"} {
		var problems source.List
		if got, ok := Format(source.NewFile("f", text), &problems); ok || got != "" || !problems.Failed() {
			t.Errorf("%q was formatted: %s", text, got)
		}
	}
}

func TestFormatKeepsMeaning(t *testing.T) {
	for name, text := range sources(t) {
		checkFormat(t, name, text)
	}
}

// checkFormat wants the formatted source to have the same tree, and to be its
// own formatted form.
func checkFormat(t *testing.T, name, text string) {
	t.Helper()
	var problems, again source.List
	got, ok := Format(source.NewFile(name, text), &problems)
	if !ok {
		t.Fatalf("%s: %s", name, texts(problems))
	}
	before, after := Parse(source.NewFile(name, text), &again), Parse(source.NewFile(name, got), &again)
	if a, b := dump(before), dump(after); a != b {
		t.Errorf("%s: the meaning changed\n%s\n%s\n%s\n%s", name, text, got, a, b)
	}
	if twice, _ := Format(source.NewFile(name, got), &again); twice != got {
		t.Errorf("%s: not settled: %q then %q", name, got, twice)
	}
}

func texts(l source.List) string {
	var b strings.Builder
	if err := l.Print(&b, false); err != nil {
		return err.Error()
	}
	return b.String()
}

// dump writes a tree without its positions.
func dump(f *File) string {
	var b strings.Builder
	dumpValue(&b, reflect.ValueOf(f.Statements))
	return b.String()
}

func dumpValue(b *strings.Builder, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			dumpValue(b, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			dumpValue(b, v.Index(i))
			b.WriteString(";")
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[Node]() {
			return
		}
		b.WriteString(v.Type().Name() + "{")
		for i := range v.NumField() {
			if !v.Field(i).IsZero() {
				b.WriteString(v.Type().Field(i).Name + ":")
				dumpValue(b, v.Field(i))
			}
		}
		b.WriteString("}")
	default:
		fmt.Fprintf(b, "%v ", v.Interface())
	}
}
