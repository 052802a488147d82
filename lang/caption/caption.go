// Package caption tells the acts of a program in words: English, German, and
// whatever language has a file of messages here.
package caption

import (
	"fmt"
	"slices"
	"strings"

	"trammel/geom/figure/locale"
	"trammel/lang/program"
)

// Of tells each act of a program in a language, as its tag of BCP 47 names it;
// what has no messages is told in English. Givens that follow each other are
// told together, and so are reasons: the first has the caption, and those that go
// on under it have "".
func Of(p *program.Program, tag string) []string {
	style, err := locale.Find(tag)
	if err != nil {
		style = locale.English
	}
	t := &teller{p, messagesFor(tag), style}
	all := make([]string, len(p.Acts))
	for i := 0; i < len(p.Acts); {
		n := together(p.Acts[i:])
		all[i] = t.acts(p.Acts[i : i+n])
		i += n
	}
	return all
}

// Languages are the tags of the languages that there are messages for.
func Languages() []string { return slices.Clone(languages) }

// together is how many acts are told as one.
func together(acts []program.Act) int {
	n := 1
	for n < len(acts) {
		switch a := acts[n]; {
		case acts[0].Kind == program.Doing && (a.Kind != program.Doing || a.Said != nil):
			return n
		case acts[0].Kind == program.Giving && a.Kind != program.Giving:
			return n
		case acts[0].Kind >= program.Marking && a.Kind < program.Marking:
			return n
		}
		n++
	}
	return n
}

// teller puts the sayings of a program into a language.
type teller struct {
	*program.Program
	messages
	style locale.Locale
}

func (t *teller) acts(acts []program.Act) string {
	switch acts[0].Kind {
	case program.Giving:
		return t.givens(acts)
	case program.Marking, program.Stating:
		return t.reasons(acts)
	}
	if acts[0].Said == nil {
		return ""
	}
	return tidy(t.say(acts[0].Said, ""))
}

// givens are told in one sentence. Points in the same place are told together,
// and what is hidden is left out.
func (t *teller) givens(acts []program.Act) string {
	var items []program.Phrase
	for _, a := range acts {
		item, ok := t.visible(a.Said).(program.Phrase)
		if !ok {
			continue
		}
		if n := len(items); n > 0 {
			if both, ok := t.merged(items[n-1], item); ok {
				items[n-1] = both
				continue
			}
		}
		items = append(items, item)
	}
	if len(items) == 0 {
		return ""
	}
	var all []string
	for _, item := range items {
		all = append(all, t.say(item, ""))
	}
	return tidy(t.fill("given", texts{"all": t.chain("items", "items", all)}))
}

// merged makes one given of two that differ in their points only.
func (t *teller) merged(a, b program.Phrase) (program.Phrase, bool) {
	key := map[string]string{"given.point": "given.points", "placed": "placed.several"}[b.Key]
	if key == "" || a.Key != b.Key && a.Key != key {
		return a, false
	}
	if b.Key == "placed" && t.say(a.With["places"], "") != t.say(b.With["places"], "") {
		return a, false
	}
	points, several := a.With["points"].(program.List)
	if !several {
		points = program.List{a.With["point"]}
	}
	points = append(points[:len(points):len(points)], b.With["point"])
	return program.Phrase{Key: key, With: program.With{"points": points, "places": b.With["places"]}}, true
}

// reasons are what the marks say and then what is claimed, nothing twice. What
// a mark says of points that do not show could not be followed, and is left out.
func (t *teller) reasons(acts []program.Act) string {
	var said [2]clauseList
	seen := map[string]bool{}
	for _, a := range acts {
		which := 0
		if a.Kind == program.Stating {
			which = 1
		}
		for _, clause := range clauses(a.Said) {
			text := t.say(clause, "")
			bare := t.bare(text)
			if text != "" && !seen[bare] && (which == 1 || !t.leansOnHidden(clause)) {
				seen[bare] = true
				said[which].add(clause)
			}
		}
	}
	marks, claims := said[0].say(t), said[1].say(t)
	switch {
	case marks == "" && claims == "":
		return ""
	case marks == "":
		return tidy(t.fill("why.claims", texts{"all": claims}))
	case claims == "":
		return tidy(t.fill("why.marks", texts{"all": marks}))
	}
	return tidy(t.fill("why.both", texts{"marks": marks, "claims": claims}))
}

// clauseList is clauses that are told together.
type clauseList []program.Saying

// add adds a clause; right angles that follow each other become one.
func (s *clauseList) add(clause program.Saying) {
	right, ok := clause.(program.Phrase)
	if n := len(*s); n > 0 && ok && right.Key == "claim.right" {
		last, _ := (*s)[n-1].(program.Phrase)
		angles, several := last.With["angles"].(program.List)
		if last.Key == "claim.right" {
			angles, several = program.List{last.With["angle"]}, true
		}
		if several {
			angles = append(angles[:len(angles):len(angles)], right.With["angle"])
			(*s)[n-1] = program.Phrase{Key: "claim.rights", With: program.With{"angles": angles}}
			return
		}
	}
	*s = append(*s, clause)
}

func (s clauseList) say(t *teller) string {
	var all []string
	for _, clause := range s {
		all = append(all, t.say(clause, ""))
	}
	return t.chain("clauses", "clauses.last", all)
}

// bare is a clause without its reason, and an equation in one order of its sides.
func (t *teller) bare(text string) string {
	sides := strings.Split(strings.TrimSuffix(text, t.fill("claim.radii", texts{"equation": ""})), " = ")
	slices.Sort(sides)
	return strings.Join(sides, " = ")
}

// clauses are what a mark or claim says, one by one.
func clauses(s program.Saying) []program.Saying {
	if list, ok := s.(program.List); ok {
		return list
	}
	if s == nil {
		return nil
	}
	return []program.Saying{s}
}

// say puts a saying into words, in a grammatical case of the language.
func (t *teller) say(s program.Saying, kase string) string {
	switch s := s.(type) {
	case program.Phrase:
		return t.phrase(s, kase)
	case program.Words:
		return t.words(s)
	case program.Letters:
		return t.letters(s)
	case program.CurveName:
		return t.curve(int(s), kase)
	case program.CurveNames:
		return t.curves(s, kase)
	case program.Numeral:
		return t.style.Numbers(string(s))
	case program.Text:
		return string(s)
	case program.List:
		var all []string
		for _, x := range s {
			all = append(all, t.say(x, kase))
		}
		return t.chain("list", "list.last", all)
	}
	panic(fmt.Sprintf("no words for %T", s))
}

func (t *teller) phrase(s program.Phrase, kase string) string {
	switch s.Key {
	case "which":
		return t.pair(s, "first", "rest", kase)
	case "series":
		return t.pair(s, "a", "b", kase)
	case "claim.not":
		if claim, ok := s.With["claim"].(program.Phrase); ok && t.messages[claim.Key+":not"] != "" {
			return t.say(claim, "not")
		}
	}
	s = t.shown(s)
	return t.expand(t.message(s.Key, kase), func(place, kase string) string { return t.say(s.With[place], kase) })
}

// words are a sentence of the source, or the catalogue's in its stead.
func (t *teller) words(s program.Words) string {
	text := s.Text
	if own, ok := t.messages[s.Key]; ok {
		text = own
	}
	return t.expand(text, func(place, kase string) string {
		if x, ok := s.With[place]; ok {
			return t.say(x, kase)
		}
		return place
	})
}

// mostLetters are written together; of a longer run only its ends are.
const mostLetters = 8

func (t *teller) letters(run program.Letters) string {
	var b strings.Builder
	for i, slot := range run {
		switch {
		case len(run) <= mostLetters || i < 3 || i == len(run)-1:
			b.WriteString(t.slot(slot).Called)
		case i == 3:
			b.WriteString("…")
		}
	}
	return b.String()
}

// curve is a curve's name; without one a line goes by two points of it, a circle
// or an arc by its centre. In the case "own" it is its letter only, in "new"
// what is just being drawn.
func (t *teller) curve(slot int, kase string) string {
	name := t.slot(slot).Called
	switch {
	case kase == "own":
		return name
	case kase == "new" && name == "":
		return t.fill(t.kind(slot)+".new", nil)
	case kase == "new":
		return t.fill(t.kind(slot)+".new.named", texts{"name": name})
	case name == "" && t.slot(slot).By != nil:
		name = t.letters(t.slot(slot).By)
	case name == "" && t.slot(slot).Only:
		return t.expand(t.message("circle.only", kase), nil)
	case name == "":
		return t.expand(t.message(t.kind(slot)+".about", kase), func(string, string) string { return t.centre(slot) })
	}
	return t.expand(t.message("curve", kase), func(string, string) string { return name })
}

// kind is the word for a circle or an arc in the keys.
func (t *teller) kind(slot int) string {
	if ink := t.slot(slot).Ink; ink != nil && ink.Whole {
		return "circle"
	}
	return "arc"
}

// slot is what shows a thing.
func (t *teller) slot(n int) *program.Slot { return t.Slots[t.Slots[n].As] }

func (t *teller) centre(arc int) string { return t.slot(t.Centres[arc]).Called }

// curves are two curves that meet.
func (t *teller) curves(pair program.CurveNames, kase string) string {
	a, ok1 := pair[0].(program.CurveName)
	b, ok2 := pair[1].(program.CurveName)
	if ok1 && ok2 && t.arcAbout(int(a)) && t.arcAbout(int(b)) {
		centres := map[string]string{"a": t.centre(int(a)), "b": t.centre(int(b))}
		return t.expand(t.message("arcs.about", kase), func(place, _ string) string { return centres[place] })
	}
	return t.expand(t.message("curves", kase), func(place, kase string) string {
		return t.say(map[string]program.Saying{"a": pair[0], "b": pair[1]}[place], kase)
	})
}

// arcAbout tells that a curve is an arc that goes by its centre.
func (t *teller) arcAbout(slot int) bool {
	sl := t.slot(slot)
	return sl.Kind == program.Circle && sl.Called == "" && t.kind(slot) == "arc"
}

// tidy mends the spaces that optional parts leave.
func tidy(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	return strings.NewReplacer(" ,", ",", " .", ".", " ;", ";", ",.", ".", ",,", ",", ", ,", ",").Replace(text)
}
