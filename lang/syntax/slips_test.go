package syntax

import (
	"slices"
	"strings"
	"testing"

	"trammel/lang/source"
)

// TestSlips makes every slip of one word in every form: left out, doubled,
// swapped with the next, cut off after, or another in its place. Nothing may
// panic, every message is worded, and what still parses keeps its meaning when
// it is formatted.
func TestSlips(t *testing.T) {
	others := []string{"A", "AB", "m", "3", "60°", `"x"`, "centre", "to", "any", ",", "=", "(", "]", "-", "²", "half"}
	total, vague := 0, 0
	for _, form := range Forms {
		for _, e := range form.Examples {
			words := strings.Fields(strings.NewReplacer("(", " ( ", ")", " ) ", ",", " , ", "[", "[ ", "]", " ]").Replace(e.Line))
			for i := range words {
				before, after := words[:i], words[i+1:]
				slips := [][]string{slices.Concat(before, after), slices.Concat(before, words[i:i+1], words[i:]), slices.Concat(before, words[i:i+1])}
				if len(after) > 0 {
					slips = append(slips, slices.Concat(before, after[:1], words[i:i+1], after[1:]))
				}
				for _, o := range others {
					slips = append(slips, slices.Concat(before, []string{o}, after))
				}
				for _, s := range slips {
					total++
					vague += slip(t, strings.Join(s, " "))
				}
			}
		}
	}
	if vague*50 > total {
		t.Errorf("%d of %d slips are worded vaguely", vague, total)
	}
}

// slip tries one source, and counts the messages that only show the form.
func slip(t *testing.T, text string) int {
	t.Helper()
	var problems source.List
	Parse(source.NewFile("f", text), &problems)
	vague := 0
	for _, p := range problems {
		if p.Text == "" || strings.HasSuffix(p.Text, ".") || strings.Contains(p.Text, "unexpected token") {
			t.Errorf("%s: %q is no message", text, p.Text)
		}
		if strings.HasSuffix(p.Text, "does not fit here") || strings.HasSuffix(p.Text, "too early") {
			vague++
		}
	}
	if !problems.Failed() {
		checkFormat(t, text, text)
	}
	return vague
}
