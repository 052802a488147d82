package source

import (
	"strings"
	"testing"
)

// at is the span of the first occurrence of a word.
func at(f *File, word string) Span {
	i := strings.Index(f.Text, word)
	return Span{f, i, i + len(word)}
}

func TestPrint(t *testing.T) {
	tests := []struct {
		name, text, word string
		want             string
	}{
		{"plain", "one\njoin AB\n", "AB", "f:2:6: error: wrong\n  join AB\n       ^^\n"},
		{"tab", "\tjoin AB\n", "AB", "f:1:7: error: wrong\n      join AB\n           ^^\n"},
		{"wide", "note \"三角形\" near Q", "Q", "f:1:17: error: wrong\n  note \"三角形\" near Q\n                     ^\n"},
		{"combining", "note \"e\u0301\" near Q", "Q", "f:1:16: error: wrong\n  note \"e\u0301\" near Q\n                ^\n"},
		{"escape code", "note \"\x1b[2J\" Q", "Q", "f:1:13: error: wrong\n  note \"\\u001B[2J\" Q\n                   ^\n"},
		{"right-to-left override", "# \u202egnorw Q", "Q", "f:1:10: error: wrong\n  # \\u202Egnorw Q\n                ^\n"},
		{"broken bytes", "a \xff Q", "Q", "f:1:5: error: wrong\n  a \\xFF Q\n         ^\n"},
		{"over the line's end", "join AB\nray\n", "AB\nr", "f:1:6: error: wrong\n  join AB\n       ^^\n"},
		{"empty span", "join AB", "", "f:1:1: error: wrong\n  join AB\n  ^\n"},
	}
	for _, test := range tests {
		f := NewFile("f", test.text)
		var l List
		l.Add(at(f, test.word), "wrong")
		if got := printed(t, l, false); got != test.want {
			t.Errorf("%s:\n%s\nwant\n%s", test.name, got, test.want)
		}
	}
}

func TestPrintClipsLongLines(t *testing.T) {
	f := NewFile("f", strings.Repeat("abc ", 90000)+"HERE"+strings.Repeat(" xyz", 90000))
	var l List
	l.Add(at(f, "HERE"), "wrong")
	lines := strings.Split(printed(t, l, false), "\n")
	if n := len([]rune(lines[1])); n > maxWidth+4 {
		t.Errorf("%d columns: %s", n, lines[1])
	}
	column := strings.Index(lines[2], "^^^^")
	if column < 0 || string([]rune(lines[1])[column:column+4]) != "HERE" {
		t.Errorf("the carets miss:\n%s\n%s", lines[1], lines[2])
	}
	for _, end := range []string{"  …", "…"} {
		if !strings.HasPrefix(lines[1], end) && !strings.HasSuffix(lines[1], end) {
			t.Errorf("no sign of a cut: %s", lines[1])
		}
	}
}

func TestPrintHelpAndNotes(t *testing.T) {
	f := NewFile("a.trm", "arc c centre P radius 2\narc c centre Q radius 2\n")
	var l List
	p := l.Add(Span{f, 28, 29}, "c is made twice")
	p.Help = "name it d\nor hide the first"
	p.Notes = []Note{{Span{f, 4, 5}, "the first c is here"}, {Span{}, "the library is not to blame"}}
	w := l.Add(Span{}, "nothing is drawn")
	w.Severity = Warning
	want := `a.trm:2:5: error: c is made twice
  arc c centre Q radius 2
      ^
help: name it d
help: or hide the first
a.trm:1:5: note: the first c is here
  arc c centre P radius 2
      ^
note: the library is not to blame
warning: nothing is drawn
`
	if got := printed(t, l, false); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestPrintColour(t *testing.T) {
	f := NewFile("a\x1b.trm", "join \x1b[31mAB")
	var l List
	l.Add(at(f, "AB"), "wrong \x1b]0;title\a").Help = "\x1b[2J"
	if got := printed(t, l, false); strings.ContainsRune(got, 0x1b) {
		t.Errorf("an escape code came through: %q", got)
	}
	got := printed(t, l, true)
	if !strings.Contains(got, red+"error:"+neutral) || strings.Contains(got, "\x1b]") || strings.Contains(got, "\x1b[2J") {
		t.Errorf("coloured: %q", got)
	}
}

func printed(t *testing.T, l List, colour bool) string {
	t.Helper()
	var b strings.Builder
	if err := l.Print(&b, colour); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestPosition(t *testing.T) {
	f := NewFile("f", "añb\r\n\nΔx")
	tests := []struct{ offset, line, col int }{
		{0, 1, 1}, {1, 1, 2}, {3, 1, 3}, {6, 2, 1}, {7, 3, 1}, {9, 3, 2}, {10, 3, 3}, {99, 3, 3}, {-1, 1, 1},
	}
	for _, test := range tests {
		if line, col := f.Position(test.offset); line != test.line || col != test.col {
			t.Errorf("offset %d is %d:%d, want %d:%d", test.offset, line, col, test.line, test.col)
		}
	}
	for n, want := range []string{"", "añb", "", "Δx", ""} {
		if got := f.Line(n); got != want {
			t.Errorf("line %d is %q, want %q", n, got, want)
		}
	}
}
