package check

import (
	"slices"
	"strings"

	"trammel/geom/figure"
	"trammel/lang/program"
)

// nameSlots settles what readers call the things of the figure. The letters of
// constructions shown in full get a prime where the file itself has that
// letter, and what such a construction gives goes by its name outside.
func (c *checker) nameSlots() {
	c.prog.Centres = c.centres
	taken := map[string]bool{}
	for _, slot := range c.prog.Slots {
		if slot.Top {
			taken[primed(slot.Name)] = true
		}
	}
	for i, slot := range c.prog.Slots {
		slot.Called = primed(slot.Name)
		if slot.Top || slot.Ink == nil || slot.Ink.Label == nil && !c.inFull(i) {
			continue
		}
		for taken[slot.Called] && slot.Called != "" {
			slot.Called += "′"
		}
		taken[slot.Called] = true
		if slot.Ink.Label != nil && slot.Ink.Label.Name {
			slot.Ink.Label.Text = slot.Called
		}
	}
	c.nameArcs()
	for i, slot := range c.prog.Slots {
		slot.As = c.outermost(i)
	}
	c.nameCurves()
}

// primed is a name with the primes that it is printed with, and that are read aloud.
func primed(name string) string { return strings.ReplaceAll(name, "'", "′") }

// inFull tells a curve that is drawn by a construction shown in full.
func (c *checker) inFull(slot int) bool {
	sl := c.prog.Slots[slot]
	_, given := c.outer[slot]
	return sl.Kind != program.Point && sl.Ink.Weight != figure.Faint && !sl.Ink.Hidden && !given
}

// nameArcs takes the name from every arc that goes by its centre: arcs carry
// no letters on the paper.
func (c *checker) nameArcs() {
	for i, slot := range c.prog.Slots {
		if slot.Told && !c.named[i] && (slot.Ink == nil || slot.Ink.Label == nil) {
			slot.Called = ""
		}
	}
}

// outermost is what a slot of a construction is outside of all calls.
func (c *checker) outermost(slot int) int {
	for {
		outer, ok := c.outer[slot]
		if !ok {
			return slot
		}
		slot = outer
	}
}

// nameCurves has captions call lines and circles by what a reader sees. One
// without a letter goes by its points: a line by two that it was drawn through, a
// circle by its centre, or as the circle, if there is one only. Where they do not
// tell it, it gets its letter, if it is spoken of.
func (c *checker) nameCurves() {
	spoken := map[int]bool{}
	for slot := range c.spoken {
		spoken[c.outermost(slot)] = true
	}
	for slot, ends := range c.through {
		c.goByPoints(slot, ends)
	}
	c.goByResults()
	about, circles := map[int]int{}, 0 // by their centres, and all
	for i, slot := range c.prog.Slots {
		if slot.As == i && slot.Kind == program.Circle && c.shows(i) && slot.Ink.Whole {
			about[c.centreSeen(i)]++
			circles++
		}
	}
	for i, slot := range c.prog.Slots {
		if slot.As != i {
			continue
		}
		line, circle := c.unlettered(slot, program.Line), c.unlettered(slot, program.Circle) && slot.Ink.Whole
		switch {
		case !line && !circle && !c.unlettered(slot, program.Rim) || line && slot.By != nil:
		case circle && circles == 1:
			slot.Called, slot.Only = "", true
		case circle && c.centreSeen(i) >= 0 && about[c.centreSeen(i)] == 1:
			slot.Called = ""
		case spoken[i] && slot.Called != "":
			slot.Ink.Label = &figure.Label{Text: slot.Called, Name: true}
		default:
			slot.Called = ""
		}
	}
}

// goByPoints has a line go by two points that it was drawn through, if both show.
func (c *checker) goByPoints(slot int, ends pair) {
	a, b := c.outermost(ends[0]), c.outermost(ends[1])
	if line := c.prog.Slots[c.outermost(slot)]; c.shows(a) && c.shows(b) && c.unlettered(line, program.Line) {
		line.By, line.Called = []int{a, b}, ""
	}
}

// goByResults has the lines that calls give inside a construction go by two points that
// show, of those that they were drawn through and were met in by the same act: an
// altitude from A with its foot D is AD.
func (c *checker) goByResults() {
	here := map[int]int{} // what shows, by what it is another name of
	for i := len(c.prog.Slots) - 1; i >= 0; i-- {
		if c.prog.Slots[i].Kind == program.Point && c.shows(i) {
			here[c.hand.point(i)] = i
		}
	}
	on := map[int][]int{} // the points of lines, in their order
	for line, ends := range c.through {
		on[c.hand.point(line)] = ends[:]
	}
	for p := range c.prog.Slots {
		for _, line := range c.metOn[p] {
			on[c.hand.point(line)] = append(on[c.hand.point(line)], p)
		}
	}
	for i, line := range c.prog.Slots {
		if line.Top || line.By != nil || line.As != i || !c.unlettered(line, program.Line) {
			continue
		}
		var two []int
		for _, p := range on[c.hand.point(i)] {
			at, shows := here[c.hand.point(p)]
			if shows && c.prog.Slots[at].Ink.Step <= line.Ink.Step && !slices.Contains(two, at) && len(two) < 2 {
				two = append(two, at)
			}
		}
		if len(two) == 2 {
			line.By, line.Called = two, ""
		}
	}
}

// centreSeen is the centre of a circle as it shows, -1 if it does not.
func (c *checker) centreSeen(circle int) int {
	centre, ok := c.centres[circle]
	if centre = c.outermost(centre); !ok || !c.shows(centre) {
		return -1
	}
	return centre
}

// shows tells that a slot is on the paper.
func (c *checker) shows(slot int) bool {
	ink := c.prog.Slots[slot].Ink
	return ink != nil && !ink.Hidden
}

// unlettered tells that a curve shows, and has no letter.
func (c *checker) unlettered(slot *program.Slot, kind program.Kind) bool {
	return slot.Kind == kind && slot.Ink != nil && !slot.Ink.Hidden && slot.Ink.Label == nil
}
