package syntax

import "strings"

// keywordList holds every word that the grammar spells out. A test compares
// it with the tags of the nodes.
const keywordList = `
	figure unit mm cm deg paper landscape portrait theme language use
	using straightedge compasses ruler protractor only
	given take about points point line circle angle length number
	through and parallel to centre radius any over under with
	acute obtuse right isosceles equilateral
	triangle square rectangle parallelogram rhombus kite trapezium quadrilateral regular
	on at inside outside from towards
	above below left of same side as other than nearest farthest between beyond
	arc ray join produce cuts meets meet by off step in full brief unseen
	claim here needs else not congruent similar collinear concyclic concurrent
	perpendicular midpoint bisects touches
	locus equidistant where nearer
	mark label size o'clock note near shade sector hide faint bold dashed
	choose task for marks answer worksheet instructions room hint steps repeat construction gives end
	sqrt half reflex area perimeter circumference`

var keywords = wordSet(keywordList)

// shapes are the figures that a given can make and a claim can state.
var shapes = wordSet("triangle square rectangle parallelogram rhombus kite trapezium quadrilateral")

// units are the words that may touch a number.
var units = wordSet("mm cm deg")

// textWords are the words after which a text stands.
var textWords = wordSet("figure use step note task worksheet instructions else")

func wordSet(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// twins maps a Greek or Cyrillic letter to the Latin one that prints the same.
var twins = pairs(
	"ΑAΒBΕEΖZΗHΙIΚKΜMΝNΟOΡPΤTΥYΧX" + // Greek capitals
		"АAВBЕEЅSІIЈJКKМMНHОOРPСCТTУYХX" + // Cyrillic capitals
		"οoνvυu" + "аaеeіiјjоoрpсcуyхxѕsкk")

func pairs(s string) map[rune]rune {
	m := map[rune]rune{}
	r := []rune(s)
	for i := 0; i < len(r); i += 2 {
		m[r[i]] = r[i+1]
	}
	return m
}

// skeleton is a word with every look-alike letter made Latin: two words with
// one skeleton cannot be told apart in print.
func skeleton(word string) string {
	return strings.Map(func(r rune) rune {
		if l, ok := twins[r]; ok {
			return l
		}
		return r
	}, word)
}
