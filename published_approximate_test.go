package trammel_test

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestPublishedApproximations refuses what classical constructions only come
// near to, by the amounts that their sources or trigonometry give. Each source
// says at its head where it comes from.
func TestPublishedApproximations(t *testing.T) {
	t.Parallel()
	names, err := filepath.Glob(published + "approximate/*.trm")
	if err != nil || len(names) == 0 {
		t.Fatal("no sources", err)
	}
	for _, name := range names {
		name = strings.TrimPrefix(filepath.ToSlash(name), published)
		hold(t, name, row{}.fill(t, name))
	}
}
