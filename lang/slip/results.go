package slip

import (
	"math"
	"math/big"
	"slices"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
	"trammel/lang/eval"
	"trammel/lang/program"
)

// findResults lists what a marker looks at: what is joined, claimed or drawn
// boldly, the points that such straights end in, and the points and straights
// that nothing more is drawn from. Three sorts of things are no results: what joins
// two given points, which is on the pupil's paper or cannot go wrong; what is used up
// on the way; and what hangs on an opening or a point that the pupil is free to choose
// and may have elsewhere.
func (r *run) findResults() {
	ends, means, loose := r.ends(), r.means(), r.loose()
	for slot, s := range r.program.Slots {
		if !r.drawn(slot) || s.Ink.Hidden || r.joinsGivens(slot) {
			continue
		}
		sh, ok := shapeOf(r.base.Values[slot])
		last := sh.kind != program.Circle && !means[slot] && !loose[slot]
		if ok && (wanted(s.Ink) || last || sh.kind == program.Point && ends[sh.at]) {
			r.results = append(r.results, result{slot: slot, home: sh})
		}
	}
}

// wanted tells the ink of a result.
func wanted(ink *program.Ink) bool {
	return !ink.Hidden && (ink.Role == figure.Result || ink.Weight == figure.Bold)
}

// ends are the places in which straights end that are results.
func (r *run) ends() map[figure.XY]bool {
	ends := map[figure.XY]bool{}
	for slot, s := range r.program.Slots {
		if !r.drawn(slot) || !wanted(s.Ink) || r.joinsGivens(slot) {
			continue
		}
		if c, ok := r.base.Values[slot].(*program.Curve); ok && c.Straight != nil {
			for _, e := range []*geom.Point{c.Straight.Start, c.Straight.End} {
				if e != nil {
					ends[rough(*e)] = true
				}
			}
		}
	}
	return ends
}

// joinsGivens tells of a straight that is drawn through two given points.
func (r *run) joinsGivens(slot int) bool {
	sh, ok := shapeOf(r.base.Values[slot])
	if !ok || sh.kind != program.Line {
		return false
	}
	through := map[figure.XY]bool{}
	for k, writes := range r.writes {
		if !slices.Contains(writes, slot) {
			continue
		}
		for _, from := range r.reads[k] {
			p, isPoint := r.base.Values[from].(geom.Point)
			if isPoint && r.isGiven(from) && math.Abs(sh.off(rough(p))) < still {
				through[rough(p)] = true
			}
		}
	}
	return len(through) > 1
}

// means are the slots that something more is drawn from. To name where a thing
// meets others is not to draw.
func (r *run) means() map[int]bool {
	means := map[int]bool{}
	for k := len(r.writes) - 1; k >= 0; k-- {
		for _, made := range r.writes[k] {
			if _, isPoint := r.base.Values[made].(geom.Point); isPoint && !means[made] {
				continue
			}
			for _, slot := range r.reads[k] {
				means[slot] = true
			}
		}
	}
	return means
}

// loose are the slots that come out elsewhere when another hand chooses what is
// left to it. Free givens do not count: they are on the paper.
func (r *run) loose() map[int]bool {
	inputs := slices.Clone(r.base.Inputs)
	for k, taken := range r.inputs {
		if slices.ContainsFunc(r.writes[k], r.isGiven) {
			continue
		}
		for _, n := range taken {
			inputs[n] = new(big.Rat).Mul(inputs[n], big.NewRat(65, 64))
		}
	}
	st := program.NewState(r.program, inputs, exact.NewRoughField())
	loose := map[int]bool{}
	for _, step := range r.program.Steps {
		if !step.Proof && eval.Do(st, step) != nil {
			return loose
		}
	}
	for slot, value := range r.base.Values {
		was, ok := shapeOf(value)
		is, also := shapeOf(st.Values[slot])
		loose[slot] = ok && also && was.differs(is)
	}
	return loose
}

func (r *run) isGiven(slot int) bool {
	ink := r.program.Slots[slot].Ink
	return ink != nil && ink.Role == figure.Given
}

// differs tells whether a point or a straight lies elsewhere than another.
func (s shape) differs(t shape) bool {
	if s.kind == program.Line {
		return math.Abs(s.off(t.at)) > still || math.Abs(s.off(t.place(1, 0))) > still
	}
	return math.Hypot(t.at.X-s.at.X, t.at.Y-s.at.Y) > still
}
