package syntax

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
