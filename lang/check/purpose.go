package check

import (
	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/syntax"
)

// drawsFrom tells whether what a statement names is drawn from: what is only joined,
// claimed, marked or inked is not.
func drawsFrom(st *syntax.Statement) bool {
	return st.Given != nil || st.Take != nil || st.Arc != nil || st.Circle != nil || st.Line != nil || st.Ray != nil ||
		st.Produce != nil || st.StepOff != nil || st.Locus != nil || st.Named != nil
}

// use notes that a thing is drawn from.
func (c *checker) use(slot int) {
	if c.drawsFrom {
		c.used[slot] = true
	}
}

// inkPurposes inks plainly, not as help lines, what the file's own calls are made for:
// the circles that they give, and lines where the file draws from nothing that the call gives.
func (c *checker) inkPurposes() {
	for _, slots := range c.calls {
		last := true
		for _, slot := range slots {
			last = last && !c.used[slot]
		}
		for _, slot := range slots {
			sl := c.prog.Slots[slot]
			if sl.Ink == nil || sl.Ink.Weight != figure.Usual {
				continue
			}
			if sl.Kind == program.Circle && sl.Ink.Whole || sl.Kind == program.Line && last {
				sl.Ink.Weight = figure.Plain
			}
		}
	}
}
