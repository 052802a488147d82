package main

import (
	"embed"
	"fmt"
	"strings"
	"text/template"

	"github.com/alecthomas/kong"

	"trammel/geom/figure"
	"trammel/geom/figure/locale"
	"trammel/stdlib"
)

//go:embed completion/*.tmpl
var completionFiles embed.FS

// completionCmd is: trammel completion bash
type completionCmd struct {
	Shell string `arg:"" enum:"bash,zsh,fish" help:"The shell: bash, zsh or fish."`
}

// Help is the part of the help that teaches.
func (completionCmd) Help() string {
	return `Prints a script by which a shell completes the words of a command line with the
Tab key: commands, flags, topics, constructions, sources. For this shell only:

    source <(trammel completion bash)
    source <(trammel completion zsh)
    trammel completion fish | source

The same line in ~/.bashrc, ~/.zshrc (after compinit) or ~/.config/fish/config.fish
keeps it.
`
}

// Run prints the script.
func (c *completionCmd) Run(e *env, k *kong.Kong) error {
	script, err := completionScript(c.Shell, k)
	if err != nil {
		return err
	}
	e.print(script)
	return nil
}

// completionScript fills in a shell's template.
func completionScript(shell string, k *kong.Kong) (string, error) {
	t, err := template.New(shell+".tmpl").Funcs(template.FuncMap{
		"join":  func(words []string) string { return strings.Join(words, " ") },
		"quote": quoted,
		"zsh":   zshText,
	}).ParseFS(completionFiles, "completion/"+shell+".tmpl")
	if err != nil {
		return "", err
	}
	var b strings.Builder
	err = t.Execute(&b, commandsOf(k.Model.Node))
	return b.String(), err
}

// command is what a shell has to know of a command.
type command struct {
	Name, Help string
	Flags      []flag
	Places     []value // of what is no flag, in their order
}

type flag struct {
	Long, Short, Help string // without hyphens; Short may be empty
	Value             *value // nil for a flag that stands alone
}

// Names are as the flag is written: --out, -o
func (f flag) Names() []string {
	if f.Short == "" {
		return []string{"--" + f.Long}
	}
	return []string{"--" + f.Long, "-" + f.Short}
}

// value is what can stand in a place: some words, or files of a kind, which is
// "sources", "files" or "folders". It may be neither.
type value struct {
	Words []string
	Files string
	Rest  bool // and in all places after it
}

// commandsOf reads the model of the command line.
func commandsOf(app *kong.Node) (all []command) {
	var names []string
	for _, n := range app.Children {
		names = append(names, n.Name)
	}
	for _, n := range app.Children {
		c := command{Name: n.Name, Help: n.Help}
		for _, group := range n.AllFlags(true) {
			for _, f := range group {
				c.Flags = append(c.Flags, newFlag(f, names))
			}
		}
		for _, p := range n.Positional {
			v := newValue(p, names)
			v.Rest = p.IsSlice()
			c.Places = append(c.Places, v)
		}
		all = append(all, c)
	}
	return all
}

func newFlag(f *kong.Flag, commands []string) flag {
	out := flag{Long: f.Name, Help: brief(f.Help)}
	if f.Short != 0 {
		out.Short = string(f.Short)
	}
	if !f.IsBool() {
		v := newValue(f.Value, commands)
		out.Value = &v
	}
	return out
}

// newValue follows the tag "complete" of a field.
func newValue(v *kong.Value, commands []string) value {
	switch kind := v.Tag.Get("complete"); kind {
	case "topics":
		return value{Words: topics()}
	case "constructions":
		return value{Words: stdlib.Names()}
	case "formats":
		return value{Words: formats}
	case "themes":
		return value{Words: figure.Themes}
	case "languages":
		return value{Words: locale.Tags()}
	case "commands":
		return value{Words: commands}
	case "sources", "files", "folders":
		return value{Files: kind}
	case "":
	default:
		panic(fmt.Sprintf("%s is completed by %q, which is nothing", v.Name, kind))
	}
	if v.Enum != "" {
		return value{Words: v.EnumSlice()}
	}
	return value{}
}

// brief is the first clause of a help text.
func brief(help string) string {
	end := strings.IndexAny(help, ".:;,(")
	if end < 0 {
		return help
	}
	return strings.TrimSpace(help[:end])
}

// quoted is a text as bash, zsh and fish read it, in single quotes: there are
// neither of these nor backslashes in it.
func quoted(text string) (string, error) {
	if strings.ContainsAny(text, `'\`) {
		return "", fmt.Errorf("%q would have to be escaped", text)
	}
	return "'" + text + "'", nil
}

// zshText is a text inside of a specification for _arguments, where brackets
// and colons part the fields.
func zshText(text string) (string, error) {
	if strings.ContainsAny(text, `'\[]:`) {
		return "", fmt.Errorf("%q would have to be escaped", text)
	}
	return text, nil
}
