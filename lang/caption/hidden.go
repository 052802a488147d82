package caption

import (
	"maps"
	"slices"

	"trammel/lang/program"
)

// What does not show on the paper is not told either, as far as the sense allows.

// shown is a phrase without what is hidden of the things that it makes.
func (t *teller) shown(s program.Phrase) program.Phrase {
	switch s.Key {
	case "call":
		return t.shownOf(s, "results", program.Phrase{Key: "call.none", With: s.With})
	case "locus", "locus.equal":
		return t.shownOf(s, "names", program.Phrase{Key: s.Key + ".bare", With: s.With})
	case "ray":
		if run := s.With["name"].(program.Letters); len(run) == 2 && !t.shows(run[1:]) {
			return program.Phrase{Key: "ray.from", With: program.With{"name": run, "from": run[:1], "cuts": s.With["cuts"]}}
		}
	}
	return s
}

// nameless tells that a thing is a curve without a letter.
func (t *teller) nameless(s program.Saying) bool {
	c, ok := s.(program.CurveName)
	return ok && t.slot(int(c)).Called == ""
}

// shownOf leaves the hidden and nameless things of a list out; where all are, none stands for
// the phrase.
func (t *teller) shownOf(s program.Phrase, place string, none program.Phrase) program.Phrase {
	list := slices.DeleteFunc(flat(s.With[place]), func(x program.Saying) bool { return !t.shows(x) || t.nameless(x) })
	if len(list) == 0 {
		return none
	}
	with := maps.Clone(s.With)
	with[place] = list
	return program.Phrase{Key: s.Key, With: with}
}

// flat is a list without lists in it.
func flat(s program.Saying) program.List {
	list, ok := s.(program.List)
	if !ok {
		return program.List{s}
	}
	var out program.List
	for _, x := range list {
		out = append(out, flat(x)...)
	}
	return out
}

// visible is a given as far as it shows.
func (t *teller) visible(said program.Saying) program.Saying {
	item, ok := said.(program.Phrase)
	if !ok {
		return nil
	}
	if item.Key == "given.line.two" {
		a, b := t.shows(item.With["a"]), t.shows(item.With["b"])
		switch {
		case !a && !b:
			return program.Phrase{Key: "given.line", With: item.With}
		case !a || !b:
			on := item.With["a"]
			if b {
				on = item.With["b"]
			}
			return program.Phrase{Key: "given.line.one", With: program.With{"name": item.With["name"], "point": on}}
		}
	}
	if centre, has := item.With["centre"]; has && item.Key != "placed.centre" && !t.shows(centre) {
		item = program.Phrase{Key: "given.circle", With: item.With}
	}
	if item.Key == "placed" && t.say(item.With["places"], "") == "" {
		item = program.Phrase{Key: "given.point", With: item.With}
	}
	for _, place := range []string{"point", "name"} {
		if thing, has := item.With[place]; has && !t.shows(thing) {
			return nil
		}
	}
	return item
}

// shows tells whether a thing is on the paper.
func (t *teller) shows(s program.Saying) bool {
	slot := -1
	switch s := s.(type) {
	case program.Letters:
		if len(s) > 0 {
			slot = s[0]
		}
	case program.CurveName:
		slot = int(s)
	}
	if slot < 0 {
		return true
	}
	ink := t.slot(slot).Ink
	return ink == nil || !ink.Hidden
}

// pair is two phrases that say where a thing is; what leans on a hidden point
// tells the reader nothing and is left out.
func (t *teller) pair(s program.Phrase, a, b, kase string) string {
	first, second := t.where(s.With[a], kase), t.where(s.With[b], kase)
	if first == "" || second == "" {
		return first + second
	}
	return t.fill(s.Key, texts{a: first, b: second})
}

func (t *teller) where(s program.Saying, kase string) string {
	if p, ok := s.(program.Phrase); ok && p.Key != "series" && p.Key != "which" && t.leansOnHidden(p) {
		return ""
	}
	return t.say(s, kase)
}

// leansOnHidden tells whether a saying names a point that does not show.
func (t *teller) leansOnHidden(s program.Saying) bool {
	switch s := s.(type) {
	case program.Letters:
		return slices.ContainsFunc(s, func(slot int) bool { return !t.shows(program.Letters{slot}) })
	case program.List:
		return slices.ContainsFunc(s, t.leansOnHidden)
	case program.Phrase:
		for _, with := range s.With {
			if t.leansOnHidden(with) {
				return true
			}
		}
	}
	return false
}
