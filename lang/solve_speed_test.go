package lang_test

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"trammel/lang/check"
	"trammel/lang/program"
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

// mostWork is how many steps may be done to choose for an example of the library, for each
// step of its figure.
const mostWork = 9

// TestSolveLinearInLibrary: the work to choose for the library's examples grows with what
// they leave to chance by a power of no more than 1.05, and is little for each step of the
// figure. It is counted in steps done, which no clock disturbs; BenchmarkSolveLibrary tells
// the same of time.
func TestSolveLinearInLibrary(t *testing.T) {
	var anys, works []float64
	for _, e := range libraryExamples(t) {
		work := solve.Inputs(e.Program).Work
		if work > mostWork*e.steps {
			t.Errorf("%s: %d steps are done for a figure of %d", e.name, work, e.steps)
		}
		anys, works = append(anys, float64(len(e.Inputs))), append(works, float64(work))
	}
	if power := slope(anys, works); len(anys) < 50 || power > 1.05 {
		t.Errorf("the work of %d examples grows with the power %.3f of their anys", len(anys), power)
	}
}

// example is an example of the library and how many steps make something in it.
type example struct {
	*program.Program
	name  string
	steps int
}

// libraryExamples are those that leave something to chance.
func libraryExamples(t testing.TB) (all []example) {
	names, texts := corpus(t)
	for _, name := range names {
		p := flat(filepath.Dir(name), texts[name])
		if filepath.Base(filepath.Dir(name)) != "library" || p == nil || len(p.Inputs) == 0 {
			continue
		}
		e := example{p, filepath.Base(name), 0}
		for _, step := range p.Steps {
			if !step.Proof {
				e.steps++
			}
		}
		all = append(all, e)
	}
	return all
}

// slope is the power of x with which y grows: that of the straight that fits their
// logarithms best by least squares.
func slope(xs, ys []float64) float64 {
	var sx, sy, sxx, sxy float64
	for i := range xs {
		x, y := math.Log(xs[i]), math.Log(ys[i])
		sx, sy, sxx, sxy = sx+x, sy+y, sxx+x*x, sxy+x*y
	}
	n := float64(len(xs))
	return (n*sxy - sx*sy) / (n*sxx - sx*sx)
}

// BenchmarkSolveLibrary chooses for each example of the library that leaves something to
// chance. Time is that of the choice alone, the least of all rounds; what reads the source,
// checks it and works the figure out exactly is left out. It reports the longest; the power
// of the number of anys with which time grows over the examples; and that with which time
// for each step of the figure does, since the examples with more anys are longer, too.
func BenchmarkSolveLibrary(b *testing.B) {
	all := libraryExamples(b)
	least := make([]time.Duration, len(all))
	for b.Loop() {
		for i, e := range all {
			start := time.Now()
			solve.Inputs(e.Program)
			if took := time.Since(start); least[i] == 0 || took < least[i] {
				least[i] = took
			}
		}
	}
	var anys, times, each []float64
	for i, e := range all {
		ns := float64(least[i].Nanoseconds())
		anys, times, each = append(anys, float64(len(e.Inputs))), append(times, ns), append(each, ns/float64(e.steps))
	}
	b.ReportMetric(slices.Max(times)/1e6, "ms-longest")
	b.ReportMetric(slope(anys, times), "power")
	b.ReportMetric(slope(anys, each), "power/step")
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
