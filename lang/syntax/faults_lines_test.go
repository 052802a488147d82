package syntax

import "testing"

func TestLinesFaults(t *testing.T) {
	checkWordings(t, []wording{
		{"end",
			"1:1 this end closes nothing (end closes a step, a repeat or a construction; take it out)"},
		{"end join",
			"1:5 end stands alone on its line"},
		{"step \"x\"\njoin AB",
			"1:1 this step has no end (close it with a line that says end)"},
		{"step no caption\nend",
			`1:6 the text has no quotes (write step "no caption")`},
		{"repeat i 1 to 5\nend",
			`1:10 "1" stands where "from" is wanted (a repeat reads: repeat i from 1 to 5)`},
		{"construction erect line m\nend",
			`1:20 "line" stands where "(" is wanted (a construction reads: construction erect(line m, point P) gives line n · construction divide(point A, point B, number n) gives points P[i] from 1 to n - 1)`},
		{"construction erect(m) gives line n\nend",
			`1:20 "m" stands where "line" or "point" is wanted (a construction reads: construction erect(line m, point P) gives line n · construction divide(point A, point B, number n) gives points P[i] from 1 to n - 1)`},
		{"construction f(line size) gives line n\nend",
			`1:21 "size" is a word of the language and cannot be a name (take another name, such as s or s1)`},
		{"step \"x\"\nconstruction f(line m) gives line n\nend\nend",
			"2:1 a construction stands at the top level, in no other block"},
		{"step \"x\"\n\"alone\"\nend",
			`2:1 a text alone stands only as the first line of a construction (a remark on the figure is a note: note "…" near X)`},
		{"step\njoin A\nend",
			"1:5 the line ends where a text in quotes or \"off\" is wanted (a step reads: step \"Strike two arcs\")\n" +
				"2:6 a join takes 2 points or more, not A (write them together, as in AB)"},
		{"join AB,\n\njoin CD",
			"1:8 stray comma (a line goes on after a comma; leave it out if the statement is complete)"},
		{"join AB,\njoin CD",
			"1:8 stray comma (a line goes on after a comma; leave it out if the statement is complete)"},
		{"join AB,",
			"1:8 stray comma (a line goes on after a comma; leave it out if the statement is complete)"},
		{"join ,",
			"1:6 stray comma (a line goes on after a comma; leave it out if the statement is complete)"},
		{"join AB,\nend",
			"1:8 stray comma (a line goes on after a comma; leave it out if the statement is complete)\n2:1 this end closes nothing (end closes a step, a repeat or a construction; take it out)"},
		{"join AB,\nd meets e at X",
			"2:1 a join takes 2 points or more, not d (write them together, as in AB)"},
		{"join AB,\n  CD quickly",
			`2:6 "quickly" is left over: the statement is complete without it (a join reads: join LX, RX)`},
		{"jion AB\njoin CD\nclaim AB is CD\nray AX",
			"1:1 no statement begins with \"jion\" (did you mean join?)\n3:10 \"is\" is no word of the language (write =)"},
	})
}
