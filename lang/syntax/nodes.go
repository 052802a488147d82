package syntax

import "github.com/alecthomas/participle/v2/lexer"

// Node is the place that every node of the tree remembers.
type Node struct {
	Pos    lexer.Position
	EndPos lexer.Position
}

// Statement is one line of a source; exactly one of its parts is set.
type Statement struct {
	Node
	Figure   *Figure   `(  @@`
	Unit     *Unit     ` | @@`
	Paper    *Paper    ` | @@`
	Theme    *Theme    ` | @@`
	Use      *Use      ` | @@`
	Given    *Given    ` | @@`
	Take     *Take     ` | @@`
	Arc      *Arc      ` | @@`
	Circle   *Circle   ` | @@`
	Line     *Line     ` | @@`
	Ray      *Ray      ` | @@`
	Join     *Join     ` | @@`
	Produce  *Produce  ` | @@`
	StepOff  *StepOff  ` | @@`
	Claim    *Claim    ` | @@`
	Needs    *Needs    ` | @@`
	Mark     *Mark     ` | @@`
	Label    *Label    ` | @@`
	Note     *Note     ` | @@`
	Shade    *Shade    ` | @@`
	Pencil   *Pencil   ` | @@`
	Choose   *Choose   ` | @@`
	Task     *Task     ` | @@`
	Sentence *Sentence ` | @@`
	Named    *Named    ` | @@ )`

	// Blocks are put together after their lines are parsed.
	Step         *Step         ` `
	Repeat       *Repeat       ` `
	Construction *Construction ` `
}

// Figure is: figure "title"
type Figure struct {
	Node
	Title string `"figure" @Text`
}

// Unit is: unit 8 mm
type Unit struct {
	Node
	Size *Expr `"unit" @@`
}

// Paper is: paper a5 landscape · paper 120 mm by 80 mm
type Paper struct {
	Node
	Name   string `"paper" (  @Name @("landscape" | "portrait")?`
	Width  *Expr  `         | @@`
	Height *Expr  `           "by" @@ )`
}

// Theme is: theme textbook
type Theme struct {
	Node
	Name string `"theme" @Name`
}

// Use is: use "file"
type Use struct {
	Node
	Path string `"use" @Text`
}

// Index is: [i] · [i + 1] · [1 to 4]
type Index struct {
	Node
	From *Expr `"[" @@`
	To   *Expr `( "to" @@ )? "]"`
}

// PointName is one capital letter with its digits and primes: A · P1 · X' · P[i]
type PointName struct {
	Node
	Name  string `@( Point | Glued )`
	Index *Index `@@?`
}

// Ref names a thing or a run of points: m · k1 · c[i] · A · AB · P[i]P[i+1]
type Ref struct {
	Node
	Name   string       `(  @Name`
	Index  *Index       `   @@?`
	Points []*PointName ` | @@ ( (?= Glued) @@ )* )`
}

// Given is: given … , a thing that is there from the start
type Given struct {
	Node
	Points *FreePoints  `"given" (  @@`
	Line   *GivenLine   `         | @@`
	Circle *GivenCirc   `         | @@`
	Angle  *GivenAngle  `         | @@`
	Length *GivenLen    `         | @@`
	Shape  *GivenShape  `         | @@`
	Point  *PlacedPoint `        | @@ )`
}

// Take is: take … , a point chosen or measured on the way, in any form of a given point
type Take struct {
	Node
	Point *PlacedPoint `"take" @@`
}

// FreePoints is: points A, B, C
type FreePoints struct {
	Node
	Names []*Ref `"points" @@ ( "," @@ )*`
}

// GivenLine is: line m · line m through A and B · line m parallel to n · line m parallel to n through A
type GivenLine struct {
	Node
	Name     *Ref          `"line" @@`
	Through  []*CoordPoint `( "through" @@ ( "and" @@ )?`
	Parallel *Ref          `| "parallel" "to" @@`
	Via      *CoordPoint   `  ( "through" @@ )? )?`
}

// CoordPoint is a point, with coordinates when it is made here: A · A (0, 0)
type CoordPoint struct {
	Node
	Point *Ref    `@@`
	At    *Coords `@@?`
}

// Coords is: (3, 1/2)
type Coords struct {
	Node
	X *Expr `"(" @@`
	Y *Expr `"," @@ ")"`
}

// GivenCirc is: circle k · circle k centre O (0, 0) radius 3 · circle k centre O through A
type GivenCirc struct {
	Node
	Name   *Ref        `"circle" @@`
	Centre *CoordPoint `( "centre" @@ )?`
	Opening
}

// Opening is how wide the compasses are: radius any · radius any over half AB under AB · radius 2.5 · radius c · through A
type Opening struct {
	Any     bool     `(  "radius" (  @"any"`
	Bounds  []*Bound `               @@*`
	Radius  *Expr    `             | @@ )`
	Through *Ref     ` | "through" @@ )?`
}

// Bound is: over half AB · under AB
type Bound struct {
	Node
	Over bool  `( @"over" | "under" )`
	Than *Expr `@@`
}

// GivenAngle is: angle BAC = 50°
type GivenAngle struct {
	Node
	Angle *Ref    `"angle" @@`
	Size  *Expr   `( "=" @@ )?`
	Sides []*Cond `( ","? @@ )*`
}

// GivenLen is: length a = 4
type GivenLen struct {
	Node
	Name *Ref  `"length" @@`
	Size *Expr `( "=" @@ )?`
}

// GivenShape is: acute triangle ABC · triangle ABC with AB = 6, AC = 5, angle A = 40° · square ABCD with AB = 4
type GivenShape struct {
	Node
	Traits []string    `@( "acute" | "obtuse" | "right" | "isosceles" | "equilateral" )*`
	Kind   string      `@( "triangle" | "square" | "rectangle" | "parallelogram" | "rhombus" | "kite" | "trapezium" )`
	Points *Ref        `@@`
	Data   []*Equation `( "with" @@ ( "," @@ )*`
	Sides  []*Cond     `  ( "," @@ )* )?`
}

// Equation is: AB = 6 · AB = AC = 5 · angle A = 40°
type Equation struct {
	Node
	Terms []*Expr `@@ ( "=" @@ )+`
}

// PlacedPoint is: A (0, 0) · B 6 from A · C 5 from A, 4 from B, above AB · C 5 from A at 40° to AB · P on m, 3 from A · P on k at 20° · Q between A and B · P inside ABC
type PlacedPoint struct {
	Node
	Point  *Ref     `@@`
	At     *Coords  `(  @@`
	Places []*Place ` | @@ ( ","? @@ )* )`
}

// Place is: 5 from A · 5 from A at 40° to AB · 3 from A towards C · on m · on k at 20° · above m · inside ABC
type Place struct {
	Node
	On       *Ref  `(  "on" @@`
	OnAngle  *Expr `   ( "at" @@ )?`
	Inside   *Ref  ` | "inside" @@`
	Outside  *Ref  ` | "outside" @@`
	Cond     *Cond ` | @@`
	Distance *Expr ` | @@`
	From     *Ref  `   "from" @@`
	Bearing  *Expr `   (  "at" @@`
	To       *Ref  `      "to" @@`
	Towards  *Ref  `    | "towards" @@ )? )`
}

// Cond is a which-one phrase: above m · left of AB · same side of m as Q · other side of m from Q · nearest A · farthest from A · other than A · between A and B · beyond B on AB
type Cond struct {
	Node
	Word     string `(  @( "above" | "below" )`
	Of       *Ref   `   @@`
	Left     bool   ` | ( @"left"`
	Right    bool   `   | @"right" ) "of"`
	SideOf   *Ref   `   @@`
	Same     *Ref   ` | "same" "side" "of" @@`
	As       *Ref   `   "as" @@`
	Other    *Ref   ` | "other" (  "side" "of" @@`
	From     *Ref   `              "from" @@`
	Than     *Ref   `            | "than" @@ )`
	Nearest  *Ref   ` | "nearest" @@`
	Farthest *Ref   ` | "farthest" "from" @@`
	Between  *Ref   ` | "between" @@`
	And      *Ref   `   "and" @@`
	Beyond   *Ref   ` | "beyond" @@`
	On       *Ref   `   "on" @@ )`
}

// Cuts is: cuts m at L and R · cuts AB at S, AC at T
type Cuts struct {
	Node
	Meets []*Meeting `( "cuts" | "meets" ) @@ ( "," @@ )*`
}

// Meeting is: m at L and R · e at X above m
type Meeting struct {
	Node
	With  *Ref    `@@ "at"`
	Picks []*Pick `@@ ( "and" @@ )*`
}

// Pick is the name of a meeting and what tells it from the other: X above m
type Pick struct {
	Node
	Point *Ref    `@@`
	Conds []*Cond `@@*`
}

// Arc is: arc c centre P radius any cuts m at L and R · arc c centre O from A to B
type Arc struct {
	Node
	Name   *Ref `"arc" @@`
	Centre *Ref `"centre" @@`
	From   *Ref `(  "from" @@`
	To     *Ref `   "to" @@ |`
	Opening
	Cuts *Cuts `) @@?`
}

// Circle is: circle k centre O through A · circle k centre O radius 3
type Circle struct {
	Node
	Name   *Ref `"circle" @@`
	Centre *Ref `"centre" @@`
	Opening
	Cuts *Cuts `@@?`
}

// Line is: line n through P and X
type Line struct {
	Node
	Name *Ref  `"line" @@`
	A    *Ref  `"through" @@`
	B    *Ref  `"and" @@`
	Cuts *Cuts `@@?`
}

// Ray is: ray AX
type Ray struct {
	Node
	Points *Ref  `"ray" @@`
	Cuts   *Cuts `@@?`
}

// Join is: join AB · join ABCA · join LX, RX
type Join struct {
	Node
	Runs []*Ref `"join" @@ ( "," @@ )*`
	Cuts *Cuts  `@@?`
}

// Produce is: produce AB beyond B · produce AB beyond B by 2 to C · produce AB beyond B to meet m at C
type Produce struct {
	Node
	Straight *Ref     `"produce" @@`
	Beyond   *Ref     `"beyond" @@`
	By       *Expr    `(  "by" @@`
	End      *Ref     `   ( "to" @@ )?`
	Meet     *Meeting ` | "to" "meet" @@ )?`
}

// StepOff is: step off P[1 to 6] on k from A, radius any
type StepOff struct {
	Node
	Points *Ref `"step" "off" @@`
	On     *Ref `"on" @@`
	From   *Ref `"from" @@ ","?`
	Opening
	Towards *Ref `( "towards" @@ )?`
}

// Named begins with the names it makes or uses: d meets e at X · n by erect(m, P)
type Named struct {
	Node
	Names []*Ref   `@@ ( "," @@ )*`
	Meets *Cuts    `(  @@`
	By    *CallExp ` | "by" @@ )`
}

// CallExp is: erect(m, P) · erect(m, P) in full
type CallExp struct {
	Node
	Name   string  `@Name`
	Args   []*Expr `"(" ( @@ ( "," @@ )* )? ")"`
	Full   bool    `(  "in" ( @"full" | "brief" )`
	Unseen bool    ` | @"unseen" )?`
}

// Claim is: claim n perpendicular to m · claim here AB = CD · claim not P on k
type Claim struct {
	Node
	Here     bool      `"claim" @"here"?`
	Relation *Relation `@@`
}

// Needs is: needs P on m , what must hold of a construction's parameters
type Needs struct {
	Node
	Relation *Relation `"needs" @@`
}

// Relation is what can be claimed or needed.
type Relation struct {
	Node
	Not        bool    `@"not"? (`
	Triangle   *Ref    `   "triangle" @@`
	Congruent  bool    `     ( @"congruent"`
	Similar    bool    `     | @"similar" ) "to" "triangle"?`
	Triangle2  *Ref    `     @@`
	Collinear  *Ref    ` | "collinear" @@`
	Concyclic  *Ref    ` | "concyclic" @@`
	Concurrent []*Ref  ` | "concurrent" @@ ( "," @@ )+`
	Shape      string  ` | @( "regular" | "square" | "rectangle" | "parallelogram" | "rhombus" | "kite" | "trapezium" )`
	ShapeOf    *Ref    `   @@`
	Left       *Side   ` | @@`
	Perp       *Ref    `   (  "perpendicular" "to" @@`
	Parallel   *Ref    `    | "parallel" "to" @@`
	On         *Ref    `    | "on" @@`
	Inside     *Ref    `    | "inside" @@`
	Outside    *Ref    `    | "outside" @@`
	Between    *Ref    `    | "between" @@`
	And        *Ref    `        "and" @@`
	Midpoint   *Ref    `    | "midpoint" "of" @@`
	Bisects    *Ref    `    | "bisects" "angle" @@`
	Touches    *Touch  `    | @@`
	Chain      []*Link `    | @@+ ) )`
}

// Touch is: touches m · touches m at T · touches k inside
type Touch struct {
	Node
	What *Ref   `"touches" @@`
	At   *Ref   `( "at" @@ )?`
	How  string `@( "inside" | "outside" )?`
}

// Link is: = CD · < 2 AB · = 2 : 3
type Link struct {
	Node
	Op    string `@( "=" | "<" | ">" | "≤" | "≥" | "≠" )`
	Right *Side  `@@`
}

// Side is one side of a comparison, a value or a ratio: AB · AB + BC · AB : CD
type Side struct {
	Node
	Terms []*Expr `@@ ( ":" @@ )*`
}

// Mark is: mark AB = CD · mark angle ABC = DEF · mark right ABC · mark AB parallel to CD
type Mark struct {
	Node
	Right    []*Ref  `"mark" (  "right" "angle"? @@ ( "," @@ )*`
	First    *Expr   `        | @@`
	Parallel []*Ref  `          (  "parallel" "to" @@ ( "," @@ )*`
	Equal    []*Expr `           | ( "=" @@ )* ) )`
}

// Label is: label AB "5 cm" · label AB length · label angle ABC size · label A at 10 o'clock · label A below · label m
type Label struct {
	Node
	Angle  *Ref    `"label" (  "angle" @@`
	What   *Ref    `         | @@ )`
	Size   bool    `(  @"size"`
	Length bool    ` | @"length"`
	Text   *string ` | @Text )?`
	Clock  *Expr   `(  "at" @@ "o'clock"`
	Pin    string  ` | @( "above" | "below" | "left" | "right" ) )?`
}

// Note is: note "…" near X
type Note struct {
	Node
	Text string `"note" @Text`
	Near *Ref   `"near" @@`
}

// Shade is: shade ABC · shade sector OAB · shade k
type Shade struct {
	Node
	Sector bool `"shade" @"sector"?`
	What   *Ref `@@`
}

// Pencil is: hide c · faint AB · bold ABCA · dashed AB, CD
type Pencil struct {
	Node
	Verb string `@( "hide" | "faint" | "bold" | "dashed" )`
	What []*Ref `@@ ( "," @@ )*`
}

// Choose is: choose a from 4 to 8 by 1/2
type Choose struct {
	Node
	Name *Ref  `"choose" @@`
	From *Expr `"from" @@`
	To   *Expr `"to" @@`
	By   *Expr `( "by" @@ )?`
}

// Task is: task "…" for 3 marks
type Task struct {
	Node
	Text  string `"task" @Text`
	Marks *Expr  `( "for" @@ ( "marks" | "mark" ) )?`
}

// Sentence is a construction's own words: "Erect the perpendicular to {m} at {P}."
type Sentence struct {
	Node
	Text string `@Text`
}

// Step is: step "caption" … end
type Step struct {
	Node
	Caption string `"step" @Text`
	Body    []*Statement
}

// Repeat is: repeat i from 1 to 5 … end
type Repeat struct {
	Node
	Var  *Ref  `"repeat" @@`
	From *Expr `"from" @@`
	To   *Expr `"to" @@`
	Body []*Statement
}

// Construction is: construction erect(line m, point P) gives line n … end
type Construction struct {
	Node
	Name   string   `"construction" @Name`
	Params []*Param `"(" @@ ( "," @@ )* ")"`
	Gives  []*Param `"gives" @@ ( "," @@ )*`
	Body   []*Statement
}

// Param is: line m · point P · points P[i] from 1 to n
type Param struct {
	Node
	Kind string `@( "point" | "points" | "line" | "circle" | "length" | "angle" | "number" )`
	Name *Ref   `@@`
	From *Expr  `( "from" @@`
	To   *Expr  `  "to" @@ )?`
}

// Expr is a sum: AB + BC - 2 CD
type Expr struct {
	Node
	Neg  bool       `@"-"?`
	Head *Product   `@@`
	Tail []*AddTail `@@*`
}

// AddTail is: + BC · - 2 CD
type AddTail struct {
	Node
	Op   string   `@( "+" | "-" )`
	Term *Product `@@`
}

// Product goes left to right: 1/2 AB · 3 * sqrt(2) · AB/2
type Product struct {
	Node
	Head *Factor    `@@`
	Tail []*MulTail `@@*`
}

// MulTail is: * 2 · / 3 · AB, when the factor before it is a number
type MulTail struct {
	Node
	Op     string  `( @( "*" | "/" ) )?`
	Factor *Factor `@@`
}

// Factor is a value, maybe squared: AB² · half AB · -2
type Factor struct {
	Node
	Half   bool   `@"half"?`
	Value  *Value `@@`
	Square bool   `@( "²" | "^" "2" )?`
}

// Value is: 3.25 · 35 mm · 60° · sqrt(2) · (…) · AB · m · radius k · circumference k · area of ABC · angle ABC · reflex angle ABC
type Value struct {
	Node
	Number        string `(  @Number`
	Unit          string `   @( "mm" | "cm" | "deg" )?`
	Degrees       string ` | @Angle`
	Sqrt          *Expr  ` | "sqrt" "(" @@ ")"`
	Paren         *Expr  ` | "(" @@ ")"`
	Radius        *Ref   ` | "radius" @@`
	Circumference *Ref   ` | "circumference" @@`
	Area          *Ref   ` | "area" "of" @@`
	Perimeter     *Ref   ` | "perimeter" "of" @@`
	Reflex        bool   ` | @"reflex"?`
	Angle         *Ref   `   "angle" @@`
	Ref           *Ref   ` | @@ )`
}
