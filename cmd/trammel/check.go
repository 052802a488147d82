package main

import (
	"fmt"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"trammel/lang"
	"trammel/lang/program"
)

// checkCmd is: trammel check [files or folders] [--choices] [--tools]
type checkCmd struct {
	Sources        []string `arg:"" optional:"" help:"Sources, folders of sources, or - for the standard input; nothing is the current folder." complete:"sources"`
	Counterexample bool     `help:"Draw for each claim that fails in some figure of the source such a figure: first-line-6.svg for line 6 of first.trm."`
	Out            string   `short:"o" placeholder:"WHERE" help:"A folder for the counter-examples; unsaid, they go beside their sources." complete:"folders"`
	Tools          bool     `help:"Say too which tools the figure is made with: straightedge, compasses, ruler, protractor."`
	Choices        bool     `help:"Say too what was chosen where the source leaves something to chance."`
	Count          bool     `help:"Count too what compasses and straightedge do."`
}

// Help is the part of the help that teaches.
func (checkCmd) Help() string {
	return `Says of each claim of a figure that it holds, with its line. A claim that does
not hold is an error, which says by how much it fails; what is wrong with the picture
is told as build tells it. Where something is left
to chance, the claim is tried on other figures of the same source, exactly:
"holds always", or "holds here only"; special positions in which it fails
are named. An inequality is "holds in all 200 figures tried", or in as many as
could be made. Nothing is drawn, unless by --counterexample. Of a worksheet it
says whether its tasks can be set.

    trammel check first.trm
    first.trm:6  holds always  AB = BC

    trammel check first.trm --choices
    first.trm:3  chose         arc c, opening 3.5 (0.5 to 12 would do)
    first.trm:4  chose         P, at (3.2, 0) (from (0.1, 0) to (7.9, 0) would do)
    first.trm:5  chose         arc d of erect, opening 4.1 (3.3 to 14 would do)
    first.trm:6  holds always  AB = BC

--count counts the operations after Lemoine, inner acts of constructions too: R1 sets
the straightedge on a point, R2 draws along it, C1 sets a leg of the compasses on a
point, C2 on any point of a line, C3 draws a circle. All of them are the
simplicity of the figure, all but R2 and C3 its exactitude.

    trammel check first.trm --count
    first.trm:1  counts        4R1 + 2R2 + 3C1 + 2C3: simplicity 11, exactitude 7

    trammel check first.trm --tools
    first.trm:3  uses          straightedge and compasses only: straightedge in line 5
    first.trm:3  uses          compasses in lines 3 and 4
    first.trm:6  holds always  AB = BC

    trammel check wrong.trm --counterexample
    wrong.trm:7  fails in      wrong-line-7.svg: AC − BC is 1.20 cm (C at (2, 3))
`
}

// Run checks the sources.
func (c *checkCmd) Run(e *env) error {
	list, failed, err := sources(c.Sources)
	if err != nil {
		return err
	}
	t := tally{reporter: newReporter(e), failed: len(failed)}
	t.unread(failed)
	var rows strings.Builder
	table := tabwriter.NewWriter(&rows, 0, 0, 2, ' ', 0)
	claims, tasks, unclaimed := 0, 0, "nothing is claimed in it"
	work := func(in input) *drawing {
		d, text := e.compileInput(in)
		switch {
		case d.failed():
		case d.Figure != nil:
			d.err = guard(func() error {
				d.layOut(text, style{})
				return nil
			})
		case d.Worksheet != nil:
			d.err = guard(func() error {
				_, err := papersOf(d, allPapers, style{})
				return err
			})
		}
		return d
	}
	inOrder(list, runtime.GOMAXPROCS(0), work, func(d *drawing) {
		t.add(d)
		c.tabulate(table, d)
		if c.Counterexample {
			c.refute(e, table, d)
		}
		claims += len(d.Claims)
		if d.Figure == nil {
			unclaimed = "it holds constructions only; what they claim is proved at every call"
		}
		if d.Worksheet != nil {
			tasks += len(d.Worksheet.Tasks)
		}
	})
	table.Flush()
	e.print(rows.String())
	if len(list) != 1 || !list[0].named {
		fmt.Fprintln(e.stderr, t.summary("with "+counted(claims, "claim")+" checked"))
	} else if tasks > 0 && e.status == exitGood {
		fmt.Fprintf(e.stderr, "%s: %s can be set\n", printable(list[0].path), counted(tasks, "task"))
	} else if claims == 0 && e.status == exitGood {
		fmt.Fprintf(e.stderr, "%s: %s\n", printable(list[0].path), unclaimed)
	}
	return nil
}

// tabulate writes the claims of a source, and the choices if they are wanted, a
// row each, in the order of their lines.
func (c *checkCmd) tabulate(table *tabwriter.Writer, d *drawing) {
	rows := append(variedRows(d.Result.Varied()), claimRows(&d.Result)...)
	if c.Tools {
		rows = append(toolRows(d.Result.ToolUses()), rows...)
	}
	if c.Choices {
		rows = append(choiceRows(d.Result.Choices()), rows...)
	}
	if c.Count && d.Figure != nil {
		rows = append([]row{{1, "counts", counts(d.Operations())}}, rows...)
	}
	slices.SortStableFunc(rows, func(a, b row) int { return a.line - b.line })
	for _, r := range rows {
		fmt.Fprintf(table, "%s:%d\t%s\t%s\n", printable(d.name()), r.line, r.verb, printable(r.text))
	}
}

// row is: first.trm:6  holds  AB = BC
type row struct {
	line       int
	verb, text string
}

// seed fixes the other figures in which claims are tried, so that a check says
// the same every time.
const seed = 1

func claimRows(r *lang.Result) (rows []row) {
	reaches, figures := r.Reaches(seed)
	exceptions := r.Exceptions(reaches)
	for i, c := range r.Claims {
		rows = append(rows, row{c.Line, verdict(c, reaches[i], figures), c.Text + except(exceptions[i])})
	}
	return rows
}

// except is: , except when P is A or Q lies on AB
func except(positions []string) string {
	switch n := len(positions); n {
	case 0:
		return ""
	case 1:
		return ", except when " + positions[0]
	default:
		return ", except when " + strings.Join(positions[:n-1], ", ") + " or " + positions[n-1]
	}
}

// verdict is how a claim was decided, and how far it reaches; figures is how many
// others it was tried in.
func verdict(c lang.Claim, reach lang.Reach, figures int) string {
	switch {
	case !c.Reached:
		return "not reached"
	case !c.Decided:
		return "not decided"
	case c.Accident:
		return onlyHere
	case !c.Holds:
		return "fails"
	case reach == lang.HereOnly && c.Here:
		return "holds here"
	case reach == lang.HereOnly:
		return onlyHere
	case reach == lang.Tried:
		return fmt.Sprintf("holds in all %d figures tried", figures)
	}
	return reach.String()
}

// onlyHere is the verdict on a claim that other figures of the source refute.
const onlyHere = "holds here only (say: claim here)"

func variedRows(varied []lang.VariedRange) (rows []row) {
	for _, v := range varied {
		rows = append(rows, row{v.Line, "varies", fmt.Sprintf("%s = %s here, of %d values from %s to %s", v.Name, v.Value, v.Count, v.First, v.Last)})
	}
	return rows
}

// toolRows tells of each tool where it is used, in one row if by straightedge and
// compasses all is done.
func toolRows(uses []lang.ToolUse) (rows []row) {
	plain := true
	for _, u := range uses {
		text := u.Tool + " in " + linesText(u.Lines)
		if u.Tool == "outright" {
			text = "no tool, drawn outright, in " + linesText(u.Lines)
		}
		rows = append(rows, row{u.Lines[0], "uses", text})
		plain = plain && (u.Tool == "straightedge" || u.Tool == "compasses")
	}
	if plain && len(rows) > 0 {
		rows[0].text = "straightedge and compasses only: " + rows[0].text
	}
	return rows
}

// linesText is: line 3 · lines 3, 4 and 8
func linesText(lines []int) string {
	var words []string
	for _, n := range lines {
		words = append(words, strconv.Itoa(n))
	}
	if n := len(words); n > 1 {
		return "lines " + strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return "line " + words[0]
}

func choiceRows(choices []lang.Choice) (rows []row) {
	for _, c := range choices {
		text := c.Name + ", " + c.Value
		if c.Range != "" {
			text += " (" + c.Range + " would do)"
		}
		rows = append(rows, row{c.Line, "chose", text})
	}
	return rows
}

// counts is: 2R1 + R2 + 3C1 + 3C3: simplicity 9, exactitude 5
func counts(o program.Operations) string {
	text := fmt.Sprintf("%s: simplicity %d, exactitude %d", o, o.Simplicity(), o.Exactitude())
	if o.Beyond > 0 {
		text += fmt.Sprintf("; and %s beyond compasses and straightedge", counted(o.Beyond, "act"))
	}
	return text
}
