package samples_test

import (
	"testing"

	"trammel/lang"
	"trammel/lang/source"
	"trammel/svg/gate/samples"
)

// TestSources compiles every source without an error.
func TestSources(t *testing.T) {
	names := map[string]bool{}
	for i := range samples.Count {
		name, text := samples.Source(i)
		if names[name] {
			t.Errorf("the name %s comes twice", name)
		}
		names[name] = true
		r := lang.Compile(name+".trm", []byte(text))
		for _, p := range r.Problems {
			if p.Severity != source.Warning {
				t.Errorf("%s: %s\n%s", name, p.Text, text)
				break
			}
		}
	}
}
