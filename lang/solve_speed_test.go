package lang_test

import (
	"fmt"
	"strings"
	"testing"

	"trammel/lang/check"
	"trammel/lang/solve"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// TestSolveLinear: the work for one opening does not grow with their number, but
// for having more of them to differ from, where there are so many that they
// hardly can. It is counted in what is allocated, which no clock disturbs.
func TestSolveLinear(t *testing.T) {
	each := func(n int) float64 {
		p := flat("", string(halves(n)))
		return testing.AllocsPerRun(3, func() { solve.Inputs(p) }) / float64(n)
	}
	one := each(1)
	for n, most := range map[int]float64{2: 1.3, 5: 1.3, 10: 1.3, 20: 1.3, 40: 1.3, 80: 1.75} {
		if many := each(n); many > most*one {
			t.Errorf("of %d openings each takes %.0f allocations, and of one %.0f", n, many, one)
		}
	}
}

// BenchmarkSolve chooses n openings, each to halve a straight of its own, and
// reports the time for one.
func BenchmarkSolve(b *testing.B) {
	for _, n := range []int{1, 5, 10, 20} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			var problems source.List
			tree := syntax.Parse(source.NewFile("halves.trm", halves(n)), &problems)
			p := check.Check(tree, noLibrary{}, &problems, check.Options{})
			if problems.Failed() || len(p.Inputs) != n {
				b.Fatal(problems[0].Text)
			}
			for b.Loop() {
				if c := solve.Inputs(p); len(c.Troubles) > 0 {
					b.Fatal(c.Troubles[0].Fails[0].Err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/any")
		})
	}
}

// halves is a source that halves n straights, of lengths from 4 to 6 units, by
// compasses.
func halves(n int) string {
	var lines strings.Builder
	for i := range n {
		fmt.Fprintf(&lines, `given A%[1]d (%[2]d, %[3]d)
given B%[1]d (%[4]d, %[3]d)
join A%[1]dB%[1]d
arc c%[1]d centre A%[1]d radius any over half A%[1]dB%[1]d
arc d%[1]d centre B%[1]d radius c%[1]d
c%[1]d meets d%[1]d at X%[1]d and Y%[1]d
line n%[1]d through X%[1]d and Y%[1]d cuts A%[1]dB%[1]d at M%[1]d
`, i+1, 9*(i%4), 12*(i/4), 9*(i%4)+4+i%3)
	}
	return titled(lines.String())
}

// noLibrary is for sources that are whole in themselves.
type noLibrary struct{}

func (noLibrary) Use(string, source.Span) *syntax.File { return nil }
func (noLibrary) Library(string) *syntax.File          { return nil }
func (noLibrary) LibraryNames() []string               { return nil }
