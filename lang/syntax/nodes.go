package syntax

import "github.com/alecthomas/participle/v2/lexer"

// Node is the place that every node of the tree remembers; Span gives it.
type Node struct {
	Pos    lexer.Position
	EndPos lexer.Position
}

// Statement is one line of a source; exactly one of its parts is set.
type Statement struct {
	Node
	Figure   *Figure   `parser:"( @@"`
	Unit     *Unit     `parser:"| @@"`
	Paper    *Paper    `parser:"| @@"`
	Theme    *Theme    `parser:"| @@"`
	Use      *Use      `parser:"| @@"`
	Given    *Given    `parser:"| @@"`
	Take     *Take     `parser:"| @@"`
	Arc      *Arc      `parser:"| @@"`
	Circle   *Circle   `parser:"| @@"`
	Line     *Line     `parser:"| @@"`
	Ray      *Ray      `parser:"| @@"`
	Join     *Join     `parser:"| @@"`
	Produce  *Produce  `parser:"| @@"`
	StepOff  *StepOff  `parser:"| @@"`
	Locus    *Locus    `parser:"| @@"`
	Claim    *Claim    `parser:"| @@"`
	Needs    *Needs    `parser:"| @@"`
	Mark     *Mark     `parser:"| @@"`
	Label    *Label    `parser:"| @@"`
	Note     *Note     `parser:"| @@"`
	Shade    *Shade    `parser:"| @@"`
	Pencil   *Pencil   `parser:"| @@"`
	Choose   *Choose   `parser:"| @@"`
	Task     *Task     `parser:"| @@"`
	Sentence *Sentence `parser:"| @@"`

	// The grammar sees a block's first line; its Body is put in afterwards.
	Step         *Step         `parser:"| @@"`
	Repeat       *Repeat       `parser:"| @@"`
	Construction *Construction `parser:"| @@"`

	Named *Named `parser:"| @@ )"`
}

// Figure is: figure "title"
type Figure struct {
	Node
	Title string `parser:"'figure' @Text"`
}

// Unit is: unit 8 mm
type Unit struct {
	Node
	Size *Expr `parser:"'unit' @@"`
}

// Paper is: paper a5 landscape · paper 120 mm by 80 mm
type Paper struct {
	Node
	Name   string `parser:"'paper' ( @Name"`
	Turn   string `parser:"@( 'landscape' | 'portrait' )?"`
	Width  *Expr  `parser:"| @@"`
	Height *Expr  `parser:"'by' @@ )"`
}

// Theme is: theme textbook
type Theme struct {
	Node
	Name string `parser:"'theme' @Name"`
}

// Use is: use "file"
type Use struct {
	Node
	Path string `parser:"'use' @Text"`
}

// Index is: [i] · [i + 1] · [1 to 4]
type Index struct {
	Node
	From *Expr `parser:"'[' @@"`
	To   *Expr `parser:"( 'to' @@ )? ']'"`
}

// PointName is one capital letter with its digits and primes: A · P1 · X' · P[i]
type PointName struct {
	Node
	Name  string `parser:"@( Point | Glued )"`
	Index *Index `parser:"@@?"`
}

// Ref names a thing or a run of points: m · k1 · c[i] · A · AB · P[i]P[i+1]
type Ref struct {
	Node
	Name   string       `parser:"( @Name"`
	Index  *Index       `parser:"@@?"`
	Points []*PointName `parser:"| @@ ( (?= Glued) @@ )* )"`
}

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

// Coords is: (3, 1/2)
type Coords struct {
	Node
	X *Expr `parser:"'(' @@"`
	Y *Expr `parser:"',' @@ ')'"`
}

// GivenCirc is: circle k · circle k centre O (0, 0) radius 3 · circle k centre O through A
type GivenCirc struct {
	Node
	Name   *Ref        `parser:"'circle' @@"`
	Centre *CoordPoint `parser:"( 'centre' @@ )?"`
	Opening
}

// Opening is how wide the compasses are: radius any · radius any over half AB under AB · radius 2.5 · radius c · through A
type Opening struct {
	Any     bool     `parser:"( 'radius' ( @'any'"`
	Bounds  []*Bound `parser:"@@*"`
	Radius  *Expr    `parser:"| @@ )"`
	Through *Ref     `parser:"| 'through' @@ )?"`
}

// Bound is: over half AB · under AB
type Bound struct {
	Node
	Over bool  `parser:"( @'over' | 'under' )"`
	Than *Expr `parser:"@@"`
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
	Kind   string      `parser:"@( 'triangle' | 'square' | 'rectangle' | 'parallelogram' | 'rhombus' | 'kite' | 'trapezium' )"`
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

// Cond is a which-one phrase: above m · left of AB · same side of m as Q · other side of m from Q · nearest A · farthest from A · other than A · between A and B · beyond B on AB
type Cond struct {
	Node
	Word     string `parser:"( @( 'above' | 'below' )"`
	Of       *Ref   `parser:"@@"`
	Left     bool   `parser:"| ( @'left'"`
	Right    bool   `parser:"| @'right' ) 'of'"`
	SideOf   *Ref   `parser:"@@"`
	Same     *Ref   `parser:"| 'same' 'side' 'of' @@"`
	As       *Ref   `parser:"'as' @@"`
	Other    *Ref   `parser:"| 'other' ( 'side' 'of' @@"`
	From     *Ref   `parser:"'from' @@"`
	Than     *Ref   `parser:"| 'than' @@ )"`
	Nearest  *Ref   `parser:"| 'nearest' @@"`
	Farthest *Ref   `parser:"| 'farthest' 'from' @@"`
	Between  *Ref   `parser:"| 'between' @@"`
	And      *Ref   `parser:"'and' @@"`
	Beyond   *Ref   `parser:"| 'beyond' @@"`
	On       *Ref   `parser:"'on' @@ )"`
}

// Cuts is: cuts m at L and R · cuts AB at S, AC at T
type Cuts struct {
	Node
	Meets []*Meeting `parser:"( 'cuts' | 'meets' ) @@ ( ',' @@ )*"`
}

// Meeting is: m at L and R · e at X above m
type Meeting struct {
	Node
	With  *Ref    `parser:"@@ 'at'"`
	Picks []*Pick `parser:"@@ ( 'and' @@ )*"`
}

// Pick is the name of a meeting and what tells it from the other: X above m
type Pick struct {
	Node
	Point *Ref    `parser:"@@"`
	Conds []*Cond `parser:"@@*"`
}

// Arc is: arc c centre P radius any cuts m at L and R · arc c centre O from A to B
type Arc struct {
	Node
	Name   *Ref `parser:"'arc' @@"`
	Centre *Ref `parser:"'centre' @@"`
	From   *Ref `parser:"( 'from' @@"`
	To     *Ref `parser:"'to' @@ )?"`
	Opening
	Cuts *Cuts `parser:"@@?"`
}

// Circle is: circle k centre O through A · circle k centre O radius 3
type Circle struct {
	Node
	Name   *Ref `parser:"'circle' @@"`
	Centre *Ref `parser:"'centre' @@"`
	Opening
	Cuts *Cuts `parser:"@@?"`
}

// Line is: line n through P and X
type Line struct {
	Node
	Name *Ref  `parser:"'line' @@"`
	A    *Ref  `parser:"'through' @@"`
	B    *Ref  `parser:"'and' @@"`
	Cuts *Cuts `parser:"@@?"`
}

// Ray is: ray AX
type Ray struct {
	Node
	Points *Ref  `parser:"'ray' @@"`
	Cuts   *Cuts `parser:"@@?"`
}

// Join is: join AB · join ABCA · join LX, RX
type Join struct {
	Node
	Runs []*Ref `parser:"'join' @@ ( ',' @@ )*"`
	Cuts *Cuts  `parser:"@@?"`
}

// Produce is: produce AB beyond B · produce AB beyond B by 2 to C · produce AB beyond B to meet m at C
type Produce struct {
	Node
	Straight *Ref     `parser:"'produce' @@"`
	Beyond   *Ref     `parser:"'beyond' @@"`
	By       *Expr    `parser:"( 'by' @@"`
	End      *Ref     `parser:"( 'to' @@ )?"`
	Meet     *Meeting `parser:"| 'to' 'meet' @@ )?"`
}

// StepOff is: step off P[1 to 6] on k from A, radius any
type StepOff struct {
	Node
	Points *Ref `parser:"(?= 'step' 'off' ) 'step' 'off' @@"`
	On     *Ref `parser:"'on' @@"`
	From   *Ref `parser:"'from' @@ ','?"`
	Opening
	Towards *Ref `parser:"( 'towards' @@ )?"`
}

// Locus is all the points of a kind: locus k 3 from A · locus p, q 2 from m · locus n equidistant from A and B
type Locus struct {
	Node
	Names    []*Ref `parser:"'locus' @@ ( ',' @@ )*"`
	One      *Ref   `parser:"( 'equidistant' 'from' @@"`
	Other    *Ref   `parser:"'and' @@"`
	Distance *Expr  `parser:"| @@"`
	From     *Ref   `parser:"'from' @@ )"`
}

// Named begins with the names it makes or uses: d meets e at X · n by erect(m, P)
type Named struct {
	Node
	Names []*Ref   `parser:"@@ ( ',' @@ )*"`
	Meets *Cuts    `parser:"( @@"`
	By    *CallExp `parser:"| 'by' @@ )"`
}

// CallExp is: erect(m, P) · erect(m, P) in full
type CallExp struct {
	Node
	Name   string  `parser:"@( Name | Keyword )"`
	Args   []*Expr `parser:"'(' ( @@ ( ',' @@ )* )? ')'"`
	Full   bool    `parser:"( 'in' ( @'full' | 'brief' )"`
	Unseen bool    `parser:"| @'unseen' )?"`
}

// Claim is: claim n perpendicular to m · claim here AB = CD · claim not P on k
type Claim struct {
	Node
	Here     bool      `parser:"'claim' @'here'?"`
	Relation *Relation `parser:"@@"`
}

// Needs is: needs P on m , what must hold of a construction's parameters
type Needs struct {
	Node
	Relation *Relation `parser:"'needs' @@"`
}

// Relation is what can be claimed or needed.
type Relation struct {
	Node
	Not        bool    `parser:"@'not'? ("`
	Triangle   *Ref    `parser:"'triangle' @@"`
	Congruent  bool    `parser:"( @'congruent'"`
	Similar    bool    `parser:"| @'similar' ) 'to' 'triangle'?"`
	Triangle2  *Ref    `parser:"@@"`
	Collinear  *Ref    `parser:"| 'collinear' @@"`
	Concyclic  *Ref    `parser:"| 'concyclic' @@"`
	Concurrent []*Ref  `parser:"| 'concurrent' @@ ( ',' @@ )+"`
	Shape      string  `parser:"| @( 'regular' | 'square' | 'rectangle' | 'parallelogram' | 'rhombus' | 'kite' | 'trapezium' )"`
	ShapeOf    *Ref    `parser:"@@"`
	Left       *Side   `parser:"| @@"`
	Perp       *Ref    `parser:"( 'perpendicular' 'to' @@"`
	Parallel   []*Ref  `parser:"| 'parallel' 'to' @@ ( 'parallel' 'to' @@ )*"`
	On         *Ref    `parser:"| 'on' @@"`
	Inside     *Ref    `parser:"| 'inside' @@"`
	Outside    *Ref    `parser:"| 'outside' @@"`
	Between    *Ref    `parser:"| 'between' @@"`
	And        *Ref    `parser:"'and' @@"`
	Midpoint   *Ref    `parser:"| 'midpoint' 'of' @@"`
	Centre     *Ref    `parser:"| 'centre' 'of' @@"`
	Bisects    *Ref    `parser:"| 'bisects' 'angle' @@"`
	Touches    *Touch  `parser:"| @@"`
	Chain      []*Link `parser:"| @@+ ) )"`
}

// Touch is: touches m · touches m at T · touches k inside
type Touch struct {
	Node
	What *Ref   `parser:"'touches' @@"`
	At   *Ref   `parser:"( 'at' @@ )?"`
	How  string `parser:"@( 'inside' | 'outside' )?"`
}

// Link is: = CD · < 2 AB · = 2 : 3
type Link struct {
	Node
	Op    string `parser:"@( '=' | '<' | '>' | '≤' | '≥' | '≠' )"`
	Right *Side  `parser:"@@"`
}

// Side is one side of a comparison, a value or a ratio: AB · AB + BC · AB : CD
type Side struct {
	Node
	Terms []*Expr `parser:"@@ ( ':' @@ )*"`
}

// Mark is: mark AB = CD · mark angle ABC = DEF · mark right ABC · mark AB parallel to CD
type Mark struct {
	Node
	Right    []*Ref  `parser:"'mark' ( 'right' 'angle'? @@ ( ',' @@ )*"`
	First    *Expr   `parser:"| @@"`
	Parallel []*Ref  `parser:"( 'parallel' 'to' @@ ( ( ',' | 'parallel' 'to' ) @@ )*"`
	Equal    []*Expr `parser:"| ( '=' @@ )+ )? )"`
}

// Label is: label AB "5 cm" · label AB length · label angle ABC size · label reflex angle ABC size · label A at 10 o'clock · label A below · label m
type Label struct {
	Node
	Reflex bool    `parser:"'label' ( @'reflex'?"`
	Angle  *Ref    `parser:"'angle' @@"`
	What   *Ref    `parser:"| @@ )"`
	Size   bool    `parser:"( @'size'"`
	Length bool    `parser:"| @'length'"`
	Text   *string `parser:"| @Text )?"`
	Clock  *Expr   `parser:"( 'at' @@ \"o'clock\""`
	Pin    string  `parser:"| @( 'above' | 'below' | 'left' | 'right' ) )?"`
}

// Note is: note "…" near X
type Note struct {
	Node
	Text string `parser:"'note' @Text"`
	Near *Ref   `parser:"'near' @@"`
}

// Shade is: shade ABC · shade sector OAB · shade k · shade where nearer A than B, under 3 from C
type Shade struct {
	Node
	Where  []*Where `parser:"'shade' ( 'where' @@ ( ',' @@ )*"`
	Sector bool     `parser:"| @'sector'?"`
	What   *Ref     `parser:"@@ )"`
}

// Where is a condition on the points of a region: nearer A than B · under 3 from A · over 2 from m · inside ABC · outside k · above m · left of AB
type Where struct {
	Node
	Nearer   *Ref  `parser:"( 'nearer' @@"`
	Than     *Ref  `parser:"'than' @@"`
	Over     bool  `parser:"| ( @'over' | 'under' )"`
	Distance *Expr `parser:"@@"`
	From     *Ref  `parser:"'from' @@"`
	Inside   *Ref  `parser:"| 'inside' @@"`
	Outside  *Ref  `parser:"| 'outside' @@"`
	Side     *Cond `parser:"| @@ )"`
}

// Pencil is: hide c · faint AB · bold ABCA · dashed AB, CD
type Pencil struct {
	Node
	Verb string `parser:"@( 'hide' | 'faint' | 'bold' | 'dashed' )"`
	What []*Ref `parser:"@@ ( ',' @@ )*"`
}

// Choose is: choose a from 4 to 8 by 1/2
type Choose struct {
	Node
	Name *Ref  `parser:"'choose' @@"`
	From *Expr `parser:"'from' @@"`
	To   *Expr `parser:"'to' @@"`
	By   *Expr `parser:"( 'by' @@ )?"`
}

// Task is: task "…" for 3 marks
type Task struct {
	Node
	Text  string `parser:"'task' @Text"`
	Marks *Expr  `parser:"( 'for' @@ ( 'marks' | 'mark' ) )?"`
}

// Sentence is a construction's own words: "Erect the perpendicular to {m} at {P}."
type Sentence struct {
	Node
	Text string `parser:"@Text"`
}

// Step is: step "caption" … end
type Step struct {
	Node
	Caption string `parser:"'step' @Text"`
	Body    []*Statement
}

// Repeat is: repeat i from 1 to 5 … end
type Repeat struct {
	Node
	Var  *Ref  `parser:"'repeat' @@"`
	From *Expr `parser:"'from' @@"`
	To   *Expr `parser:"'to' @@"`
	Body []*Statement
}

// Construction is: construction erect(line m, point P) gives line n … end
type Construction struct {
	Node
	Name   string   `parser:"'construction' @( Name | Keyword )"`
	Params []*Param `parser:"'(' ( @@ ( ',' @@ )* )? ')'"`
	Gives  []*Param `parser:"'gives' @@ ( ',' @@ )*"`
	Body   []*Statement
}

// Param is: line m · point P · points P[i] from 1 to n
type Param struct {
	Node
	Kind string `parser:"@( 'point' | 'points' | 'line' | 'circle' | 'length' | 'angle' | 'number' )"`
	Name *Ref   `parser:"@@"`
	From *Expr  `parser:"( 'from' @@"`
	To   *Expr  `parser:"'to' @@ )?"`
}
