package main

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"trammel/stdlib"
)

// TestEntries reads every construction and its example.
func TestEntries(t *testing.T) {
	entries, err := entriesOf(nil)
	if err != nil || len(entries) != len(stdlib.Names()) {
		t.Fatalf("%d entries, %v", len(entries), err)
	}
	for _, x := range entries {
		if x.Sentence == "" || strings.ContainsAny(x.Sentence, "{}") || len(x.Gives) == 0 || len(x.Claims) == 0 || len(x.Steps) == 0 {
			t.Errorf("not told in full: %+v", x)
		}
		if !strings.Contains(x.Call, " by "+x.Name+"(") {
			t.Errorf("the call of %s is %s", x.Name, x.Call)
		}
	}
}

// TestReader reads a construction of every kind of statement.
func TestReader(t *testing.T) {
	r := newReader("parts", `construction parts(point A, point B, number n) gives points P[i] from 1 to n - 1, line m
  "Part {A}{B}."
  needs A ≠ B
  m by erect(AB, A)
  step "Strike an arc"
    arc c centre A radius any
    claim A ≠ B
  end
  repeat i from 1 to n - 1
    e[i] by parallel(m, B)
    e[i] meets AB at P[i]
    claim P[i] on AB
  end
  claim not P[1] on m
end
`)
	for _, test := range []struct{ what, got, want string }{
		{"call", r.call(), "P[1 to n - 1], m by parts(A, B, n)"},
		{"sentence", r.said(), "Part AB."},
		{"needs", strings.Join(r.needs(), " · "), "A ≠ B"},
		{"claims", strings.Join(r.claims(r.construction.Body), " · "), "A ≠ B · P[i] on AB · not P[1] on m"},
	} {
		if test.got != test.want {
			t.Errorf("%s: %s\nwant %s", test.what, test.got, test.want)
		}
	}
}

// TestPage reads the page as XML: a picture of each construction, each id once
// and known where it is referred to, nothing that runs, nothing from elsewhere.
func TestPage(t *testing.T) {
	entries, err := entriesOf(nil)
	if err != nil {
		t.Fatal(err)
	}
	page, err := newPage(entries)
	if err != nil {
		t.Fatal(err)
	}
	tags, ids, links := map[string]int{}, map[string]bool{}, []string{}
	for d := xml.NewDecoder(bytes.NewReader(page)); ; {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		tags[start.Name.Local]++
		for _, a := range start.Attr {
			switch name := a.Name.Local; {
			case name == "id" && ids[a.Value]:
				t.Errorf("the id %s comes twice", a.Value)
			case name == "id":
				ids[a.Value] = true
			case name == "href":
				links = append(links, strings.TrimPrefix(a.Value, "#"))
			case name == "aria-labelledby":
				links = append(links, strings.Fields(a.Value)...)
			case name == "src", strings.HasPrefix(name, "on"), strings.Contains(a.Value, "url("):
				t.Errorf("<%s %s=%q>", start.Name.Local, name, a.Value)
			}
		}
	}
	for _, link := range links {
		if !ids[link] {
			t.Errorf("nothing has the id %s", link)
		}
	}
	if n := len(stdlib.Names()); tags["svg"] != n || tags["section"] != n || tags["script"]+tags["link"]+tags["img"] > 0 {
		t.Errorf("%d pictures and %d sections of %d constructions; tags %v", tags["svg"], tags["section"], n, tags)
	}
}

// TestPageEscapes: nothing that a construction says becomes a part of the page.
func TestPageEscapes(t *testing.T) {
	const evil = `</pre><script>alert("&")</script>`
	x := newEntry("erect")
	x.Sentence, x.Call, x.Source = evil, evil, evil
	x.Takes, x.Needs, x.Claims, x.Steps = []string{evil}, []string{evil}, []string{evil}, []string{evil}
	x.Example = "figure \"<script>&\"\n" + strings.SplitN(x.Example, "\n", 5)[4]
	page, err := newPage([]entry{x})
	if err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(page, []byte("<script")); n != 0 {
		t.Errorf("%d scripts in the page", n)
	}
	if n := bytes.Count(page, []byte("&lt;script&gt;")); n < 8 {
		t.Errorf("what was to be escaped is there %d times", n)
	}
}
