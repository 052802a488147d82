package svg

import (
	"math"
	"testing"
)

// Once round is four right angles of four turns each, clockwise from the right.
func TestStretchesOfDisc(t *testing.T) {
	s := Disc{Centre: XY{5000, 6000}, Radius: 2000}.Stretches()[0]
	if len(s.Spokes) != 17 || s.On(0) != (Place{7000, 6000}) || s.On(4) != (Place{5000, 8000}) || s.On(16) != s.On(0) {
		t.Errorf("%d spokes; %v %v %v", len(s.Spokes), s.On(0), s.On(4), s.On(16))
	}
	for i := range s.Spokes[1:] {
		u, v := s.Spokes[i], s.Spokes[i+1]
		if turn := math.Atan2(u.X*v.Y-u.Y*v.X, dot(u, v)) * 180 / math.Pi; math.Abs(turn-22.5) > 1e-9 {
			t.Errorf("turn %d is by %v°", i, turn)
		}
	}
	if out := s.Out(0, 250); out != (Place{7250, 6000}) {
		t.Errorf("250 beyond the circle is %v", out)
	}
	fine := s.Finer()
	if len(fine.Spokes) != 33 || fine.On(8) != s.On(4) || len(s.Spokes) != 17 {
		t.Errorf("%d finer spokes, %d coarse ones", len(fine.Spokes), len(s.Spokes))
	}
}

// A closed path comes home; a radius too small is half the distance.
func TestStretchesOfPath(t *testing.T) {
	p := Path{Closed: true, Start: XY{0, 0}, Pieces: []Piece{{To: XY{4000, 0}, Radius: 100, Clockwise: true}, {To: XY{4000, 3000}}}}
	all := p.Stretches()
	if len(all) != 3 || all[2].To != all[0].From || all[2].From != (Place{4000, 3000}) {
		t.Fatalf("the stretches are %v", all)
	}
	if all[0].Radius != 2000 || all[0].Centre != (Place{2000, 0}) {
		t.Errorf("the arc has the radius %v about %v", all[0].Radius, all[0].Centre)
	}
	if top := all[0].On(len(all[0].Spokes) / 2); math.Abs(top.X-2000) > 1e-6 || math.Abs(top.Y+2000) > 1e-6 {
		t.Errorf("clockwise from left to right leads over %v", top)
	}
	if len(all[1].Spokes) != 0 {
		t.Error("a straight stretch has spokes")
	}
}
