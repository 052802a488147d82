package lang_test

import (
	"os"
	"path/filepath"
	"testing"

	"trammel/lang"
)

// BenchmarkDeep compiles figures whose numbers stand over many nested roots.
func BenchmarkDeep(b *testing.B) {
	paths, _ := filepath.Glob("testdata/true/deep-*.trm")
	for _, path := range append(paths, "../examples/regular-257-gon.trm") {
		text, err := os.ReadFile(path)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(lang.Base(path), func(b *testing.B) {
			for b.Loop() {
				lang.Compile(path, text)
			}
		})
	}
}
