package check

import (
	"strings"

	"trammel/lang/program"
	"trammel/lang/syntax"
)

// told is what is to be said of a statement that has been expanded. There is a
// row here for each family that is an act.
func (s *scope) told(st *syntax.Statement) (program.ActKind, program.Saying) {
	switch {
	case st.Given != nil:
		return program.Giving, s.tellGiven(st.Given)
	case st.Take != nil && s.isTwin(st.Take.Point):
		return program.Giving, nil // it is on the paper
	case st.Mark != nil:
		return program.Marking, s.tellMark(st.Mark)
	case st.Claim != nil:
		return program.Stating, s.tellRelation(st.Claim.Relation)
	}
	return program.Doing, s.tellAct(st)
}

func (s *scope) tellAct(st *syntax.Statement) program.Saying {
	switch {
	case st.Take != nil:
		return phrase("take", "point", s.tellPlaced(st.Take.Point, true))
	case st.Arc != nil:
		return s.tellArc(st.Arc)
	case st.Circle != nil:
		return s.tellCircle(st.Circle)
	case st.Line != nil:
		l := st.Line
		return phrase("line", "name", s.curveName(l.Name), "a", s.letters1(l.A), "b", s.letters1(l.B), "cuts", s.tellCuts("line", l.Cuts))
	case st.Ray != nil:
		return phrase("ray", "name", s.letters1(st.Ray.Points), "cuts", s.tellCuts("ray", st.Ray.Cuts))
	case st.Join != nil:
		return s.tellJoin(st.Join)
	case st.Produce != nil:
		return s.tellProduce(st.Produce)
	case st.StepOff != nil:
		return s.tellStepOff(st.StepOff)
	case st.Locus != nil:
		return s.tellLocus(st.Locus)
	case st.Shade != nil:
		return s.tellShade(st.Shade)
	case st.Named.Meets != nil:
		return s.tellMeeting(st.Named)
	}
	return s.tellCall(st.Named)
}

// phrase is a message with its places filled: a name, a saying, and so on.
func phrase(key string, with ...any) program.Phrase {
	p := program.Phrase{Key: key, With: program.With{}}
	for i := 0; i < len(with); i += 2 {
		p.With[with[i].(string)] = with[i+1].(program.Saying)
	}
	return p
}

// nothing is said where an optional part is missing.
const nothing = program.Text("")

// letters1 is a run of points by their letters: AB.
func (s *scope) letters1(r *syntax.Ref) program.Saying {
	var out program.Letters
	for _, p := range r.Points {
		names, _ := s.family(p.Name, p.Index)
		for _, name := range names {
			if slot, ok := s.names[name]; ok {
				out = append(out, slot)
			}
		}
	}
	return out
}

// curveName is what a reference to a line, circle or run is called.
func (s *scope) curveName(r *syntax.Ref) program.Saying {
	if r.Name == "" {
		return s.letters1(r)
	}
	name, _ := s.indexed(r.Name, r.Index)
	if slot, ok := s.names[name]; ok {
		s.speakOf(slot)
		return program.CurveName(slot)
	}
	return program.Text(name)
}

// speakOf notes that a caption needs a name for a curve that is there. It gives an
// arc its name back that is spoken of after another was struck about its centre.
func (s *scope) speakOf(slot int) {
	if ink := s.slot(slot).Ink; ink != nil && ink.Step < len(s.c.prog.Acts)-1 {
		s.c.spoken[slot] = true
	}
	if centre := s.centre(slot); s.slot(slot).Told && s.c.latest[s.c.hand.point(centre)] != slot {
		s.c.named[slot] = true
	}
}

// byName is everything that a scope has a name for, for the places of a text.
func (s *scope) byName() program.With {
	with := program.With{}
	for name, slot := range s.names {
		with[name] = s.thingName(slot)
	}
	for name, value := range s.consts {
		with[name] = numeral(value)
	}
	return with
}

func (s *scope) thingName(slot int) program.Saying {
	if k := s.slot(slot).Kind; k == program.Line || k == program.Circle || k == program.Rim {
		return program.CurveName(slot)
	}
	return program.Letters{slot}
}

func (s *scope) tellArc(a *syntax.Arc) program.Saying {
	curve := s.curveName(a.Name)
	if slot, ok := curve.(program.CurveName); ok {
		s.slot(int(slot)).Told = true
		s.c.latest[s.c.hand.point(s.centre(int(slot)))] = int(slot)
	}
	centre, cuts := s.letters1(a.Centre), s.tellCuts("arc", a.Cuts)
	switch {
	case a.From != nil:
		return phrase("arc.part", "centre", centre, "from", s.letters1(a.From), "to", s.letters1(a.To), "cuts", cuts)
	case a.Through != nil:
		return phrase("arc.through", "centre", centre, "point", s.letters1(a.Through), "name", curve, "cuts", cuts)
	}
	return phrase("arc", "centre", centre, "radius", s.tellOpening(&a.Opening), "name", curve, "cuts", cuts)
}

func (s *scope) tellCircle(c *syntax.Circle) program.Saying {
	centre, name, cuts := s.letters1(c.Centre), s.curveName(c.Name), s.tellCuts("circle", c.Cuts)
	if c.Through != nil {
		return phrase("circle.through", "centre", centre, "point", s.letters1(c.Through), "name", name, "cuts", cuts)
	}
	return phrase("circle", "centre", centre, "radius", s.tellOpening(&c.Opening), "name", name, "cuts", cuts)
}

// tellOpening is such as: any radius, radius AB, the same radius.
func (s *scope) tellOpening(o *syntax.Opening) program.Saying {
	if !o.Any {
		return s.tellRadius(o.Radius)
	}
	var bounds program.List
	for _, b := range o.Bounds {
		key := "under"
		if b.Over {
			key = "over"
		}
		bounds = append(bounds, phrase("radius."+key, "length", s.tellLength(b.Than)))
	}
	if len(bounds) == 0 {
		return phrase("radius.any")
	}
	return phrase("radius.bounded", "bounds", bounds)
}

func (s *scope) tellRadius(e *syntax.Expr) program.Saying {
	r := plainExpr(e)
	if r == nil || r.Name == "" {
		return radiusSaid(s.tellLength(e))
	}
	name, _ := s.indexed(r.Name, r.Index)
	slot, ok := s.names[name]
	switch {
	case !ok:
		return radiusSaid(s.tellLength(e))
	case s.slot(slot).Kind != program.Circle:
		return phrase("radius", "length", s.refSaid(r))
	case s.c.hand.kept:
		return phrase("radius.same")
	}
	return phrase("radius.of", "curve", s.curveName(r))
}

// radiusSaid is an opening of a length: half of one takes other words in some languages, and the
// sum and the difference of two radii in all.
func radiusSaid(length program.Saying) program.Saying {
	said, _ := length.(program.Phrase)
	a, b := radiusOf(said.With["a"]), radiusOf(said.With["b"])
	switch {
	case said.Key == "half":
		return phrase("radius.half", "a", said.With["a"])
	case said.Key == "plus" && a != nil && b != nil:
		return phrase("radius.sum", "a", a, "b", b)
	case said.Key == "minus" && a != nil && b != nil:
		return phrase("radius.difference", "a", a, "b", b)
	}
	return phrase("radius", "length", length)
}

// radiusOf is the curve of which a length is said to be the radius, or nil.
func radiusOf(length program.Saying) program.Saying {
	if said, ok := length.(program.Phrase); ok && said.Key == "radius.value" {
		return said.With["curve"]
	}
	return nil
}

// tellCuts is what an act cuts on its way; of is the word for what it draws.
func (s *scope) tellCuts(of string, c *syntax.Cuts) program.Saying {
	if c == nil {
		return nothing
	}
	var all program.List
	for _, m := range c.Meets {
		all = append(all, phrase("cut", "curve", s.curveName(m.With), "points", s.tellPicks(m.Picks)))
	}
	return phrase("cuts."+of, "cuts", all)
}

func (s *scope) tellPicks(picks []*syntax.Pick) program.Saying {
	var all program.List
	for _, p := range picks {
		all = append(all, phrase("pick", "point", s.letters1(p.Point), "which", s.tellConds(p.Conds)))
	}
	return all
}

// tellConds is the phrases that tell one place from another, one after the other.
func (s *scope) tellConds(conds []*syntax.Cond) program.Saying {
	var said program.Saying = nothing
	for i := len(conds) - 1; i >= 0; i-- {
		said = phrase("which", "first", s.tellCond(conds[i]), "rest", said)
	}
	return said
}

func (s *scope) tellCond(c *syntax.Cond) program.Saying {
	switch {
	case c.Of != nil:
		return phrase(c.Word, "line", s.curveName(c.Of))
	case c.SideOf != nil && c.Left:
		return phrase("left", "line", s.curveName(c.SideOf))
	case c.SideOf != nil:
		return phrase("right", "line", s.curveName(c.SideOf))
	case c.Same != nil:
		return phrase("sameside", "line", s.curveName(c.Same), "point", s.letters1(c.As))
	case c.Other != nil:
		return phrase("otherside", "line", s.curveName(c.Other), "point", s.letters1(c.From))
	case c.Than != nil:
		return phrase("otherthan", "point", s.letters1(c.Than))
	case c.Nearest != nil:
		return phrase("nearest", "point", s.letters1(c.Nearest))
	case c.Farthest != nil:
		return phrase("farthest", "point", s.letters1(c.Farthest))
	case c.Between != nil:
		return phrase("between", "a", s.letters1(c.Between), "b", s.letters1(c.And))
	}
	return phrase("beyond", "point", s.letters1(c.Beyond), "line", s.curveName(c.On))
}

// tellMeeting names where two drawn curves meet.
func (s *scope) tellMeeting(n *syntax.Named) program.Saying {
	m := n.Meets.Meets[0]
	if len(n.Meets.Meets) > 1 {
		return phrase("meet.several", "curve", s.curveName(n.Names[0]), "cuts", s.tellCuts("meet", n.Meets))
	}
	curves := program.CurveNames{s.curveName(n.Names[0]), s.curveName(m.With)}
	if len(m.Picks) == 1 {
		return phrase(meetKey(m.Picks[0].Conds), "point", s.letters1(m.Picks[0].Point), "curves", curves, "which", s.tellConds(m.Picks[0].Conds))
	}
	return phrase("meet.both", "points", s.tellPicks(m.Picks), "curves", curves)
}

// meetKey tells a meeting that is one of two by comparison from one by its side.
func meetKey(conds []*syntax.Cond) string {
	if len(conds) == 1 && (conds[0].Nearest != nil || conds[0].Farthest != nil || conds[0].Than != nil) {
		return "meet.one"
	}
	return "meet"
}

// tellCall is a construction's own sentence, and what it gives.
func (s *scope) tellCall(n *syntax.Named) program.Saying {
	var results program.List
	for _, r := range n.Names {
		if r.Name == "" {
			results = append(results, s.tellFamily(r))
		} else if r.Index != nil && r.Index.To != nil {
			results = append(results, program.Text(s.span(r.Node).Text()))
		} else {
			results = append(results, s.curveName(r))
		}
	}
	def := s.find(n.By.Name, n.Node)
	words := program.Words{With: program.With{}}
	if s.c.library[n.By.Name] == def {
		words.Key = "library." + n.By.Name
	}
	for _, st := range def.node.Body {
		if st.Sentence != nil {
			words.Text = st.Sentence.Text
		}
	}
	for i, p := range def.node.Params {
		words.With[strings.TrimSpace(p.Name.Span(def.file).Text())] = s.tellArgument(n.By.Args[i])
	}
	if words.Text == "" {
		return phrase("call.unsaid", "name", program.Text(n.By.Name), "results", results)
	}
	return phrase("call", "sentence", words, "results", results)
}

func (s *scope) tellArgument(e *syntax.Expr) program.Saying {
	if r := plainExpr(e); r != nil {
		if n := r.Name; n != "" {
			if c, ok := s.consts[n]; ok {
				return numeral(c)
			}
			if slot, ok := s.names[n]; ok && s.c.chose[slot] != nil {
				return s.c.chose[slot]
			}
		}
		return s.curveName(r)
	}
	return s.tellExpr(e)
}
