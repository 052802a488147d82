package main

import (
	"errors"
	"fmt"
	"io"
	"runtime/debug"

	"github.com/alecthomas/kong"
)

const introduction = `Trammel draws geometric constructions. A source reads as a teacher says the
construction, one act of the compasses or the straightedge a line; the figure
comes out exact, as a textbook prints it, in SVG, PDF or PNG.

A first figure, in five lines saved as first.trm:

    figure "An equilateral triangle on AB"
    given points A, B
    arc c centre A radius AB
    arc d centre B radius AB cuts c at C left of AB
    join ABCA

The commands, each with an example:

    trammel new circle              makes a source to start from, circle.trm
    trammel build first.trm         draws first.svg
    trammel check first.trm         says of each claim that it holds
    trammel ask first.trm AB        works out lengths, ratios, angles, areas
    trammel describe first.trm      puts the figure in words, for those who listen
    trammel sheet week3.trm         makes a worksheet's papers and their answers
    trammel fmt first.trm           lays the source out in the usual way
    trammel doc erect               shows a construction of the library
    trammel watch .                 draws again whenever a source changes
    trammel help build              shows all that a command can do
    trammel completion bash         has a shell complete all of this
    trammel version                 says which trammel this is

A folder stands for all sources in it and below, and "-" for the standard input.
Exit codes: 0 good, 1 a source has errors, 2 the command line is wrong,
3 a file could not be read or written, or trammel itself failed.
`

// errHelped stops a run when help has been shown.
var errHelped = errors.New("help has been shown")

// help is the flag --help.
type help bool

// BeforeReset is called by kong when it meets the flag.
func (help) BeforeReset(ctx *kong.Context) error {
	if err := ctx.PrintUsage(false); err != nil {
		return err
	}
	return errHelped
}

// printHelp shows the introduction, or what the command chosen can do.
func printHelp(options kong.HelpOptions, ctx *kong.Context) error {
	if ctx.Selected() == nil {
		_, err := io.WriteString(ctx.Stdout, introduction)
		return err
	}
	return kong.DefaultHelpPrinter(options, ctx)
}

// helpCmd is: trammel help [command]
type helpCmd struct {
	Command string `arg:"" optional:"" help:"The command to explain." complete:"commands"`
}

// Run shows the help.
func (c *helpCmd) Run(k *kong.Kong) error {
	var args []string
	if c.Command != "" {
		args = []string{c.Command}
	}
	ctx, err := kong.Trace(k, args)
	if err != nil {
		return err
	}
	if c.Command != "" && ctx.Selected() == nil {
		return &usageError{fmt.Sprintf("there is no command %s", c.Command), `"trammel help" shows the commands`}
	}
	return ctx.PrintUsage(false)
}

// versionCmd is: trammel version
type versionCmd struct{}

// Run tells what the Go tools recorded when they built the program.
func (versionCmd) Run(e *env) error {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return &usageError{"this trammel was built without a record of its version", ""}
	}
	fmt.Fprintf(e.stdout, "trammel %s, %s", info.Main.Version, info.GoVersion)
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			fmt.Fprintf(e.stdout, ", revision %s", s.Value)
		}
	}
	_, err := fmt.Fprintln(e.stdout)
	return err
}
