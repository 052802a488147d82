package check

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"trammel/lang/program"
	"trammel/lang/syntax"
)

// refusal says that something does not hold that a construction needs: why it
// does not is known when the program runs. Of known numbers it is known before,
// and there is no state.
type refusal func(st *program.State, why string) string

// refusal words a need in the caller's letters: P is 2.00 cm from m, and erect
// needs P on m.
func (in *scope) refusal(def *definition, n *syntax.Needs) refusal {
	name := def.node.Name
	if n.Words != "" {
		said := in.spoken(n.Words)
		return func(*program.State, string) string { return fmt.Sprintf("%s needs %s", name, said) }
	}
	if n.Relation.Not {
		is, not := in.denied(n.Relation)
		return func(*program.State, string) string { return fmt.Sprintf("%s, and %s needs %s", is, name, not) }
	}
	wanted := in.condition(n.Relation)
	return func(_ *program.State, why string) string {
		return fmt.Sprintf("%s, and %s needs %s", why, name, wanted)
	}
}

// condition is the end of: A and B are one and the same place, and middle needs …
func (in *scope) condition(r *syntax.Relation) string {
	if in.placesApart(r) {
		return "different ones"
	}
	if len(r.Chain) == 1 && moreOrLess[r.Chain[0].Op] != "" {
		return "it to be " + moreOrLess[r.Chain[0].Op]
	}
	return in.theirs(in.span(r.Node).Text())
}

// moreOrLess is what a side must be beside the other.
var moreOrLess = map[string]string{">": "more", "<": "less", "≥": "as much at least", "≤": "as much at most"}

// spoken is a text of a construction with what the caller gives in its places {P}.
func (in *scope) spoken(text string) string {
	return placeShape.ReplaceAllStringFunc(text, func(place string) string { return in.theirs(strings.Trim(place, "{}")) })
}

// mending is what the caller can do where a need does not hold.
func (in *scope) mending(n *syntax.Needs) string {
	switch {
	case n.Else != "":
		return in.spoken(n.Else)
	case in.placesApart(n.Relation):
		return "name another point, or move one of the two"
	case n.Relation.Not && n.Relation.Collinear != nil:
		return "move one of them off the line of the others"
	}
	return ""
}

// placesAreParams reports a {X} in the words of a need that no caller gives.
func (in *scope) placesAreParams(def *definition, n *syntax.Needs) {
	for _, place := range placeShape.FindAllString(n.Words+n.Else, -1) {
		if !def.takes(strings.Trim(place, "{}")) {
			in.fail(n.Node, "%s stands for no parameter of %s", place, def.node.Name).Help = "it reads: " + head(def)
		}
	}
}

// denied is what must not hold, as a sentence, and the end of one.
func (in *scope) denied(r *syntax.Relation) (is, not string) {
	text := func(n syntax.Node) string { return in.theirs(in.span(n).Text()) }
	switch {
	case r.Collinear != nil:
		return in.listed(r.Collinear) + " lie on one straight line", "them not to"
	case r.Concyclic != nil:
		return in.listed(r.Concyclic) + " lie on one circle", "them not to"
	case r.On != nil:
		return text(r.Left.Node) + " lies on " + text(r.On.Node), "it not to"
	case len(r.Parallel) > 0:
		return text(r.Left.Node) + " is parallel to " + text(r.Parallel[0].Node), "it not to be"
	case r.Inside != nil:
		return text(r.Left.Node) + " lies inside " + text(r.Inside.Node), "it not to"
	case r.Outside != nil:
		return text(r.Left.Node) + " lies outside " + text(r.Outside.Node), "it not to"
	case r.Touches != nil:
		return text(r.Left.Node) + " " + text(r.Touches.Node), "it not to"
	}
	return strings.TrimSpace(strings.TrimPrefix(text(r.Node), "not")), "this not to be so"
}

// listed is: P, Q and R
func (in *scope) listed(r *syntax.Ref) string {
	var names []string
	for _, p := range r.Points {
		names = append(names, in.theirs(in.span(p.Node).Text()))
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

// placesApart tells the need that points are different places.
func (in *scope) placesApart(r *syntax.Relation) bool {
	return len(r.Chain) == 1 && r.Chain[0].Op == "≠" && plainRef(r.Left) != nil && len(plainRef(r.Left).Points) == 1
}

var (
	placeShape = regexp.MustCompile(`\{[^{}]*\}`)
	pointShape = regexp.MustCompile(`\p{Lu}\p{Nd}*['′]*`)
	thingShape = regexp.MustCompile(pointShape.String() + `|\p{Ll}\pL*\p{Nd}*['′]*`)
)

// nameIn tells whether a text speaks of a thing.
func nameIn(text, name string) bool {
	return slices.Contains(thingShape.FindAllString(text, -1), name)
}

// theirs is a text of a construction with the caller's names for its parameters,
// where those are names.
func (in *scope) theirs(text string) string {
	return thingShape.ReplaceAllStringFunc(text, func(name string) string {
		if theirs, ok := in.callers[name]; ok {
			return theirs
		}
		return name
	})
}

// words are a node's own, or in what a construction needs the caller's.
func (s *scope) words(n syntax.Node) string {
	if !s.needing {
		return s.span(n).Text()
	}
	return s.theirs(s.span(n).Text())
}

// callName notes what the caller calls a parameter: by its name, or by the number or
// sum that is given for it.
func (in *scope) callName(name string, arg *syntax.Expr, caller *scope) {
	text := caller.theirs(caller.span(arg.Node).Text())
	if r := plainExpr(arg); r != nil {
		text = caller.theirs(caller.span(r.Node).Text())
	} else if len(arg.Tail) > 0 || len(arg.Head.Tail) > 0 {
		text = "(" + text + ")"
	}
	in.callers[name] = text
}
