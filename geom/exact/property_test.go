package exact

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// shadowed is a number with a plain 300-bit evaluation beside it.
type shadowed struct {
	x *Real
	f *big.Float
}

func shadow(f float64) *big.Float { return new(big.Float).SetPrec(300).SetFloat64(f) }

func (s shadowed) join(op byte, o shadowed) (shadowed, bool) {
	z := shadow(0)
	switch op % 6 {
	case 0:
		return shadowed{s.x.Add(o.x), z.Add(s.f, o.f)}, true
	case 1, 2:
		return shadowed{s.x.Sub(o.x), z.Sub(s.f, o.f)}, true
	case 3:
		return shadowed{s.x.Mul(o.x), z.Mul(s.f, o.f)}, true
	case 4:
		if o.x.Sign() == 0 {
			return s, false
		}
		return shadowed{s.x.Div(o.x), z.Quo(s.f, o.f)}, true
	}
	if s.x.Sign() <= 0 {
		return shadowed{s.x.Neg(), z.Neg(s.f)}, true
	}
	return shadowed{s.x.Sqrt(), z.Sqrt(s.f)}, true
}

// grown builds numbers from bytes: each step joins one of the last three with
// any.
func grown(k *kit, program []byte) []shadowed {
	made := []shadowed{
		{k.int(1), shadow(1)}, {k.int(2), shadow(2)}, {k.int(3), shadow(3)}, {k.int(5), shadow(5)},
	}
	for i := 0; i+2 < len(program); i += 3 {
		a, b := made[len(made)-1-int(program[i+1])%3], made[int(program[i+2])%len(made)]
		if c, ok := a.join(program[i], b); ok {
			made = append(made, c)
		}
	}
	return made
}

// check compares the sign with the plain evaluation where that is decisive.
func (s shadowed) check(t interface{ Errorf(string, ...any) }) {
	sign := s.x.Sign()
	exponent := s.f.MantExp(nil)
	switch {
	case s.f.Sign() == 0 || exponent < -200:
		return
	case exponent < -100 && sign == 0:
	case sign != s.f.Sign():
		t.Errorf("sign %d of a number near %.10g", sign, s.f)
	}
}

// FuzzSign holds signs to plain evaluation.
func FuzzSign(f *testing.F) {
	f.Add([]byte{5, 1, 0, 5, 2, 0, 0, 4, 5, 3, 6, 6, 5, 7, 0, 1, 8, 6})
	f.Add([]byte{5, 3, 0, 0, 4, 0, 5, 5, 0, 1, 3, 4, 5, 7, 0, 3, 6, 8})
	f.Fuzz(func(t *testing.T, program []byte) {
		if len(program) > 36 {
			return
		}
		k := newKit()
		err := Try(func() {
			for _, s := range grown(k, program) {
				s.check(t)
			}
		})
		if _, undecided := err.(*Undecided); err != nil && !undecided {
			t.Error(err)
		}
	})
}

// someProgram draws 5 to 16 steps for grown, half of them roots.
func someProgram(t *rapid.T) (program []byte) {
	operation := rapid.SampledFrom([]byte{5, 0, 5, 1, 5, 3, 5, 4})
	for range rapid.SampledFrom([]int{5, 9, 12, 16}).Draw(t, "steps") {
		any := rapid.SampledFrom([]byte{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19})
		program = append(program, operation.Draw(t, "operation"), any.Draw(t, "last"), any.Draw(t, "other"))
	}
	return program
}

// someNumbers draws numbers of one field, which may stand over Q(2cos 40°)
// and may leave out the complete square test.
func someNumbers(t *rapid.T, k *kit) []shadowed {
	k.f.tower.plain = rapid.Bool().Draw(t, "plain")
	made := grown(k, someProgram(t))
	if rapid.Bool().Draw(t, "angle") {
		x := k.cos(rapid.Int64Range(1, 89).Draw(t, "degrees"), 1)
		made = append(made, shadowed{x: x.Add(made[len(made)-1].x.Abs().Sqrt())})
	}
	return made
}

func pick(t *rapid.T, made []shadowed, name string) *Real {
	return made[rapid.IntRange(0, len(made)-1).Draw(t, name)].x
}

// within skips what the budget does not reach.
func within(t *rapid.T, f func()) {
	if err := Try(f); err != nil {
		t.Skip(err)
	}
}

// TestSameNumberTwoWays makes random numbers by two ways, which must be equal.
func TestSameNumberTwoWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := newKit()
		within(t, func() {
			made := someNumbers(t, k)
			x, y, z := pick(t, made, "x"), pick(t, made, "y"), pick(t, made, "z")
			same(t, "(x+y)(x-y)", x.Add(y).Mul(x.Sub(y)), x.Mul(x).Sub(y.Mul(y)))
			same(t, "x(y+z)", x.Mul(y.Add(z)), x.Mul(y).Add(x.Mul(z)))
			same(t, "√x²", x.Mul(x).Sqrt(), x.Abs())
			same(t, "√|x|√|y|", x.Abs().Sqrt().Mul(y.Abs().Sqrt()), x.Mul(y).Abs().Sqrt())
			if y.Sign() != 0 {
				same(t, "(x/y)y", x.Div(y).Mul(y), x)
			}
			p, q := x.Abs(), y.Mul(y)
			nested := p.Add(q).Add(p.Mul(q).Sqrt().MulInt(2)).Sqrt()
			same(t, "√(p+q+2√pq)", nested, p.Sqrt().Add(q.Sqrt()))
		})
	})
}

// same holds that x and y are equal.
func same(t *rapid.T, name string, x, y *Real) {
	if !x.Equal(y) {
		t.Errorf("%s: %s is not %s", name, x.Decimal(30), y.Decimal(30))
	}
}

// TestLayersAgree asks each layer by itself: none may contradict the sign.
func TestLayersAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := newKit()
		within(t, func() {
			made := someNumbers(t, k)
			x := pick(t, made, "x").Sub(pick(t, made, "y"))
			bounds, near := x.bounds, x.enclose(200)
			surely := x.op != ratio && x.surelyNotZero()
			exact := x.exactly()
			sign := x.Sign()
			if s, ok := bounds.sign(); ok && s != sign {
				t.Errorf("interval says %d, sign is %d", s, sign)
			}
			if s, ok := near.sign(); ok && s != sign {
				t.Errorf("enclosure says %d, sign is %d", s, sign)
			}
			if surely && sign == 0 {
				t.Errorf("a ring map says not zero, but it is")
			}
			if exact.isZero() != (sign == 0) {
				t.Errorf("exact form is zero: %v, sign is %d", exact.isZero(), sign)
			}
			if lo, hi := x.enclose(100).interval().lo, x.enclose(100).interval().hi; x.Float() < lo || x.Float() > hi {
				t.Errorf("float %v lies outside %v, %v", x.Float(), lo, hi)
			}
		})
	})
}

// TestOrderOfAdjoining writes the same numbers out in two fields, in opposite
// orders: whatever stands in the tower first, the same are equal.
func TestOrderOfAdjoining(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		program := someProgram(t)
		within(t, func() {
			up, down := grown(newKit(), program), grown(newKit(), program)
			for i := range up {
				up[i].x.form()
				down[len(down)-1-i].x.form()
			}
			for i := range up {
				for j := range i {
					if a, b := up[i].x.Cmp(up[j].x), down[i].x.Cmp(down[j].x); a != b {
						t.Errorf("numbers %d and %d compare as %d and as %d", i, j, a, b)
					}
				}
			}
		})
	})
}
