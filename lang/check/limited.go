package check

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"

	"trammel/geom"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// limited is a need that bounds one parameter, such as a > 0 or a > half AC: the
// argument is blamed, whose name inside would say nothing to the caller.
type limited struct {
	construction string
	param        int
	limit        string // more than 0
	name         string
}

// limited is that of a need, or nil.
func (in *scope) limited(def *definition, n *syntax.Needs) *limited {
	r := n.Relation
	if n.Words != "" || r.Not || len(r.Chain) != 1 || moreOrLess[r.Chain[0].Op] == "" {
		return nil
	}
	left, right := plainRef(r.Left), r.Chain[0].Right
	if left == nil || left.Name == "" {
		return nil
	}
	for i, p := range def.node.Params {
		if p.Name.Name == left.Name {
			limit := limits[r.Chain[0].Op] + " " + in.theirs(in.span(right.Node).Text())
			return &limited{def.node.Name, i, limit, left.Name}
		}
	}
	return nil
}

// limits are the comparisons in words, before a number.
var limits = map[string]string{">": "more than", "<": "less than", "≥": "at least", "≤": "at most"}

// numberShape is what is a number as it stands.
var numberShape = regexp.MustCompile(`^-?[\d.]+(/\d+)?$`)

// refusal words it: mean needs more than 0 here, and this is −2.00 cm.
func (l *limited) refusal(in *scope) refusal {
	slot, number := in.names[l.name], in.consts[l.name]
	return func(st *program.State, _ string) string {
		is := in.measured(st, slot, number)
		if typed := in.callers[l.name]; numberShape.MatchString(typed) {
			is = strings.Replace(typed, "-", "−", 1)
		}
		return fmt.Sprintf("%s needs %s here, and this is %s", l.construction, l.limit, is)
	}
}

// measured is what the caller gives for a length, an angle or a number.
func (in *scope) measured(st *program.State, slot int, number *big.Rat) string {
	switch {
	case number != nil:
		return geom.TrimZeros(number.RatString())
	case in.slot(slot).Kind == program.Size:
		return st.Angle(slot).String()
	case in.slot(slot).Kind == program.Length:
		return st.Measure(1, st.Amount(slot).Float())
	}
	return st.Measure(0, st.Amount(slot).Float())
}

// unlike tells of known numbers that they do not compare as is needed: 2 is not
// more than 3.
func (in *scope) unlike(r *syntax.Relation) string {
	value := func(side *syntax.Side) string {
		if ref := plainRef(side); ref != nil && in.consts[ref.Name] != nil {
			return geom.TrimZeros(in.consts[ref.Name].RatString())
		}
		return in.theirs(in.span(side.Node).Text())
	}
	sides := append([]*syntax.Side{r.Left}, sidesOf(r.Chain)...)
	var links []string
	for i, op := range opsOf(r.Chain) {
		than := limits[op]
		switch op {
		case "=":
			than = "equal to"
		case "≠":
			than = "different from"
		}
		links = append(links, fmt.Sprintf("%s %s", than, value(sides[i+1])))
	}
	return value(sides[0]) + " is not " + strings.Join(links, ", and that ")
}
