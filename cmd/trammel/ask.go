package main

import (
	"fmt"
	"math/big"
	"path/filepath"
	"strings"

	"trammel/lang"
)

// askCmd is: trammel ask file expression…
type askCmd struct {
	Source      string   `arg:"" help:"The source, or - for the standard input." complete:"sources"`
	Expressions []string `arg:"" name:"expression" help:"Lengths, ratios, angles, areas or numbers, each in quotes if it holds spaces or signs of the shell."`
}

// Help is the part of the help that teaches.
func (askCmd) Help() string {
	return `Works out what is asked of the figure that a source makes: exactly, and as a
rounded decimal. The words are those of a source. Nothing is drawn.

    trammel ask first.trm AB "AB : BC" "angle ABC" "area of ABC"
    AB = 5 cm
    AB : BC = 1
    angle ABC = 60°
    area of ABC = 25√3/4 cm² ≈ 10.825318 cm²
`
}

// Run answers.
func (c *askCmd) Run(e *env) error {
	in, err := single(c.Source)
	if err != nil {
		return err
	}
	var answers []lang.Answer
	d, _ := e.resolve(in, func(text []byte) (r *lang.Result) {
		answers, r = lang.Ask(in.name(), text, c.Expressions)
		return r
	})
	newReporter(e).report(d)
	if !d.failed() && d.Figure == nil {
		e.noFigure(in.name(), &d.Result)
		e.raise(exitSource)
	}
	for _, a := range answers {
		e.answer(in.name(), a)
	}
	return nil
}

// single is one source that the command line names.
func single(name string) (input, error) {
	if name != stdio && !isSource(name) {
		return input{}, &usageError{name + " is no source: the name of a source ends in .trm", `"-" reads any text from the standard input`}
	}
	return input{filepath.Clean(name), filepath.Base(name), true}, nil
}

// answer shows an answer, or why there is none.
func (e *env) answer(name string, a lang.Answer) {
	if a.Problem != "" {
		e.complain(name, fmt.Sprintf("%s: %s", a.Expr, a.Problem), "")
		e.raise(exitSource)
		return
	}
	e.print(printable(sentence(a)) + "\n")
}

// sentence is: AB = 3√2 cm ≈ 4.242641 cm
func sentence(a lang.Answer) string {
	switch {
	case a.Exact == "":
		return a.Expr + " ≈ " + a.Decimal
	case a.Exact == a.Decimal:
		return a.Expr + " = " + a.Exact
	case same(a.Exact, a.Decimal):
		return a.Expr + " = " + a.Exact + " = " + a.Decimal
	}
	return a.Expr + " = " + a.Exact + " ≈ " + a.Decimal
}

// same tells whether a value is a fraction that the decimal did not round.
func same(exact, decimal string) bool {
	if strings.Contains(exact, " : ") {
		return false
	}
	number := func(value string) (*big.Rat, bool) {
		return new(big.Rat).SetString(strings.FieldsFunc(value, func(r rune) bool { return r == ' ' || r == '°' })[0])
	}
	x, fraction := number(exact)
	y, ok := number(decimal)
	return fraction && ok && x.Cmp(y) == 0
}
