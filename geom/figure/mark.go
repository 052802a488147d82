package figure

import (
	"trammel/geom"
	"trammel/geom/region"
)

// Mark is one of Ticks, AngleArcs, RightAngle, Arrows, LengthLabel, AngleLabel,
// Note, Shade and Hatch. Marks have been proved before they get here.
type Mark interface{ mark() }

// Segment is the stretch between two points.
type Segment struct{ A, B geom.Point }

// Angle is the angle at Vertex between the ways to A and to B, under 180°
// unless Reflex.
type Angle struct {
	A, Vertex, B geom.Point
	Reflex       bool
}

// Ticks says that segments are equal: each gets Count strokes across.
type Ticks struct {
	Segments []Segment
	Count    int
	Step     int
}

// AngleArcs says that angles are equal: each gets Count arcs at its vertex.
type AngleArcs struct {
	Angles []Angle
	Count  int
	Step   int
}

// RightAngle is the small square at the vertex of a right angle.
type RightAngle struct {
	Angle
	Step int
}

// Arrows says that straights are parallel: each gets Count arrowheads that
// point the same way.
type Arrows struct {
	Segments []Segment
	Count    int
	Step     int
}

// LengthLabel is text along a segment: its length, or what the source says.
type LengthLabel struct {
	Segment
	Label
	Of   string // the letters of its ends
	Step int
}

// AngleLabel is text in an angle: its size, or what the source says.
// Its arc is drawn too unless an AngleArcs or RightAngle already marks the angle.
type AngleLabel struct {
	Angle
	Label
	Of   string // its letters
	Step int
}

// Note is a line of words near a thing's place.
type Note struct {
	Near geom.Point
	Of   string // the name of what is there
	Text string
	Step int
	Line int // of the source, where it is asked for
}

// Shade fills an area: a polygon, or with Centre set the sector from
// Outline[0] anticlockwise to Outline[1], or with Circle set the whole disc.
type Shade struct {
	Outline []geom.Point
	Centre  *geom.Point
	Circle  *geom.Circle
	Step    int
}

// Hatch strokes a region. Where says it in the words of the source, for readers.
type Hatch struct {
	Region region.Region
	Where  string
	Step   int
}

func (Ticks) mark()       {}
func (AngleArcs) mark()   {}
func (RightAngle) mark()  {}
func (Arrows) mark()      {}
func (LengthLabel) mark() {}
func (AngleLabel) mark()  {}
func (Note) mark()        {}
func (Shade) mark()       {}
func (Hatch) mark()       {}
