package check

import (
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
			taken[slot.Name] = true
		}
	}
	for i, slot := range c.prog.Slots {
		slot.Called = slot.Name
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
		case !line && !circle || line && slot.By != nil:
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
