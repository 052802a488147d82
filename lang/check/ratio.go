package check

import (
	"math/big"
	"strconv"
	"strings"
	"unicode/utf8"

	"trammel/geom"
	"trammel/lang/program"
)

// ratioAnswer is the ratio of two angles, a number, or of three values and more:
// 6 : 5 : 4.
func (s *scope) ratioAnswer(terms []expr) (program.Answer, bool) {
	if !s.ratioTerms(terms) {
		return program.Answer{}, false
	}
	return program.Answer{Value: func(st *program.State) (program.Value, error) {
		if len(terms) == 2 {
			q, err := s.parts(st, terms, 1)
			if err != nil {
				return program.Value{}, err
			}
			return program.Value{Exact: q[0].text, Decimal: q[0].decimal, Rough: q[0].rough}, nil
		}
		best, err := s.plainest(st, terms)
		if err != nil {
			return program.Value{}, err
		}
		out := program.Value{Decimal: joined(best, func(p part) string { return p.decimal })}
		out.Measured = joined(best, func(p part) string { return geom.TrimZeros(geom.Significant(p.rough)) })
		if written(best) {
			out.Exact = joined(best, func(p part) string { return p.text })
		}
		return out, nil
	}}, true
}

// part is a term of a ratio, measured by another; its text is "" where it has
// no short exact form.
type part struct {
	text, decimal string
	rough         float64
}

func joined(all []part, text func(part) string) string {
	var words []string
	for _, p := range all {
		words = append(words, text(p))
	}
	return strings.Join(words, " : ")
}

// written tells whether all parts have an exact form.
func written(all []part) bool {
	for _, p := range all {
		if p.text == "" {
			return false
		}
	}
	return true
}

// plainest is a ratio as a book writes it: in the smallest whole numbers, or
// measured by that term which makes it shortest. By a sum with π in it nothing
// can be measured.
func (s *scope) plainest(st *program.State, terms []expr) (best []part, err error) {
	for by, e := range terms {
		if roughly(st, e) == 0 {
			return nil, &program.Fault{Text: "a ratio has no term 0, and " + s.span(e.node).Text() + " is 0"}
		}
		all, fault := s.parts(st, terms, by)
		if fault != nil {
			err = fault
			continue
		}
		if whole := wholes(all); whole != nil {
			return whole, nil
		}
		if best == nil || written(all) && (!written(best) || length(all) < length(best)) {
			best = all
		}
	}
	if best != nil {
		err = nil
	}
	return best, err
}

func length(all []part) int {
	return utf8.RuneCountInString(joined(all, func(p part) string { return p.text }))
}

// wholes are fractions as the smallest whole numbers in their ratio, or nil.
func wholes(all []part) []part {
	var fractions []*big.Rat
	common, shared := big.NewInt(1), new(big.Int)
	for _, p := range all {
		r, ok := new(big.Rat).SetString(strings.Replace(p.text, "−", "-", 1))
		if !ok {
			return nil
		}
		fractions = append(fractions, r)
		common.Mul(common, new(big.Int).Quo(r.Denom(), new(big.Int).GCD(nil, nil, common, r.Denom())))
	}
	for _, r := range fractions {
		r.Mul(r, new(big.Rat).SetInt(common))
		shared.GCD(nil, nil, shared, new(big.Int).Abs(r.Num()))
	}
	var out []part
	for _, r := range fractions {
		n := new(big.Int).Quo(r.Num(), shared)
		f, _ := new(big.Float).SetInt(n).Float64()
		out = append(out, part{geom.TrimZeros(n.String()), geom.TrimZeros(n.String()), f})
	}
	return out
}

// parts are the terms of a ratio, measured by one of them.
func (s *scope) parts(st *program.State, terms []expr, by int) (all []part, err error) {
	for _, e := range terms {
		var p part
		if e.angle {
			p, err = s.angleBy(st, e, terms[by])
		} else {
			p, err = s.amountBy(st, e, terms[by])
		}
		if err != nil {
			return nil, err
		}
		all = append(all, p)
	}
	return all, nil
}

func (s *scope) amountBy(st *program.State, e, by expr) (part, error) {
	x, err := s.over(e, by).value(st)
	if err != nil {
		return part{}, err
	}
	text, _ := x.Surd()
	return part{text, geom.TrimZeros(x.Decimal(decimals)), x.Float()}, nil
}

// mostParts is the greatest denominator that is looked for in a ratio of angles.
const mostParts = 60

// angleBy measures an angle by another. No form tells the ratio of two arcs:
// near fractions are tried.
func (s *scope) angleBy(st *program.State, e, by expr) (part, error) {
	x, err := e.size(st)
	if err != nil {
		return part{}, err
	}
	y, err := by.size(st)
	if err != nil {
		return part{}, err
	}
	if y.Float() == 0 {
		span := s.span(by.node)
		return part{}, &program.Fault{Text: "this divides by " + span.Text() + ", which is 0", Span: &span}
	}
	rough := x.Float() / y.Float()
	r, ok := ratioOfAngles(x, y, rough)
	if !ok {
		return part{"", geom.TrimZeros(strconv.FormatFloat(rough, 'f', decimals, 64)), rough}, nil
	}
	return part{geom.TrimZeros(r.RatString()), geom.TrimZeros(r.FloatString(decimals)), rough}, nil
}

func ratioOfAngles(x, y geom.Angle, rough float64) (*big.Rat, bool) {
	a, ok1 := x.Exact()
	b, ok2 := y.Exact()
	if ok1 && ok2 && b.Sign() != 0 {
		return new(big.Rat).Quo(a, b), true
	}
	for q := int64(1); q <= mostParts; q++ {
		n := rough * float64(q)
		p := int64(n + 0.5)
		if n < 0 || n-float64(p) > 1e-9 || float64(p)-n > 1e-9 {
			continue
		}
		r := big.NewRat(p, q)
		if c, err := x.Cmp(y.Mul(r)); err == nil && c == 0 {
			return r, true
		}
	}
	return nil, false
}
