// Package samples writes sources of figures such as a textbook is full of, each
// with measures of its own, for the picture gate to look at. They are random,
// but the same number always gives the same source.
package samples

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
)

// Count is how many sources there are.
const Count = 200

// Source is the source with that number, from 0 to Count-1, and a name for it.
func Source(i int) (name, text string) {
	k := kinds[i%len(kinds)]
	s := &sample{Rand: rand.New(rand.NewPCG(uint64(i), 7)), turn: i / len(kinds)}
	name = fmt.Sprintf("%s-%d", k.name, s.turn+1)
	s.say("figure %q", strings.ToUpper(k.name[:1])+k.name[1:]+" "+strconv.Itoa(s.turn+1))
	if t := themes[s.turn%len(themes)]; t != "" {
		s.say("theme %s", t)
	}
	k.write(s)
	return name, s.text.String()
}

// Most figures are for a book, some for other uses of it.
var themes = []string{"", "", "", "exam", "", "", "large-print", "", "", ""}

// kinds of figures, in no order.
var kinds = []struct {
	name  string
	write func(*sample)
}{
	{"circumcircle", circumcircle}, {"altitudes", altitudes}, {"medians", medians}, {"incircle", incircle},
	{"measures", measures}, {"tangents", tangents}, {"common-tangents", commonTangents}, {"parallels", parallels},
	{"parallelogram", parallelogram}, {"polygon", polygon}, {"circle-angles", circleAngles}, {"construction", construction},
	{"division", division}, {"locus", locus}, {"squares", squares}, {"lattice", lattice},
	{"chords", chords}, {"map", treasure}, {"mid-segments", midSegments}, {"bars", bars},
}

// sample is a source being written.
type sample struct {
	*rand.Rand
	text strings.Builder
	turn int // which of its kind it is, from 0
}

// say writes a line.
func (s *sample) say(format string, args ...any) { fmt.Fprintf(&s.text, format+"\n", args...) }

// tenths is a number from low to high with one decimal at most.
func (s *sample) tenths(low, high float64) string {
	n := int(low*10+0.5) + s.IntN(int((high-low)*10+1.5))
	return strconv.FormatFloat(float64(n)/10, 'f', -1, 64)
}

// from is a whole number from low to high.
func (s *sample) from(low, high int) int { return low + s.IntN(high-low+1) }

// pick is one of the words.
func (s *sample) pick(words ...string) string { return words[s.IntN(len(words))] }

// unequal are angles in degrees from low to high, no two nearly alike.
func (s *sample) unequal(n, low, high int) []int {
	for {
		list := make([]int, n)
		for i := range list {
			list[i] = s.from(low, high)
		}
		if apart(list, 6) {
			return list
		}
	}
}

func apart(list []int, by int) bool {
	for i, a := range list {
		for _, b := range list[:i] {
			if a-b < by && b-a < by {
				return false
			}
		}
	}
	return true
}

// triangle gives an acute triangle ABC that is nowhere nearly special.
func (s *sample) triangle() {
	for {
		a := s.unequal(2, 42, 76)
		if c := 180 - a[0] - a[1]; c < 82 && c > 40 && apart(append(a, c), 6) {
			s.say("given triangle ABC with AB = %s, angle A = %d°, angle B = %d°", s.tenths(6.5, 9), a[0], a[1])
			return
		}
	}
}

// ring puts points on the circle k, named by the letters, anticlockwise about
// evenly from somewhere.
func (s *sample) ring(names []string) {
	step := 360 / len(names)
	at := s.from(0, 359)
	for i, name := range names {
		s.say("given %s on k at %d°", name, (at+i*step+s.from(0, step/3))%360)
	}
}

// letters are the first n of the alphabet, without O, for centres.
func letters(n int) []string {
	return strings.Split("ABCDEFGHIJKLMNPQRSTUVWXYZ"[:n], "")
}
