package braille

import (
	"os"
	"strings"
	"testing"
)

func said(cells []Cell) string {
	var b strings.Builder
	for _, c := range cells {
		b.WriteString(c.String())
	}
	return b.String()
}

// TestPublished compares with what the tables of liblouis make.
func TestPublished(t *testing.T) {
	data, err := os.ReadFile("../../testdata/published/braille.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(string(data)) {
		print, want, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
		if !ok {
			continue
		}
		rows++
		got, unknown := Write(print)
		if said(got) != want || len(unknown) > 0 {
			t.Errorf("%q is %s, want %s; unknown %q", print, said(got), want, unknown)
		}
	}
	if rows < 50 {
		t.Errorf("only %d rows", rows)
	}
}

// TestTechnical has what that table is without: levels, roots and fractions, as
// the Guidelines for Technical Material write them (sections 6 to 8; H₂O is an
// example of the Rules, 3.24), from memory.
func TestTechnical(t *testing.T) {
	for _, test := range []struct{ print, want string }{
		{"H" + string(Lower) + "2O", "⠠⠓⠰⠢⠼⠃⠠⠕"},
		{"P" + string(Lower) + "12′", "⠠⠏⠰⠢⠼⠁⠃⠶"},
		{"\ue0002\ue001", "⠰⠩⠼⠃⠬"},
		{"2\ue0003\ue001 cm", "⠼⠃⠩⠼⠉⠬⠀⠉⠍"},
		{"\ue00010 + 2\ue0005\ue001\ue001", "⠰⠩⠼⠁⠚⠀⠐⠖⠀⠼⠃⠩⠼⠑⠬⠬"},
		{"\ue0021\ue00312\ue004 cm", "⠼⠁⠌⠁⠃⠀⠉⠍"},
		{"\ue0021 + \ue0005\ue001\ue0032\ue004", "⠰⠷⠼⠁⠀⠐⠖⠀⠰⠩⠼⠑⠬⠨⠌⠼⠃⠾"},
	} {
		if got, unknown := Write(test.print); said(got) != test.want || len(unknown) > 0 {
			t.Errorf("%q is %s, want %s; unknown %q", test.print, said(got), test.want, unknown)
		}
	}
}

// TestUnknown names the signs that have no braille here.
func TestUnknown(t *testing.T) {
	if _, unknown := Write("A 中 Ж"); string(unknown) != "中ж" {
		t.Errorf("unknown %q", unknown)
	}
}
