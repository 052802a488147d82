// Package check gives names their meaning: it turns a syntax tree into a flat
// Program, expanding constructions and loops, and reports every name, kind and
// form that cannot be meant.
package check

import (
	"fmt"
	"math/big"

	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// Loader finds the files that a source leans on. A nil result has been
// reported, or for Library does not exist.
type Loader interface {
	Use(path string, at source.Span) *syntax.File
	Library(name string) *syntax.File
	LibraryNames() []string
}

// The limits that keep a hostile source from eating time and memory.
const (
	maxStatements = 200_000
	maxObjects    = 20_000
	maxLabels     = 500
	maxDepth      = 200
	maxUses       = 16
)

// Options are what the outside asks of a file.
type Options struct {
	Asks  []string       // expressions to be worked out in the finished figure, for Program.Answers
	Picks map[string]int // which of its values each choice takes; unsaid, the middle one
}

// Check makes the Program of a file. It is nil when the file holds
// constructions only. It can be run in spite of errors in problems, to find
// more of them; what they touch stays undecided.
func Check(f *syntax.File, loader Loader, problems *source.List, o Options) *program.Program {
	c := newChecker(f, loader, problems, o)
	top := newScope(c, f.Source)
	top.view = shown
	c.using = []string{f.Source.Name}
	for _, st := range f.Statements {
		if st.Construction != nil {
			c.heads[st.Construction.Name] = st.Construction
		}
	}
	top.acts = f.Statements
	top.foresee(f.Statements)
	c.file(top, f)
	top.settleUnmet()
	c.finish()
	for _, text := range o.Asks {
		c.prog.Answers = append(c.prog.Answers, top.ask(text))
	}
	if !c.isFigure(f) {
		return nil
	}
	return c.prog
}

// newChecker is a checker at the beginning of a file.
func newChecker(f *syntax.File, loader Loader, problems *source.List, o Options) *checker {
	c := &checker{
		prog:     &program.Program{Source: f.Source, Unit: big.NewRat(10, 1)},
		picks:    o.Picks,
		loader:   loader,
		problems: problems,
		seen:     map[seenKey]bool{},
		lost:     lostIn(f, *problems),
		library:  map[string]*definition{},
		unmet:    map[string]*source.Problem{},
		heads:    map[string]*syntax.Construction{},
		bonds:    map[*syntax.Construction]bonds{},
	}
	c.forget()
	return c
}

// forget begins a drawing anew.
func (c *checker) forget() {
	c.objects, c.labels = 0, 0
	c.centres, c.circleOf, c.reaches, c.metOn = map[int]int{}, map[int]int{}, map[int]int{}, map[int][]int{}
	c.over, c.beads = map[int]int{}, map[int][]int{}
	c.arms = map[int]pair{}
	c.outer, c.latest, c.named = map[int]int{}, map[int]int{}, map[int]bool{}
	c.calls, c.used = nil, map[int]bool{}
	c.through, c.spoken = map[int]pair{}, map[int]bool{}
	c.chose = map[int]program.Saying{}
	c.hand = newHand()
}

// finish settles what is known only when all acts are.
func (c *checker) finish() {
	c.inkPurposes()
	c.nameSlots()
	c.prog.Operations = c.hand.count
}

// checker is the state of one Check.
type checker struct {
	prog     *program.Program
	loader   Loader
	problems *source.List
	library  map[string]*definition
	seen     map[seenKey]bool
	spent    int // statements expanded
	objects  int // things drawn
	labels   int
	regions  int // hatched
	lost     lost
	picks    map[string]int
	unmet    map[string]*source.Problem // the file's unknown names, at their first use
	full     bool                       // a limit was passed: expand no more
	unitSet  bool
	using    []string                        // the files that are being used, outermost first
	defining string                          // the construction that is being checked by itself
	heads    map[string]*syntax.Construction // the file's own, by name
	bonds    map[*syntax.Construction]bonds  // of constructions, as far as they were asked for

	centres   map[int]int            // centre by circle
	circleOf  map[int]int            // given circle by the centre that came with it
	reaches   map[int]int            // how far a straight reaches
	over      map[int]int            // by lines the last free point off them
	beads     map[int][]int          // by lines that a call gives the points that came with them
	arms      map[int]pair           // the ends of the latest given angle's arms, by its vertex
	metOn     map[int][]int          // straights by the points that are met on them
	hand      *hand                  // what the tools do
	latest    map[int]int            // arcs by their centres, as last told
	chose     map[int]program.Saying // the values of choices
	named     map[int]bool           // arcs that their centre does not tell from others
	through   map[int]pair           // the points that a line was drawn through
	spoken    map[int]bool           // curves that are spoken of after they were drawn
	calls     [][]int                // what each of the file's calls gives
	used      map[int]bool           // what acts draw from
	drawsFrom bool                   // what the statement that is expanded names is drawn from
	outer     map[int]int            // what a call in full gives: the caller's slot by the construction's
	allowed   program.Tools          // that may be used; 0: all
	drawing   bool                   // an act with a tool has been done
	scattered int                    // points left to chance so far
	waiting   int                    // points of rows that are begun, still to come
	added     int                    // acts so far that add to what is there
	inside    int                    // of these, inside of a figure
	outside   int                    // of these, outside of a figure
	circles   int                    // radii of given circles left to chance so far
	asides    int                    // points of lines beside a straight left to chance so far
	freeLines int                    // lines left to chance so far
	rings     int                    // circles with several points left to chance so far

	fixed   int // points given by coordinates so far
	lengths int // lengths left to chance so far
	slopes  int // directions of lines left to chance so far

	bodies    int  // shapes and angles given so far
	parallels int  // lines left to chance but for their direction so far
	level     bool // something is level that need not be
}

type seenKey struct {
	at   source.Span
	text string
}

// fail reports a problem once, however often a loop or a call comes by.
func (c *checker) fail(at source.Span, format string, args ...any) *source.Problem {
	text := fmt.Sprintf(format, args...)
	key := seenKey{at, text}
	if c.seen[key] {
		return &source.Problem{}
	}
	c.seen[key] = true
	return c.problems.Add(at, text)
}

// isFigure tells a figure from a file of constructions only.
func (c *checker) isFigure(f *syntax.File) bool {
	for _, st := range f.Statements {
		if st.Construction == nil && st.Use == nil {
			return true
		}
	}
	return false
}

// file expands a whole file: one figure, or constructions only.
func (c *checker) file(s *scope, f *syntax.File) {
	titled, drawn := false, false
	for _, st := range f.Statements {
		switch {
		case st.Figure != nil:
			if titled {
				s.fail(st.Node, "a file is one figure, and this one has begun").Help = "put the second figure into a file of its own"
			} else if drawn {
				s.fail(st.Node, "the figure line comes after what belongs to the figure").Help = "put it first; only constructions and use may stand before it"
			}
			titled = true
			c.prog.Title = st.Figure.Title
		default:
			drawn = drawn || st.Construction == nil && st.Use == nil
			s.statement(st)
		}
		if c.full {
			return
		}
	}
}

// spend counts a statement against the limits; false when no more may be expanded.
func (s *scope) spend(n syntax.Node) bool {
	if s.c.full {
		return false
	}
	s.c.spent++
	if s.c.spent > maxStatements {
		s.fail(n, "the source asks for more than %d acts", maxStatements).Help = "make the repeats shorter"
		s.c.full = true
		return false
	}
	return true
}

// statement expands one statement. There is one row here for each family.
func (s *scope) statement(st *syntax.Statement) {
	if !s.spend(st.Node) {
		return
	}
	if s.topOnly(st) {
		return
	}
	s.take(st)
	defer func(was bool) { s.c.drawsFrom = was }(s.c.drawsFrom)
	s.c.drawsFrom = drawsFrom(st)
	if s.depth == 0 && adds(st) {
		defer s.addSteps(len(s.c.prog.Steps))
	}
	switch {
	case st.Given != nil:
		s.act(st, func() { s.given(st.Given) })
	case st.Take != nil:
		s.act(st, func() { s.placed(st.Take.Point, figure.Construction) })
	case st.Arc != nil:
		s.act(st, func() { s.arc(st.Arc) })
	case st.Circle != nil:
		s.act(st, func() { s.circleAct(st.Circle) })
	case st.Line != nil:
		s.act(st, func() { s.lineAct(st.Line) })
	case st.Ray != nil:
		s.act(st, func() { s.ray(st.Ray) })
	case st.Join != nil:
		s.act(st, func() { s.join(st.Join) })
	case st.Produce != nil:
		s.act(st, func() { s.produce(st.Produce) })
	case st.StepOff != nil:
		s.act(st, func() { s.stepOff(st.StepOff) })
	case st.Locus != nil:
		s.act(st, func() { s.locusAct(st.Locus) })
	case st.Named != nil:
		s.act(st, func() { s.named(st.Named) })
	case st.Claim != nil:
		s.act(st, func() { s.claim(st.Claim) })
	case st.Mark != nil:
		s.act(st, func() { s.mark(st.Mark) })
	case st.Label != nil:
		s.label(st.Label)
	case st.Note != nil:
		s.note(st.Note)
	case st.Shade != nil:
		s.act(st, func() { s.shade(st.Shade) })
	case st.Pencil != nil:
		s.pencil(st.Pencil)
	case st.Step != nil:
		s.step(st.Step)
	case st.Repeat != nil:
		s.repeat(st.Repeat)
	}
}

// topOnly handles what may stand only outside of blocks; true when st was such.
func (s *scope) topOnly(st *syntax.Statement) bool {
	var word string
	var do func()
	switch {
	case st.Unit != nil:
		word, do = "unit", func() { s.unit(st.Unit) }
	case st.Paper != nil:
		word, do = "paper", func() { s.paper(st.Paper) }
	case st.Theme != nil:
		word, do = "theme", func() { s.theme(st.Theme) }
	case st.Language != nil:
		word, do = "language", func() { s.language(st.Language) }
	case st.Using != nil:
		word, do = "using", func() { s.using(st.Using) }
	case st.Use != nil:
		word, do = "use", func() { s.use(st.Use) }
	case st.Construction != nil:
		word, do = "construction", func() { s.define(st.Construction) }
	case st.Figure != nil:
		word, do = "figure", func() {}
	case st.Choose != nil:
		word, do = "choose", func() { s.choose(st.Choose) }
	case st.Task != nil:
		word, do = "task", func() { s.task(st.Task) }
	case st.Answer != nil:
		word, do = "answer", func() { s.answers(st.Answer) }
	case st.Worksheet != nil, st.Instructions != nil:
		s.fail(st.Node, "this belongs in a worksheet, and this file draws a figure").Help = "begin a file of its own with: worksheet \"title\""
		return true
	case st.Needs != nil, st.Sentence != nil:
		if s.depth == 0 {
			s.fail(st.Node, "this belongs inside a construction").Help = "write it between construction … and its end"
		}
		return true // read by the call
	default:
		return false
	}
	if s.depth > 0 || s.nested {
		s.fail(st.Node, "%s may stand only outside of blocks", word)
		return true
	}
	do()
	return true
}

// act runs do as one act of the drawing: what it draws belongs to one step. A
// call in full is no act: its inner acts are.
func (s *scope) act(st *syntax.Statement, do func()) {
	inner := s.depth > 0 && (st.Claim != nil || st.Mark != nil)
	if s.view != shown || inner || st.Named != nil && st.Named.By != nil && st.Named.By.Full {
		do()
		return
	}
	act := s.newAct(st.Node)
	do()
	if !s.grouped && !s.c.problems.Failed() {
		act := &s.c.prog.Acts[act]
		act.Kind, act.Said = s.told(st)
	}
}

// newAct begins an act and gives its number.
func (s *scope) newAct(n syntax.Node) int {
	s.c.prog.Acts = append(s.c.prog.Acts, program.Act{Line: s.sourceLine(n)})
	return len(s.c.prog.Acts) - 1
}

// step expands the acts under one caption.
func (s *scope) step(st *syntax.Step) {
	if s.grouped {
		s.fail(st.Node, "a step cannot stand inside a step")
	}
	act := -1
	if s.view == shown {
		act = s.newAct(st.Node)
	}
	wasGrouped, wasNested := s.grouped, s.nested
	s.grouped, s.nested = true, true
	for _, b := range st.Body {
		s.statement(b)
	}
	s.grouped, s.nested = wasGrouped, wasNested
	if act >= 0 && !wasGrouped {
		s.c.prog.Acts[act].Said = program.Words{Text: st.Caption, With: s.byName()}
	}
}

// repeat expands its body once for each value of its variable.
func (s *scope) repeat(r *syntax.Repeat) {
	from, ok1 := s.whole(r.From)
	to, ok2 := s.whole(r.To)
	name, ok3 := s.loopName(r.Var)
	if !ok1 || !ok2 || !ok3 {
		return
	}
	if to < from {
		s.fail(r.Node, "the repeat counts from %d to %d, so nothing is done", from, to).Help = "count upwards"
		return
	}
	if to-from+1 > maxStatements {
		s.fail(r.Node, "the repeat counts from %d to %d, more than the limit of %d acts", from, to, maxStatements)
		return
	}
	wasNested := s.nested
	s.nested = true
	for i := from; i <= to && !s.c.full; i++ {
		s.consts[name] = big.NewRat(int64(i), 1)
		for _, b := range r.Body {
			s.statement(b)
		}
	}
	delete(s.consts, name)
	s.nested = wasNested
}

// loopName is a repeat's variable, which must be a new plain name.
func (s *scope) loopName(r *syntax.Ref) (string, bool) {
	if r.Name == "" || r.Index != nil {
		s.fail(r.Node, "a repeat counts with a small letter").Help = "such as: repeat i from 1 to 6"
		return "", false
	}
	if _, ok := s.consts[r.Name]; ok {
		s.fail(r.Node, "%s is counting already", r.Name).Help = "take another letter for the inner repeat"
		return "", false
	}
	if slot, ok := s.names[r.Name]; ok {
		s.fail(r.Node, "%s is already a %s", r.Name, s.slot(slot).Kind)
		return "", false
	}
	return r.Name, true
}
