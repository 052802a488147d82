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
	Language *Language `parser:"| @@"`
	Use      *Use      `parser:"| @@"`
	Using    *Using    `parser:"| @@"`
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
	Answer   *Answer   `parser:"| @@"`
	Sentence *Sentence `parser:"| @@"`

	Worksheet    *Worksheet    `parser:"| @@"`
	Instructions *Instructions `parser:"| @@"`

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

// Theme is: theme textbook · theme large-print
type Theme struct {
	Node
	Name string `parser:"'theme' @Name ( @'-' @Name )*"`
}

// Language is: language de · language pt-BR
type Language struct {
	Node
	Tag string `parser:"'language' @( Name | Keyword ) ( @'-' @( Name | Keyword | Number | Point ) @Glued* )*"`
}

// Use is: use "file"
type Use struct {
	Node
	Path string `parser:"'use' @Text"`
}

// Using is: using straightedge and compasses only
type Using struct {
	Node
	Tools []string `parser:"'using' @( 'straightedge' | 'compasses' | 'ruler' | 'protractor' ) ( ( ',' | 'and' ) @( 'straightedge' | 'compasses' | 'ruler' | 'protractor' ) )* 'only'"`
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

// Choose is: choose a from 4 to 8 by 1/2
type Choose struct {
	Node
	Name *Ref  `parser:"'choose' @@"`
	From *Expr `parser:"'from' @@"`
	To   *Expr `parser:"'to' @@"`
	By   *Expr `parser:"( 'by' @@ )?"`
}

// Task is: task "…" for 3 marks · task from "bisect.trm", room 60 mm, hint 2 steps
type Task struct {
	Node
	Text    string        `parser:"'task' @Text?"`
	From    string        `parser:"( 'from' @Text )?"`
	Marks   *Expr         `parser:"( 'for' @@ ( 'marks' | 'mark' ) )?"`
	Options []*TaskOption `parser:"( ',' @@ )*"`
}

// TaskOption is what a worksheet adds to a task: room 60 mm · hint 2 steps
type TaskOption struct {
	Node
	Room *Expr `parser:"'room' @@"`
	Hint *Expr `parser:"| 'hint' @@ ( 'steps' | 'step' )"`
}

// Answer is: answer AX, angle AXB, AB : BC
type Answer struct {
	Node
	Sides []*Side `parser:"'answer' @@ ( ',' @@ )*"`
}

// Worksheet is: worksheet "title"
type Worksheet struct {
	Node
	Title string `parser:"'worksheet' @Text"`
}

// Instructions is: instructions "Leave every arc."
type Instructions struct {
	Node
	Text string `parser:"'instructions' @Text"`
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
