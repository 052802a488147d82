package locale

import (
	"strings"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
)

// TestDecimalsOfCLDR compares the decimal signs with the data of Unicode's
// Common Locale Data Repository that golang.org/x/text carries.
func TestDecimalsOfCLDR(t *testing.T) {
	for _, l := range rows {
		want := message.NewPrinter(language.MustParse(l.Tag)).Sprintf("%.1f", 1.5)
		if got := l.Numbers("1.5"); got != want {
			t.Errorf("%s writes %s, and CLDR %s", l.Tag, got, want)
		}
	}
}

func TestFind(t *testing.T) {
	for _, test := range []struct{ tag, found, decimal string }{
		{"", "en", "."}, {"DE", "de", ","}, {"de-AT", "de-AT", ","}, {"de-ch", "de-CH", "."},
		{"pt-br", "pt-BR", ","}, {"en-NZ", "en-NZ", "."}, {"es-MX-x-home", "es-MX-x-home", "."},
	} {
		l, err := Find(test.tag)
		if err != nil || l.Tag != test.found || l.Decimal != test.decimal {
			t.Errorf("%q is found as %+v, %v", test.tag, l, err)
		}
	}
	for _, tag := range []string{"xx", "english", "d", "-", "x-de"} {
		if _, err := Find(tag); err == nil || !strings.Contains(err.Error(), "de-CH, es") {
			t.Errorf("%q is found, or the known ones are not named: %v", tag, err)
		}
	}
}

// TestNumbers follows the examples of ISO 80000-1:2009, 7.3.1: groups of three
// from the decimal sign on, to both sides; four digits may stand together.
func TestNumbers(t *testing.T) {
	for _, test := range []struct{ tag, text, want string }{
		{"en", "1234567.891 cm", "1 234 567.891 cm"},
		{"de", "12345.67891 cm", "12 345,678 91 cm"},
		{"de", "a = 4.5 cm", "a = 4,5 cm"},
		{"de", "22.5°", "22,5°"},
		{"fr", "1000.5", "1000,5"},
		{"de", "3√2/10 cm", "3√2/10 cm"},
		{"de", "P1.", "P1."},
		{"de", "", ""},
	} {
		l, _ := Find(test.tag)
		if got := l.Numbers(test.text); got != keepUnit(test.want) {
			t.Errorf("%s writes %q as %q", test.tag, test.text, got)
		}
	}
}

// keepUnit has thin spaces between digits only.
func keepUnit(s string) string {
	r := []rune(s)
	for i := 1; i+1 < len(r); i++ {
		if r[i] == ' ' && isDigit(r[i-1]) && isDigit(r[i+1]) {
			r[i] = []rune(thin)[0]
		}
	}
	return string(r)
}
