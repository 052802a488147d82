package lang

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"

	"trammel/lang/program"
	"trammel/lang/source"
)

// mostMiddles is how many sets of values are tried for a picture by itself.
const mostMiddles = 100

// settled is the figure with the middle value of each choice, or, where that makes
// none, with the good values nearest to the middle. What no value can mend, it is
// told with which it was tried.
func (r *Result) settled() *Result {
	if r.Figure != nil || r.program == nil || len(r.program.Varied) == 0 || r.isFalse() {
		return r
	}
	d := &dealer{first: r, random: rand.New(rand.NewPCG(1, stream))}
	for _, set := range d.aroundMiddle() {
		if v, why := d.try(set); why == "" {
			return v.Result
		}
	}
	r.noteMiddle()
	return r
}

// isFalse tells that claims alone stand in the way: other values would hide that.
func (r *Result) isFalse() bool {
	return !slices.ContainsFunc(r.state.Undone, func(u program.Undone) bool { return !isFalse(u.Err) })
}

// aroundMiddle is the sets of values from the middle outwards, but for the middle
// itself; of many the nearest, and some all the way out.
func (d *dealer) aroundMiddle() [][]int {
	sets := d.shuffled()
	distance := func(set []int) (sum float64) {
		for i, v := range d.first.program.Varied {
			part := float64(set[i]-v.Picked) / float64(len(v.Values))
			sum += part * part
		}
		return sum
	}
	slices.SortFunc(sets, func(a, b []int) int {
		return cmp.Or(cmp.Compare(distance(a), distance(b)), slices.Compare(a, b))
	})
	sets = slices.DeleteFunc(sets, func(set []int) bool { return distance(set) == 0 })
	if len(sets) <= mostMiddles {
		return sets
	}
	const near = mostMiddles / 2
	thinned := slices.Clone(sets[:near])
	for i := range mostMiddles - near {
		thinned = append(thinned, sets[near+i*(len(sets)-near)/(mostMiddles-near)])
	}
	return thinned
}

// noteMiddle adds to the errors with which values the figure was tried.
func (r *Result) noteMiddle() {
	for _, p := range r.Problems {
		if p.Severity != source.Error {
			continue
		}
		for _, v := range r.program.Varied {
			text := fmt.Sprintf("with %s = %s, the middle of its values; others were tried too, and none will do", v.Name, decimal(v.Written(v.Picked))+v.Word)
			p.Notes = append(p.Notes, source.Note{Span: v.Span, Text: text})
		}
	}
}
