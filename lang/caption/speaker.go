package caption

import "strings"

// Speaker says single messages of a language.
type Speaker struct {
	tag string
	messages
}

// Texts are what goes into the places of a message.
type Texts = map[string]string

// In is the speaker of a language, by its tag; of English where the language has
// no messages.
func In(tag string) Speaker {
	first, _, _ := strings.Cut(strings.ToLower(tag), "-")
	if _, known := catalogue[first]; !known {
		tag = "en"
	}
	return Speaker{tag, messagesFor(tag)}
}

// Tag is the language of BCP 47 that the speaker was asked for.
func (s Speaker) Tag() string { return s.tag }

// Say is a message with its places filled. A key that there is not is a fault of
// the program.
func (s Speaker) Say(key string, with Texts) string { return s.fill(key, with) }

// Spoken is an expression as it is typed, with its words in the language.
func (s Speaker) Spoken(expr string) string {
	for _, w := range []struct{ typed, key, place string }{
		{"reflex angle ", "angle.reflex", "angle"}, {"angle ", "angle", "angle"}, {"area of ", "area", "of"},
		{"perimeter of ", "perimeter", "of"}, {"radius ", "radius.value", "curve"}, {"circumference ", "circumference", "curve"},
	} {
		rest, found := strings.CutPrefix(expr, w.typed)
		if found && !strings.ContainsAny(rest, " +-*/:") {
			return s.expand(s.message(w.key, ""), func(_, kase string) string {
				return s.expand(s.message("curve", kase), func(string, string) string { return rest })
			})
		}
	}
	return expr
}
