package lang

import (
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"trammel/lang/source"
	"trammel/lang/syntax"
	"trammel/stdlib"
)

// The limits on what a source may take in.
const (
	maxFiles = 64
	maxSize  = 1 << 20
)

// loader reads the files that a source uses, and the library.
type loader struct {
	dir      string // of the source: the root of what it may use
	problems *source.List
	files    map[string]*syntax.File
	library  map[string]*syntax.File
	read     []string
}

func newLoader(path string, problems *source.List) *loader {
	return &loader{
		dir:      filepath.Dir(path),
		problems: problems,
		files:    map[string]*syntax.File{},
		library:  map[string]*syntax.File{},
	}
}

// again is a loader that has read all that this one has, for another run.
func (l *loader) again(problems *source.List) *loader {
	copied := *l
	copied.problems = problems
	return &copied
}

// Use reads a file of constructions that stands beside the source or below its
// folder. A file is read once; its mistakes are the source's.
func (l *loader) Use(path string, at source.Span) *syntax.File {
	clean := filepath.ToSlash(filepath.Clean(path))
	if f, ok := l.files[clean]; ok {
		if f == nil {
			l.fail(at, fmt.Sprintf("%s uses itself, by a circle of use lines", path))
		}
		return f
	}
	if len(l.files) >= maxFiles {
		l.fail(at, fmt.Sprintf("more than %d files are used", maxFiles))
		return nil
	}
	l.read = append(l.read, filepath.Join(l.dir, clean))
	text, err := l.text(clean)
	if err != nil {
		why, help := plain(err)
		l.fail(at, fmt.Sprintf("%s cannot be used: %s", path, why)).Help = help
		return nil
	}
	l.files[clean] = nil
	f := syntax.Parse(source.NewFile(filepath.Join(l.dir, clean), text), l.problems)
	l.files[clean] = f
	return f
}

func (l *loader) fail(at source.Span, text string) *source.Problem { return l.problems.Add(at, text) }

// text reads a regular file inside the root, at most maxSize long.
func (l *loader) text(path string) (string, error) {
	root, err := os.OpenRoot(l.dir)
	if err != nil {
		return "", err
	}
	defer root.Close()
	f, err := root.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return "", err
	}
	if !info.Mode().IsRegular() {
		return "", fmt.Errorf("it is not a regular file")
	}
	if info.Size() > maxSize {
		return "", fmt.Errorf("it is longer than 1 MiB")
	}
	text, err := io.ReadAll(io.LimitReader(f, maxSize))
	return string(text), err
}

// plain is an error of the file system without the name of the call, and what to do.
func plain(err error) (why, help string) {
	text := err.Error()
	if i := strings.LastIndex(text, ": "); i >= 0 {
		text = text[i+2:]
	}
	switch text {
	case "no such file or directory":
		return "there is no such file beside the source", "put it there, or write the way to it from the source's folder: use \"parts/circles.trm\""
	case "path escapes from parent":
		return "it lies outside of the source's folder", "put it beside the source, or in a folder below"
	}
	return text, ""
}

// Library is the library's file that defines a construction, or nil.
func (l *loader) Library(name string) *syntax.File {
	if f, ok := l.library[name]; ok {
		return f
	}
	text, err := fs.ReadFile(stdlib.Files, name+".trm")
	if err != nil {
		return nil
	}
	f := syntax.Parse(source.NewFile("stdlib/"+name+".trm", string(text)), l.problems)
	l.library[name] = f
	return f
}

// LibraryNames are the constructions of the library, in the order of the alphabet.
func (l *loader) LibraryNames() []string { return stdlib.Names() }
