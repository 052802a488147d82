package region

// borders of what is nearer to one straight than to another: the perpendicular
// bisector of two points, the bisectors of two straights, and no straight between a
// point and a straight.
func (n nearer) borders() []xy {
	switch {
	case n.one.isSpot() && n.other.isSpot():
		w := n.other.at.sub(n.one.at)
		return []xy{{-w.y, w.x}}
	case n.one.isSpot() || n.other.isSpot():
		return nil
	}
	u, v := n.one.along, n.other.along
	return []xy{u.plus(v), u.sub(v)}
}

func (c within) borders() []xy {
	if c.of.isSpot() {
		return nil
	}
	return []xy{c.of.along}
}

func (l leftOf) borders() []xy { return []xy{l.along} }

func (c inside) borders() []xy {
	var ways []xy
	for i, a := range c.outline {
		ways = append(ways, c.outline[(i+1)%len(c.outline)].sub(a))
	}
	return ways
}

// isSpot tells a point from a straight.
func (s spine) isSpot() bool { return s.start != nil && s.end != nil && *s.start == *s.end }
