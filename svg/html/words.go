package html

import "strings"

// words are what the page itself says.
type words struct {
	Figure, Step, Of, First, Back, Play, Pause, Next, Last string
	Pace, Slow, Fast, Tools, Controls, Steps               string
}

var languages = map[string]words{
	"en": {
		"Figure", "Step", "of", "First", "Back", "Play", "Pause", "Next", "Last",
		"Pace", "slow", "fast", "Show compasses and ruler", "Steps of the construction", "Step",
	},
	"de": {
		"Figur", "Schritt", "von", "Anfang", "Zurück", "Abspielen", "Anhalten", "Weiter", "Ende",
		"Tempo", "langsam", "schnell", "Zirkel und Lineal zeigen", "Schritte der Konstruktion", "Schritt",
	},
}

// wordsIn are those of a language, or English.
func wordsIn(tag string) words {
	base, _, _ := strings.Cut(strings.ToLower(tag), "-")
	if w, ok := languages[base]; ok {
		return w
	}
	return languages["en"]
}
