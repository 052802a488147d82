package eval

import (
	"errors"
	"math/big"

	"trammel/geom/exact"
	"trammel/lang/program"
)

// At is Try by enclosures at a special position, where steps may have no result:
// what hangs on those fails too, as lost. It is nil where a choice would be out of its bounds.
func At(p *program.Program, inputs []*big.Rat) *Trial {
	f := exact.NewField()
	f.Limit(trying)
	f.Trust(placing)
	t := &Trial{State: program.NewState(p, inputs, f), Failed: map[*program.Step]error{}}
	for _, step := range p.Steps {
		if step.Proof {
			continue
		}
		var fault *program.Fault
		if err := Do(t.State, step); errors.As(err, &fault) && fault.Range {
			return nil
		}
	}
	for _, c := range p.Claims {
		if err := Do(t.State, c.Step); err != nil {
			t.Failed[c.Step] = err
		}
	}
	return t
}
