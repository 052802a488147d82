package syntax

import (
	"slices"
	"strings"
)

// listPlaced: take A, B on k · given points A and B above m
func listPlaced(x *fault) verdict {
	act, at := x.tokens[0], 1
	if !act.is("take") && !act.is("given") {
		return verdict{}
	}
	if x.token(1).is("points") {
		at = 2
	}
	from := at
	for x.token(at).isPoint() && (x.token(at+1).is(",") || x.token(at+1).is("and")) {
		at += 2
	}
	if place := x.token(at + 1); at == from || !x.token(at).isPoint() || !slices.Contains(placeWords, place.Value) || place.Type != keywordKind {
		return verdict{}
	}
	one := act.Value + " " + x.text(from, from+1) + " " + x.text(at+1, len(x.tokens))
	return verdict{from, at + 1, "a line that says where it is places one point", "write a line for each: " + one}
}

// placeWords begin what says where a point is.
var placeWords = []string{"on", "between", "inside", "outside", "above", "below", "left", "right", "beyond"}

// listedGivens: given A, B
func listedGivens(x *fault) verdict {
	if x.tokens[0].is("given") && x.at == 2 && x.token(1).isPoint() && x.token(2).is(",") {
		all := x.text(1, len(x.tokens))
		return verdict{1, len(x.tokens), "nothing says where " + strings.ReplaceAll(all, ", ", " and ") + " are", "write given points " + all}
	}
	return verdict{}
}

// noKind: given isoceles triangle ABC
func noKind(x *fault) verdict {
	t := x.token(1)
	if shape := x.token(2).Value; x.tokens[0].is("given") && t.Type == nameKind && x.at == 2 && shapes[shape] {
		help := suggest(t.Value, traits, "the kinds are "+strings.Join(traits, ", "))
		if shape != "triangle" {
			help = "leave it out"
		}
		return verdict{1, 2, quote(t.Value) + " is no kind of " + shape, help}
	}
	return verdict{}
}

// traits are the kinds of triangle that a given can ask for.
var traits = []string{"acute", "obtuse", "right", "isosceles", "equilateral"}

// paramKinds are the kinds of what a construction takes and gives.
var paramKinds = []string{"point", "points", "line", "circle", "length", "angle", "number"}

// noParamKind: construction f(dot A) gives line n
func noParamKind(x *fault) verdict {
	if t := x.token(x.at); x.tokens[0].is("construction") && t.Type == nameKind && slices.Contains(x.words(), "line") && x.token(x.at+1).isOperand() {
		return x.blame(quote(t.Value)+" is no kind of thing", suggest(t.Value, paramKinds, "the kinds are "+strings.Join(paramKinds, ", ")))
	}
	return verdict{}
}

// decimalComma: given A (1,5, 3)
func decimalComma(x *fault) verdict {
	i := x.at
	if !x.token(i).is(",") || x.token(i-1).Type != numberKind || !x.token(i-2).is(",") || x.token(i-3).Type != numberKind {
		return verdict{}
	}
	help := "write brackets with two numbers: (5, 0)"
	if x.token(i-3).End == x.token(i-2).start() && x.token(i-2).End == x.token(i-1).start() {
		help = "a decimal is written with a point: " + x.token(i-3).Value + "." + x.token(i-1).Value
	}
	return verdict{i - 3, i, "a place has two numbers", help}
}

// pinOfOther: label A left of B
func pinOfOther(x *fault) verdict {
	if x.tokens[0].is("label") && x.token(x.at).is("of") && (x.token(x.at-1).is("left") || x.token(x.at-1).is("right")) {
		return verdict{x.at, len(x.tokens), "a label stands on a side of its own thing", "write " + x.text(0, x.at)}
	}
	return verdict{}
}

// barePlace: given D 5, 0 · given E = (1, 2) · given E at (1, 2)
func barePlace(x *fault) verdict {
	if !x.tokens[0].is("given") || !x.token(1).isPoint() {
		return verdict{}
	}
	switch {
	case x.at == 2 && (x.token(2).is("=") || x.token(2).is("at")) && x.token(3).is("("):
		return x.blame(quote(x.token(2).Value)+" has no place before coordinates", "leave it out")
	case x.at == 3 && len(x.tokens) == 5 && x.token(2).Type == numberKind && x.token(3).is(",") && x.token(4).Type == numberKind:
		return verdict{2, 5, "coordinates stand in brackets", "write given " + x.text(1, 2) + " (" + x.text(2, 5) + ")"}
	}
	return verdict{}
}

// manyMeetings: k meets m at X, Y · k meets m at X, Y and Z
func manyMeetings(x *fault) verdict {
	from := x.at
	for from > 0 && !x.tokens[from-1].is("at") {
		from--
	}
	var names []string
	to := from
	for ; to < len(x.tokens) && (x.tokens[to].isPoint() || x.tokens[to].is(",") || x.tokens[to].is("and")); to++ {
		if x.tokens[to].isPoint() {
			names = append(names, x.tokens[to].Value)
		}
	}
	if from == 0 || x.at > to || len(names) < 2 || !x.token(from+1).is(",") {
		return verdict{}
	}
	if len(names) > 2 {
		return verdict{from, to, twice(len(names)), "name two of them"}
	}
	return verdict{from, to, `two meetings have "and" between them`, "write " + names[0] + " and " + names[1]}
}

// congruentRuns: claim ABC congruent to PQR
func congruentRuns(x *fault) verdict {
	t := x.token(x.at)
	if (t.is("congruent") || t.is("similar")) && x.token(x.at-1).isPoint() {
		from := x.at - 1
		for from > 0 && x.tokens[from].Type == gluedKind {
			from--
		}
		return verdict{from, x.at, `"triangle" is missing before ` + x.text(from, x.at), "write triangle " + x.text(from, len(x.tokens))}
	}
	return verdict{}
}

// wrongMark: mark AB perpendicular to AC · mark triangle ABC congruent to PQR
func wrongMark(x *fault) verdict {
	t := x.token(x.at)
	if !x.tokens[0].is("mark") || t.Type != keywordKind {
		return verdict{}
	}
	switch {
	case t.is("perpendicular"):
		return x.blame("right angles are marked by the corner", "write mark right "+cornerOf(x.text(1, x.at), x.text(x.at+2, len(x.tokens))))
	case shapes[t.Value] || claimWords[t.Value]:
		return x.blame("marks are of lengths, angles and parallels", "write claim "+x.text(1, len(x.tokens)))
	}
	return verdict{}
}

// cornerOf is the angle of two runs with a common letter, BAC of AB and AC;
// ABC if they have none.
func cornerOf(a, b string) string {
	for i := range min(len(a), 2) {
		for j := range min(len(b), 2) {
			if len(a) == 2 && len(b) == 2 && a[i] == b[j] {
				return string([]byte{a[1-i], a[i], b[1-j]})
			}
		}
	}
	return "ABC"
}

// diameter: circle k centre O diameter 3
func diameter(x *fault) verdict {
	if t := x.token(x.at); t.Value == "diameter" && slices.Contains(x.words(), "radius") {
		size := x.text(x.at+1, x.at+1+operand(x.tokens[x.at+1:]))
		return x.blame("compasses open to the radius, not the diameter", "write radius half "+size)
	}
	return verdict{}
}

// filler: arc c centre P with radius 3
func filler(x *fault) verdict {
	t, next := x.token(x.at), x.token(x.at+1)
	if t.Type == keywordKind && next.Type == keywordKind && slices.Contains(x.words(), next.Value) {
		return x.blame(quote(t.Value)+" has no place before "+quote(next.Value), "leave it out")
	}
	return verdict{}
}
