package program

import "strings"

// Tools is a set of what an act is done with.
type Tools uint8

// The tools. What is given was there before they were taken up.
const (
	Straightedge Tools = 1 << iota
	Compasses
	Ruler      // a length is measured
	Protractor // an angle is measured
	Outright   // a line or circle is drawn as it is known to be, by none of them
)

// toolWords are the words for single tools, in the order of their bits.
var toolWords = []string{"straightedge", "compasses", "ruler", "protractor", "outright"}

// ToolOf is the tool of a word, none for another word.
func ToolOf(word string) Tools {
	for i, w := range toolWords {
		if w == word {
			return 1 << i
		}
	}
	return 0
}

// Beyond is what an act takes that these tools do not do. A ruler draws
// straights too.
func (t Tools) Beyond(act Tools) Tools {
	if t&Ruler != 0 {
		t |= Straightedge
	}
	return act &^ t
}

// Each gives the single tools of a set.
func (t Tools) Each() (all []Tools) {
	for i := range toolWords {
		if one := Tools(1) << i; t&one != 0 {
			all = append(all, one)
		}
	}
	return all
}

// String is the words of a set: "straightedge and compasses".
func (t Tools) String() string {
	var words []string
	for i, w := range toolWords {
		if t>>i&1 != 0 {
			words = append(words, w)
		}
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
