package syntax

import (
	"strings"

	"trammel/lang/source"
)

// verdict is what a rule makes of a fault: tokens from..to are to blame.
type verdict struct {
	from, to   int
	text, help string
}

// rules are tried in order; the first that knows the mistake words it. The
// last always does.
var rules = []func(*fault) verdict{
	unbalanced, article, shouted, callFirst, relationFirst, wrongStart, keywordNamed, keywordStart,
	placeless, givenRatio, listPlaced, listedGivens, noKind, noParamKind, decimalComma, barePlace, pinOfOther, manyMeetings, congruentRuns, wrongMark, diameter, filler,
	paperFormat, dataWithout, sideUnparted, runsTouch, joinedByWord, throughRun, unquoted, misspelt, misspeltBefore, keywordAsName, missingBetween, negativeFactor, wrongOrder, leftOver, unwanted,
}

// explain words why a statement does not parse; at is the token where it fails.
func explain(f *source.File, l line, at int, problems *source.List) {
	x := newFault(f, l.tokens, at)
	for _, rule := range rules {
		if v := rule(x); v.text != "" {
			x.report(v, problems)
			return
		}
	}
}

func (x *fault) report(v verdict, problems *source.List) {
	n := len(x.tokens)
	span := source.Span{File: x.file, Start: x.tokens[n-1].End, End: x.tokens[n-1].End}
	if v.from < n {
		span = x.tokens[v.from].span(x.file).To(x.tokens[max(v.to, v.from+1)-1].span(x.file))
	}
	p := problems.Add(span, v.text)
	p.Help = v.help
}

// blame is a verdict on the failing token alone.
func (x *fault) blame(text, help string) verdict { return verdict{x.at, x.at + 1, text, help} }

// unbalanced: given A (0, 0
func unbalanced(x *fault) verdict {
	var open []int
	for i, t := range x.tokens {
		switch {
		case t.is("("), t.is("["):
			open = append(open, i)
		case t.is(")"), t.is("]"):
			if n := len(open); n == 0 || closers[x.tokens[open[n-1]].Value] != t.Value {
				return verdict{i, i + 1, "this " + t.Value + " closes nothing", ""}
			}
			open = open[:len(open)-1]
		}
	}
	if len(open) == 0 {
		return verdict{}
	}
	first := open[len(open)-1]
	bracket := x.tokens[first].Value
	return verdict{first, first + 1, "this " + bracket + " is not closed", "end it with " + closers[bracket]}
}

var closers = map[string]string{"(": ")", "[": "]"}

// article: join the AB
func article(x *fault) verdict {
	for i := range min(x.at+1, len(x.tokens)) {
		if t := x.tokens[i]; t.Type == nameKind && articles[t.Value] {
			return verdict{i, i + 1, quote(t.Value) + " has no place in a source", "leave it out"}
		}
	}
	return verdict{}
}

// shouted: JOIN AB
func shouted(x *fault) verdict {
	n := operand(x.tokens)
	word := x.text(0, n)
	if low := strings.ToLower(word); x.tokens[0].isPoint() && keywords[low] {
		return verdict{0, n, "the words of the language are lower-case: " + word, "write " + low}
	}
	return verdict{}
}

// namesFirst is how results are named: the grammar does not know what a construction gives.
func namesFirst(call string) string {
	return "begin with a name for each: M by " + call + " for a point, n by " + call + " for a line or circle"
}

// callFirst: erect(m, P) · by erect(m, P) · n = erect(m, P)
func callFirst(x *fault) verdict {
	last := len(x.tokens)
	if x.token(1).Type == nameKind && x.tokens[0].Value == "by" && x.token(2).is("(") && closing(x.tokens, 2) == last-1 {
		return verdict{0, last, "the results of " + x.text(1, 2) + " have no names", namesFirst(x.text(1, last))}
	}
	if x.tokens[0].Type == nameKind && x.token(1).is("(") && closing(x.tokens, 1) == last-1 {
		return verdict{0, last, "the results of " + x.text(0, 1) + " have no names", namesFirst(x.text(0, last))}
	}
	for i := range x.tokens {
		call := x.token(i + 1)
		if x.tokens[i].is("=") && i == x.at && x.startsWithThing() && call.Type == nameKind && x.token(i+2).is("(") {
			return verdict{i, i + 1, `"=" does not name results`, "write " + x.text(0, i) + " by " + x.text(i+1, last)}
		}
	}
	return verdict{}
}

// givenRatio: given triangle ABC with AB : BC = 2 : 3
func givenRatio(x *fault) verdict {
	at := x.at
	if !x.tokens[0].is("given") || !x.token(at).is(":") || !x.token(at-1).isPoint() || !x.token(at+1).isPoint() {
		return verdict{}
	}
	from, end := at-1, at+1
	for x.token(from - 1).isPoint() {
		from--
	}
	for x.token(end).isPoint() {
		end++
	}
	help, to := "write it as a multiple: AB = 2/3 BC", end
	if p, q := x.token(end+1), x.token(end+3); x.token(end).is("=") && x.token(end+2).is(":") && p.Type == numberKind && q.Type == numberKind {
		to = end + 4
		help = "write it as a multiple: " + x.text(from, at) + " = " + p.Value + "/" + q.Value + " " + x.text(at+1, end)
	}
	return verdict{from, to, "a ratio is not given as such", help}
}

func (x *fault) startsWithThing() bool {
	return x.tokens[0].isPoint() || x.tokens[0].Type == nameKind
}

// relationWords come after the first thing of a claim.
var relationWords = wordSet("= < > ≤ ≥ ≠ : perpendicular parallel on inside outside between midpoint centre bisects touches")

// relationFirst: AB = CD · P on m · A (0, 0)
func relationFirst(x *fault) verdict {
	if !x.startsWithThing() || x.at == 0 || x.at != operand(x.tokens) {
		return verdict{}
	}
	whole, t := x.text(0, len(x.tokens)), x.token(x.at)
	switch {
	case t.is("("), t.Type == numberKind && x.tokens[0].isPoint():
		return verdict{0, x.at, "the point " + x.text(0, x.at) + " stands alone", "write given " + whole}
	case t.is("on"), t.is("between"), t.is("inside"), t.is("outside"):
		return x.blame("a relation cannot stand alone", "write claim "+whole+", or take "+whole)
	case relationWords[t.Value] && t.Type != nameKind:
		return x.blame("a relation cannot stand alone", "write claim "+whole)
	}
	return verdict{}
}

// wrongStart: jion AB · draw AB · 3 from A
func wrongStart(x *fault) verdict {
	t := x.tokens[0]
	text := "no statement begins with " + quote(x.text(0, 1))
	switch {
	case t.Type == keywordKind:
		return verdict{}
	case t.Type == nameKind && x.at == 1 && len(t.Value) > 1:
		return verdict{0, 1, text, suggest(t.Value, sorted(starts), startHelp)}
	case t.Type == nameKind || t.isPoint():
		return verdict{}
	}
	if start := x.text(0, min(2, len(x.tokens))); strings.HasPrefix(start, "--") || strings.HasPrefix(start, "/*") {
		return verdict{0, 1, text, remark}
	}
	return verdict{0, 1, text, startHelp}
}

// remark is how a comment is written.
const remark = "a comment begins with #"

const startHelp = "a statement begins with a word such as given, arc, line, join, claim or mark, or with the names that it makes"

// suggest words the likely meaning of an unknown word: a habit, a near word of
// the list, or else the last resort.
func suggest(word string, list []string, otherwise string) string {
	if meant := habits[word]; strings.Contains(meant, " ") || len(meant) == 1 {
		return "write " + meant
	} else if meant != "" {
		return "did you mean " + meant + "?"
	}
	if near := nearest(word, list); near != "" {
		return "did you mean " + near + "?"
	}
	return otherwise
}

// keywordNamed: size by erect(m, P)
func keywordNamed(x *fault) verdict {
	if t, next := x.tokens[0], x.token(1); t.Type == keywordKind && (next.is("by") || next.is("meets") || next.is("cuts")) {
		return reserved(t, 0)
	}
	return verdict{}
}

// reserved blames the i-th token, a keyword where a name is wanted.
func reserved(t token, i int) verdict {
	first := string([]rune(t.Value)[0])
	return verdict{i, i + 1, quote(t.Value) + " is a word of the language and cannot be a name", "take another name, such as " + first + " or " + first + "1"}
}

// openings say what to write for a word that a statement cannot begin with.
var openings = map[string]string{
	"perpendicular": "write n by erect(m, P) at a point of m, n, F by drop(m, P) from a point off it, or claim n perpendicular to m",
	"parallel":      "write n by parallel(m, P), or claim n parallel to m",
	"midpoint":      "write M, n by bisect(A, B), or claim M midpoint of AB",
	"bisects":       "write claim AX bisects angle BAC",
	"point":         "write given A (0, 0), or take A on m",
	"points":        "write given points A, B, C",
	"angle":         "write given angle BAC = 50°, or mark angle ABC",
	"length":        "write given length a = 4, or label AB length",
	"cuts":          "write d meets e at X",
	"meets":         "write d meets e at X",
	"meet":          "write d meets e at X",
	"right":         "write mark right ABC",
	"sector":        "write shade sector OAB",
	"off":           "write step off P[1 to 6] on k from A, radius any",
	"marks":         "did you mean mark?",
}

// keywordStart: perpendicular n to m · triangle ABC
func keywordStart(x *fault) verdict {
	t := x.tokens[0]
	if t.Type != keywordKind || starts[t.Value] && t.Value != "end" {
		return verdict{}
	}
	help := openings[t.Value]
	switch {
	case t.Value == "end":
		return verdict{1, len(x.tokens), "end stands alone on its line", ""}
	case help != "":
	case shapes[t.Value]:
		help = "write given " + x.text(0, len(x.tokens)) + ", or join the points"
	case t.Value == "acute" || t.Value == "obtuse" || t.Value == "isosceles" || t.Value == "equilateral":
		help = "write given " + x.text(0, len(x.tokens))
	case claimWords[t.Value]:
		help = "write claim " + x.text(0, len(x.tokens))
	default:
		help = startHelp
	}
	return verdict{0, 1, "no statement begins with " + quote(t.Value), help}
}

var claimWords = wordSet("regular collinear concyclic concurrent congruent similar not here area perimeter radius circumference half sqrt reflex")
