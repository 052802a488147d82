package syntax

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"trammel/lang/source"
)

func TestKeywords(t *testing.T) {
	inGrammar := map[string]bool{}
	literal := regexp.MustCompile(`'([a-z]+)'|"([a-z']+)"`)
	eachStruct(reflect.TypeFor[Statement](), map[reflect.Type]bool{}, func(tag string) {
		for _, m := range literal.FindAllStringSubmatch(tag, -1) {
			inGrammar[m[1]+m[2]] = true
		}
	})
	for _, w := range sorted(inGrammar) {
		if !keywords[w] {
			t.Errorf("%s is in the grammar, but no keyword", w)
		}
	}
	for _, w := range sorted(keywords) {
		if !inGrammar[w] && w != "end" && w != "deg" { // cut off before the grammar
			t.Errorf("%s is a keyword, but not in the grammar", w)
		}
	}
}

func eachStruct(t reflect.Type, seen map[reflect.Type]bool, visit func(tag string)) {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct || seen[t] {
		return
	}
	seen[t] = true
	for i := range t.NumField() {
		visit(t.Field(i).Tag.Get("parser"))
		eachStruct(t.Field(i).Type, seen, visit)
	}
}

func TestFormsParse(t *testing.T) {
	check := func(f Form, e Example, text string) {
		if f.Keyword == "end" {
			return
		}
		if strings.HasPrefix(e.Line, "step \"") || f.Keyword == "repeat" || f.Keyword == "construction" {
			text += "\nend"
		}
		if got := said(text); got != "" {
			t.Errorf("%s: %s", text, got)
		}
		var problems source.List
		if got, _ := Format(source.NewFile("f", text), &problems); got != text+"\n" {
			t.Errorf("%s: formatted it is %s", text, got)
		}
		if first, _, _ := strings.Cut(e.Line, " "); f.Keyword != "" && strings.TrimRight(first, "(2)") != f.Keyword {
			t.Errorf("%s does not begin with %s", e.Line, f.Keyword)
		}
		if e.Means == "" || strings.HasSuffix(e.Means, ".") || f.Called == "" || f.Family == "" {
			t.Errorf("%s: not described", e.Line)
		}
	}
	for _, f := range Forms {
		for _, e := range f.Examples {
			check(f, e, e.Line)
		}
	}
	for _, f := range Phrases {
		for _, e := range f.Examples {
			check(f, e, map[string]string{"which one": "d meets e at X ", "values": "claim AB = "}[f.Family]+e.Line)
		}
	}
}

func TestStarts(t *testing.T) {
	for _, text := range sources(t) {
		var problems source.List
		for _, l := range cut(nil, scan(source.NewFile("f", text), &problems), &problems) {
			if first := l.tokens[0]; first.Type == keywordKind && !starts[first.Value] {
				t.Errorf("no form begins with %s", first.Value)
			}
		}
	}
}

func TestNearest(t *testing.T) {
	tests := []struct{ a, b, want string }{
		{"jion", "join", "1"}, {"join", "join", "0"}, {"radious", "radius", "1"}, {"claimm", "claim", "1"},
		{"", "end", "3"}, {"center", "centre", "1"}, {"abc", "cba", "2"}, {"ab", "perpendicular", "15"},
	}
	for _, test := range tests {
		if got := fmt.Sprint(distance(test.a, test.b)); got != test.want {
			t.Errorf("from %q to %q are %s slips, want %s", test.a, test.b, got, test.want)
		}
	}
	for habit, meant := range habits {
		if keywords[habit] {
			t.Errorf("%s is a keyword itself", habit)
		}
		for _, w := range strings.FieldsFunc(meant, func(r rune) bool { return r == ' ' || r == ',' }) {
			if unicode.IsLetter([]rune(w)[0]) && !keywords[w] && w != "or" && w != "π" {
				t.Errorf("%s stands for %s, which is no keyword", habit, w)
			}
		}
	}
}
