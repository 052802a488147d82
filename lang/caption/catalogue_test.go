package caption

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"trammel/stdlib"
)

var places = regexp.MustCompile(`\{(\w'?)+(:\w+)?\}`)

// placesOf are the places of a message, without their cases, in alphabetical order, each once.
func placesOf(text string) []string {
	var all []string
	for _, p := range places.FindAllString(text, -1) {
		name, _, _ := strings.Cut(strings.Trim(p, "{}"), ":")
		all = append(all, name)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// TestCatalogue holds every language to the keys and the places of English; a
// variant of a message for a case has the places of the message.
func TestCatalogue(t *testing.T) {
	if len(catalogue) < 2 {
		t.Fatal("there is one language only")
	}
	english := catalogue["en"]
	for tag, messages := range catalogue {
		for key, text := range english {
			plain, _, _ := strings.Cut(key, ":")
			if plain != key {
				continue
			}
			own, ok := messages[key]
			if !ok {
				t.Errorf("%s has no message %s", tag, key)
			} else if got, want := placesOf(own), placesOf(text); !slices.Equal(got, want) {
				t.Errorf("%s, %s: the places are %v, not %v", tag, key, got, want)
			}
		}
		for key, text := range messages {
			plain, kase, _ := strings.Cut(key, ":")
			switch model, known := english[plain]; {
			case strings.HasPrefix(plain, "library."):
			case !known:
				t.Errorf("%s has a message %s, and English none", tag, key)
			case kase != "" && !slices.Equal(placesOf(text), placesOf(model)):
				t.Errorf("%s, %s: the places are %v, not %v", tag, key, placesOf(text), placesOf(model))
			}
		}
	}
}

var sentence = regexp.MustCompile(`(?m)^  "(.*)"$`)

// TestLibrary holds every language but English, whose sentences stand in the
// library, to a sentence for each construction, with the parameters of that one.
func TestLibrary(t *testing.T) {
	for tag, messages := range catalogue {
		for _, name := range stdlib.Names() {
			text, err := stdlib.Files.ReadFile(name + ".trm")
			if err != nil {
				t.Fatal(err)
			}
			said := sentence.FindStringSubmatch(string(text))[1]
			own, ok := messages["library."+name]
			switch {
			case tag == "en" && ok:
				t.Errorf("English says twice what %s does", name)
			case tag != "en" && !slices.Equal(placesOf(own), placesOf(said)):
				t.Errorf("%s, %s: %q, which is in English %q", tag, name, own, said)
			}
		}
		for key := range messages {
			if name, ok := strings.CutPrefix(key, "library."); ok && !slices.Contains(stdlib.Names(), name) {
				t.Errorf("%s: the library has no construction %s", tag, name)
			}
		}
	}
}

// TestRead refuses what is no line of messages.
func TestRead(t *testing.T) {
	for _, text := range []string{"key", "key text", `key "a" b`, "key \"a\"\nkey \"b\""} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%q is taken", text)
				}
			}()
			read("x.txt", text)
		}()
	}
	m := read("x.txt", "# a comment\n\nkey  \" a {b:dat} \"\n")
	if got := m.expand(m["key"], func(place, kase string) string { return place + "+" + kase }); got != " a b+dat " {
		t.Errorf("%q", got)
	}
}
