package syntax

import (
	"strings"
	"testing"
	"time"
)

func TestLimits(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"size", strings.Repeat("#", maxSource+1), "1:1 the source is longer than 1 MiB"},
		{"brackets", "claim " + strings.Repeat("(", 5000) + "AB = CD", "1:207 brackets nest deeper than 200"},
		{"roots", "claim " + strings.Repeat("sqrt(", 3000) + "2" + strings.Repeat(")", 3000) + " = AB", "1:1011 brackets nest deeper than 200"},
		{"indices", "hide " + strings.Repeat("P[", 4000), "1:407 brackets nest deeper than 200"},
		{"blocks", strings.Repeat("step \"x\"\n", 300) + strings.Repeat("end\n", 300), "201:1 blocks nest deeper than 200"},
		{"faults", strings.Repeat("; ", 300000), "1:1 \";\" has no meaning here"},
		{"commas", strings.Repeat("join AB,\n\n", 90000), "1:8 stray comma"},
		{"statements", strings.Repeat("jion AB\n", 100000), "1:1 no statement begins"},
		{"a long list", "join AB" + strings.Repeat(", AB", 200000) + " CD", "1:1 a statement of more than 10000 words"},
		{"a long line of nonsense", "claim " + strings.Repeat("base ", 150000) + "=", "1:1 a statement of more than 10000 words"},
		{"a long sum", "claim AB = " + strings.Repeat("AB + ", 200000), "1:1 a statement of more than 10000 words"},
		{"names", "hide " + strings.Repeat("a", 500000), "1:6 a name holds at most"},
		{"digits", "hide P" + strings.Repeat("1", 500000), "1:6 a name holds at most"},
	}
	for _, test := range tests {
		start := time.Now()
		got := said(test.text)
		if !strings.Contains(got, test.want) {
			t.Errorf("%s: %.300s", test.name, got)
		}
		if n := strings.Count(got, "\n"); n > maxMistake+10 {
			t.Errorf("%s: %d problems", test.name, n)
		}
		if took := time.Since(start); took > 20*time.Second {
			t.Errorf("%s: took %v", test.name, took)
		} else {
			t.Log(test.name, took)
		}
	}
}
