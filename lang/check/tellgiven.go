package check

import (
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// tellGiven is what is given, with its article: a line m through A and B.
func (s *scope) tellGiven(g *syntax.Given) program.Saying {
	switch {
	case g.Points != nil:
		var names program.List
		for _, r := range g.Points.Names {
			names = append(names, s.letters1(r))
		}
		return phrase("given.points", "points", names)
	case g.Line != nil:
		return s.tellGivenLine(g.Line)
	case g.Circle != nil:
		return s.tellGivenCircle(g.Circle)
	case g.Angle != nil && g.Angle.Size != nil:
		return phrase("given.angle", "angle", s.letters1(g.Angle.Angle), "size", s.tellAngle(g.Angle.Size))
	case g.Angle != nil:
		return phrase("given.angle.free", "angle", s.letters1(g.Angle.Angle))
	case g.Length != nil && g.Length.Size != nil:
		return phrase("given.length", "name", s.curveName(g.Length.Name), "length", s.tellLength(g.Length.Size))
	case g.Length != nil:
		return phrase("given.length.free", "name", s.curveName(g.Length.Name))
	case g.Shape != nil:
		return s.tellShape(g.Shape)
	}
	return s.tellPlaced(g.Point, false)
}

func (s *scope) tellGivenLine(g *syntax.GivenLine) program.Saying {
	name := s.curveName(g.Name)
	switch {
	case len(g.Through) == 2:
		return phrase("given.line.two", "name", name, "a", s.letters1(g.Through[0].Point), "b", s.letters1(g.Through[1].Point))
	case len(g.Through) == 1:
		return phrase("given.line.one", "name", name, "point", s.letters1(g.Through[0].Point))
	case g.Parallel != nil && g.Via != nil:
		return phrase("given.parallel.through", "name", name, "line", s.curveName(g.Parallel), "point", s.letters1(g.Via.Point))
	case g.Parallel != nil:
		return phrase("given.parallel", "name", name, "line", s.curveName(g.Parallel))
	}
	return phrase("given.line", "name", name)
}

func (s *scope) tellGivenCircle(g *syntax.GivenCirc) program.Saying {
	name := s.curveName(g.Name)
	if g.Centre == nil {
		return phrase("given.circle", "name", name)
	}
	centre := s.letters1(g.Centre.Point)
	switch {
	case g.Through != nil:
		return phrase("given.circle.through", "name", name, "centre", centre, "point", s.letters1(g.Through))
	case g.Any || g.Radius == nil:
		return phrase("given.circle.centre", "name", name, "centre", centre)
	}
	return phrase("given.circle.radius", "name", name, "centre", centre, "radius", s.tellRadius(g.Radius))
}

// tellShape is such as: a triangle ABC with AB = 6 cm and angle A = 40°.
func (s *scope) tellShape(g *syntax.GivenShape) program.Saying {
	shape := phrase("shape."+g.Kind, "points", s.letters1(g.Points))
	if len(g.Traits) > 0 {
		key := "shape.traits"
		if g.Kind == "trapezium" {
			key += ".trapezium"
		}
		shape = phrase(key, "traits", traitsOf(g.Traits), "points", s.letters1(g.Points))
	}
	var data program.List
	for _, eq := range g.Data {
		data = append(data, s.tellTerms(eq.Terms, "="))
	}
	if len(data) == 0 {
		return shape
	}
	return phrase("given.shape", "shape", shape, "data", data)
}

// traitsOf is what kind of triangle it is, with the article: an acute isosceles.
func traitsOf(traits []string) program.Saying {
	said := phrase("trait.first." + traits[0])
	for _, t := range traits[1:] {
		said = phrase("trait.then", "a", said, "b", phrase("trait."+t))
	}
	return said
}

// tellPlaced is a point and where it is. Coordinates and directions put a point
// on the paper and tell the reader nothing. made tells that it is taken on the way.
func (s *scope) tellPlaced(p *syntax.PlacedPoint, made bool) program.Saying {
	point := s.letters1(p.Point)
	if p.At != nil {
		return phrase("given.point", "point", point)
	}
	if len(p.Places) == 1 && p.Places[0].Centre != nil {
		return phrase("placed.centre", "point", point, "circle", s.curveName(p.Places[0].Centre))
	}
	places := s.tellPlace(p.Places[0], made)
	for _, place := range p.Places[1:] {
		places = phrase("series", "a", places, "b", s.tellPlace(place, made))
	}
	return phrase("placed", "point", point, "places", places)
}

func (s *scope) tellPlace(p *syntax.Place, made bool) program.Saying {
	switch {
	case p.On != nil && p.OnAngle != nil && made:
		return phrase("place.on.at", "line", s.curveName(p.On), "angle", s.tellAngle(p.OnAngle))
	case p.On != nil:
		return phrase("place.on", "line", s.curveName(p.On))
	case p.Inside != nil:
		return phrase("inside", "area", s.curveName(p.Inside))
	case p.Outside != nil:
		return phrase("outside", "area", s.curveName(p.Outside))
	case p.Cond != nil:
		return s.tellCond(p.Cond)
	case p.Bearing != nil:
		return phrase("place.bearing", "length", s.tellLength(p.Distance), "from", s.curveName(p.From), "angle", s.tellAngle(p.Bearing), "to", s.curveName(p.To))
	case p.Towards != nil:
		return phrase("place.towards", "length", s.tellLength(p.Distance), "from", s.curveName(p.From), "point", s.letters1(p.Towards))
	}
	return phrase("place.from", "length", s.tellLength(p.Distance), "from", s.curveName(p.From))
}
