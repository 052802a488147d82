package trammel_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// order says what each package may import of this module and of others; the
// standard library is free to all. A line is a package, a colon and the imports
// it may have. A package of another module also stands for those below it.
//
// So sources are never seen by the geometry, ink is never seen by the language,
// and geometry is never seen by the writer of SVG.
const order = `
	geom/exact:
	geom:          geom/exact
	geom/region:   geom geom/exact
	geom/figure/locale:
	geom/figure:   geom geom/exact geom/region geom/figure/locale

	lang/source:
	lang/syntax:   lang/source github.com/alecthomas/participle/v2
	lang/program:  lang/source geom geom/exact geom/figure
	lang/check:    lang/source lang/syntax lang/program geom geom/exact geom/figure geom/region geom/figure/locale
	lang/eval:     lang/source lang/program geom geom/exact geom/figure
	lang/caption:  lang/program geom/figure geom/figure/locale
	lang/solve:    lang/source lang/program lang/eval geom geom/exact geom/figure
	lang/slip:     lang/source lang/program lang/eval geom geom/exact geom/figure
	lang/warn:     lang/source lang/program geom geom/exact geom/figure
	lang:          lang/source lang/syntax lang/program lang/caption lang/check lang/eval lang/slip lang/solve lang/warn geom geom/exact geom/figure stdlib
	stdlib:
	examples/library:

	svg/glyph:     codeberg.org/go-fonts/stix golang.org/x/image
	svg/braille:
	svg:           svg/braille svg/glyph github.com/ajstarks/svgo
	svg/page:      svg
	svg/pdf:       svg svg/glyph github.com/pdfcpu/pdfcpu github.com/tdewolff/font
	svg/html:      svg
	svg/png:       svg svg/glyph golang.org/x/image
	svg/svgtest:   svg svg/layout lang
	svg/svgtest/chromium: svg/svgtest github.com/chromedp/chromedp github.com/chromedp/cdproto
	svg/layout:    svg geom geom/exact geom/figure geom/region

	svg/gate:
	svg/gate/measure: svg/gate
	svg/gate/samples:

	cmd/trammel:   lang lang/caption lang/program lang/source lang/syntax geom/figure geom/figure/locale
	cmd/trammel:   svg svg/html svg/page svg/pdf svg/png svg/layout stdlib examples/library
	cmd/trammel:   github.com/alecthomas/kong github.com/fsnotify/fsnotify golang.org/x/term
`

// TestOrder holds the packages to the order in which they may import each other.
func TestOrder(t *testing.T) {
	allowed := map[string][]string{}
	for line := range strings.Lines(order) {
		if pkg, imports, ok := strings.Cut(strings.TrimSpace(line), ":"); ok {
			allowed[pkg] = append(allowed[pkg], strings.Fields(imports)...)
		}
	}
	found := imports(t)
	for pkg := range allowed {
		if found[pkg] == nil {
			t.Errorf("package %s of the order does not exist", pkg)
		}
	}
	for pkg, files := range found {
		may, known := allowed[pkg]
		if !known {
			t.Errorf("package %s has no place in the order", pkg)
		}
		for file, imports := range files {
			for _, name := range imports {
				if !permits(may, name) {
					t.Errorf("%s imports %s: not in the order", file, name)
				}
			}
		}
	}
}

// permits tells whether a package is one of those, or stands below one of
// another module, or is of the standard library.
func permits(may []string, name string) bool {
	own, ours := strings.CutPrefix(name, "trammel/")
	if ours {
		return slices.Contains(may, own)
	}
	first, _, _ := strings.Cut(name, "/")
	return !strings.Contains(first, ".") || slices.ContainsFunc(may, func(m string) bool {
		return name == m || strings.HasPrefix(name, m+"/")
	})
}

// imports reads what each file of each package imports, leaving tests aside.
func imports(t *testing.T) map[string]map[string][]string {
	found := map[string]map[string][]string{}
	err := fs.WalkDir(os.DirFS("."), ".", func(name string, d fs.DirEntry, err error) error {
		switch base := path.Base(name); {
		case err != nil:
			return err
		case d.IsDir() && name != "." && (strings.HasPrefix(base, ".") || base == "testdata"):
			return fs.SkipDir
		case !strings.HasSuffix(base, ".go") || strings.HasSuffix(base, "_test.go"):
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		pkg := path.Dir(name)
		if found[pkg] == nil {
			found[pkg] = map[string][]string{}
		}
		for _, spec := range f.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			found[pkg][name] = append(found[pkg][name], imported)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// TestOrderFindsFaults breaks the order on purpose.
func TestOrderFindsFaults(t *testing.T) {
	may := []string{"geom/exact", "golang.org/x/image"}
	for name, want := range map[string]bool{
		"math/big":                  true,
		"trammel/geom/exact":        true,
		"golang.org/x/image/font":   true,
		"trammel/geom":              false,
		"trammel/geom/exact/deeper": false,
		"golang.org/x/imageless":    false,
		"github.com/alecthomas/x":   false,
	} {
		if got := permits(may, name); got != want {
			t.Errorf("permits(%q, %q) = %v", may, name, got)
		}
	}
}
