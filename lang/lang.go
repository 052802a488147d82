// Package lang is the door of the compiler: a source goes in, a resolved
// figure or the list of all its mistakes comes out.
package lang

import (
	"errors"
	"math/big"
	"path/filepath"
	"slices"

	"trammel/geom/figure"
	"trammel/lang/caption"
	"trammel/lang/check"
	"trammel/lang/eval"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/lang/warn"
)

// Result is what came of a source.
type Result struct {
	// Figure is nil when the source has errors, or holds constructions only.
	Figure   *figure.Figure
	Files    []string // every file read, as paths that can be opened
	Problems source.List
	Claims   []Claim
	// Worksheet is set instead of a figure where the source sets tasks.
	Worksheet *Worksheet

	program     *program.Program
	state       *program.State
	inputs      []*big.Rat
	other       *elsewhere  // once asked for
	special     []position  // once asked for
	sought      []exception // and what they were sought among
	sides       []bool      // once asked for, by claim
	sidesWithin int         // so many lines of formulas

	tree   *syntax.File
	loader *loader
	asks   []string           // what is to be worked out
	tried  map[string]attempt // what came of its choices, by their values
}

// Worksheet is a source that sets tasks, and SetTask one of them.
type (
	Worksheet = check.Worksheet
	SetTask   = check.SetTask
)

// Claim is a claim of the source and how it was decided.
type Claim struct {
	Line  int
	Text  string
	Here  bool // claimed of this figure only
	Holds bool
	// Accident is set where it would hold, but only because of what was chosen here.
	Accident bool
	// Decided is false where the claim would have cost too much, or was not reached.
	Decided bool
	// Reached is false where a mistake elsewhere kept the claim from being looked at.
	Reached bool
}

// Compile resolves the source text that stands in the file path; files that it
// uses are looked for beside it. It never panics on a source's account.
func Compile(path string, text []byte) *Result { return compile(path, text, check.Options{}) }

func compile(path string, text []byte, o check.Options) *Result {
	file := source.NewFile(path, string(text))
	out := &Result{Files: []string{path}}
	loader := newLoader(path, &out.Problems)
	tree := syntax.Parse(file, &out.Problems)
	out.tree, out.loader, out.asks = tree, loader, o.Asks
	if check.IsWorksheet(tree) {
		out.Worksheet = check.Sheet(tree, &out.Problems)
	} else if p := check.Check(tree, loader, &out.Problems, o); p != nil {
		sound := !out.Problems.Failed()
		out.run(p)
		if sound {
			out = out.settled()
		}
	}
	out.Files = append(slices.Clip(out.Files), loader.read...)
	out.Problems.Sort()
	return out
}

// run resolves the Program on inputs that solve chooses.
func (out *Result) run(p *program.Program) {
	out.resolve(p, choose(p))
}

// resolve takes the run; mistakes found before do not keep it from finding more.
func (out *Result) resolve(p *program.Program, o outcome) {
	bad := map[*program.Step]error{}
	for _, u := range o.state.Undone {
		bad[u.Step] = u.Err
	}
	for _, f := range o.failures {
		if t, last := troubleAt(o.Troubles, f.Index); t != nil {
			if last {
				t.report(p, o.Inputs, &out.Problems)
			}
			continue
		}
		f.Report(&out.Problems)
	}
	out.Problems = once(out.Problems)
	for _, c := range p.Claims {
		err := bad[c.Step]
		out.Claims = append(out.Claims, Claim{Line: c.Line, Text: c.Text, Here: c.Here, Holds: err == nil, Decided: err == nil || isFalse(err), Reached: err != program.Poisoned})
	}
	out.program, out.state, out.inputs = p, o.state, o.Inputs
	if !out.Problems.Failed() {
		out.refuseTouches()
	}
	if !out.Problems.Failed() {
		out.refuseAccidents()
	}
	if !out.Problems.Failed() {
		warnOf(o.state, &out.Problems)
		out.Figure = eval.Figure(o.state, caption.Teller{Program: p})
	}
}

// warnOf adds the warnings of a figure.
func warnOf(st *program.State, problems *source.List) {
	eval.Guard(func() error {
		warn.Figure(st, problems)
		return nil
	})
}

// isFalse tells a claim that was decided and is false from one left undecided.
func isFalse(err error) bool {
	var f *program.Fault
	return errors.As(err, &f) && f.False
}

// Base is the name that a source's outputs take: its file's, without the ending.
func Base(path string) string {
	name := filepath.Base(path)
	return name[:len(name)-len(filepath.Ext(name))]
}

// Operations are what the tools do in the figure, the inner acts of
// constructions too.
func (r *Result) Operations() program.Operations {
	if r.program == nil {
		return program.Operations{}
	}
	return r.program.Operations
}
