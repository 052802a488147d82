package check

import (
	"math/big"
	"slices"
	"strings"

	"trammel/geom"
	"trammel/geom/figure"
	"trammel/geom/figure/locale"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// pencil changes how things that are drawn already look.
func (s *scope) pencil(p *syntax.Pencil) {
	for _, r := range p.What {
		if r.Name == "" && len(r.Points) > 1 {
			s.pencilRun(p, r)
			continue
		}
		if slot, ok := s.thing(r); ok {
			s.stroke(p.Verb, slot)
		}
	}
}

func (s *scope) stroke(verb string, slot int) {
	ink := s.slot(slot).Ink
	if ink == nil || s.view != shown && verb == "bold" {
		return
	}
	switch verb {
	case "hide":
		ink.Hidden = true
	case "faint":
		ink.Weight = figure.Faint
	case "bold":
		ink.Weight = figure.Bold
	case "dashed":
		ink.Dashed = true
	}
}

// pencilRun changes the straights from point to point of a run. A piece of a
// longer straight is drawn over when it is to be bold.
func (s *scope) pencilRun(p *syntax.Pencil, r *syntax.Ref) {
	ps, ok := s.run(r, 0)
	if !ok {
		return
	}
	for i := 0; i+1 < len(ps); i++ {
		a, b := ps[i], ps[i+1]
		if a == b {
			s.fail(r.Node, "%s is named twice in a row", s.slot(a).Name)
			continue
		}
		if drawn := s.straights[pairOf(a, b)]; len(drawn) > 0 {
			for _, slot := range drawn {
				s.stroke(p.Verb, slot)
			}
			continue
		}
		s.pencilPiece(p, r, a, b)
	}
}

func (s *scope) pencilPiece(p *syntax.Pencil, r *syntax.Ref, a, b int) {
	name := s.names2(a, b)
	if p.Verb != "bold" {
		prob := s.fail(r.Node, "%s is not drawn by itself", name)
		prob.Help = "join " + name + " first, or name the line it is part of"
		return
	}
	drawn := s.drawn(r.Node, a, b)
	slot := s.add(program.Line, r.Node)
	bars := len(s.bars)
	s.draw(slot, figure.Result)
	s.bars = s.bars[:bars]
	s.slot(slot).Ink.Weight = figure.Bold
	s.prove(r.Node, func(st *program.State) error {
		if err := drawn(st); err != nil {
			return err
		}
		pa, pb := st.Point(a), st.Point(b)
		if pa.Equal(pb) {
			return sameSpot(st, a, b)
		}
		str := geom.Join(pa, pb)
		st.Set(slot, &program.Curve{Straight: &str, Used: []geom.Point{pa, pb}})
		return nil
	})
}

// unit says how long a unit is on paper.
func (s *scope) unit(u *syntax.Unit) {
	if s.c.unitSet {
		s.fail(u.Node, "the unit is given twice")
		return
	}
	if len(s.c.prog.Steps) > 0 {
		s.fail(u.Node, "the unit comes after something is drawn").Help = "put it under the figure line"
		return
	}
	s.c.unitSet = true
	mm, ok := s.millimetres(u.Size, "the unit")
	if !ok {
		return
	}
	if mm.Cmp(big.NewRat(1, 10)) < 0 || mm.Cmp(big.NewRat(1000, 1)) > 0 {
		s.fail(u.Size.Node, "a unit lies between 0.1 mm and 1000 mm")
		return
	}
	s.c.prog.Unit = mm
}

// millimetres is a length of paper, which must name its unit.
func (s *scope) millimetres(e *syntax.Expr, what string) (*big.Rat, bool) {
	v, ok := s.expr(e, wantLength)
	if !ok {
		return nil, false
	}
	if v.bare || v.rat == nil {
		s.fail(e.Node, "%s wants mm or cm", what).Help = "such as 8 mm or 1 cm"
		return nil, false
	}
	mm := new(big.Rat).Mul(v.rat, s.c.prog.Unit)
	if mm.Sign() <= 0 {
		s.fail(e.Node, "%s must be more than 0", what)
		return nil, false
	}
	return mm, true
}

// sheets are the paper sizes of ISO 216, and the North American ones, upright, in millimetres.
var sheets = map[string][2]*big.Rat{
	"a3": {rat(297, 1), rat(420, 1)}, "a4": {rat(210, 1), rat(297, 1)},
	"a5": {rat(148, 1), rat(210, 1)}, "a6": {rat(105, 1), rat(148, 1)},
	"letter": {rat(2159, 10), rat(2794, 10)}, "legal": {rat(2159, 10), rat(3556, 10)},
}

// paper fixes the sheet.
func (s *scope) paper(p *syntax.Paper) {
	if s.c.prog.Paper != nil {
		s.fail(p.Node, "the paper is given twice")
		return
	}
	if p.Name == "" {
		w, ok1 := s.millimetres(p.Width, "paper")
		h, ok2 := s.millimetres(p.Height, "paper")
		limit := big.NewRat(2000, 1)
		if ok1 && ok2 && (w.Cmp(limit) > 0 || h.Cmp(limit) > 0) {
			s.fail(p.Node, "paper is at most 2000 mm long and wide")
			return
		}
		if ok1 && ok2 {
			s.c.prog.Paper = &figure.Paper{Width: w, Height: h}
		}
		return
	}
	sheet, ok := sheets[strings.ToLower(p.Name)]
	if !ok {
		s.fail(p.Node, "there is no paper called %s here", p.Name).Help = "a3, a4, a5, a6, letter and legal, or: paper 120 mm by 80 mm"
		return
	}
	w, h := sheet[0], sheet[1]
	if p.Turn == "landscape" {
		w, h = h, w
	}
	s.c.prog.Paper = &figure.Paper{Width: w, Height: h}
}

func (s *scope) theme(t *syntax.Theme) {
	switch {
	case s.c.prog.Theme != "":
		s.fail(t.Node, "the theme is given twice")
	case !slices.Contains(figure.Themes, t.Name):
		s.fail(t.Node, "there is no theme called %s here", t.Name).Help = "the themes are " + strings.Join(figure.Themes, ", ")
	default:
		s.c.prog.Theme = t.Name
	}
}

// language says how numbers are written, and in what language the figure speaks.
func (s *scope) language(l *syntax.Language) {
	known, err := locale.Find(l.Tag)
	switch {
	case s.c.prog.Language != "":
		s.fail(l.Node, "the language is given twice")
	case err != nil:
		s.fail(l.Node, "there is no language called %s here", l.Tag).Help = "the languages are " + strings.Join(locale.Tags(), ", ")
	default:
		s.c.prog.Language = known.Tag
	}
}
