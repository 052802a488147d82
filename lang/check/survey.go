package check

import (
	"trammel/geom"
	"trammel/lang/program"
)

// A survey finds the corners of a quadrilateral from its data as a surveyor does: by
// triangles, one after the other. It knows which elements follow from which before any
// number is there; what does not follow is left to chance.
//
// The triangles are the four of three corners each and two more. Of a trapezium these are
// ABD with BC shifted along to D (its sides are AB − CD, BC and AD), and ABC with BD
// shifted along to C (AB + CD, AC and BD); of a parallelogram, what its diagonals cut off.
type survey struct {
	sh        *shape
	triangles []surveyTriangle
	steps     []surveyStep
	depth     [quantities]int  // 1 of what is given, more of what follows from it, 0 of what is not known
	loose     [quantities]bool // what hangs on chance
	chosen    bool             // something is left to chance
	forks     int              // triangles of which there may be two
	reaches   int              // triangles of three sides, some of them left to chance
	form      form
	plain     []element // what is left to chance, the first first
}

// form is what is parallel in a quadrilateral.
type form uint8

const (
	anyForm form = iota
	trapezium
	parallelogram
)

// formOf is the form of a kind.
func formOf(kind string) form {
	switch kind {
	case "trapezium":
		return trapezium
	case "parallelogram", "rhombus", "rectangle":
		return parallelogram
	}
	return anyForm
}

// quantity is a length or an angle of a survey, or a triangle that is solved: its number
// in a run.
type quantity int

// The quantities: six lengths, the angles at the corners, their parts beside the next
// side and beside the previous one, those of the further triangles, and the triangles.
const (
	lengths      quantity = 0
	cornerAngles quantity = 6
	nexts        quantity = 10
	previouses   quantity = 14
	difference   quantity = 18 // of a trapezium's parallel sides
	sum          quantity = 19
	halfAC       quantity = 18 // of a parallelogram
	halfBD       quantity = 19
	apex         quantity = 20
	far          quantity = 21
	solved       quantity = 22
	quantities            = 28
)

// surveyTriangle has its sides opposite its corners, as geom has them.
type surveyTriangle struct {
	names [3]string
	label [3]string // what a side is called where that is more than two letters
	side  [3]quantity
	angle [3]quantity
}

// surveyStep makes one quantity from others.
type surveyStep struct {
	makes quantity
	needs []quantity
	do    func(*surveyRun) error
}

func lengthOf(i, j int) quantity {
	for k, e := range elements6 {
		if e == sideOf(i, j) {
			return lengths + quantity(k)
		}
	}
	panic("no length between these corners")
}

func whole(i int) quantity    { return cornerAngles + quantity(i%4) }
func next(i int) quantity     { return nexts + quantity(i%4) }
func previous(i int) quantity { return previouses + quantity(i%4) }

// quantityOf is the quantity that an element of a quadrilateral is.
func quantityOf(e element) quantity {
	if e.b < 0 {
		return whole(e.a)
	}
	return lengthOf(e.a, e.b)
}

// newSurvey is a survey of a shape before anything follows from its data.
func newSurvey(sh *shape, plain ...element) *survey {
	v := &survey{sh: sh, form: formOf(sh.kind), plain: plain}
	l := sh.letters
	for k := range 4 {
		a, b, c := k, nextCorner(k, 1), nextCorner(k, 2)
		t := surveyTriangle{
			names: [3]string{l[a], l[b], l[c]},
			side:  [3]quantity{lengthOf(b, c), lengthOf(a, c), lengthOf(a, b)},
			angle: [3]quantity{next(a), whole(b), previous(c)},
		}
		if sh.datum(sideOf(a, c)) == nil {
			t.label[1] = "the diagonal " + sh.describe(sideOf(a, c))
		}
		v.triangles = append(v.triangles, t)
	}
	ac, bd := sh.describe(sideOf(0, 2)), sh.describe(sideOf(1, 3))
	switch {
	case sh.kind == "rectangle": // its own triangles are right-angled
	case v.form == parallelogram:
		const middle = "the middle"
		v.triangles = append(v.triangles,
			surveyTriangle{[3]string{l[0], l[1], middle}, [3]string{"half " + bd, "half " + ac, ""},
				[3]quantity{halfBD, halfAC, lengthOf(0, 1)}, [3]quantity{next(0), previous(1), apex}},
			surveyTriangle{[3]string{l[1], l[2], middle}, [3]string{"half " + ac, "half " + bd, ""},
				[3]quantity{halfAC, halfBD, lengthOf(1, 2)}, [3]quantity{next(1), previous(2), far}})
	case v.form == trapezium:
		ab, bc, cd, ad := sh.describe(sideOf(0, 1)), sh.describe(sideOf(1, 2)), sh.describe(sideOf(2, 3)), sh.describe(sideOf(0, 3))
		v.triangles = append(v.triangles,
			surveyTriangle{[3]string{l[0], l[1], l[3]}, [3]string{bc, ad, ab + " − " + cd},
				[3]quantity{lengthOf(1, 2), lengthOf(0, 3), difference}, [3]quantity{whole(0), whole(1), apex}},
			surveyTriangle{[3]string{l[0], l[1], l[2]}, [3]string{bd, ac, ab + " + " + cd},
				[3]quantity{lengthOf(1, 3), lengthOf(0, 2), sum}, [3]quantity{next(0), previous(1), far}})
	}
	return v
}

// plan makes the steps to all corners. What does not follow from the data it leaves to chance.
func (v *survey) plan() corners {
	for {
		v.take()
		v.follow()
		switch base := v.base(); {
		case base >= 0:
			v.prune(base)
			return func(st *program.State) ([]geom.Point, error) { return v.corners(st, base) }
		case v.fork():
		case !v.choose():
			return func(*program.State) ([]geom.Point, error) { return nil, v.stuck() }
		}
	}
}

// take adds what is given, or has been left to chance.
func (v *survey) take() {
	for _, e := range everyElement() {
		d, q := v.sh.datum(e), quantityOf(e)
		if d == nil || v.knows(q) {
			continue
		}
		v.loose[q] = v.chosen // what is given was taken before
		v.add(surveyStep{makes: q, do: func(r *surveyRun) (err error) {
			if e.b < 0 {
				r.angle[q], err = d.size(r.st)
			} else {
				r.length[q], err = positive(r.st, d)
			}
			return err
		}})
	}
}

func (v *survey) knows(qs ...quantity) bool {
	for _, q := range qs {
		if v.depth[q] == 0 {
			return false
		}
	}
	return true
}

// add makes a step, if it makes something new from what is known.
func (v *survey) add(s surveyStep) bool {
	if v.knows(s.makes) || !v.knows(s.needs...) {
		return false
	}
	most := 0
	for _, q := range s.needs {
		most = max(most, v.depth[q])
		v.loose[s.makes] = v.loose[s.makes] || v.loose[q]
	}
	v.depth[s.makes] = most + 1
	v.steps = append(v.steps, s)
	return true
}

// follow adds all that follows from what is known.
func (v *survey) follow() {
	for again := true; again; {
		again = v.followSums() || v.followTriangles(false)
	}
}

// fork solves a triangle of which there may be two.
func (v *survey) fork() bool { return v.followTriangles(true) }

// base is the first of two triangles on a diagonal that are solved, or of a trapezium
// one, with the parallel side that it lacks, or of a parallelogram any; or -1.
func (v *survey) base() int {
	best, least := -1, 0
	for k := range v.triangles {
		ends := v.ends(k)
		if len(ends) == 0 || !v.knows(ends...) {
			continue
		}
		deep := 0
		for _, q := range ends {
			deep += v.depth[q]
		}
		if best < 0 || deep < least {
			best, least = k, deep
		}
	}
	return best
}

// ends are what the corners are put together from, with a triangle for the base.
func (v *survey) ends(base int) []quantity {
	own := solved + quantity(base)
	switch {
	case v.form == parallelogram:
		return []quantity{own}
	case base > 3:
		return nil
	case v.form == trapezium:
		return []quantity{own, v.lacking(base)}
	}
	return []quantity{own, solved + quantity(nextCorner(base, 2))}
}

// lacking is that of a trapezium's parallel sides which a triangle of three corners has not.
func (v *survey) lacking(k int) quantity {
	if k == 0 || k == 3 {
		return lengthOf(2, 3)
	}
	return lengthOf(0, 1)
}

// prune leaves out the steps that the corners do not hang on, but for triangles of which
// too much is given: these are to say that it does not agree.
func (v *survey) prune(base int) {
	needed := map[quantity]bool{}
	for _, q := range v.ends(base) {
		needed[q] = true
	}
	if v.form == trapezium {
		needed[difference] = true // AB is to be the longer
	}
	for k := range v.triangles {
		if q := solved + quantity(k); v.knows(q) && !v.loose[q] && v.surplus(k) {
			needed[q] = true
		}
	}
	var kept []surveyStep
	for i := len(v.steps) - 1; i >= 0; i-- {
		if s := v.steps[i]; needed[s.makes] {
			kept = append([]surveyStep{s}, kept...)
			for _, q := range s.needs {
				needed[q] = true
			}
		}
	}
	v.steps = kept
}

// surplus tells of a triangle of which more than three elements are given.
func (v *survey) surplus(k int) bool {
	given := 0
	for _, q := range append(v.triangles[k].side[:3:3], v.triangles[k].angle[:]...) {
		if v.depth[q] == 1 {
			given++
		}
	}
	return given > 3
}

// choose leaves to chance the fewest elements with which all corners follow. Of as few it
// takes those by which no triangle comes out that is one of two, and rather none that is
// made of three different sides, which may not reach. It is false where no choice does.
func (v *survey) choose() bool {
	v.chosen = true
	var best []element
	least := 0
	for n := v.freedom(); best == nil && n <= len(v.plain); n++ {
		v.choices(v.trial(), n, v.plain, nil, 0, func(chosen []element, risk int) bool {
			if best == nil || risk < least {
				best, least = append([]element{}, chosen...), risk
			}
			return least > 0
		})
	}
	rough := v.sh.sketched()
	for _, e := range best {
		if v.sh.datum(e) == nil { // another may have been of one size with it
			v.sh.chance(e, rough)
		}
	}
	return best != nil
}

// stuck is the fault of data that settle the shape, though no triangle of it.
func (v *survey) stuck() error {
	return &program.Fault{
		Text: "these data give no triangle of the " + v.sh.kind + " to begin with",
		Help: "give two of its sides and the angle between them, or a diagonal",
	}
}

// freedoms are how many elements settle a shape.
var freedoms = map[string]int{"quadrilateral": 5, "trapezium": 4, "isosceles trapezium": 3, "parallelogram": 3, "rhombus": 2, "rectangle": 2}

// freedom is how many elements are lacking at the least.
func (v *survey) freedom() int {
	free := freedoms[v.sh.kindOf()]
	for _, e := range everyElement() {
		if v.depth[quantityOf(e)] == 1 {
			free--
		}
	}
	for _, c := range v.sh.classes {
		if c.value == nil {
			free -= len(c.elems) - 1
		}
	}
	return max(1, free-len(v.sh.ties)/2)
}

// choices tells of each way to choose n of some elements that settles the corners, and
// how doubtful it is, as long as more are asked for.
func (v *survey) choices(from *survey, n int, of, chosen []element, risk int, tell func([]element, int) bool) bool {
	if n == 0 {
		return from.base() < 0 || tell(chosen, risk)
	}
	for i, e := range of {
		if from.knows(quantityOf(e)) {
			continue
		}
		with := from.trial()
		more := with.suppose(e)
		if !v.choices(with, n-1, of[i+1:], append(chosen, e), risk+more, tell) {
			return false
		}
	}
	return true
}

// trial is a survey that knows as much, to try what would follow.
func (v *survey) trial() *survey {
	return &survey{sh: v.sh, triangles: v.triangles, form: v.form, depth: v.depth, loose: v.loose}
}

// suppose adds an element, and says how doubtful what follows is: 2 for each triangle of
// which there may be two, 1 for each that hangs on whether three sides reach.
func (v *survey) suppose(e element) (risk int) {
	before := v.reaches
	v.loose[quantityOf(e)] = true
	v.add(surveyStep{makes: quantityOf(e)})
	for v.follow(); v.base() < 0 && v.fork(); v.follow() {
		risk += 2
	}
	return risk + v.reaches - before
}

// everyElement is each side, diagonal and angle of a quadrilateral.
func everyElement() []element {
	return append(elements6[:len(elements6):len(elements6)], angleAt(0), angleAt(1), angleAt(2), angleAt(3))
}
