package lang

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/solve"
)

// Choice is something that the source leaves to chance, and what it became.
type Choice struct {
	Line  int
	Name  string // "arc c", "P"; of a call "arc c of erect"
	Value string // "opening 3.5", "at (3, 1.5)"
	Range string // "0.5 to 30", "from (1, 0) to (7, 0)": what else would have done; "" where that is not told
}

// Choices tells what was chosen, in the order of the source.
func (r *Result) Choices() []Choice {
	if r.Figure == nil {
		return nil
	}
	var out []Choice
	seen := map[int]bool{}
	for i, in := range r.program.Inputs {
		if in.Kind == program.Nearby {
			continue
		}
		list := r.choicesAt(i, r.state, seen)
		switch {
		case len(list) == 0:
		case in.Kind != program.Opening:
			r.reach(list)
		default:
			if lo, hi := solve.Range(r.program, r.inputs, i); lo.Cmp(hi) != 0 {
				list[0].Range = fmt.Sprintf("%s to %s", short(lo), short(hi))
			}
		}
		out = append(out, list...)
	}
	return out
}

// reach tells where else the points of a line could be, if each of them was
// chosen by itself: from where to where, for each number that it was chosen by.
func (r *Result) reach(points []Choice) {
	var chosen [][]int // inputs by point
	step := -1
	for i, in := range r.program.Inputs {
		line, _ := in.Span.File.Position(in.Span.Start)
		if in.Span.File != r.program.Source || line != points[0].Line || in.Kind == program.Opening || in.Kind == program.Nearby {
			continue
		}
		if in.Step != step {
			chosen, step = append(chosen, nil), in.Step
		}
		chosen[len(chosen)-1] = append(chosen[len(chosen)-1], i)
	}
	if len(chosen) != len(points) {
		return
	}
	for k := range points {
		var ways []string
		for _, in := range chosen[k] {
			lo, hi := solve.Range(r.program, r.inputs, in)
			from, to := r.placeAt(points[k].Line, k, in, lo), r.placeAt(points[k].Line, k, in, hi)
			if from != to && from != "" && to != "" {
				ways = append(ways, r.way(in, "from "+from+" to "+to))
			}
		}
		points[k].Range = strings.Join(ways, " or ")
	}
}

// way says of a stretch on which circle it is, and which way round, if it is on one.
func (r *Result) way(input int, stretch string) string {
	if round := r.program.Inputs[input].Round; round != nil {
		return "anticlockwise " + stretch + " " + round.Text
	}
	return stretch
}

// placeAt is where the nth point of a line stands with another choice, on a circle in
// degrees; "" if nowhere.
func (r *Result) placeAt(line, n, input int, v *big.Rat) string {
	inputs := slices.Clone(r.inputs)
	inputs[input] = v
	st := program.NewState(r.program, inputs, exact.NewRoughField())
	for _, step := range r.program.Steps {
		if !step.Proof && eval.Do(st, step) != nil {
			return ""
		}
	}
	points := r.placesOf(line, st)
	if n >= len(points) {
		return ""
	}
	if round := r.program.Inputs[input].Round; round != nil {
		return bearing(round.Centre(st), points[n].at)
	}
	return plainly(points[n].at)
}

// bearing is the way from one point to another in whole degrees.
func bearing(from, to geom.Point) string {
	way := to.Sub(from)
	degrees := math.Round(math.Atan2(way.Y.Float(), way.X.Float()) * 180 / math.Pi)
	return fmt.Sprintf("%.0f°", math.Mod(degrees+360, 360))
}

// choicesAt tells what an input has become in a run: an opening of the file itself or of
// a call that is drawn, or where the points of its line stand, once for each line seen.
func (r *Result) choicesAt(input int, st *program.State, seen map[int]bool) []Choice {
	in := r.program.Inputs[input]
	if calls := r.calls(in); len(calls) > 0 {
		return r.inCalls(input, calls)
	}
	if in.Span.File != r.program.Source {
		return nil
	}
	line, _ := in.Span.File.Position(in.Span.Start)
	switch {
	case in.Kind == program.Opening:
		return []Choice{{Line: line, Name: in.Name, Value: "opening " + short(st.Inputs[input])}}
	case seen[line]:
		return nil
	}
	seen[line] = true
	return r.pointsOf(line, st)
}

// calls are those that an input stands in, outermost first.
func (r *Result) calls(in *program.Input) []program.Call {
	if in.Step >= len(r.program.Steps) {
		return nil
	}
	return r.program.Steps[in.Step].Via
}

// inCalls tells what an opening inside calls has become, at the line of the outermost. What
// is not drawn is not told, nor are points: their names are no reader's.
func (r *Result) inCalls(input int, calls []program.Call) []Choice {
	in, first := r.program.Inputs[input], calls[0].Span
	if in.Kind != program.Opening || slices.ContainsFunc(calls, func(c program.Call) bool { return c.Unseen }) {
		return nil
	}
	name := in.Name
	for _, c := range slices.Backward(calls) {
		name += " of " + c.Name
	}
	line, _ := first.File.Position(first.Start)
	return []Choice{{Line: line, Name: name, Value: "opening " + short(r.inputs[input])}}
}

// plainly writes a place to two decimals.
func plainly(p geom.Point) string {
	text := fmt.Sprintf("(%.2f, %.2f)", p.X.Float(), p.Y.Float())
	return strings.NewReplacer("-0.00", "0", "-", "−", ".00", "").Replace(text)
}

// pointsOf tells where the points stand in a run that a line of the source leaves to chance.
func (r *Result) pointsOf(line int, st *program.State) (out []Choice) {
	for _, p := range r.placesOf(line, st) {
		out = append(out, Choice{Line: line, Name: p.name, Value: "at " + plainly(p.at)})
	}
	return out
}

// placed is a point and where it stands.
type placed struct {
	name string
	at   geom.Point
}

// placesOf are the points of a line of the source in a run.
func (r *Result) placesOf(line int, st *program.State) (out []placed) {
	for i, slot := range r.program.Slots {
		at, _ := slot.Span.File.Position(slot.Span.Start)
		p, isPoint := st.Values[i].(geom.Point)
		if slot.Top && slot.Name != "" && at == line && isPoint && slot.Span.File == r.program.Source {
			out = append(out, placed{slot.Name, p})
		}
	}
	return out
}

func short(r *big.Rat) string {
	if r.IsInt() {
		return r.Num().String()
	}
	f, _ := r.Float64()
	return fmt.Sprintf("%.4g", f)
}
