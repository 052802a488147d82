package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"trammel/lang"
	"trammel/lang/caption"
	"trammel/lang/source"
)

// complain writes a message about a file as a whole, or about the command line
// when the name is empty, in the manner of source.List: "x.trm: error: no such file".
func (e *env) complain(name, text, help string) {
	if name != "" {
		name = printable(name) + ": "
	}
	fmt.Fprintf(e.stderr, "%s%s %s\n", e.paint("1", name), e.paint("1;31", "error:"), e.paint("1", printable(text)))
	if help != "" {
		fmt.Fprintf(e.stderr, "%s %s\n", e.paint("1;34", "help:"), printable(help))
	}
}

// noteWords warns of a language whose numbers are known and words are not.
func (e *env) noteWords(tag string) {
	spoken := caption.In(tag).Tag()
	if tag == "" || strings.HasPrefix(tag+"-", spoken+"-") {
		return
	}
	fmt.Fprintf(e.stderr, "%s there are no words in %s: they are in English, and the numbers as in %[2]s\n", e.paint("1;35", "warning:"), tag)
}

// fail reports an error about a file and raises the exit code to suit.
func (e *env) fail(name string, err error) {
	text, help, status := explain(name, err)
	e.complain(name, text, help)
	e.raise(status)
}

// print writes to the standard output.
func (e *env) print(text string) {
	if _, err := io.WriteString(e.stdout, text); err != nil {
		e.fail("<stdout>", err)
	}
}

// paint sets text in a colour of ECMA-48, where colours are wanted.
func (e *env) paint(sgr, text string) string {
	if !e.colour || text == "" {
		return text
	}
	return "\x1b[" + sgr + "m" + text + "\x1b[0m"
}

// reporter shows the problems of many sources, each problem once: a fault of a
// library comes up again with every source that uses it.
type reporter struct {
	*env
	shown map[string]bool
}

func newReporter(e *env) *reporter { return &reporter{e, map[string]bool{}} }

// report shows what went wrong with a drawing and raises the exit code to suit.
func (r *reporter) report(d *drawing) {
	if d.err != nil {
		r.fail(d.name(), d.err)
	}
	r.problems(d.name(), d.Problems)
}

// maxShown is how many problems of one source are shown: what is no source at
// all must not flood the terminal.
const maxShown = 100

// problems shows errors and warnings of a source.
func (r *reporter) problems(name string, list source.List) {
	for _, p := range list[:min(len(list), maxShown)] {
		var b strings.Builder
		if p.Span.File == nil { // of the source as a whole
			b.WriteString(r.paint("1", printable(name)+":") + " ")
		}
		source.List{p}.Print(&b, r.colour)
		if !r.shown[b.String()] {
			r.shown[b.String()] = true
			io.WriteString(r.stderr, b.String())
		}
	}
	if more := len(list) - maxShown; more > 0 {
		fmt.Fprintf(r.stderr, "%s: and %d more\n", printable(name), more)
	}
	if list.Failed() {
		r.raise(exitSource)
	}
}

// unread reports files and folders that could not be looked into.
func (r *reporter) unread(list []failure) {
	for _, f := range list {
		r.fail(f.path, f.err)
	}
}

// explain puts an error about a file into words.
func explain(name string, err error) (text, help string, status int) {
	var f *fault
	var path *fs.PathError
	switch {
	case errors.As(err, &f):
		return f.Error(), "please report it, with the source", exitFault
	case errors.Is(err, errTooLarge), errors.Is(err, errNotText), errors.As(err, new(*unfit)):
		return err.Error(), "", exitSource
	case errors.As(err, &path) && path.Path != name:
		return fmt.Sprintf("cannot %s %s: %s", path.Op, path.Path, reason(path.Err)), "", exitFault
	}
	return reason(bare(err)), "", exitFault
}

// reason is what the system says, in the words of this program.
func reason(err error) string {
	if errors.Is(err, fs.ErrNotExist) {
		return "no such file or folder"
	}
	return err.Error()
}

// printable is text that a terminal shows as it is: whatever could steer the
// terminal, turn the direction of writing or is no UTF-8 is escaped.
func printable(s string) string {
	var b strings.Builder
	for len(s) > 0 {
		r, n := utf8.DecodeRuneInString(s)
		switch {
		case r == utf8.RuneError && n == 1:
			fmt.Fprintf(&b, `\x%02X`, s[0])
		case strconv.IsPrint(r) || unicode.Is(unicode.Zs, r):
			b.WriteRune(r)
		default:
			fmt.Fprintf(&b, `\u%04X`, r)
		}
		s = s[n:]
	}
	return b.String()
}

// noFigure complains of a source that was named for its figure and has none.
func (e *env) noFigure(name string, r *lang.Result) {
	if r.Worksheet != nil {
		e.complain(name, "this is a worksheet, and draws nothing itself", "trammel sheet makes its papers")
		return
	}
	e.complain(name, "there is no figure in it", "")
}
