package caption

import (
	"trammel/geom/figure"
	"trammel/geom/figure/locale"
	"trammel/lang/program"
)

// Teller puts the figure of a program in words.
type Teller struct{ Program *program.Program }

// Steps are the captions of its acts: see Of.
func (t Teller) Steps(tag string) []string { return Of(t.Program, tag) }

// Finished says that the figure is, where its last act is no reason.
func (t Teller) Finished(tag string) string { return messagesFor(tag).fill("finished", nil) }

// Written says what is written at a part of the figure: a length, the size of an
// angle, words.
func (t Teller) Written(tag string, m figure.Mark) string {
	s := messagesFor(tag)
	switch m := m.(type) {
	case figure.LengthLabel:
		return s.written("written.length", "written.words", tag, m.Of, m.Label)
	case figure.AngleLabel:
		which := ""
		if m.Reflex {
			which = ".reflex"
		}
		return s.written("written.angle"+which, "written.angle.words"+which, tag, m.Of, m.Label)
	case figure.Note:
		if m.Of == "" {
			return m.Text
		}
		return s.fill("written.words", texts{"of": m.Of, "text": m.Text})
	}
	return ""
}

// written is a measure, or words in its stead.
func (m messages) written(measured, words, tag, of string, l figure.Label) string {
	if !l.Measured {
		return m.fill(words, texts{"of": of, "text": l.Text})
	}
	style, err := locale.Find(tag)
	if err != nil {
		style = locale.English
	}
	text := style.Numbers(l.Text)
	if l.Rounded {
		text = m.fill("written.rounded", texts{"a": text})
	}
	return m.fill(measured, texts{"of": of, "text": text})
}
