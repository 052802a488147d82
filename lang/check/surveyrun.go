package check

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"trammel/geom"
	"trammel/lang/program"
)

// surveyRun is one way through the steps of a survey.
type surveyRun struct {
	v        *survey
	st       *program.State
	length   [quantities]geom.Real
	angle    [quantities]geom.Angle
	triangle [6][3]geom.Point
	way      int // a bit for each fork: which of two triangles is taken
}

// corners goes all the ways and takes the one by which all data hold. One must be left, or
// that one is taken, where something was left to chance, that looks plainest. Only what
// that one is decided by says something of other figures.
func (v *survey) corners(st *program.State, base int) ([]geom.Point, error) {
	way := 0
	if v.forks > 0 {
		var err error
		before := st.Field.Noted()
		way, err = v.wayOf(st, base)
		st.Field.Forget(before)
		if err != nil {
			return nil, err
		}
	}
	ps, err := v.byWay(st, base, way)
	if err != nil {
		return nil, err
	}
	return ps, v.sh.plainly(ps)
}

// found is a quadrilateral, and the way to it.
type found struct {
	way int
	ps  []geom.Point
}

// wayOf is the way to the one quadrilateral there is.
func (v *survey) wayOf(st *program.State, base int) (int, error) {
	var all []found
	var first error
	for way := range 1 << v.forks {
		ps, err := v.byWay(st, base, way)
		if err != nil {
			if first == nil {
				first = err
			}
			continue
		}
		if !samePlaces(all, ps) {
			all = append(all, found{way, ps})
		}
	}
	switch len(all) {
	case 0:
		return 0, first
	case 1:
		return all[0].way, nil
	}
	return v.pick(st, all)
}

// pick is the way to the one that holds and is plain.
func (v *survey) pick(st *program.State, all []found) (int, error) {
	var good []found
	for _, f := range all {
		if v.sh.hold(st, f.ps) == nil && v.sh.plainly(f.ps) == nil {
			good = append(good, f)
		}
	}
	switch {
	case len(good) == 0:
		return all[0].way, nil
	case len(good) > 1 && !v.sh.chosen:
		return 0, v.two(good[0].ps, good[1].ps)
	}
	best := good[0]
	for _, f := range good[1:] {
		if v.oddness(f.ps) < v.oddness(best.ps) {
			best = f
		}
	}
	return best.way, nil
}

// oddness is how far the angles of a quadrilateral are from those of a plain one.
func (v *survey) oddness(ps []geom.Point) (odd float64) {
	for i := range 4 {
		odd += math.Abs(v.sh.corner(ps, i).Float() - float64(plainAngles4[v.sh.kindOf()][i]))
	}
	return odd
}

// two is the fault of data that two quadrilaterals have.
func (v *survey) two(a, b []geom.Point) error {
	for _, e := range elements6 {
		p, q := geom.Dist(a[e.a], a[e.b]), geom.Dist(b[e.a], b[e.b])
		if v.sh.datum(e) != nil || p.Equal(q) {
			continue
		}
		if p.Cmp(q) < 0 {
			p, q = q, p
		}
		name := v.sh.describe(e)
		return &program.Fault{
			Text: fmt.Sprintf("two %ss have these data: one with %s, one with %s", v.sh.kind, equals(name, p), equals(name, q)),
			Help: fmt.Sprintf("give %s, or one more angle", name),
		}
	}
	return &program.Fault{Text: fmt.Sprintf("two %ss have these data", v.sh.kind), Help: "give one more of its sides or angles"}
}

// equals is AB = 5, or AB ≈ 5.123.
func equals(name string, x geom.Real) string {
	if text := geom.Show(x); strings.HasPrefix(text, "≈") {
		return name + " " + text
	}
	return name + " = " + geom.Show(x)
}

func samePlaces(all []found, ps []geom.Point) bool {
	for _, old := range all {
		same := true
		for i := range ps {
			same = same && old.ps[i].Equal(ps[i])
		}
		if same {
			return true
		}
	}
	return false
}

// byWay takes the steps, and puts the corners together from one triangle and another, or
// from one and a parallel.
func (v *survey) byWay(st *program.State, base, way int) ([]geom.Point, error) {
	r := &surveyRun{v: v, st: st, way: way}
	for _, step := range v.steps {
		if err := step.do(r); err != nil {
			return nil, err
		}
	}
	return v.assembled(r, base), nil
}

// assembled is the corners from what they are put together from.
func (v *survey) assembled(r *surveyRun, base int) []geom.Point {
	ps, t := make([]geom.Point, 4), r.triangle[base]
	if base > 3 { // the third corner is the middle of a parallelogram
		i := base - 4
		for k := range 2 {
			ps[i+k], ps[(i+k+2)%4] = t[k], t[2].Add(t[2].Sub(t[k]))
		}
		return ps
	}
	for i, p := range t {
		ps[nextCorner(base, i)] = p
	}
	p, q, s := nextCorner(base, 0), nextCorner(base, 2), nextCorner(base, 3)
	switch v.form {
	case parallelogram:
		ps[s] = t[0].Add(t[2].Sub(t[1]))
	case trapezium:
		from, way := t[0], t[2].Sub(t[1]) // the lacking side begins at the corner that its parallel does not have
		if base == 0 || base == 2 {
			from, way = t[2], t[0].Sub(t[1])
		}
		ps[s] = geom.Along(from, way, r.length[v.lacking(base)])
	default:
		other := r.triangle[nextCorner(base, 2)]
		ps[s] = geom.Similar(other[:], 0, 2, ps[q], ps[p])[1]
	}
	return ps
}

// solve makes a triangle from elements of it; more than settle it must agree.
func (r *surveyRun) solve(k int, from []quantity, fork int) error {
	t := r.v.triangles[k]
	d := geom.TriangleData{Names: t.names, Sides: t.label, Shape: r.v.sh.kind}
	if fork >= 0 {
		d.Choice = 1 + r.way>>fork&1
	}
	for i := range 3 {
		if slices.Contains(from, t.side[i]) {
			d.Side[i] = r.length[t.side[i]]
		}
		if slices.Contains(from, t.angle[i]) {
			a := r.angle[t.angle[i]]
			d.Angle[i] = &a
		}
	}
	ps, err := geom.Triangle(r.st.Field, d)
	r.triangle[k] = ps
	return err
}
