package program

import (
	"fmt"
	"strings"
)

// Operations counts what the tools do, after É. Lemoine, Géométrographie (1902).
type Operations struct {
	R1 int // the edge of the ruler is set on a point
	R2 int // a line is drawn along it
	C1 int // a leg of the compasses is set on a certain point
	C2 int // a leg is set on any point of a line
	C3 int // a circle is drawn
	// Beyond is the acts that are none of these: loci, openings that must be
	// worked out, points measured off with ruler or protractor. An opening taken from
	// a scale counts as one from a given length.
	Beyond int
}

// Simplicity is the number of all operations.
func (o Operations) Simplicity() int { return o.R1 + o.R2 + o.C1 + o.C2 + o.C3 }

// Exactitude is the number of those that a hand can get wrong.
func (o Operations) Exactitude() int { return o.R1 + o.C1 + o.C2 }

// String is the symbol of a construction: 2R1 + R2 + 3C1 + 3C3.
func (o Operations) String() string {
	var parts []string
	for _, x := range []struct {
		n    int
		name string
	}{{o.R1, "R1"}, {o.R2, "R2"}, {o.C1, "C1"}, {o.C2, "C2"}, {o.C3, "C3"}} {
		switch x.n {
		case 0:
		case 1:
			parts = append(parts, x.name)
		default:
			parts = append(parts, fmt.Sprintf("%d%s", x.n, x.name))
		}
	}
	if len(parts) == 0 {
		return "none"
	}
	return strings.Join(parts, " + ")
}
