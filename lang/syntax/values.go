package syntax

// Expr is a sum: AB + BC - 2 CD · about 6, for a measurement that is not meant exactly
type Expr struct {
	Node
	About bool       `parser:"@'about'?"`
	Neg   bool       `parser:"@'-'?"`
	Head  *Product   `parser:"@@"`
	Tail  []*AddTail `parser:"@@*"`
}

// AddTail is: + BC · - 2 CD
type AddTail struct {
	Node
	Op   string   `parser:"@( '+' | '-' )"`
	Term *Product `parser:"@@"`
}

// Product goes left to right: 1/2 AB · 3 * sqrt(2) · AB/2
type Product struct {
	Node
	Head *Factor    `parser:"@@"`
	Tail []*MulTail `parser:"@@*"`
}

// MulTail is: * 2 · / 3 · AB, when the factor before it is a number
type MulTail struct {
	Node
	Op     string  `parser:"( @( '*' | '/' ) )?"`
	Factor *Factor `parser:"@@"`
}

// Factor is a value, maybe halved, then maybe squared: AB² · half AB
type Factor struct {
	Node
	Half   bool   `parser:"@'half'?"`
	Value  *Value `parser:"@@"`
	Square bool   `parser:"@( '²' | '^' '2' )?"`
}

// Value is: 3.25 · 35 mm · 60° (Degrees has its sign: 60°, 22°30') · sqrt(2) · (…) · AB · m · radius k · circumference k · area of ABC · angle ABC · reflex angle ABC
type Value struct {
	Node
	Number        string `parser:"( @Number"`
	Unit          string `parser:"@( 'mm' | 'cm' )?"`
	Degrees       string `parser:"| @Angle"`
	Sqrt          *Expr  `parser:"| 'sqrt' '(' @@ ')'"`
	Paren         *Expr  `parser:"| '(' @@ ')'"`
	Radius        *Ref   `parser:"| 'radius' @@"`
	Circumference *Ref   `parser:"| 'circumference' @@"`
	Area          *Ref   `parser:"| 'area' 'of' @@"`
	Perimeter     *Ref   `parser:"| 'perimeter' 'of' @@"`
	Reflex        bool   `parser:"| ( @'reflex' 'angle' | 'angle' )"`
	Angle         *Ref   `parser:"@@"`
	Ref           *Ref   `parser:"| @@ )"`
}
