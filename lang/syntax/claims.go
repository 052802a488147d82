package syntax

// Claim is: claim n perpendicular to m · claim here AB = CD · claim not P on k
type Claim struct {
	Node
	Here     bool      `parser:"'claim' @'here'?"`
	Relation *Relation `parser:"@@"`
}

// Needs is: needs P on m · needs angle ABP < 90° "{P} before {B}" else "swap {A}
// and {C}" , what must hold for a construction to be carried out, how to say it,
// and what to do where it does not
type Needs struct {
	Node
	Relation *Relation `parser:"'needs' @@"`
	Words    string    `parser:"@Text?"`
	Else     string    `parser:"( 'else' @Text )?"`
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
	Same       *Ref    `parser:"| 'same' 'side' 'of' @@"`
	As         *Ref    `parser:"'as' @@"`
	Other      *Ref    `parser:"| 'other' 'side' 'of' @@"`
	From       *Ref    `parser:"'from' @@"`
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
