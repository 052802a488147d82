package exact

import "slices"

// deduction is what follows for the signs of numbers, in all figures that are like some points, from
// those that are known.
type deduction struct {
	*characters
	span     characterSpan
	sign     []int8   // by line; 0: unknown
	from     []bitRow // by line: the lines by which its sign is known
	none     bool     // there are no such figures: some number would be positive and negative,
	conflict bitRow   // as follows from these lines
}

// deduce finds signs of some lines, given with what they are made of, until those that are
// its goals are positive. A number is positive if it is a product of numbers that are and of
// squares of the field, which is seen from which are squares at the points; or a sum of
// numbers that are.
func (b *branches) deduce(points []*place, home bool, goals []int32) *deduction {
	d := &deduction{characters: b.charactersAt(points), sign: make([]int8, len(b.lines)), from: make([]bitRow, len(b.lines))}
	for k, i := range b.sure {
		switch {
		case !b.active[i]:
		case d.row(i) != nil:
			d.know(i, b.signs[k])
		case b.told[k] && d.vanishes(i):
			d.refute(i)
		}
	}
	for i := range int32(len(b.lines)) {
		if b.active[i] && d.sign[i] == 0 {
			sign := d.fractionSign(i)
			if b.constant[i] && (home || b.clear[i]) {
				s, _ := b.lines[i].x.bounds.sign()
				sign = int8(s)
			}
			if sign != 0 && d.row(i) != nil {
				d.know(i, sign)
			}
		}
	}
	for changed := true; changed && !d.none; {
		changed = false
		for i := range int32(len(b.lines)) {
			if !b.active[i] {
				continue
			}
			switch sign := d.sumSign(i); {
			case sign == 0 || sign == d.sign[i]:
			case d.sign[i] == -sign || d.vanishes(i):
				d.refute(i, b.lines[i].a, b.lines[i].b)
			case d.row(i) == nil: // it is 0 for some of the signs that are guessed
			case d.tells(1):
				d.know(i, sign, b.lines[i].a, b.lines[i].b)
				changed = true
			}
		}
		if d.contradicts() || d.shows(goals) {
			break
		}
		for i := range int32(len(b.lines)) {
			changed = b.active[i] && d.multiply(i) || changed
		}
	}
	return d
}

// tells tells whether the points are enough to tell relations of the numbers that are known,
// and of some more, from chance.
func (d *deduction) tells(more int) bool { return len(d.span.rows)+more+spare <= len(d.points) }

// know notes the sign of a line, which follows from those of others but is no product of them.
func (d *deduction) know(i int32, sign int8, by ...int32) {
	d.sign[i], d.from[i] = sign, d.reasons(append(by, i)...)
	if row := d.signed(i, sign); row != nil {
		d.span.add(row, int(i), len(d.lines))
	}
}

// contradicts tells whether there is no such figure, as far as is known.
func (d *deduction) contradicts() bool {
	if made, spans := d.span.spans(d.minus, len(d.lines)); !d.none && spans && d.tells(0) {
		d.refute(made.elements()...)
	}
	return d.none
}

// shows tells whether some lines are positive, if they are any.
func (d *deduction) shows(goals []int32) bool {
	return len(goals) > 0 && !slices.ContainsFunc(goals, func(i int32) bool { d.multiply(i); return d.sign[i] <= 0 })
}

// multiply finds the sign of a line that is a product of numbers that are known and of squares.
func (d *deduction) multiply(i int32) bool {
	if d.sign[i] != 0 || d.row(i) == nil || !d.tells(0) {
		return false
	}
	for _, sign := range []int8{1, -1} {
		if made, spans := d.span.spans(d.signed(i, sign), len(d.lines)); spans {
			d.sign[i], d.from[i] = sign, d.reasons(append(made.elements(), i)...)
			return true
		}
	}
	return false
}

// refute notes that there is no such figure, as follows from some lines.
func (d *deduction) refute(by ...int32) { d.none, d.conflict = true, d.reasons(by...) }

// reasons are some lines and those by which their signs are known.
func (d *deduction) reasons(of ...int32) bitRow {
	all := newRow(len(d.lines))
	for _, i := range of {
		all.set(int(i))
		all.join(d.from[i])
	}
	return all
}

// fractionSign is the sign of a line that is the same fraction at all points.
func (d *deduction) fractionSign(i int32) int8 {
	num, den := int64(0), int64(0)
	for _, pt := range d.points {
		if den == 0 {
			if num, den = fractionModulo(pt.value[i], pt.p); den == 0 {
				return 0
			}
		}
		if v, _ := ratioModulo(num, den, pt.p); v != pt.value[i] {
			return 0
		}
	}
	switch {
	case num > 0:
		return 1
	case num < 0:
		return -1
	}
	return 0
}

// sumSign is the sign of a sum of numbers of one sign.
func (d *deduction) sumSign(i int32) int8 {
	l := &d.lines[i]
	x, y := d.sign[l.a], d.sign[l.b]
	switch l.x.op {
	case difference:
		y = -y
	case sum:
	default:
		return 0
	}
	switch {
	case x == y:
		return x
	case x == 0 && d.vanishes(l.a):
		return y
	case y == 0 && d.vanishes(l.b):
		return x
	}
	return 0
}

// characters is at which of some points numbers are no squares, by line.
type characters struct {
	*sheet
	points []*place
	minus  bitRow // of -1
	rows   []bitRow
	known  []bool
}

func (s *sheet) charactersAt(points []*place) *characters {
	c := &characters{sheet: s, points: points, minus: newRow(len(points)), rows: make([]bitRow, len(s.lines)), known: make([]bool, len(s.lines))}
	for k := range points {
		c.minus.set(k)
	}
	return c
}

// vanishes tells whether a number is 0 at all points.
func (c *characters) vanishes(i int32) bool {
	return !slices.ContainsFunc(c.points, func(pt *place) bool { return !pt.isZero(i) })
}

// row is at which points a number is no square; nil for one that is 0 at some. What
// it is of a product follows from what it is of the factors.
func (c *characters) row(i int32) bitRow {
	if !c.known[i] {
		c.known[i], c.rows[i] = true, c.workOut(i)
	}
	return c.rows[i]
}

func (c *characters) workOut(i int32) bitRow {
	v := newRow(len(c.points))
	switch l := &c.lines[i]; l.x.op {
	case product, quotient:
		x, y := c.row(l.a), c.row(l.b)
		if x == nil || y == nil {
			return nil
		}
		v.add(x)
		v.add(y)
	case negation:
		x := c.row(l.a)
		if x == nil {
			return nil
		}
		v.add(x)
		v.add(c.minus)
	default:
		for k, pt := range c.points {
			switch jacobi(pt.value[i], pt.p) {
			case 0:
				return nil
			case -1:
				v.set(k)
			}
		}
	}
	return v
}

// signed is the row of a line, or of its opposite.
func (c *characters) signed(i int32, sign int8) bitRow {
	row := c.row(i)
	if row == nil || sign > 0 {
		return row
	}
	v := newRow(len(c.points))
	v.add(row)
	v.add(c.minus)
	return v
}
