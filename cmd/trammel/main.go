// Trammel draws geometric constructions: a source that reads as a teacher says
// the construction becomes a textbook figure in SVG.
package main

import (
	"errors"
	"io"
	"os"
	"regexp"
	"runtime/debug"

	"github.com/alecthomas/kong"
	"golang.org/x/term"

	"trammel/lang"
)

// The exit codes: the worst that happened in a run.
const (
	exitGood   = 0
	exitSource = 1 // a source has errors
	exitUsage  = 2 // the command line asks for nothing that can be done
	exitFault  = 3 // a file could not be read or written, or trammel itself failed
)

// cli is the command line.
type cli struct {
	Asked help `name:"help" short:"h" help:"Show what a command does."`

	New        newCmd        `cmd:"" help:"Make a source to start from."`
	Build      buildCmd      `cmd:"" help:"Draw figures."`
	Check      checkCmd      `cmd:"" help:"Say of each claim that it holds."`
	Ask        askCmd        `cmd:"" help:"Work out lengths, ratios, angles and areas of a figure."`
	Sheet      sheetCmd      `cmd:"" help:"Make the papers of a worksheet: tasks, answers and a film for marking."`
	Describe   describeCmd   `cmd:"" help:"Put a figure in words, for those who listen."`
	Fmt        formatCmd     `cmd:"" help:"Lay sources out in the usual way."`
	Doc        docCmd        `cmd:"" help:"Show the constructions of the library."`
	Watch      watchCmd      `cmd:"" help:"Draw figures again whenever their sources change."`
	Help       helpCmd       `cmd:"" help:"Show what trammel does, or one of its commands."`
	Completion completionCmd `cmd:"" help:"Print a script by which a shell completes command lines."`
	Version    versionCmd    `cmd:"" help:"Say which trammel this is."`
}

// env is what a run has to do with besides files.
type env struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	colour         bool // on stderr
	watched        bool // someone looks on, at stderr
	compile        func(path string, text []byte) *lang.Result
	status         int
}

// raise makes the exit code at least this bad.
func (e *env) raise(status int) { e.status = max(e.status, status) }

// usageError is a command line that cannot be done: nothing has been done.
type usageError struct{ text, hint string }

// Error says what is wrong with the call.
func (u *usageError) Error() string { return u.text }

// roomy lets the heap grow to five times what lives, in per cent: a figure's
// numbers are many, small and soon done with, and a quarter of the time went into
// collecting them.
const roomy = 400

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(roomy)
	}
	colour := wantsColour(os.Stderr)
	e := &env{
		stdin:   os.Stdin,
		stdout:  os.Stdout,
		stderr:  os.Stderr,
		colour:  colour,
		watched: colour && os.Getenv("CI") == "",
		compile: lang.Compile,
	}
	os.Exit(run(e, os.Args[1:]))
}

// wantsColour follows no-color.org; a terminal that calls itself dumb has none.
func wantsColour(f *os.File) bool {
	return os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb" && term.IsTerminal(int(f.Fd()))
}

// run does what the arguments ask for and returns the exit code.
func run(e *env, args []string) int {
	k, err := kong.New(&cli{},
		kong.Name("trammel"),
		kong.NoDefaultHelp(),
		kong.Writers(e.stdout, e.stderr),
		kong.Help(printHelp),
		kong.ConfigureHelp(kong.HelpOptions{WrapUpperBound: 80}),
	)
	if err != nil {
		panic(err) // the struct tags above are wrong
	}
	if len(args) == 0 {
		args = []string{"help"}
	}
	ctx, err := k.Parse(args)
	if err == nil {
		err = ctx.Run(e)
	}
	return e.finish(err)
}

// noValue is how kong says that the command line ends, or goes on with a flag,
// where a flag wants its value.
var noValue = regexp.MustCompile(`expected \S+ value but got ".*`)

// belowZero is how kong takes a negative number where a flag wants its value.
var belowZero = regexp.MustCompile(`expected \S+ value but got "(-[0-9.]+)".*`)

// finish turns the error of a whole run into its exit code.
func (e *env) finish(err error) int {
	var usage *usageError
	switch {
	case err == nil || errors.Is(err, errHelped):
	case errors.As(err, &usage):
		e.complain("", usage.text, usage.hint)
		e.raise(exitUsage)
	default: // kong's own
		text := belowZero.ReplaceAllString(err.Error(), "$1 is less than 0, and what is wanted is not")
		e.complain("", noValue.ReplaceAllString(text, "a value is missing"), `"trammel help" shows the commands`)
		e.raise(exitUsage)
	}
	return e.status
}
