package caption

import (
	"embed"
	"path"
	"slices"
	"strconv"
	"strings"
)

//go:embed *.txt
var files embed.FS

// messages are the sentences of a language by their keys, with places in braces.
type messages map[string]string

// texts are what goes into places, in words already.
type texts = map[string]string

// catalogue is all languages; a file of messages is one.
var catalogue = readAll()

// languages are the tags of the catalogue, in the order of the alphabet.
var languages = func() []string {
	var tags []string
	for tag := range catalogue {
		tags = append(tags, tag)
	}
	slices.Sort(tags)
	return tags
}()

func readAll() map[string]messages {
	all := map[string]messages{}
	list, err := files.ReadDir(".")
	if err != nil {
		panic(err) // embedded
	}
	for _, f := range list {
		text, err := files.ReadFile(f.Name())
		if err != nil {
			panic(err) // embedded
		}
		all[strings.TrimSuffix(path.Base(f.Name()), ".txt")] = read(f.Name(), string(text))
	}
	return all
}

// read reads a file of messages: a key and a quoted text on each line, and
// comments. A line that is neither, or a key that comes twice, is a fault of the program.
func read(name, text string) messages {
	m := messages{}
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		key, quoted, _ := strings.Cut(line, " ")
		message, err := strconv.Unquote(strings.TrimSpace(quoted))
		if _, twice := m[key]; err != nil || twice {
			panic(name + ": " + line)
		}
		m[key] = message
	}
	return m
}

// messagesFor is the language of a tag, by its first part; else English.
func messagesFor(tag string) messages {
	first, _, _ := strings.Cut(strings.ToLower(tag), "-")
	if m, ok := catalogue[first]; ok {
		return m
	}
	return catalogue["en"]
}

// message is a message by its key, in a case where the language has it so.
func (m messages) message(key, kase string) string {
	if text, ok := m[key+":"+kase]; ok {
		return text
	}
	text, ok := m[key]
	if !ok {
		panic("no message " + key)
	}
	return text
}

// fill puts texts into a message.
func (m messages) fill(key string, with texts) string {
	return m.expand(m.message(key, ""), func(place, _ string) string { return with[place] })
}

// expand puts what say gives into the places of a text.
func (m messages) expand(text string, say func(place, kase string) string) string {
	var b strings.Builder
	for {
		before, rest, open := strings.Cut(text, "{")
		b.WriteString(before)
		inner, after, closed := strings.Cut(rest, "}")
		if !open || !closed {
			b.WriteString(rest)
			return b.String()
		}
		place, kase, _ := strings.Cut(inner, ":")
		b.WriteString(say(place, kase))
		text = after
	}
}

// chain joins texts by one message, and the last of them by another.
func (m messages) chain(key, last string, all []string) string {
	if len(all) == 0 {
		return ""
	}
	out := all[0]
	for i, text := range all[1:] {
		k := key
		if i == len(all)-2 {
			k = last
		}
		out = m.fill(k, texts{"a": out, "b": text})
	}
	return out
}
