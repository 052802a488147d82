package check

import (
	"fmt"
	"math/big"
	"sort"

	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// scope is where names live: the file's, or that of one call of a construction.
type scope struct {
	c         *checker
	file      *source.File
	names     map[string]int // slot by name
	consts    map[string]*big.Rat
	straights map[pair][]int // drawn straights by the points they are named after
	bars      []int          // every straight drawn in this scope, for marks
	env       *env
	via       []program.Call
	view      view
	depth     int  // calls deep
	grouped   bool // inside a step
	nested    bool // inside a step or repeat
	parent    *scope
	needing   bool              // in what a construction needs
	callers   map[string]string // what the caller calls the parameters
	stating   bool              // in a claim or mark: what it names is what the figure is for
	broken    bool              // a library call that has failed
	copies    map[int]int       // the caller's slots by those of the parameters
	tools     program.Tools     // of the act that is expanded
	first     int               // the first slot made inside a call
	making    *shape            // whose data are being read
	ticks     classes           // of equal lengths
	arcs      classes           // of equal angles
	arrows    classes           // of parallels

	meets    map[string][][2]*syntax.Ref // what is to meet what, by the name of the first, or its letters
	rays     map[string]string           // through what a ray is to go, by where it begins
	rounds   map[string]bool             // circles that are given, by name
	halved   map[string]bool             // straights whose angle a locus is to halve, by name
	rows     map[string]*row             // points to be left to chance, by the curve they are put on
	taken    map[string]*cut             // and those between two others, by their names
	fixed    []fixedAhead                // points whose coordinates the source gives somewhere
	openings int                         // openings left to chance so far
	acts     []*syntax.Statement         // of the file, and what they bind together, once asked for
	bound    bonds

	single, singleEndless int // points left to chance so far that are the only ones on a straight
}

// pair is two point slots, the smaller first.
type pair [2]int

func pairOf(a, b int) pair { return pair{min(a, b), max(a, b)} }

// view says what of a construction's inside is seen.
type view uint8

const (
	shown  view = iota // with letters: the file itself, or in full
	brief              // faint and without letters
	unseen             // not at all
)

func newScope(c *checker, f *source.File) *scope {
	return &scope{
		c:         c,
		file:      f,
		names:     map[string]int{},
		consts:    map[string]*big.Rat{},
		straights: map[pair][]int{},
		meets:     map[string][][2]*syntax.Ref{},
		rays:      map[string]string{},
		rounds:    map[string]bool{},
		halved:    map[string]bool{},
		rows:      map[string]*row{},
		taken:     map[string]*cut{},
	}
}

func (s *scope) span(n syntax.Node) source.Span { return n.Span(s.file) }

// sourceLine is where a node is in the source, or where the call is that it comes from.
func (s *scope) sourceLine(n syntax.Node) int {
	at := s.span(n)
	if len(s.via) > 0 && at.File != s.c.prog.Source {
		at = s.via[0].Span
	}
	line, _ := at.File.Position(at.Start)
	return line
}

func (s *scope) fail(n syntax.Node, format string, args ...any) *source.Problem {
	at := s.span(n)
	if len(s.via) > 0 && s.via[0].Span.File == s.c.prog.Source && at.File != s.c.prog.Source {
		text := fmt.Sprintf(format, args...)
		if s.broken {
			return &source.Problem{} // the first failure of a call is told, the rest follow from it
		}
		s.broken = true
		p := s.c.fail(s.via[0].Span, "%s fails here: %s", s.via[0].Name, text)
		p.Notes = append(p.Notes, source.Note{Span: at, Text: "in " + s.via[len(s.via)-1].Name + ": " + text})
		return p
	}
	p := s.c.fail(at, format, args...)
	s.trace(p)
	return p
}

// trace notes the calls that led to a problem inside a construction.
func (s *scope) trace(p *source.Problem) {
	for i := len(s.via) - 1; i >= 0; i-- {
		p.Notes = append(p.Notes, source.Note{Span: s.via[i].Span, Text: "in this call of " + s.via[i].Name})
	}
}

func (s *scope) slot(n int) *program.Slot { return s.c.prog.Slots[n] }

// add makes a slot without a name.
func (s *scope) add(kind program.Kind, at syntax.Node) int {
	s.c.prog.Slots = append(s.c.prog.Slots, &program.Slot{Kind: kind, Span: s.span(at), Top: s.depth == 0})
	return len(s.c.prog.Slots) - 1
}

// declare makes a slot for a new name.
func (s *scope) declare(name string, kind program.Kind, at syntax.Node) int {
	if old, ok := s.names[name]; ok {
		p := s.fail(at, "%s is there already", name)
		p.Help = "take another name"
		if s.nested {
			p.Help += ", or an index in a repeat: " + name + "[i]"
		}
		p.Notes = append([]source.Note{{Span: s.slot(old).Span, Text: name + " is made here"}}, p.Notes...)
	}
	if _, ok := s.consts[name]; ok {
		s.fail(at, "%s is the number that the repeat counts with", name).Help = "take another name"
	}
	n := s.add(kind, at)
	s.slot(n).Name = name
	if old, taken := s.names[name]; taken {
		s.slot(n).Twice, s.slot(n).Span = true, s.slot(old).Span
	}
	s.names[name] = n
	return n
}

// draw gives a slot its ink, as far as the view lets it be seen.
func (s *scope) draw(slot int, role figure.Role) {
	s.c.objects++
	if s.c.objects > maxObjects && !s.c.full {
		s.c.fail(s.slot(slot).Span, "the figure has more than %d things in it", maxObjects)
		s.c.full = true
	}
	sl := s.slot(slot)
	sl.Ink = &program.Ink{Thing: figure.Thing{
		Name: sl.Name,
		Step: max(len(s.c.prog.Acts)-1, 0),
		Role: role,
	}}
	switch {
	case s.view == unseen:
		sl.Ink.Hidden, sl.Aside = true, true
	case s.view == brief:
		sl.Ink.Role = figure.Construction
		sl.Ink.Weight = figure.Faint
		sl.Ink.Hidden = sl.Kind == program.Point
	case sl.Kind == program.Point || role == figure.Given && sl.Kind == program.Line:
		s.letter(slot)
	}
	if sl.Kind == program.Line {
		s.bars = append(s.bars, slot)
	}
}

// letter labels a slot with its name.
func (s *scope) letter(slot int) {
	sl := s.slot(slot)
	if sl.Name == "" || sl.Ink.Label != nil {
		return
	}
	sl.Ink.Label = &figure.Label{Text: sl.Name, Name: true}
	s.countLabel(sl.Span)
}

func (s *scope) countLabel(at source.Span) {
	s.c.labels++
	if s.c.labels == maxLabels+1 {
		s.c.fail(at, "the figure has more than %d labels", maxLabels).Help = "hide some points"
	}
}

// emit adds a step to the Program.
func (s *scope) emit(n syntax.Node, do func(*program.State) error) {
	s.step1(n, false, do)
}

// prove adds a step that decides something and makes nothing.
func (s *scope) prove(n syntax.Node, do func(*program.State) error) {
	s.step1(n, true, do)
}

func (s *scope) step1(n syntax.Node, proof bool, do func(*program.State) error) {
	s.c.prog.Steps = append(s.c.prog.Steps, &program.Step{Span: s.span(n), Via: s.via, Proof: proof, Tools: s.tools, Do: do})
}

// input adds something left to chance and returns its number.
func (s *scope) input(n syntax.Node, kind program.InputKind, name string, plain *big.Rat) int {
	s.c.prog.Inputs = append(s.c.prog.Inputs, &program.Input{Span: s.span(n), Kind: kind, Name: name, Default: plain, Step: len(s.c.prog.Steps)})
	return len(s.c.prog.Inputs) - 1
}

// knows tells whether a name means something here.
func (s *scope) knows(name string) bool {
	_, slot := s.names[name]
	_, number := s.consts[name]
	return slot || number
}

// nearName is the known name most like a misspelt one, or "".
func (s *scope) nearName(name string, kinds ...program.Kind) string {
	var all []string
	for k, slot := range s.names {
		for _, kind := range kinds {
			if s.slot(slot).Kind == kind {
				all = append(all, k)
			}
		}
	}
	sort.Strings(all)
	return syntax.Nearest(name, all)
}
