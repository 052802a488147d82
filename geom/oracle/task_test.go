package oracle

import "math/big"

// tasks are those of the table of bars, as numbers that are 0, for programs that
// have no geometry. Each is made as its benchmark makes it.
var tasks = map[string]func() *term{
	"pentagon":              func() *term { return closing(pentagonStep(), 5) },
	"17-gon":                func() *term { return closing(heptadecagonStep(), 17) },
	"17-gon by reflections": func() *term { return closingByReflections(heptadecagonStep(), 17) },
	"85-gon":                func() *term { return closing(eightyFifth(), 85) },
	"257-gon":               func() *term { return chebyshevGap(gaussStep(257).x, 8) },
	"20 roots":              twentyRoots,
	"Feuerbach":             feuerbach6913,
	"Feuerbach, radical":    feuerbachRadical,
	"Pascal":                pascalGap,
	"Pappus":                pappusGap,
	"Desargues":             desarguesGap,
	"chain 6":               func() *term { return chainGap(6) },
	"chain 8":               func() *term { return chainGap(8) },
	"triangle 40-70-70":     func() *term { return apexGap(70, 70, 40) },
	"triangle 36-72-72":     func() *term { return apexGap(72, 72, 36) },
	"triangle 70-35-75":     func() *term { return apexGap(70, 35, 75) },
}

func at(x, y *term) place { return place{x, y} }

// unit is the point of the unit circle above the cosine x.
func unit(x *term) place { return place{x, whole(1).minus(x.square()).root()} }

func pentagonStep() place { return unit(root(5).minus(whole(1)).over(whole(4))) }

// heptadecagonStep is Gauss's, the second root told by the first.
func heptadecagonStep() place {
	s := root(17)
	a := whole(34).minus(s.times(whole(2))).root()
	b := s.times(whole(8)).over(a)
	c := whole(17).plus(s.times(whole(3))).minus(a).minus(b.times(whole(2))).root()
	return unit(s.minus(whole(1)).plus(a).plus(c.times(whole(2))).over(whole(16)))
}

func eightyFifth() place {
	return pentagonStep().repeated(3).turns(heptadecagonStep().repeated(-10))
}

// closing is 0 when n steps go round once: what is missing of both coordinates.
func closing(step place, n int) *term {
	end := step
	for range n - 1 {
		end = end.turns(step)
	}
	return end.x.minus(whole(1)).plus(end.y)
}

// closingByReflections takes each corner as the last but one, mirrored in the
// last's radius.
func closingByReflections(step place, n int) *term {
	last, now := place{whole(1), whole(0)}, step
	for range n - 1 {
		along := now.times(now.dot(last).times(whole(2)).over(now.norm2()))
		last, now = now, last.to(along)
	}
	return now.x.minus(whole(1)).plus(now.y)
}

// chebyshevGap doubles an angle n times and compares the cosines.
func chebyshevGap(x *term, n int) *term {
	doubled := x
	for range n {
		doubled = doubled.square().times(whole(2)).minus(whole(1))
	}
	return doubled.minus(x)
}

func twentyRoots() *term {
	var up, down []*term
	for _, p := range []int64{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71} {
		r := root(p)
		up, down = append(up, r), append([]*term{r}, down...)
	}
	return sumOf(up...).square().minus(sumOf(down...).square())
}

func feuerbach6913() *term {
	x := fraction(81+36-169, 18)
	apex := at(x, whole(36).minus(x.square()).root())
	return feuerbachGap([3]place{at(whole(0), whole(0)), at(whole(9), whole(0)), apex}, [3]*term{whole(13), whole(6), whole(9)})
}

func feuerbachRadical() *term {
	p := [3]place{at(root(2), whole(0)), at(whole(5), root(3)), at(whole(1), root(11))}
	var sides [3]*term
	for i := range sides {
		sides[i] = p[(i+1)%3].to(p[(i+2)%3]).norm2().root()
	}
	return feuerbachGap(p, sides)
}

// feuerbachGap compares the distance of the centres of the incircle and the
// nine-point circle with the difference of the radii, squared. Sides are opposite
// their corners; the radius of the circumcircle is uvw over twice the cross product.
func feuerbachGap(p [3]place, sides [3]*term) *term {
	sum, middle := sumOf(sides[:]...), place{whole(0), whole(0)}
	for i := range p {
		middle = middle.plus(p[i].times(sides[i]))
	}
	o := circling(p[0], p[1], p[2])
	nine := p[0].plus(p[1]).plus(p[2]).plus(o.times(whole(-1))).times(fraction(1, 2))
	cross := p[0].to(p[1]).cross(p[0].to(p[2])).sized()
	radii := productOf(sides[:]...).over(cross.times(whole(4))).minus(cross.over(sum))
	return nine.to(middle.over(sum)).norm2().minus(radii.square())
}

// gap is 0 when three places are on a line.
func gap(a, b, c place) *term { return a.to(b).cross(a.to(c)) }

func pascalGap() *term {
	var p [6]place
	for i, n := range []int64{2, 3, 5, 7, 11, 13} {
		t := root(n)
		d := whole(1).plus(t.square())
		p[i] = at(whole(1).minus(t.square()).over(d), t.times(whole(2)).over(d))
	}
	return gap(crossing(p[0], p[1], p[3], p[4]), crossing(p[1], p[2], p[4], p[5]), crossing(p[2], p[3], p[5], p[0]))
}

func pappusGap() *term {
	var p, q [3]place
	for i, n := range []int64{2, 3, 5} {
		p[i] = at(whole(3), whole(1)).times(root(n))
		q[i] = at(whole(1), whole(4)).times(root([]int64{7, 11, 13}[i]))
	}
	return gap(crossing(p[0], q[1], p[1], q[0]), crossing(p[0], q[2], p[2], q[0]), crossing(p[1], q[2], p[2], q[1]))
}

func desarguesGap() *term {
	o := at(whole(7), whole(-1))
	p := [3]place{at(root(2), root(3)), at(root(5), root(7)), at(root(11), root(13))}
	var q [3]place
	for i, n := range []int64{17, 19, 23} {
		q[i] = o.plus(o.to(p[i]).times(root(n)))
	}
	return gap(crossing(p[0], p[1], q[0], q[1]), crossing(p[1], p[2], q[1], q[2]), crossing(p[2], p[0], q[2], q[0]))
}

// chainGap puts n points, each at √3, √4, … from the last and at √4, √5, … from
// the third last, and measures the last distance again.
func chainGap(n int) *term {
	points := []place{at(whole(0), whole(0)), at(whole(1), whole(0)), at(whole(1), whole(1))}
	for i := range int64(n) {
		a, b := points[len(points)-1], points[len(points)-3]
		points = append(points, around(a, whole(3+i), b, whole(4+i), 1))
	}
	last, third := points[len(points)-1], points[len(points)-4]
	return third.to(last).norm2().minus(whole(int64(n + 3)))
}

// apexGap compares the third angle of a triangle with the angles a and b in
// degrees with c.
func apexGap(a, b, c int64) *term {
	d := func(n int64) *big.Rat { return big.NewRat(n, 1) }
	x := sine(d(b)).times(cosine(d(a))).over(sine(d(c)))
	apex := at(x, x.times(sine(d(a))).over(cosine(d(a))))
	left, right := apex.to(at(whole(0), whole(0))), apex.to(at(whole(1), whole(0)))
	return left.cross(right).times(cosine(d(c))).minus(left.dot(right).times(sine(d(c))))
}
