package check

import (
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// longRun is the most straights of a run that are told one by one.
const longRun = 4

// tellJoin is such as: Join A to B, B to C and C to A.
func (s *scope) tellJoin(j *syntax.Join) program.Saying {
	var pairs, runs program.List
	for _, r := range j.Runs {
		ps, _ := s.letters1(r).(program.Letters)
		var points program.List
		for i, p := range ps {
			points = append(points, program.Letters{p})
			if i > 0 {
				pairs = append(pairs, phrase("join.pair", "a", program.Letters{ps[i-1]}, "b", program.Letters{p}))
			}
		}
		runs = append(runs, phrase("join.turn", "points", inShort(points)))
	}
	if len(pairs) > longRun && len(j.Runs) == 1 {
		return phrase("join.run", "points", runs[0])
	}
	return phrase("join", "pairs", pairs, "cuts", s.tellCuts("join", j.Cuts))
}

// inShort leaves the middle of a long list to the reader.
func inShort(all program.List) program.List {
	const most = 9
	if len(all) <= most {
		return all
	}
	return append(append(program.List{}, all[:3]...), program.Text("…"), all[len(all)-2], all[len(all)-1])
}

func (s *scope) tellProduce(p *syntax.Produce) program.Saying {
	line, beyond := s.letters1(p.Straight), s.letters1(p.Beyond)
	switch {
	case p.Meet != nil:
		return phrase("produce.meet", "line", line, "end", beyond, "curve", s.curveName(p.Meet.With), "points", s.tellPicks(p.Meet.Picks))
	case p.By != nil && p.End != nil:
		return phrase("produce.to", "line", line, "end", beyond, "length", s.tellLength(p.By), "point", s.letters1(p.End))
	case p.By != nil:
		return phrase("produce.by", "line", line, "end", beyond, "length", s.tellLength(p.By))
	}
	return phrase("produce", "line", line, "end", beyond)
}

func (s *scope) tellStepOff(o *syntax.StepOff) program.Saying {
	key := "stepoff"
	if c, ok := s.curveName(o.On).(program.CurveName); ok && s.slot(int(c)).Kind == program.Circle {
		key = "stepoff.round"
	}
	return phrase(key, "from", s.letters1(o.From), "radius", s.tellOpening(&o.Opening), "points", s.tellFamily(o.Points), "curve", s.curveName(o.On))
}

// tellFamily is such as: P1, P2 and P3; or P1 to P9.
func (s *scope) tellFamily(r *syntax.Ref) program.Saying {
	ps, _ := s.letters1(r).(program.Letters)
	if len(ps) > longRun {
		return phrase("range", "first", program.Letters{ps[0]}, "last", program.Letters{ps[len(ps)-1]})
	}
	var all program.List
	for _, p := range ps {
		all = append(all, program.Letters{p})
	}
	return all
}

func (s *scope) tellLocus(l *syntax.Locus) program.Saying {
	var names program.List
	for _, r := range l.Names {
		names = append(names, s.curveName(r))
	}
	if l.One != nil {
		return phrase("locus.equal", "names", names, "a", s.curveName(l.One), "b", s.curveName(l.Other))
	}
	return phrase("locus", "names", names, "length", s.tellLength(l.Distance), "from", s.curveName(l.From))
}

func (s *scope) tellShade(h *syntax.Shade) program.Saying {
	switch {
	case h.Sector:
		return phrase("shade.sector", "area", s.letters1(h.What))
	case h.What != nil && h.What.Name != "":
		return phrase("shade.circle", "circle", s.curveName(h.What))
	case h.What != nil:
		return phrase("shade.polygon", "area", s.letters1(h.What))
	}
	var all program.List
	for _, w := range h.Where {
		all = append(all, s.tellWhere(w))
	}
	return phrase("hatch", "where", all)
}

func (s *scope) tellWhere(w *syntax.Where) program.Saying {
	switch {
	case w.Nearer != nil:
		return phrase("where.nearer", "a", s.curveName(w.Nearer), "b", s.curveName(w.Than))
	case w.Distance != nil && w.Over:
		return phrase("where.over", "length", s.tellLength(w.Distance), "from", s.curveName(w.From))
	case w.Distance != nil:
		return phrase("where.under", "length", s.tellLength(w.Distance), "from", s.curveName(w.From))
	case w.Inside != nil:
		return phrase("inside", "area", s.curveName(w.Inside))
	case w.Outside != nil:
		return phrase("outside", "area", s.curveName(w.Outside))
	}
	return s.tellCond(w.Side)
}
