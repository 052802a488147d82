package syntax

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// runsTouch: join A B · claim collinear A, B, C · join AB CD
func runsTouch(x *fault) verdict {
	t, before := x.token(x.at), x.token(x.at-1)
	listed := t.is(",") && x.wants(endChunk) && !slices.Contains(x.words(), ",") && x.token(x.at+1).isPoint()
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
	if from == 0 || x.token(from-1).is("points") || before.Type == gluedKind {
		return verdict{from, to, "a comma is missing between " + runs[0] + " and " + runs[1], "write " + strings.Join(runs, ", ")}
	}
	return verdict{from, to, touch, "write " + strings.Join(runs, "")}
}

// joinedByWord: join A to B · ray from A to B · join AB and CD
func joinedByWord(x *fault) verdict {
	if !x.tokens[0].is("join") && !x.tokens[0].is("ray") {
		return verdict{}
	}
	runs, single, to := []string(nil), true, 1
	if x.token(1).is("from") {
		to++
	}
	for {
		n := operand(x.tokens[to:])
		if n == 0 || !x.tokens[to].isPoint() {
			return verdict{}
		}
		runs = append(runs, x.text(to, to+n))
		single = single && n == 1
		to += n
		if t := x.token(to); !t.is("to") && !t.is("and") {
			break
		}
		to++
	}
	switch {
	case len(runs) < 2 || x.at >= to:
		return verdict{}
	case single:
		return verdict{1, to, touch, "write " + strings.Join(runs, "")}
	}
	return verdict{1, to, "runs are told apart by commas", "write " + strings.Join(runs, ", ")}
}

// throughRun: line n through PX
func throughRun(x *fault) verdict {
	from := x.at - 1
	for from > 0 && x.tokens[from].Type == gluedKind {
		from--
	}
	if !x.token(from-1).is("through") || !slices.Contains(x.words(), "and") {
		return verdict{}
	}
	text := x.text(from, x.at)
	letters := lettersOf(text)
	if len(letters) != 2 {
		return verdict{}
	}
	both := strings.ToUpper(letters[0]) + " and " + strings.ToUpper(letters[1])
	if x.tokens[from].Type == nameKind {
		return verdict{from, x.at, "points are capital letters, not " + text, "write through " + both}
	}
	return verdict{from, x.at, `"and" is missing between ` + both, "write through " + both}
}

// misspelt: arc c center P · claim n perpendicular too m
func misspelt(x *fault) verdict {
	t := x.token(x.at)
	switch t.Type {
	case nameKind:
		if help := x.meant(t.Value); help != "" {
			return x.blame(quote(t.Value)+" is no word of the language", help)
		}
	case keywordKind:
		if near := nearest(t.Value, x.words()); near != "" && near != t.Value {
			return x.blame(quote(t.Value)+" stands where "+quote(near)+" is wanted", "did you mean "+near+"?")
		}
	}
	return verdict{}
}

// meant offers the word that a word was probably meant to be: one that is
// wanted, then one that the statement may have, then any.
func (x *fault) meant(word string) string {
	if utf8.RuneCountInString(word) < 2 {
		return ""
	}
	wanted, form := x.words(), x.formWords()
	if habit := habits[word]; habit != "" && (slices.Contains(wanted, habit) || slices.Contains(form, habit)) {
		return suggest(word, nil, "")
	}
	for _, list := range [][]string{wanted, form, sorted(keywords)} {
		if near := nearest(word, list); near != "" {
			return "did you mean " + near + "?"
		}
	}
	return ""
}

// formWords are the longer words of the statement's forms.
func (x *fault) formWords() []string {
	var list []string
	for _, m := range models() {
		if len(x.fits) == 0 || m.form.Keyword == x.fits[0].form.Keyword {
			for _, c := range m.chunks {
				if c.kind == wordChunk && len(c.word) > 3 {
					list = append(list, c.word)
				}
			}
		}
	}
	return list
}

// misspeltBefore: given traingle ABC · claim AB is CD. The word passed for a
// name, and what comes after it fails.
func misspeltBefore(x *fault) verdict {
	for i := 1; i < min(x.at, maxName); i++ {
		t := x.tokens[i]
		if t.Type != nameKind || utf8.RuneCountInString(t.Value) < 2 {
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
		} else if habit := habits[t.Value]; slices.Contains(words, habit) {
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
	t := x.token(x.at)
	if t.Value == "" || !x.wants(textChunk) || t.Type == keywordKind || nearest(t.Value, x.words()) != "" {
		return verdict{}
	}
	to := x.at + 1
	for to < len(x.tokens) && !x.tokens[to].is("near") && !(x.tokens[to].is("for") && x.tokens[0].is("task")) {
		to++
	}
	whole := x.text(0, x.at) + ` "` + strings.Trim(x.text(x.at, to), `"`) + `" ` + x.text(to, len(x.tokens))
	return verdict{x.at, to, "the text has no quotes", "write " + strings.TrimSpace(whole)}
}

// placeless: given A
func placeless(x *fault) verdict {
	if !x.tokens[0].is("given") || x.at != len(x.tokens) || !x.token(1).isPoint() || operand(x.tokens[1:]) != x.at-1 {
		return verdict{}
	}
	name := x.text(1, x.at)
	return verdict{1, x.at, "nothing says where " + name + " is", "write given points " + name + " for any place, or given " + name + " (0, 0)"}
}

// dataWithout: given triangle ABC, AB = 6
func dataWithout(x *fault) verdict {
	equals := slices.IndexFunc(x.tokens, func(t token) bool { return t.is("=") })
	if !x.tokens[0].is("given") || equals < 0 || slices.ContainsFunc(x.tokens, func(t token) bool { return t.is("with") }) {
		return verdict{}
	}
	for i := 1; i < min(x.at, 4); i++ {
		if shapes[x.tokens[i].Value] {
			return x.blame(`"with" is missing before the data`, "write given triangle ABC with AB = 6, AC = 5, BC = 4")
		}
	}
	return verdict{}
}

// sideUnparted: given square ABCD below AB
func sideUnparted(x *fault) verdict {
	if t := x.token(x.at); !x.tokens[0].is("given") || !t.is("above") && !t.is("below") && !t.is("left") && !t.is("right") {
		return verdict{}
	}
	for i := 1; i < min(x.at, 4); i++ {
		if shapes[x.tokens[i].Value] {
			return x.blame("a comma is missing before the side of the "+x.tokens[i].Value, "write "+x.text(0, x.at)+", "+x.text(x.at, len(x.tokens)))
		}
	}
	return verdict{}
}

// paperFormat: paper A5
func paperFormat(x *fault) verdict {
	if t := x.token(1); x.tokens[0].is("paper") && t.isPoint() {
		low := strings.ToLower(t.Value)
		return verdict{1, 2, t.Value + " is a point, not a format of paper", "write paper " + low}
	}
	return verdict{}
}

// keywordAsName: circle size centre O radius 3
func keywordAsName(x *fault) verdict {
	t := x.token(x.at)
	if t.Type != keywordKind || !x.wants(nameChunk) || !x.goesOnAfterName() {
		return verdict{}
	}
	return reserved(t, x.at)
}

// goesOnAfterName tells that the statement would be right one token further if
// the failing token were a name.
func (x *fault) goesOnAfterName() bool {
	renamed := slices.Clone(x.tokens)
	renamed[x.at].Type, renamed[x.at].Value = nameKind, "x"
	after := newFault(x.file, renamed, x.at+1)
	if x.at+1 == len(x.tokens) || x.tokens[x.at+1].Type == signKind {
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

// missingBetween: claim angle ABC 90°. Two things side by side passed for a
// product, and what comes after them fails.
func missingBetween(x *fault) verdict {
	for i := 1; i < min(x.at, maxName); i++ {
		before, t := x.tokens[i-1], x.tokens[i]
		if !before.isOperand() || !t.isOperand() || t.Type == gluedKind || before.Type == numberKind && (t.isPoint() || t.Type == nameKind) {
			continue
		}
		earlier := newFault(x.file, x.tokens, i)
		if len(earlier.wanted) == 0 || earlier.wants(nameChunk) || earlier.wants(valueChunk) || earlier.wants(pointChunk) || earlier.wants(runChunk) {
			continue
		}
		if v := leftOver(earlier); v.text != "" {
			return v
		}
		return unwanted(earlier)
	}
	return verdict{}
}

// isOperand tells a token that can be a value of its own.
func (t token) isOperand() bool {
	return t.isPoint() || t.Type == nameKind || t.Type == numberKind || t.Type == angleKind || t.is("half")
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
