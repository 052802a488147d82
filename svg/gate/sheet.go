package gate

import (
	"math"
	"slices"
	"strings"
)

// The layers that the items of a drawing lie in, by the class of their group.
const (
	shade  = "shade"
	dots   = "points"
	marks  = "marks"
	labels = "labels"
)

// sheet is a drawing that has been read.
type sheet struct {
	width, height                      float64
	curves, dots, marks, labels, hatch []*item
	live                               []string // words without an outline
}

func (s *sheet) add(i *item) {
	switch i.layer {
	case labels:
		s.labels = append(s.labels, i)
	case marks:
		s.marks = append(s.marks, i)
	case dots:
		s.dots = append(s.dots, i)
	case shade:
		s.hatch = append(s.hatch, i)
	default:
		s.curves = append(s.curves, i)
	}
}

// ink is all that a label must not touch. An area that is filled and has no
// stroke is ground.
func (s *sheet) ink() []*item {
	all := slices.Concat(s.curves, s.dots, s.marks)
	for _, h := range s.hatch {
		if h.half > 0 {
			all = append(all, h)
		}
	}
	return all
}

func (s *sheet) all() []*item { return slices.Concat(s.curves, s.dots, s.marks, s.hatch, s.labels) }

// claimants are what a label belongs to, and what it could be taken to belong to.
func (s *sheet) claimants(l *item) (own, rivals []*item) {
	list := s.curves
	switch {
	case l.what == "note" || l.of('p'):
		list = s.dots
	case l.what == "angle":
		list = s.marks
	}
	for _, i := range list {
		if slices.ContainsFunc(i.owners, func(o string) bool { return slices.Contains(l.owners, o) }) {
			own = append(own, i)
		}
	}
	for _, i := range list {
		if !slices.Contains(own, i) && !slices.ContainsFunc(own, i.sameAs) && !l.apart(i, own) {
			rivals = append(rivals, i)
		}
	}
	return own, rivals
}

// apart tells whether the size of an angle stands within its own and not
// within that of another mark, which no reader would then think of.
func (i *item) apart(mark *item, own []*item) bool {
	at := i.bounds().middle()
	return i.what == "angle" && !mark.spans(at) && slices.ContainsFunc(own, func(o *item) bool { return o.spans(at) })
}

// spans tells whether p lies within the angle that a square or an arc marks.
func (i *item) spans(p xy) bool {
	if i.round != nil {
		along := math.Atan2(p.y-i.round.c.y, p.x-i.round.c.x) - i.round.from
		if i.round.sweep < 0 {
			along = -along
		}
		return math.Mod(along+4*math.Pi, 2*math.Pi) <= math.Abs(i.round.sweep)
	}
	if i.what != "square" {
		return false
	}
	v := i.vertex()
	w := p.sub(v)
	return w.dot(i.corners[0].sub(v)) >= 0 && w.dot(i.corners[2].sub(v)) >= 0
}

// of tells whether the item is of a thing of that kind.
func (i *item) of(kind byte) bool {
	return len(i.owners) > 0 && i.owners[0][0] == kind
}

// sameAs tells whether i cannot be a rival of what is a label's own: dots at
// one place, parts of one curve, and lines that are lighter.
func (i *item) sameAs(own *item) bool {
	switch i.layer {
	case dots:
		return i.lines[0][0].dist(own.lines[0][0]) < meets
	case marks:
		return len(i.owners) == 0
	}
	return i.half < own.half || i.along(own)
}

// sort tells the kind from the things in a class: "arc a1" is an arc of a1.
func sort(class string) (what string, owners []string) {
	for _, word := range strings.Fields(class) {
		if len(word) > 1 && strings.Contains("pscba", word[:1]) && strings.Trim(word[1:], "0123456789") == "" {
			owners = append(owners, word)
		} else {
			what = word
		}
	}
	return what, owners
}
