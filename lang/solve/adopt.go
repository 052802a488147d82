package solve

import (
	"math"
	"math/big"
	"slices"

	"trammel/lang/program"
)

// frame is where and how large plain values are meant: about the points that
// do not hang on any choice, or on the empty sheet.
type frame struct{ x, y, size float64 }

func (s *search) frame() frame {
	f := frame{size: s.hand}
	if s.fixtures > 0 {
		f.x, f.y = s.fixed.left, s.fixed.low
	}
	if size := s.fixed.size(); size > 0 {
		f.size = size
	}
	return f
}

// adopt fits inputs to the figure so far.
func (s *search) adopt(group []int) {
	f := s.frame()
	for _, in := range group {
		plain, _ := s.p.Inputs[in].Default.Float64()
		s.scale[in] = f.size / program.PlainReach
		switch s.p.Inputs[in].Kind {
		case program.Opening:
			s.take(in, s.opening(plain, s.reach()))
		case program.Abscissa:
			s.take(in, decimal(f.x+plain*s.scale[in], s.scale[in]/8))
		case program.Ordinate:
			s.take(in, decimal(f.y+plain*s.scale[in], s.scale[in]/8))
		}
	}
}

// take makes a value the plain one of an input.
func (s *search) take(in int, v *big.Rat) { s.plain[in], s.st.Inputs[in] = v, v }

// reach is how far a figure goes for which openings are meant. They keep in proportion to
// figures of up to twice a plain hand's; in smaller ones a hand opens the compasses wider
// for their size.
func (s *search) reach() float64 { return s.reachOf(s.size()) }

// reachBefore is how far it goes without the circle that step i draws.
func (s *search) reachBefore(i int) float64 {
	is := make([]share, len(s.p.Slots))
	for _, slot := range s.writes[i] {
		if s.p.Slots[slot].Kind == program.Circle {
			is[slot] = due
		}
	}
	b, _ := s.sight.boxOf(is)
	return s.reachOf(b.size())
}

func (s *search) reachOf(size float64) float64 {
	if size == 0 {
		return s.hand
	}
	return max(min(size, 2*s.hand), min(roomy*size, handy*s.hand))
}

// By how much wider, and to which part of what is plain.
const (
	roomy = 1.6
	handy = 0.95
)

// opening is a plain opening in a figure that reaches so far.
func (s *search) opening(plain, reach float64) *big.Rat {
	x := plain * reach / program.PlainReach
	return decimal(x, x/16)
}

// refit fits openings to what lies about the compasses' foot, and to their
// bounds, now that step i has shown them; it tells whether that changes any.
func (s *search) refit(i int, group []int) bool {
	reach := s.reachBefore(i)
	if foot := s.footOf(i); foot >= 0 {
		reach = min(reach, 2*s.middling(foot))
	}
	changed := false
	for _, in := range group {
		if s.p.Inputs[in].Kind != program.Opening {
			continue
		}
		plain, _ := s.p.Inputs[in].Default.Float64()
		x := within(plain*reach/program.PlainReach, s.st.Bounds)
		if v := decimal(x, x/16); v.Cmp(s.plain[in]) != 0 {
			s.take(in, v)
			changed = true
		}
	}
	return changed
}

// A plain hand keeps clear of a bound by a factor, and goes not much farther.
const (
	aloof = 1.35
	loose = 2
)

// within is an opening that keeps clear of its bounds, or in the middle between them.
func within(x float64, bounds []program.Bound) float64 {
	over, under := 0.0, math.Inf(1)
	for _, b := range bounds {
		if b.Over {
			over = max(over, b.Limit)
		} else {
			under = min(under, b.Limit)
		}
	}
	if over*aloof > under/aloof {
		return (over + under) / 2
	}
	if over > 0 {
		x = min(max(x, over*aloof), over*loose)
	}
	return min(x, under/aloof)
}

// footOf is the first point that a step has read, -1 where there is none.
func (s *search) footOf(i int) int {
	for _, slot := range s.known[i].reads {
		if s.sight.slots[slot].kind == point {
			return slot
		}
	}
	return -1
}

// middling is the median way from a point to the others that have letters.
func (s *search) middling(foot int) float64 {
	f := &s.sight.slots[foot]
	var ways []float64
	for k, p := range s.sight.dots.there() {
		if slot := s.sight.points[k]; p.x == p.x && !s.sight.slots[slot].hidden && slot != foot {
			ways = append(ways, math.Hypot(p.x-f.x, p.y-f.y))
		}
	}
	if len(ways) == 0 {
		return math.Inf(1)
	}
	return median(ways)
}

// median is the middle one of numbers, or the mean of the two in the middle; it puts them in
// another order.
func median(all []float64) float64 {
	k := len(all) / 2
	for lo, hi := 0, len(all)-1; lo < hi; {
		pivot, i, j := all[(lo+hi)/2], lo, hi
		for i <= j {
			for all[i] < pivot {
				i++
			}
			for pivot < all[j] {
				j--
			}
			if i <= j {
				all[i], all[j] = all[j], all[i]
				i, j = i+1, j-1
			}
		}
		switch {
		case k <= j:
			hi = j
		case k >= i:
			lo = i
		default:
			lo = hi
		}
	}
	if len(all)%2 == 1 {
		return all[k]
	}
	return (slices.Max(all[:k]) + all[k]) / 2
}
