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
