package oracle

import (
	"fmt"
	"math"
	"math/big"
	"strings"

	"trammel/geom/exact"
)

// term is a number told by how it is made, so that different programs can be
// asked about it. Terms are shared, and never change.
type term struct {
	op   byte // 'q' the rational q, 'c' the cosine of q degrees, 'p' π, 'r' a root, or + - * /
	x, y *term
	q    *big.Rat

	about float64 // the value, roughly: for choosing only
}

func rational(q *big.Rat) *term {
	f, _ := q.Float64()
	return &term{op: 'q', q: q, about: f}
}

func whole(n int64) *term       { return rational(big.NewRat(n, 1)) }
func fraction(n, d int64) *term { return rational(big.NewRat(n, d)) }

func cosine(degrees *big.Rat) *term {
	f, _ := degrees.Float64()
	return &term{op: 'c', q: degrees, about: math.Cos(f * math.Pi / 180)}
}

func sine(degrees *big.Rat) *term {
	return cosine(new(big.Rat).Sub(big.NewRat(90, 1), degrees))
}

func (x *term) plus(y *term) *term  { return &term{'+', x, y, nil, x.about + y.about} }
func (x *term) minus(y *term) *term { return &term{'-', x, y, nil, x.about - y.about} }
func (x *term) times(y *term) *term { return &term{'*', x, y, nil, x.about * y.about} }
func (x *term) over(y *term) *term  { return &term{'/', x, y, nil, x.about / y.about} }
func (x *term) root() *term         { return &term{'r', x, nil, nil, math.Sqrt(x.about)} }
func (x *term) square() *term       { return x.times(x) }

func root(n int64) *term { return whole(n).root() }

// sumOf adds up from left to right.
func sumOf(terms ...*term) *term {
	sum := terms[0]
	for _, t := range terms[1:] {
		sum = sum.plus(t)
	}
	return sum
}

// productOf multiplies from left to right.
func productOf(terms ...*term) *term {
	product := terms[0]
	for _, t := range terms[1:] {
		product = product.times(t)
	}
	return product
}

// nodes are the terms that x is made of, each once, operands first.
func (x *term) nodes() (order []*term) {
	seen := map[*term]bool{}
	var visit func(*term)
	visit = func(t *term) {
		if t == nil || seen[t] {
			return
		}
		seen[t] = true
		visit(t.x)
		visit(t.y)
		order = append(order, t)
	}
	visit(x)
	return order
}

// roots counts the square roots in x.
func (x *term) roots() (n int) {
	for _, t := range x.nodes() {
		if t.op == 'r' {
			n++
		}
	}
	return n
}

// world works terms out as numbers of one field.
type world struct {
	f     *exact.Field
	known map[*term]*exact.Real
}

func newWorld() *world { return &world{exact.NewField(), map[*term]*exact.Real{}} }

// real works x out; it may panic as package exact does.
func (w *world) real(x *term) *exact.Real {
	for _, t := range x.nodes() {
		if w.known[t] == nil {
			w.known[t] = w.made(t)
		}
	}
	return w.known[x]
}

func (w *world) made(t *term) *exact.Real {
	x, y := w.known[t.x], w.known[t.y]
	switch t.op {
	case 'q':
		return w.f.Rat(t.q)
	case 'c':
		cos, _, err := w.f.CosSin(t.q)
		if err != nil {
			panic(err)
		}
		return cos
	case '+':
		return x.Add(y)
	case '-':
		return x.Sub(y)
	case '*':
		return x.Mul(y)
	case '/':
		return x.Div(y)
	}
	return x.Sqrt()
}

var pariNames = map[byte]string{'q': "Rational", 'p': "Circle", 'c': "Cosine", '+': "Sum", '-': "Difference", '*': "Product", '/': "Quotient", 'r': "Root"}

// pari asks testdata/signs.gp about x.
func (x *term) pari() string {
	nodes := x.nodes()
	place := map[*term]int{nil: 0}
	var out strings.Builder
	fmt.Fprintf(&out, "Tell(%v, ()->my(v = vector(%d)); ", x.degree(), len(nodes))
	for i, t := range nodes {
		place[t] = i + 1
		fmt.Fprintf(&out, "v[%d] = %s(", i+1, pariNames[t.op])
		switch {
		case t.q != nil:
			out.WriteString(t.q.RatString())
		case t.y != nil:
			fmt.Fprintf(&out, "v[%d], v[%d]", place[t.x], place[t.y])
		case t.x != nil:
			fmt.Fprintf(&out, "v[%d]", place[t.x])
		}
		out.WriteString("); ")
	}
	fmt.Fprintf(&out, "v[%d])", len(nodes))
	return out.String()
}

// degree bounds the degree of a field that holds all of x: each root doubles
// it, and cosines lie in the real part of a cyclotomic field.
func (x *term) degree() *big.Int {
	degree := max(1, totient(x.turn())/2)
	return new(big.Int).Lsh(big.NewInt(degree), uint(x.roots()))
}

// turn is n if the cosines in x are those of n-ths of a turn.
func (x *term) turn() int64 {
	turn := big.NewInt(1)
	for _, t := range x.nodes() {
		if t.op == 'c' {
			d := new(big.Rat).Quo(t.q, big.NewRat(360, 1)).Denom()
			g := new(big.Int).GCD(nil, nil, turn, d)
			turn.Mul(turn, new(big.Int).Quo(d, g))
		}
	}
	return turn.Int64()
}

// totient is Euler's.
func totient(n int64) int64 {
	phi := n
	for p := int64(2); p*p <= n; p++ {
		if n%p == 0 {
			phi -= phi / p
			for n%p == 0 {
				n /= p
			}
		}
	}
	if n > 1 {
		phi -= phi / n
	}
	return phi
}

// steps writes x for testdata/calcium.c: one step after another, each with the
// places of its operands, and the last is x.
func (x *term) steps() string {
	place := map[*term]int{}
	var out []string
	for i, t := range x.nodes() {
		place[t] = i
		switch {
		case t.op == 'c':
			out = append(out, "c "+new(big.Rat).Quo(t.q, big.NewRat(180, 1)).String())
		case t.op == 'q':
			out = append(out, "q "+t.q.String())
		case t.y != nil:
			out = append(out, fmt.Sprintf("%c %d %d", t.op, place[t.x], place[t.y]))
		default:
			out = append(out, fmt.Sprintf("%c %d", t.op, place[t.x]))
		}
	}
	return strings.Join(out, " ")
}
