package syntax

// Given is: given … , a thing that is there from the start
type Given struct {
	Node
	Points *FreePoints  `parser:"'given' ( @@"`
	Line   *GivenLine   `parser:"| @@"`
	Circle *GivenCirc   `parser:"| @@"`
	Angle  *GivenAngle  `parser:"| @@"`
	Length *GivenLen    `parser:"| @@"`
	Shape  *GivenShape  `parser:"| @@"`
	Point  *PlacedPoint `parser:"| @@ )"`
}

// Take is: take … , a point chosen or measured on the way, in any form of a given point
type Take struct {
	Node
	Point *PlacedPoint `parser:"'take' @@"`
}

// FreePoints is: points A, B, C
type FreePoints struct {
	Node
	Names []*Ref `parser:"'points' @@ ( ',' @@ )*"`
}

// GivenLine is: line m · line m through A and B · line m parallel to n · line m parallel to n through A
type GivenLine struct {
	Node
	Name     *Ref          `parser:"'line' @@"`
	Through  []*CoordPoint `parser:"( 'through' @@ ( 'and' @@ )?"`
	Parallel *Ref          `parser:"| 'parallel' 'to' @@"`
	Via      *CoordPoint   `parser:"( 'through' @@ )? )?"`
}

// CoordPoint is a point, with coordinates when it is made here: A · A (0, 0)
type CoordPoint struct {
	Node
	Point *Ref    `parser:"@@"`
	At    *Coords `parser:"@@?"`
}

// Coords is: (3, 1/2) · about (3, 1/2)
type Coords struct {
	Node
	About bool  `parser:"( (?= 'about' '(' ) @'about' )?"`
	X     *Expr `parser:"'(' @@"`
	Y     *Expr `parser:"',' @@ ')'"`
}

// GivenCirc is: circle k · circle k centre O (0, 0) radius 3 · circle k centre O through A
type GivenCirc struct {
	Node
	Name   *Ref        `parser:"'circle' @@"`
	Centre *CoordPoint `parser:"( 'centre' @@ )?"`
	Opening
}

// GivenAngle is: angle BAC = 50°
type GivenAngle struct {
	Node
	Angle *Ref    `parser:"'angle' @@"`
	Size  *Expr   `parser:"( '=' @@ )?"`
	Sides []*Cond `parser:"( ','? @@ )*"`
}

// GivenLen is: length a = 4
type GivenLen struct {
	Node
	Name *Ref  `parser:"'length' @@"`
	Size *Expr `parser:"( '=' @@ )?"`
}

// GivenShape is: acute triangle ABC · triangle ABC with AB = 6, AC = 5, angle A = 40° · square ABCD with AB = 4
type GivenShape struct {
	Node
	Traits []string    `parser:"@( 'acute' | 'obtuse' | 'right' | 'isosceles' | 'equilateral' )*"`
	Kind   string      `parser:"@( 'triangle' | 'square' | 'rectangle' | 'parallelogram' | 'rhombus' | 'kite' | 'trapezium' | 'quadrilateral' )"`
	Points *Ref        `parser:"@@"`
	Data   []*Equation `parser:"( 'with' @@ ( ',' ( @@"`
	Sides  []*Cond     `parser:"| @@ ) )* | ( ',' @@ )+ )?"`
}

// Equation is: AB = 6 · AB = AC = 5 · angle A = 40°
type Equation struct {
	Node
	Terms []*Expr `parser:"@@ ( '=' @@ )+"`
}

// PlacedPoint is: A (0, 0) · B 6 from A · C 5 from A, 4 from B, above AB · C 5 from A at 40° to AB · P on m, 3 from A · P on k at 20° · Q between A and B · P inside ABC
type PlacedPoint struct {
	Node
	Point  *Ref     `parser:"@@"`
	At     *Coords  `parser:"( @@"`
	Places []*Place `parser:"| @@ ( ','? @@ )* )"`
}

// Place is: centre of k · 5 from A · 5 from A at 40° to AB · 3 from A towards C · on m · on k at 20° · above m · inside ABC
type Place struct {
	Node
	On       *Ref  `parser:"( 'on' @@"`
	OnAngle  *Expr `parser:"( 'at' @@ )?"`
	Inside   *Ref  `parser:"| 'inside' @@"`
	Outside  *Ref  `parser:"| 'outside' @@"`
	Centre   *Ref  `parser:"| 'centre' 'of' @@"`
	Cond     *Cond `parser:"| @@"`
	Distance *Expr `parser:"| @@"`
	From     *Ref  `parser:"'from' @@"`
	Bearing  *Expr `parser:"( 'at' @@"`
	To       *Ref  `parser:"'to' @@"`
	Towards  *Ref  `parser:"| 'towards' @@ )? )"`
}
