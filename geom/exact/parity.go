package exact

// Linear equations over F₂, the field of two elements.

// parity is an equation: whether the sum of some unknown bits is odd.
type parity struct {
	unknowns levelSet
	odd      bool
}

// parities is a system of equations in echelon form.
type parities struct {
	pivots []parity // by lowest unknown; empty where there is none yet
	rank   int
	spare  int // equations that followed from those before them
}

// newParities is the system without equations.
func newParities(unknowns int) *parities { return &parities{pivots: make([]parity, unknowns)} }

// isSettled tells whether the equations determine every unknown, and enough others
// agree.
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
