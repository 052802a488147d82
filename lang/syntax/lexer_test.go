package syntax

import (
	"strings"
	"testing"
	"unicode"

	"trammel/lang/source"
)

func TestTwins(t *testing.T) {
	for other, latin := range twins {
		if !unicode.In(other, unicode.Greek, unicode.Cyrillic) || !unicode.Is(unicode.Latin, latin) || unicode.IsUpper(other) != unicode.IsUpper(latin) {
			t.Errorf("%c and %c are no pair", other, latin)
		}
	}
}

func TestTokens(t *testing.T) {
	tests := []struct{ text, want string }{
		{"AB P1P2 X'Y", "Point:A Glued:B Point:P1 Glued:P2 Point:X' Glued:Y"},
		{"P[i]P[i+1] Q", "Point:P Sign:[ Name:i Sign:] Glued:P Sign:[ Name:i Sign:+ Number:1 Sign:] Point:Q"},
		{"אב 甲乙 Ä", "Point:א Glued:ב Point:甲 Glued:乙 Point:Ä"},
		{"E\u0301F", "Point:E\u0301 Glued:F"},
		{"α k1 base2' m", "Name:α Name:k1 Name:base2' Name:m"},
		{"3AB 3 AB 35mm 3.25", "Number:3 Point:A Glued:B Number:3 Point:A Glued:B Number:35 Keyword:mm Number:3.25"},
		{"60° 22.5 deg 22°30' 22°30′ 7deg", "Angle:60° Angle:22.5° Angle:22°30' Angle:22°30' Angle:7°"},
		{"at 10 o'clock", "Keyword:at Number:10 Keyword:o'clock"},
		{"<= ≤ != − × ^", "Sign:≤ Sign:≤ Sign:≠ Sign:- Sign:* Sign:^"},
		{`note "a # b" # c`, `Keyword:note Text:"a # b" Comment:# c`},
		{"a\n\n", "Name:a EOL:\n EOL:\n"},
	}
	kinds := map[int]string{}
	for name, kind := range symbols {
		kinds[int(kind)] = name
	}
	for _, test := range tests {
		var problems source.List
		var got []string
		for _, tok := range scan(source.NewFile("f", test.text), &problems) {
			got = append(got, kinds[int(tok.Type)]+":"+tok.Value)
		}
		if s := strings.Join(got, " "); s != test.want || len(problems) > 0 {
			t.Errorf("%q\n got %s\nwant %s %s", test.text, s, test.want, texts(problems))
		}
	}
}

func TestSpans(t *testing.T) {
	text := "# note\narc c centre P radius any over half AB  cuts m at L  and R   # end\n\ngiven C 5 from A ,  # so\n  4 from B\n"
	f := source.NewFile("f", text)
	var problems source.List
	tree := Parse(f, &problems)
	arc, c := tree.Statements[0].Arc, tree.Statements[1].Given.Point
	tests := []struct {
		node Node
		want string
	}{
		{tree.Statements[0].Node, "arc c centre P radius any over half AB  cuts m at L  and R"},
		{arc.Name.Node, "c"},
		{arc.Bounds[0].Node, "over half AB"},
		{arc.Cuts.Node, "cuts m at L  and R"},
		{arc.Cuts.Meets[0].Picks[0].Node, "L"},
		{c.Node, "C 5 from A ,  # so\n  4 from B"},
		{c.Places[0].Node, "5 from A"},
		{c.Places[1].From.Node, "B"},
	}
	for _, test := range tests {
		if got := test.node.Span(f).Text(); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
	if arc.Cuts.Pos.Line != 2 || arc.Cuts.Pos.Column != 41 {
		t.Errorf("cuts is at %d:%d", arc.Cuts.Pos.Line, arc.Cuts.Pos.Column)
	}
}
