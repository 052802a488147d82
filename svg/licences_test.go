package svg

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// Every module that go.mod requires has a row in LICENSES.md, and no other has.
func TestLicences(t *testing.T) {
	mod, err := os.ReadFile("../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	licences, err := os.ReadFile("../LICENSES.md")
	if err != nil {
		t.Fatal(err)
	}
	required := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^(?:require)?\s+(\S+\.\S+/\S+) v`).FindAllStringSubmatch(string(mod), -1) {
		required[m[1]] = true
		if !strings.Contains(string(licences), "| ["+m[1]+"](") {
			t.Errorf("LICENSES.md does not name %s, which go.mod requires", m[1])
		}
	}
	for _, m := range regexp.MustCompile(`(?m)^\| \[(\S+)\]\(`).FindAllStringSubmatch(string(licences), -1) {
		if !required[m[1]] {
			t.Errorf("LICENSES.md names %s, which go.mod does not require", m[1])
		}
	}
	if len(required) == 0 {
		t.Error("go.mod requires nothing")
	}
}
