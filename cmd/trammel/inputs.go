package main

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// stdio is the argument that stands for the standard input, or output.
const stdio = "-"

// input is a source that the command line names, itself or by its folder.
type input struct {
	path   string // "-" is the standard input
	within string // its path from the folder that was named, for mirroring
	named  bool   // itself, not by its folder
}

// name is what messages call the source.
func (in input) name() string {
	if in.path == stdio {
		return "<stdin>"
	}
	return in.path
}

// failure is a file or folder that could not be read.
type failure struct {
	path string
	err  error
}

// isSource tells a source by its name.
func isSource(name string) bool { return strings.EqualFold(filepath.Ext(name), ".trm") }

// isHidden tells files that editors and systems keep for themselves.
func isHidden(name string) bool {
	return strings.HasPrefix(name, ".") && name != "." && name != ".."
}

// inputs lists the sources that the arguments stand for, in their order and
// each once; no arguments stand for the current folder. A folder is handed to
// enter before it is read.
func inputs(args []string, enter func(folder string)) (list []input, failed []failure, err error) {
	if len(args) == 0 {
		args = []string{"."}
	}
	seen := map[string]bool{}
	add := func(in input) {
		if key := absolute(in.path); !seen[key] {
			seen[key] = true
			list = append(list, in)
		}
	}
	for _, arg := range args {
		info, err := os.Stat(arg)
		switch {
		case arg == stdio || isSource(arg) && (err != nil || !info.IsDir()):
			add(input{filepath.Clean(arg), filepath.Base(arg), true})
		case err != nil:
			failed = append(failed, failure{arg, bare(err)})
		case info.IsDir():
			failed = append(failed, walk(arg, enter, add)...)
		default:
			return nil, nil, &usageError{arg + " is no source: the name of a source ends in .trm", `"-" reads any text from the standard input`}
		}
	}
	if len(list) > 1 && seen[absolute(stdio)] {
		return nil, nil, &usageError{`"-", the standard input, goes with no other source`, ""}
	}
	return list, failed, nil
}

// sources are the inputs of a command that has nothing to do without one.
func sources(args []string) ([]input, []failure, error) {
	list, failed, err := inputs(args, func(string) {})
	if err == nil && len(list) == 0 && len(failed) == 0 {
		where := strings.Join(args, " or ")
		if where == "" {
			where = "this folder"
		}
		return nil, nil, &usageError{"there is no source in " + where, "the name of a source ends in .trm; trammel new makes one to start from"}
	}
	return list, failed, err
}

// walk hands over the sources of a folder and of those in it, by name. Links to
// folders are not followed, so that no loop can be entered.
func walk(folder string, enter func(string), add func(input)) (failed []failure) {
	fs.WalkDir(os.DirFS(folder), ".", func(p string, d fs.DirEntry, err error) error {
		full := filepath.Join(folder, filepath.FromSlash(p))
		switch {
		case err != nil:
			failed = append(failed, failure{full, bare(err)})
			return fs.SkipDir
		case isHidden(path.Base(p)) && d.IsDir():
			return fs.SkipDir
		case d.IsDir():
			enter(full)
		case isSource(p) && !isHidden(path.Base(p)):
			add(input{path: full, within: filepath.FromSlash(p)})
		}
		return nil
	})
	return failed
}

// bare is what the system says of a path, without the path.
func bare(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}

// absolute is a name by which the same file is known from everywhere.
func absolute(name string) string {
	if abs, err := filepath.Abs(name); err == nil {
		return abs
	}
	return filepath.Clean(name)
}

// maxSource is the most bytes that a source may have.
const maxSource = 1 << 20

var (
	errTooLarge   = errors.New("larger than 1 MiB, the most that a source may be")
	errNotText    = errors.New("not a text in UTF-8: it holds zero bytes, as UTF-16 does; save the file as UTF-8")
	errNotRegular = errors.New("not a file that can be read as a source")
)

// read is the text of an input.
func (e *env) read(in input) ([]byte, error) {
	if in.path == stdio {
		return readAtMost(e.stdin)
	}
	info, err := os.Stat(in.path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() { // a pipe would be waited for
		return nil, errNotRegular
	}
	f, err := os.Open(in.path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return readAtMost(f)
}

func readAtMost(r io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxSource+1))
	switch {
	case err != nil:
		return nil, err
	case len(text) > maxSource:
		return nil, errTooLarge
	case bytes.IndexByte(text, 0) >= 0: // or every byte would be an error of its own
		return nil, errNotText
	}
	return text, nil
}
