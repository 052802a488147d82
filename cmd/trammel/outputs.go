package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// job is a source and where its picture goes; "-" is the standard output.
type job struct {
	input
	picture string
}

// plan says where the pictures go: beside their sources, or where -o says.
func (e *env) plan(list []input, p pictures) ([]job, error) {
	toFile, err := namesFile(list, p.Out)
	if err != nil {
		return nil, err
	}
	jobs := make([]job, len(list))
	for i, in := range list {
		jobs[i] = job{in, p.pictureOf(in)}
		if toFile {
			jobs[i].picture = p.Out
		}
	}
	return jobs, e.clash(jobs)
}

// pictureOf is where a picture goes when -o is a folder or nothing.
func (p pictures) pictureOf(in input) string {
	switch {
	case in.path == stdio:
		return stdio
	case p.Out == "":
		return p.named(in.path)
	}
	return filepath.Join(p.Out, p.named(in.within))
}

// named is the name of a source with the ending of the format.
func (p pictures) named(source string) string {
	return strings.TrimSuffix(source, filepath.Ext(source)) + "." + string(p.Format)
}

// namesFile tells whether -o names a file, which takes one figure only, or a
// folder. A file that is no picture is never overwritten.
func namesFile(list []input, out string) (bool, error) {
	isFile, isFolder := looksLike(out)
	single := len(list) == 1 && list[0].named
	switch {
	case out == "":
		return false, nil
	case single && list[0].path == stdio && !isFile:
		return false, &usageError{"what comes from the standard input has no name to give its picture", "say one: -o figure.svg"}
	case isFolder:
		return false, nil
	case isFile && !single && len(list) > 0:
		return false, &usageError{fmt.Sprintf("-o %s takes one figure, and a folder or several sources are given", out), "name a folder to put the pictures in, with a slash at its end"}
	case !isFile && filepath.Ext(out) != "":
		return false, &usageError{fmt.Sprintf("-o %s is neither a picture, which ends in .svg, .pdf, .png or .html, nor a folder", out), "a folder that does not exist yet needs a slash at its end"}
	}
	return isFile, nil
}

// looksLike tells what -o names, by what is there or else by its form.
func looksLike(out string) (isFile, isFolder bool) {
	info, err := os.Stat(out)
	switch {
	case out == stdio:
		return true, false
	case err == nil && info.IsDir(), out != "" && os.IsPathSeparator(out[len(out)-1]):
		return false, true
	case err == nil && !info.Mode().IsRegular(): // a device or a pipe
		return true, false
	}
	_, isFile = formatOf(out)
	return isFile, false
}

// clash is the error of two figures that would be drawn to one file. Sources
// that hold constructions only are drawn nowhere and clash with nothing.
func (e *env) clash(jobs []job) error {
	first := map[string]job{}
	for _, j := range jobs {
		key := absolute(j.picture)
		other, taken := first[key]
		switch {
		case !taken:
			first[key] = j
		case !e.draws(j):
		case !e.draws(other):
			first[key] = j
		default:
			return &usageError{
				fmt.Sprintf("%s and %s would both be drawn to %s", other.path, j.path, j.picture),
				"build them into different folders",
			}
		}
	}
	return nil
}

// draws tells whether a source holds a figure, or might once its errors are mended.
func (e *env) draws(j job) bool {
	d, _ := e.compileInput(j.input)
	return d.failed() || d.Figure != nil
}
