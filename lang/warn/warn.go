// Package warn finds what is true and still not well drawn: what a reader
// would take for something that it is not, and what the hand could not draw
// with any accuracy. Floats find the candidates, and enclosures of 512 bits tell
// which of them are what they look like: for a warning nothing is written out.
package warn

import (
	"fmt"
	"math"

	"trammel/geom"
	"trammel/geom/exact"
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/source"
)

// The distances on paper, in millimetres, and angles, in degrees, that the eye
// and the pencil cannot tell apart.
const (
	slip        = 0.5 // of the pencil at each curve
	nearPoint   = 1.0
	clumsyPoint = 2.5 // two dots and their letters run together
	nearLine    = 0.5
	nearDot     = 0.8  // of a point from a straight: the dot touches it
	nearTouch   = 0.55 // of what runs beside a circle
	nearAngle   = 1.2
	clumsyAngle = 3.0
	nearSize    = 0.012 // of a length
)

// Figure adds the warnings for a finished run to the problems. A line whose
// comment reads "# intended: why" is not warned about.
func Figure(st *program.State, problems *source.List) {
	defer trusting(st.Field)()
	f := look(st, problems)
	f.idleArcs()
	f.flatCrossings()
	f.flatInside()
	f.unusedGivens()
	f.unusedChoices()
	f.twins()
	f.falseAppearances()
}

// Unlucky tells whether a run's measurements have come out badly: a crossing too
// flat to draw, or something that only looks right, where no line says that it
// is intended.
func Unlucky(st *program.State) (why string, bad bool) {
	defer trusting(st.Field)()
	found := unlucky(st)
	if len(found) == 0 {
		return "", false
	}
	return found[0].Text, true
}

// Clumsy tells whether a run has what no warning is worth, and would still be chosen
// otherwise: a flat crossing inside of a call, points that run together, or directions that
// are nearly parallel or at right angles, to a radius too.
func Clumsy(st *program.State) bool {
	defer trusting(st.Field)()
	return len(clumsy(st)) > 0
}

// Count tells of how much in a run Unlucky and Clumsy tell.
func Count(st *program.State) (misleading, awkward int) {
	defer trusting(st.Field)()
	return len(unlucky(st)), len(clumsy(st))
}

func unlucky(st *program.State) (found source.List) {
	f := look(st, &found)
	f.flatCrossings()
	f.twins()
	f.falseAppearances()
	return found
}

func clumsy(st *program.State) (found source.List) {
	f := look(st, &found)
	f.near, f.apart = clumsyAngle, clumsyPoint
	f.twins()
	f.flatInside()
	f.directions()
	f.nearlyTangent()
	return found
}

// look begins a search.
func look(st *program.State, problems *source.List) *finder {
	f := &finder{st: st, problems: problems, mm: millimetres(st), near: nearAngle, apart: nearPoint}
	f.collect()
	return f
}

// trusting makes a field take numbers that agree to 512 bits for equal, until
// what it returns is called.
func trusting(f *exact.Field) (done func()) {
	f.Trust(512)
	return func() { f.Trust(0) }
}

// finder is the state of one search for warnings.
type finder struct {
	st        *program.State
	problems  *source.List
	mm        float64 // a unit on paper
	near      float64 // degrees within which directions look alike
	apart     float64 // millimetres within which points run together
	points    []point
	straights []straight
	circles   []circle
	causes    [][]int // slots of points that what was told comes from
}

// point is a point that the reader sees, in millimetres.
type point struct {
	x, y float64
	slot int
	name string
}

// straight is a join, ray or line that the reader sees; joins have both ends.
type straight struct {
	slot   int
	name   string
	x, y   float64 // a point of it
	dx, dy float64 // its direction, of length 1
	length float64 // of a join; 0 for what runs on
	lo, hi float64 // where it starts and ends, from that point along its direction
	a, b   int     // slots of its ends, or -1
}

// circle is a whole circle that the reader sees.
type circle struct {
	slot    int
	name    string
	x, y, r float64
}

func millimetres(st *program.State) float64 {
	f, _ := st.Program.Unit.Float64()
	return f
}

// seen tells whether a slot's ink is on the paper and belongs to the file itself.
func seen(s *program.Slot) bool { return s.Top && s.Ink != nil && !s.Ink.Hidden }

// warn adds a warning unless the line says that it is intended.
func (f *finder) warn(at source.Span, help, format string, args ...any) {
	if at.File == f.st.Program.Source {
		if text := fmt.Sprintf(format, args...); !f.told(text) {
			f.problems.Warn(at, text, help)
		}
	}
}

// idleArcs are arcs that nothing meets.
func (f *finder) idleArcs() {
	for i, s := range f.st.Program.Slots {
		c, ok := f.st.Values[i].(*program.Curve)
		if !ok || !seen(s) || c.Circle == nil || s.Ink.Whole || s.Ink.Ends != nil || s.Name == "" || s.Ink.Role == figure.Result {
			continue
		}
		if len(c.Used) == 0 {
			f.warn(s.Span, "leave it out, or name where it meets something", "nothing meets the arc %s", s.Name)
		}
	}
}

// flatCrossings are meetings under less than 30°, where a slip of the pencil
// moves the point far: two curves that are each out by e fix it to e/sin of
// their angle.
func (f *finder) flatCrossings() {
	for _, c := range f.st.Crossings {
		if isFlat(c) && len(c.Step.Via) == 0 {
			f.flat(c.Step.Span, "choose radii that cross nearer to a right angle", "the", c)
		}
	}
}

func isFlat(c program.Crossing) bool { return c.Sine < 0.5 && c.Sine >= 1e-9 }

// flatInside are those of calls, if they are drawn: of each the flattest.
func (f *finder) flatInside() {
	worst := map[source.Span]program.Crossing{}
	for _, c := range f.st.Crossings {
		calls := c.Step.Via
		if !isFlat(c) || len(calls) == 0 || calls[len(calls)-1].Unseen {
			continue
		}
		if old, again := worst[calls[0].Span]; !again || c.Sine < old.Sine {
			worst[calls[0].Span] = c
		}
	}
	for _, c := range f.st.Crossings {
		if calls := c.Step.Via; len(calls) > 0 && worst[calls[0].Span] == c {
			f.flat(calls[0].Span, "choose other measurements, or name what is given in another order", "in "+calls[0].Name+" two", c)
			delete(worst, calls[0].Span)
		}
	}
}

// flat warns of a crossing.
func (f *finder) flat(at source.Span, help, which string, c program.Crossing) {
	what := "curves"
	if c.Straight {
		what = "straights"
		if len(c.Step.Via) == 0 {
			help = "choose measurements with which they cross nearer to a right angle"
		}
	}
	f.warn(at, help, "%s %s cross at only %s°: a slip of %.1f mm moves the meeting by %.1f mm",
		which, what, geom.TrimZeros(fmt.Sprintf("%.1f", math.Asin(c.Sine)*180/math.Pi)), slip, slip/c.Sine)
}

// unusedGivens are givens that no later line speaks of, in a figure that is
// more than its givens.
func (f *finder) unusedGivens() {
	if !f.constructs() {
		return
	}
	for i, s := range f.st.Program.Slots {
		if !s.Top || s.Name == "" || s.Ink == nil || s.Ink.Role != figure.Given || f.st.Values[i] == nil {
			continue
		}
		if !s.Mentioned {
			f.warn(s.Span, "leave it out, or use it", "nothing uses the given %s", s.Name)
		}
	}
}

// constructs tells whether the file draws anything that is not given.
func (f *finder) constructs() bool {
	for _, s := range f.st.Program.Slots {
		if s.Top && s.Ink != nil && s.Ink.Role != figure.Given {
			return true
		}
	}
	return false
}
