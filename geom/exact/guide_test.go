package exact

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// TestGuide holds the package's guide to its files: it leads to each, and to no other.
func TestGuide(t *testing.T) {
	guide, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{"doc.go": true}
	for _, name := range regexp.MustCompile(`\b[a-z]+\.go\b`).FindAllString(string(guide), -1) {
		named[name] = true
	}
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		name := entry.Name()
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		if !named[name] {
			t.Errorf("the guide does not lead to %s", name)
		}
		delete(named, name)
	}
	for name := range named {
		t.Errorf("the guide leads to %s, which is not there", name)
	}
}
