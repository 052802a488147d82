package syntax

import (
	"slices"
	"strings"
)

// runsTouch: join A B · claim collinear A, B, C · join AB CD
func runsTouch(x *fault) verdict {
	t, before := x.token(x.at), x.token(x.at-1)
	listed := t.is(",") && !slices.Contains(x.words(), ",") && x.token(x.at+1).isPoint()
	if !before.isPoint() || !t.isPoint() && !listed {
		return verdict{}
	}
	from, to := x.at-1, x.at+1
	for from > 0 && x.tokens[from].Type == gluedKind {
		from--
	}
	for to < len(x.tokens) && (x.tokens[to].isPoint() || listed && x.tokens[to].is(",")) {
		to++
	}
	runs := strings.FieldsFunc(x.text(from, to), func(r rune) bool { return r == ' ' || r == ',' })
	if x.token(from-1).is("points") || before.Type == gluedKind {
		return verdict{from, to, "a comma is missing between " + runs[0] + " and " + runs[1], "write " + strings.Join(runs, ", ")}
	}
	return verdict{from, to, "the points of a run touch", "write " + strings.Join(runs, "")}
}

// misspelt: arc c center P · claim n perpendicular too m
func misspelt(x *fault) verdict {
	t := x.token(x.at)
	words := x.words()
	switch t.Type {
	case nameKind:
		if !x.wants(textChunk) {
			words = append(words, x.otherWords()...)
		}
		if help := suggest(t.Value, words, ""); help != "" && len(t.Value) > 1 {
			return x.blame(quote(t.Value)+" is no word of the language", help)
		}
	case keywordKind:
		if near := nearest(t.Value, words); near != "" {
			return x.blame(quote(t.Value)+" stands where "+quote(near)+" is wanted", "did you mean "+near+"?")
		}
	}
	return verdict{}
}

// otherWords are the words of the statement's forms, then all others.
func (x *fault) otherWords() []string {
	var list []string
	for _, m := range models() {
		if len(x.fits) == 0 || m.form == x.fits[0].form {
			for _, c := range m.chunks {
				if c.kind == wordChunk {
					list = append(list, c.word)
				}
			}
		}
	}
	return append(list, sorted(keywords)...)
}

// misspeltBefore: given traingle ABC · claim AB is CD. The word passed for a
// name, and what comes after it fails.
func misspeltBefore(x *fault) verdict {
	for i := 1; i < min(x.at, maxName); i++ {
		t := x.tokens[i]
		if t.Type != nameKind || len(t.Value) < 2 {
			continue
		}
		earlier := newFault(x.file, x.tokens, i)
		words := earlier.words()
		if slices.Contains(words, "triangle") {
			words = append(words, sorted(shapes)...)
		}
		help := ""
		if near := nearest(t.Value, words); near != "" {
			help = "did you mean " + near + "?"
		} else if !earlier.wants(nameChunk) && !earlier.wants(valueChunk) {
			help = suggest(t.Value, nil, "")
		}
		if help != "" {
			return verdict{i, i + 1, quote(t.Value) + " is no word of the language", help}
		}
	}
	return verdict{}
}

// unquoted: figure title · label AB 5 cm
func unquoted(x *fault) verdict {
	if x.at >= len(x.tokens) || !x.wants(textChunk) || x.tokens[x.at].Type == keywordKind {
		return verdict{}
	}
	rest := x.text(x.at, len(x.tokens))
	return verdict{x.at, len(x.tokens), "the text has no quotes", "write " + x.text(0, x.at) + ` "` + strings.Trim(rest, `"`) + `"`}
}

// placeless: given A
func placeless(x *fault) verdict {
	if !x.tokens[0].is("given") || x.at != len(x.tokens) || !x.token(1).isPoint() || operand(x.tokens[1:]) != x.at-1 {
		return verdict{}
	}
	name := x.text(1, x.at)
	return verdict{1, x.at, "nothing says where " + name + " is", "write given points " + name + " for any place, or given " + name + " (0, 0)"}
}

// keywordAsName: circle size centre O radius 3
func keywordAsName(x *fault) verdict {
	t := x.token(x.at)
	if t.Type != keywordKind || !x.wants(nameChunk) || !x.goesOnAfterName() {
		return verdict{}
	}
	first := string([]rune(t.Value)[0])
	return x.blame(quote(t.Value)+" is a word of the language and cannot be a name", "take another name, such as "+first+" or "+first+"1")
}

// goesOnAfterName tells that the statement would be right one token further if
// the failing token were a name.
func (x *fault) goesOnAfterName() bool {
	renamed := slices.Clone(x.tokens)
	renamed[x.at].Type, renamed[x.at].Value = nameKind, "x"
	after := newFault(x.file, renamed, x.at+1)
	if x.at+1 == len(x.tokens) {
		return true
	}
	return slices.Contains(after.words(), x.tokens[x.at+1].Value)
}

// negativeFactor: 2 * -3
func negativeFactor(x *fault) verdict {
	if before := x.token(x.at - 1); x.token(x.at).is("-") && (before.is("*") || before.is("/")) {
		return x.blame("two signs stand side by side", "put the negative number in brackets: (-3)")
	}
	return verdict{}
}

// wrongOrder: circle k radius 3 centre O
func wrongOrder(x *fault) verdict {
	t := x.token(x.at)
	if t.Type != keywordKind {
		return verdict{}
	}
	for i := x.at + 1; i < len(x.tokens); i++ {
		later := x.tokens[i]
		if later.Type == keywordKind && later.Value != t.Value && slices.Contains(x.words(), later.Value) {
			return x.blame(quote(later.Value)+" comes before "+quote(t.Value), x.reads())
		}
	}
	return verdict{}
}

// leftOver: join AB quickly
func leftOver(x *fault) verdict {
	if x.at < len(x.tokens) && x.wants(endChunk) {
		return verdict{x.at, len(x.tokens), quote(x.text(x.at, len(x.tokens))) + " is left over: the statement is complete without it", x.reads()}
	}
	return verdict{}
}

// unwanted words any other fault: what is there, and what is wanted.
func unwanted(x *fault) verdict {
	found := "the line ends"
	if x.at < len(x.tokens) {
		found = quote(x.text(x.at, x.at+1)) + " stands"
	}
	wanted := x.wantedList()
	switch {
	case wanted != "":
		return x.blame(found+" where "+wanted+" is wanted", x.reads())
	case x.at == len(x.tokens):
		return x.blame("the line ends too early", x.reads())
	}
	return x.blame(quote(x.text(x.at, x.at+1))+" does not fit here", x.reads())
}
