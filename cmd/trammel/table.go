package main

import (
	"bytes"
	"encoding/csv"
	"regexp"
	"strconv"
	"strings"
)

// table is the answers of all variants (RFC 4180, UTF-8, numbers with a decimal
// point): a row for each task, and one for each value that was dealt or comes out.
func (s *paperSet) table() []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	w.Write(strings.Split(s.said.Say("sheet.table", nil), ", "))
	for variant := range s.n {
		for _, t := range s.tasks {
			w.WriteAll(s.rows(t, variant)) // to a buffer, which takes all
		}
	}
	w.Flush()
	return b.Bytes()
}

// rows are those of a task in a variant.
func (s *paperSet) rows(t *task, variant int) (rows [][]string) {
	add := func(marks string, cells ...string) {
		rows = append(rows, append([]string{strconv.Itoa(variant + 1), strconv.Itoa(t.number), t.From, marks}, cells...))
	}
	worth := ""
	if _, marks := t.words(variant); marks > 0 {
		worth = strconv.Itoa(marks)
	}
	add(worth, "", "", "", "", "", "")
	for _, v := range t.variants[variant].Varied() {
		value, unit := valueAndUnit(v.Value)
		add("", v.Name, value, value, unit, "", "")
	}
	for _, a := range t.variants[variant].Answers() {
		value, unit := valueAndUnit(a.Decimal)
		exact := strings.TrimSpace(strings.TrimSuffix(a.Exact, unit))
		measured, in := valueAndUnit(a.Measured)
		add("", s.said.Spoken(strings.ReplaceAll(a.Expr, " * ", " · ")), exact, value, unit, measured, in)
	}
	return rows
}

// oneNumber is a number and what it counts.
var oneNumber = regexp.MustCompile(`^([-−]?[0-9.]+) ?([^0-9 ]*)$`)

// valueAndUnit parts a number from its unit: 4.5 cm, 37°. What is not one number
// has none.
func valueAndUnit(text string) (value, unit string) {
	if m := oneNumber.FindStringSubmatch(text); m != nil {
		return m[1], m[2]
	}
	return text, ""
}
