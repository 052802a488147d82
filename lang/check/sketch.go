package check

import (
	"math"
)

// sketch is a quadrilateral roughly drawn, in floats: one that has its data, and else
// looks as like a plain one of its kind as can be. What is left to chance of it keeps to
// the sketch, so that the data can be met and nothing comes out stunted.
type sketch struct {
	at     [4][2]float64
	known  float64 // all lengths that were given, added up
	bounds []misfit
	likes  []misfit
	shuns  []misfit // what it is not to look like: 1 where it does
	shy    float64  // how heavy these are
}

// shyest is how heavy they are in the end.
const shyest = 0.5

// misfit is how far a sketch is from what it should be: of a length as a part of it, of an
// angle in radians.
type misfit func(at *[4][2]float64, scale float64) float64

// sketched is the sketch of a shape, or nil where its data are not all numbers, or none,
// or no sketch meets them.
func (sh *shape) sketched() *sketch {
	k := &sketch{}
	if !k.take(sh) || len(k.bounds) == 0 {
		return nil
	}
	k.like(sh)
	k.parallels(formOf(sh.kind))
	if !k.settle() {
		return nil
	}
	return k
}

// parallels adds what is parallel.
func (k *sketch) parallels(f form) {
	if f != anyForm {
		k.bounds = append(k.bounds, func(at *[4][2]float64, _ float64) float64 { return way(at, 0, 1) - way(at, 3, 2) })
	}
	if f == parallelogram {
		k.bounds = append(k.bounds, func(at *[4][2]float64, _ float64) float64 { return way(at, 1, 2) - way(at, 0, 3) })
	}
}

// take adds what is given.
func (k *sketch) take(sh *shape) bool {
	for _, e := range everyElement() {
		d := sh.datum(e)
		if d == nil {
			continue
		}
		if d.rat == nil || d.rat.Sign() <= 0 {
			return false
		}
		want, _ := d.rat.Float64()
		if e.b < 0 {
			k.bounds = append(k.bounds, func(at *[4][2]float64, _ float64) float64 { return bend(at, e.a) - want*math.Pi/180 })
			continue
		}
		k.bounds = append(k.bounds, func(at *[4][2]float64, _ float64) float64 { return math.Log(long(at, e) / want) })
	}
	for _, d := range sh.lengths.of {
		if d.rat == nil {
			return false
		}
		size, _ := d.rat.Float64()
		k.known += size
	}
	for _, c := range sh.classes {
		if c.value == nil {
			for _, e := range c.elems[1:] {
				k.equal(c.elems[0], e, 1)
			}
		}
	}
	for _, t := range sh.ties {
		f, _ := t.k.Float64()
		k.equal(t.e, t.f, f)
	}
	return true
}

// equal adds that an element is so many times another.
func (k *sketch) equal(e, f element, times float64) {
	k.bounds = append(k.bounds, func(at *[4][2]float64, _ float64) float64 {
		if e.b < 0 {
			return bend(at, e.a) - times*bend(at, f.a)
		}
		return math.Log(long(at, e) / (times * long(at, f)))
	})
}

// like adds what a plain quadrilateral of the kind is like, and begins with that.
func (k *sketch) like(sh *shape) {
	var plain [6]float64
	for i, tenths := range plainLengths6[sh.kindOf()] {
		plain[i] = float64(tenths) / 10
		k.likes = append(k.likes, func(at *[4][2]float64, scale float64) float64 {
			return math.Log(long(at, elements6[i]) / (scale * plain[i]))
		})
	}
	for i, degrees := range plainAngles4[sh.kindOf()] {
		k.likes = append(k.likes, func(at *[4][2]float64, _ float64) float64 { return bend(at, i) - float64(degrees)*math.Pi/180 })
	}
	if sh.kind == "quadrilateral" {
		k.keepOff(8, func(at *[4][2]float64) float64 { return way(at, 0, 1) - way(at, 3, 2) })
		k.keepOff(8, func(at *[4][2]float64) float64 { return way(at, 0, 3) - way(at, 1, 2) })
		for i := range 4 {
			for j := range i {
				if !sh.same(angleAt(i), angleAt(j)) {
					k.keepOff(5, func(at *[4][2]float64) float64 { return bend(at, i) - bend(at, j) })
				}
			}
		}
	}
	if kind := sh.kindOf(); kind != "isosceles trapezium" && kind != "rectangle" {
		for i := range 4 {
			k.keepOff(10, func(at *[4][2]float64) float64 { return bend(at, i) - math.Pi/2 })
		}
	}
	if k.known == 0 {
		k.likes = append(k.likes, func(_ *[4][2]float64, scale float64) float64 { return math.Log(scale) })
	}
	k.at = plainCorners(plain)
}

// keepOff adds that an angle is not to come out within so many degrees of 0 if that can be.
func (k *sketch) keepOff(degrees float64, angle func(at *[4][2]float64) float64) {
	k.shuns = append(k.shuns, func(at *[4][2]float64, _ float64) float64 {
		x := angle(at) * 180 / math.Pi / degrees
		return math.Exp(-x * x)
	})
}

// plainCorners are those of a quadrilateral of so long sides and diagonals.
func plainCorners(l [6]float64) [4][2]float64 {
	over := func(base, left, right float64) (x, y float64) {
		x = (base*base + left*left - right*right) / (2 * base)
		return x, math.Sqrt(max(0, left*left-x*x))
	}
	cx, cy := over(l[0], l[4], l[1])
	dx, dy := over(l[0], l[3], l[5])
	return [4][2]float64{{0, 0}, {l[0], 0}, {cx, cy}, {dx, dy}}
}

// long is a length of a sketch, never 0.
func long(at *[4][2]float64, e element) float64 {
	return max(1e-9, math.Hypot(at[e.b][0]-at[e.a][0], at[e.b][1]-at[e.a][1]))
}

// way is the direction from one corner to another, in radians.
func way(at *[4][2]float64, i, j int) float64 {
	return math.Atan2(at[j][1]-at[i][1], at[j][0]-at[i][0])
}

// bend is the angle at a corner, from 0 to a full turn, of corners that run anticlockwise.
func bend(at *[4][2]float64, i int) float64 {
	return math.Mod(way(at, i, (i+3)%4)-way(at, i, (i+1)%4)+4*math.Pi, 2*math.Pi)
}

// The unknowns of a sketch: B along the level, C, D, and the scale, as a logarithm.
const unknowns = 6

func (k *sketch) set(x [unknowns]float64) {
	k.at = [4][2]float64{{0, 0}, {x[0], 0}, {x[1], x[2]}, {x[3], x[4]}}
}

// settle brings the sketch to its data, by the method of least squares (Gauss; damped
// after Levenberg and Marquardt), the data weighing more and more. Only then it is made to keep
// off what it is not to look like, little by little: so it goes to the side that it is on, and
// follows when the data are changed a little.
func (k *sketch) settle() bool {
	x := [unknowns]float64{k.at[1][0], k.at[2][0], k.at[2][1], k.at[3][0], k.at[3][1], 0}
	if scale := k.scale(); scale > 0 {
		for i := range unknowns - 1 {
			x[i] *= scale
		}
		x[unknowns-1] = math.Log(scale)
	}
	for _, weight := range []float64{3, 30, 1000} {
		x = k.descend(x, weight)
	}
	for _, k.shy = range []float64{0.1, 0.2, 0.3, 0.4, shyest} {
		x = k.descend(x, 100)
	}
	x = k.descend(x, 1000)
	k.set(x)
	for _, b := range k.bounds {
		if !(math.Abs(b(&k.at, 1)) < 0.02) {
			return false
		}
	}
	for i := range 4 {
		if bend(&k.at, i) >= math.Pi {
			return false
		}
	}
	return true
}

// scale is how much larger than plain the figure is by one of its lengths.
func (k *sketch) scale() float64 {
	most := 0.0
	for _, b := range k.bounds {
		most = max(most, math.Exp(-b(&k.at, 1)))
	}
	if k.known == 0 {
		return 0
	}
	return most
}

// gaps are the misfits of a sketch, those to the data as heavy as they are said to be.
func (k *sketch) gaps(x [unknowns]float64, weight float64) (out []float64) {
	k.set(x)
	scale := math.Exp(x[unknowns-1])
	for _, b := range k.bounds {
		out = append(out, weight*b(&k.at, scale))
	}
	for _, l := range k.likes {
		out = append(out, l(&k.at, scale))
	}
	for _, l := range k.shuns {
		out = append(out, k.shy*l(&k.at, scale))
	}
	return out
}

func squares(gaps []float64) (sum float64) {
	for _, g := range gaps {
		sum += g * g
	}
	return sum
}

// descend takes steps as long as they make the squares of the misfits smaller.
func (k *sketch) descend(x [unknowns]float64, weight float64) [unknowns]float64 {
	gaps := k.gaps(x, weight)
	damping := 0.01
	for range 40 {
		step, ok := k.step(x, gaps, weight, damping)
		if !ok {
			break
		}
		y := x
		for i := range y {
			y[i] += step[i]
		}
		if next := k.gaps(y, weight); squares(next) < squares(gaps) {
			done := squares(gaps)-squares(next) < 1e-10
			x, gaps, damping = y, next, damping/4
			if done {
				break
			}
		} else if damping *= 5; damping > 1e6 {
			break
		}
	}
	return x
}

// step solves the normal equations of the misfits, which are taken as straight here.
func (k *sketch) step(x [unknowns]float64, gaps []float64, weight, damping float64) (step [unknowns]float64, ok bool) {
	const h = 1e-6
	var slope [unknowns][]float64
	for i := range x {
		y := x
		y[i] += h
		slope[i] = k.gaps(y, weight)
		for r := range gaps {
			slope[i][r] = (slope[i][r] - gaps[r]) / h
		}
	}
	var a [unknowns][unknowns + 1]float64
	for i := range a {
		for j := range unknowns {
			for r := range gaps {
				a[i][j] += slope[i][r] * slope[j][r]
			}
		}
		a[i][i] *= 1 + damping
		for r := range gaps {
			a[i][unknowns] -= slope[i][r] * gaps[r]
		}
	}
	return eliminated(a)
}

// eliminated solves equations by elimination.
func eliminated(a [unknowns][unknowns + 1]float64) (x [unknowns]float64, ok bool) {
	for c := range unknowns {
		p := c
		for r := c + 1; r < unknowns; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		if a[c], a[p] = a[p], a[c]; math.Abs(a[c][c]) < 1e-12 {
			return x, false
		}
		for r := range unknowns {
			if r != c {
				for j, f := unknowns, a[r][c]/a[c][c]; j >= c; j-- {
					a[r][j] -= f * a[c][j]
				}
			}
		}
	}
	for c := range x {
		x[c] = a[c][unknowns] / a[c][c]
	}
	return x, true
}
