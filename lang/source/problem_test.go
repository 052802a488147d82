package source

import "testing"

func TestSort(t *testing.T) {
	a, b := NewFile("a", "one two"), NewFile("b", "three")
	var l List
	l.Add(Span{b, 3, 4}, "b late")
	l.Add(Span{a, 4, 7}, "a late")
	l.Add(Span{b, 0, 1}, "b early")
	l.Add(Span{a, 0, 3}, "a early, first said")
	l.Add(Span{a, 0, 1}, "a early, then said")
	l.Sort()
	want := []string{"b early", "b late", "a early, first said", "a early, then said", "a late"}
	for i, p := range l {
		if p.Text != want[i] {
			t.Errorf("%d is %q, want %q", i, p.Text, want[i])
		}
	}
}

func TestFailed(t *testing.T) {
	var l List
	l.Add(Span{}, "a warning").Severity = Warning
	if l.Failed() {
		t.Error("a warning fails the list")
	}
	l.Add(Span{}, "an error")
	if !l.Failed() {
		t.Error("an error does not fail the list")
	}
}

func TestSpan(t *testing.T) {
	f := NewFile("f", "\ufeffjoin AB")
	s := Span{f, 0, 4}.To(Span{f, 5, 7})
	if s.Text() != "join AB" || (Span{}).Text() != "" {
		t.Errorf("%q", s.Text())
	}
}

// TestLineEnds reads lines that end as they do on any machine.
func TestLineEnds(t *testing.T) {
	for _, text := range []string{"one\ntwo\n", "one\r\ntwo\r\n", "one\rtwo\r"} {
		f := NewFile("x.trm", text)
		if f.Line(1) != "one" || f.Line(2) != "two" {
			t.Errorf("%q: lines %q and %q", text, f.Line(1), f.Line(2))
		}
	}
}
