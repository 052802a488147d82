package oracle

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// formula reads a number as the tables of testdata/published have it: with
// + - * / ^, sqrt( ), cos( ), sin( ) and tan( ) of degrees, and pi.
type formula struct{ rest string }

func readFormula(text string) *term {
	f := formula{text}
	x := f.sum()
	if f.rest != "" {
		panic(fmt.Sprintf("%q: cannot read %q", text, f.rest))
	}
	return x
}

func (f *formula) eat(token string) bool {
	rest, ok := strings.CutPrefix(f.rest, token)
	f.rest = rest
	return ok
}

func (f *formula) sum() *term {
	x := f.product()
	for {
		switch {
		case f.eat("+"):
			x = x.plus(f.product())
		case f.eat("-"):
			x = x.minus(f.product())
		default:
			return x
		}
	}
}

func (f *formula) product() *term {
	x := f.power()
	for {
		switch {
		case f.eat("*"):
			x = x.times(f.power())
		case f.eat("/"):
			x = x.over(f.power())
		default:
			return x
		}
	}
}

func (f *formula) power() *term {
	x := f.factor()
	if !f.eat("^") {
		return x
	}
	n, err := strconv.Atoi(f.digits())
	if err != nil {
		panic(err)
	}
	product := x
	for range n - 1 {
		product = product.times(x)
	}
	return product
}

func (f *formula) factor() *term {
	if f.eat("-") {
		return whole(0).minus(f.power())
	}
	if f.eat("pi") {
		return &term{op: 'p', about: math.Pi}
	}
	for name, apply := range functions {
		if f.eat(name + "(") {
			x := f.sum()
			f.eat(")")
			return apply(x)
		}
	}
	return rational(bigRat(f.digits()))
}

// functions take what stands in brackets; cosines take a rational.
var functions = map[string]func(x *term) *term{
	"":     func(x *term) *term { return x },
	"sqrt": (*term).root,
	"cos":  func(x *term) *term { return cosine(x.value()) },
	"sin":  func(x *term) *term { return sine(x.value()) },
	"tan":  func(x *term) *term { return sine(x.value()).over(cosine(x.value())) },
}

// value is the rational that a number without roots is.
func (x *term) value() *big.Rat {
	q, ok := newWorld().real(x).Rational()
	if !ok {
		panic("an angle must be rational")
	}
	return q
}

func (f *formula) digits() string {
	end := strings.IndexFunc(f.rest, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
	if end < 0 {
		end = len(f.rest)
	}
	digits := f.rest[:end]
	f.rest = f.rest[end:]
	return digits
}
