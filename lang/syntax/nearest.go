package syntax

import (
	"slices"
	"unicode/utf8"
)

// habits maps words that people bring along to what the language says.
var habits = map[string]string{
	"center": "centre", "thru": "through", "toward": "towards", "gray": "faint", "grey": "faint",
	"segment": "join", "connect": "join", "draw": "join, line, arc or circle", "extend": "produce", "prolong": "produce",
	"compass": "arc", "plot": "given or take", "let": "given", "set": "given", "put": "given", "place": "given",
	"prove": "claim", "proof": "claim", "show": "claim", "check": "claim", "assert": "claim", "verify": "claim",
	"define": "construction", "def": "construction", "function": "construction", "while": "repeat", "loop": "repeat",
	"import": "use", "include": "use", "title": "figure", "name": "label", "text": "note or label", "write": "label",
	"fill": "shade", "color": "bold, faint or dashed", "colour": "bold, faint or dashed", "erase": "hide", "dotted": "dashed",
	"perp": "perpendicular", "intersect": "meets", "intersects": "meets", "crosses": "meets", "cross": "meets", "cut": "cuts",
	"tangent": "touches", "touching": "touches", "touch": "touches", "halves": "bisects", "equals": "=", "equal": "=", "is": "=",
	"per": "/", "times": "*", "plus": "+", "minus": "-", "root": "sqrt", "degrees": "°", "degree": "°",
	"pi":          "π",
	"millimetres": "mm", "millimeters": "mm", "millimetre": "mm", "millimeter": "mm",
	"centimetres": "cm", "centimeters": "cm", "centimetre": "cm", "centimeter": "cm",
	"diameter": "2 radius", "closest": "nearest", "furthest": "farthest", "except": "other than",
	"called": "at", "have": "with", "having": "with", "finish": "end",
}

// articles are words that a source leaves out.
var articles = wordSet("the an")

// nearest is the word of the list that word was probably meant to be, or "".
// The first of the list wins among equals.
func nearest(word string, list []string) string {
	best, at := "", 1+allowance(utf8.RuneCountInString(word))
	for _, w := range list {
		if d := distance(word, w); d < at && d < utf8.RuneCountInString(w) {
			best, at = w, d
		}
	}
	return best
}

// allowance is the number of slips that a word of n letters may have.
func allowance(n int) int {
	switch {
	case n <= 5:
		return 1
	case n <= 8:
		return 2
	}
	return 3
}

// distance counts the letters to add, drop, change or swap with a neighbour
// that turn a into b.
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x) > len(y)+3 || len(y) > len(x)+3 {
		return len(x) + len(y)
	}
	two, one := []int(nil), make([]int, len(y)+1)
	for j := range one {
		one[j] = j
	}
	for i := range x {
		row := make([]int, len(y)+1)
		row[0] = i + 1
		for j := range y {
			cost := 1
			if x[i] == y[j] {
				cost = 0
			}
			row[j+1] = min(one[j+1]+1, row[j]+1, one[j]+cost)
			if i > 0 && j > 0 && x[i] == y[j-1] && x[i-1] == y[j] {
				row[j+1] = min(row[j+1], two[j-1]+1)
			}
		}
		two, one = one, row
	}
	return one[len(y)]
}

// sorted lists a set of words in the alphabet's order.
func sorted(set map[string]bool) []string {
	var list []string
	for w := range set {
		list = append(list, w)
	}
	slices.Sort(list)
	return list
}
