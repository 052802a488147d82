package lang

import (
	"fmt"
	"maps"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"

	"trammel/geom"
	"trammel/lang/check"
	"trammel/lang/program"
	"trammel/lang/solve"
	"trammel/lang/source"
	"trammel/lang/warn"
)

// Variant is the figure of a source with one value for each of its choices.
type Variant struct {
	*Result
	Values []Varied // in the order of the source
}

// Varied is a choice and its value: a = 4.5 cm.
type Varied struct{ Name, Value string }

// Varied are the measurements that each variant has to itself, as this figure has them.
func (r *Result) Varied() []VariedRange {
	if r.Figure == nil {
		return nil
	}
	var out []VariedRange
	for _, v := range r.program.Varied {
		line, _ := v.Span.File.Position(v.Span.Start)
		out = append(out, VariedRange{
			Line: line, Varied: Varied{v.Name, decimal(v.Written(v.Picked)) + v.Word},
			First: decimal(v.Written(0)) + v.Word, Last: decimal(v.Written(len(v.Values)-1)) + v.Word, Count: len(v.Values),
		})
	}
	return out
}

// Task is what the figure asks of a pupil, with the values of this variant in the
// places of its text; "" where it asks nothing. Marks is 0 when unsaid.
func (r *Result) Task() (text string, marks int) {
	if r.Figure == nil || r.program.Task == nil {
		return "", 0
	}
	text, _ = r.Worded(r.program.Task.Text)
	return text, r.program.Task.Marks
}

// Worded puts the values of this variant into the places of a text, {a} say.
// unknown is a name that no choice has, or "".
func (r *Result) Worded(text string) (filled, unknown string) {
	values := map[string]string{}
	for _, v := range r.Varied() {
		values[v.Name] = r.Figure.Locale().Numbers(v.Value)
	}
	filled = program.Fill(text, func(name string) string {
		v, ok := values[name]
		if !ok && unknown == "" {
			unknown = name
		}
		return v
	})
	return filled, unknown
}

// Doubled is a place of a text whose unit stands there too, {a} mm say, or "".
func (r *Result) Doubled(text string) string {
	return program.Doubled(text, func(name string) bool {
		return slices.ContainsFunc(r.program.Varied, func(v program.Varied) bool { return v.Name == name && v.Word != "" })
	})
}

// VariedRange is a choice with all that it is made from.
type VariedRange struct {
	Varied
	Line        int
	First, Last string
	Count       int
}

// PassedOver is a set of values that no variant gets, and why.
type PassedOver struct {
	Values []Varied
	Why    string
}

// Variants deals n variants of a figure, reproducibly by seed. Values with which
// the construction fails, crosses badly or comes out special or nearly so are passed
// over; special is what is equal, perpendicular or parallel with them and not with
// others. No values are dealt again before all that will do have been dealt. What
// the source leaves to chance is the same in all variants, as far as it fits.
//
// There are no variants when none of the values will do; problems says so. A
// source without choices gives n times the same figure.
func (r *Result) Variants(n int, seed uint64) (dealt []Variant, passed []PassedOver, problems source.List) {
	if len(r.program.Varied) == 0 {
		for range n {
			dealt = append(dealt, Variant{Result: r})
		}
		return dealt, nil, nil
	}
	d := &dealer{first: r, random: rand.New(rand.NewPCG(seed, stream))}
	for range n {
		v, ok := d.next()
		if !ok {
			return nil, d.passed, d.refuse()
		}
		dealt = append(dealt, v)
	}
	return dealt, d.passed, nil
}

// maxDeck is the most sets of values that are shuffled; of more, as many are drawn.
const maxDeck = 2000

// dealer deals sets of values, each an index into every choice's values.
type dealer struct {
	first  *Result
	random *rand.Rand
	deck   [][]int
	at     int       // the next in the deck
	good   []Variant // of the deck, as far as it has been looked at
	again  int       // the next of good, when the deck is through
	passed []PassedOver
	usual  map[string]bool // what is special with all values; nil: not looked at yet
}

// next is the next variant whose figure comes out well.
func (d *dealer) next() (Variant, bool) {
	if d.deck == nil {
		d.deck = d.shuffled()
	}
	for d.at < len(d.deck) {
		v, why := d.try(d.deck[d.at])
		d.at++
		if why == "" {
			why = d.special(v.Result)
		}
		if why == "" {
			d.good = append(d.good, v)
			return v, true
		}
		d.passed = append(d.passed, PassedOver{v.Values, why})
	}
	if len(d.good) == 0 {
		return Variant{}, false
	}
	v := d.good[d.again%len(d.good)]
	d.again++
	return v, true
}

// compared is with how many other sets of values a figure is compared.
const compared = 6

// special tells what is special in a figure and is not so with other values.
func (d *dealer) special(r *Result) string {
	if d.usual == nil {
		d.usual = warn.Special(d.first.state)
		for _, set := range d.deck[:min(len(d.deck), compared)] {
			if v, why := d.try(set); why == "" {
				others := warn.Special(v.state)
				maps.DeleteFunc(d.usual, func(what string, _ bool) bool { return !others[what] })
			}
		}
	}
	var lucky []string
	for what := range warn.Special(r.state) {
		if !d.usual[what] {
			lucky = append(lucky, what)
		}
	}
	if len(lucky) == 0 {
		return ""
	}
	return slices.Min(lucky) + ", which is not so with other values"
}

// shuffled is every set of values in chance order, or maxDeck different ones.
func (d *dealer) shuffled() [][]int {
	varied := d.first.program.Varied
	total := 1
	for _, v := range varied {
		if total = total * len(v.Values); total > maxDeck {
			return d.drawn(varied)
		}
	}
	var deck [][]int
	for _, k := range d.random.Perm(total) {
		deck = append(deck, digits(k, varied))
	}
	return deck
}

// digits spreads a number over the choices, the last one fastest.
func digits(k int, varied []program.Varied) []int {
	set := make([]int, len(varied))
	for i := len(varied) - 1; i >= 0; i-- {
		set[i] = k % len(varied[i].Values)
		k /= len(varied[i].Values)
	}
	return set
}

func (d *dealer) drawn(varied []program.Varied) [][]int {
	var deck [][]int
	seen := map[string]bool{}
	for len(deck) < maxDeck {
		set := make([]int, len(varied))
		for i, v := range varied {
			set[i] = d.random.IntN(len(v.Values))
		}
		if key := fmt.Sprint(set); !seen[key] {
			seen[key] = true
			deck = append(deck, set)
		}
	}
	return deck
}

// attempt is what came of a set of values: a good figure, or why there is none.
type attempt struct {
	Variant
	why string
}

// try makes the figure with a set of values, once for however many are dealt it;
// why tells what is wrong with it.
func (d *dealer) try(set []int) (v Variant, why string) {
	key := fmt.Sprint(set)
	a, ok := d.first.tried[key]
	if !ok {
		a = d.attempt(set)
		if d.first.tried == nil {
			d.first.tried = map[string]attempt{}
		}
		d.first.tried[key] = a
	}
	return a.Variant, a.why
}

func (d *dealer) attempt(set []int) (a attempt) {
	picks := map[string]int{}
	for i, c := range d.first.program.Varied {
		picks[c.Name] = set[i]
		a.Values = append(a.Values, Varied{c.Name, decimal(c.Written(set[i])) + c.Word})
	}
	for _, inputs := range [][]*big.Rat{d.first.inputs, nil} {
		if a.Result, a.why = d.first.with(picks, inputs); a.why == "" {
			break
		}
	}
	return a
}

// with resolves the source with the picks: on the given inputs, or on those that
// solve chooses when there are none.
func (r *Result) with(picks map[string]int, inputs []*big.Rat) (*Result, string) {
	out := &Result{Files: r.Files, tree: r.tree, loader: r.loader, asks: r.asks}
	p := check.Check(r.tree, r.loader.again(&out.Problems), &out.Problems, check.Options{Picks: picks, Asks: r.asks})
	if p == nil || out.Problems.Failed() {
		return nil, firstError(out.Problems)
	}
	if inputs == nil {
		out.run(p)
	} else if len(inputs) != len(p.Inputs) {
		return nil, "the choices differ"
	} else {
		out.resolve(p, runOn(p, solve.Choice{Inputs: inputs}))
	}
	if out.Figure == nil {
		return nil, firstError(out.Problems)
	}
	if why, unlucky := warn.Unlucky(out.state); unlucky {
		return nil, why
	}
	return out, ""
}

func firstError(problems source.List) string {
	for _, p := range problems {
		if p.Severity == source.Error {
			return p.Text
		}
	}
	return "there is no figure"
}

// refuse says that none of the values will do.
func (d *dealer) refuse() (problems source.List) {
	at := d.first.program.Varied[0].Span
	p := problems.Add(at, "none of the values makes a good figure")
	p.Help = "choose from other values"
	for _, o := range d.passed[:min(len(d.passed), 3)] {
		p.Notes = append(p.Notes, source.Note{Span: at, Text: o.String()})
	}
	return problems
}

// String is: a = 4 cm, b = 9 cm: k and m do not meet
func (o PassedOver) String() string {
	var values []string
	for _, v := range o.Values {
		values = append(values, v.Name+" = "+v.Value)
	}
	return strings.Join(values, ", ") + ": " + o.Why
}

// decimal writes a fraction as a decimal where it is one of few places.
func decimal(r *big.Rat) string {
	if d, exact := geom.FiniteDecimal(r, 4); exact {
		return d
	}
	return r.RatString()
}
