package exact

// parity says whether the sum of some unknown bits is odd.
type parity struct {
	unknowns levelSet
	odd      bool
}

// parities is a system of such equations, each pivot reduced against the
// ones before it.
type parities struct {
	pivots []parity // by lowest unknown; empty where there is none yet
	rank   int
	spare  int // equations that said nothing new
}

func newParities(unknowns int) *parities { return &parities{pivots: make([]parity, unknowns)} }

func (p *parities) isSettled() bool { return p.rank == len(p.pivots) && p.spare >= spareMaps }

// add takes in an equation; false if it contradicts the others.
func (p *parities) add(row parity) bool {
	for i := range p.pivots {
		if !row.unknowns.has(i) {
			continue
		}
		pivot := p.pivots[i]
		if pivot.unknowns.isEmpty() {
			p.pivots[i] = row
			p.rank++
			return true
		}
		for w := range row.unknowns {
			row.unknowns[w] ^= pivot.unknowns[w]
		}
		row.odd = row.odd != pivot.odd
	}
	p.spare++
	return !row.odd
}

// solution is the set of unknowns that are 1; those left free are 0.
func (p *parities) solution() (ones levelSet) {
	for i := len(p.pivots) - 1; i >= 0; i-- {
		odd := p.pivots[i].odd
		for j := range p.pivots[i].unknowns.each {
			if j != i && ones.has(j) {
				odd = !odd
			}
		}
		if odd {
			ones.add(i)
		}
	}
	return ones
}
