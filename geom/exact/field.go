package exact

// Fields: the world in which the numbers of one figure are made and compared.

import "math/big"

// Field is the world of one figure's numbers: it holds the tower that they are
// written out in, and the budget. Not safe for concurrent use; different fields are
// independent.
type Field struct {
	tower   *tower
	account account         // what decisions have cost
	most    int             // that one decision may cost
	roots   map[int64]*Real // of square-free whole numbers, each once
	pi      enclosure

	// Angles in degrees.
	cosines map[angle][2]*Real     // cosine and sine by angle, each once
	turns   map[*Real]scaledCosine // what is known to be a multiple of a cosine
	fine    bool                   // some cosine is none of whole degrees or their halvings
	golden  *Real                  // √(10 + 2√5), once needed
	loose   *looseAngles           // nil unless angles are to be freed

	// Proofs by conjugates.
	formula *formula                 // what has been worked out for them
	tooLong int                      // formulas that were too long
	splits  map[uint64][]*splitPrime // by order
	lengths []*Real                  // see Expect

	// Identities between joints.
	joints int32 // calls of Joint
	surds  bool  // roots of fractions are among the joints
	spent  bool  // some decision was too much for a small part of the budget
	luck   int   // identities found, less those sought in vain

	free  degree // of what was 0 among the numbers made from free values
	trust uint   // bits of an enclosure that are taken at their word; 0: none are
	rough bool   // what floats cannot tell from 0 is taken for 0
	notes *Notes // of a field that keeps formulas, else nil
}

// NewField is an empty field: the rationals, growing as roots are taken.
func NewField() *Field {
	return &Field{
		tower:   newTower(),
		most:    mostWork,
		roots:   map[int64]*Real{},
		cosines: map[angle][2]*Real{},
		turns:   map[*Real]scaledCosine{},
		splits:  map[uint64][]*splitPrime{},
	}
}

// NewRoughField is an empty field that takes a number for 0 when its interval of
// floats cannot tell it from 0. It serves to compare choices quickly, before one
// of them is worked out in a true field; nothing that it says is a verdict.
func NewRoughField() *Field {
	f := NewField()
	f.rough = true
	return f
}

// Trust makes the field take a number for 0 when an enclosure of that many bits
// cannot tell it from 0, until Trust(0) makes it exact again. It is for random
// positions, at which a number that is not 0 should come so near to 0 with a
// chance of the order of 2^-bits (expected, not proved). Numbers keep their exact
// meaning.
func (f *Field) Trust(bits uint) { f.trust = bits }

// Limit lowers what one decision may cost, in products of two machine words, of
// some 10 ns each. A decision that costs more is Undecided; all decisions of a
// figure, or of a claim, may cost a multiple of that together (see account).
func (f *Field) Limit(work int) { f.most = min(work, mostWork) }

// Int is a whole number.
func (f *Field) Int(n int64) *Real { return f.ratio(n, 1) }

// Rat is a fraction.
func (f *Field) Rat(r *big.Rat) *Real {
	if r.Num().IsInt64() && r.Denom().IsInt64() {
		return f.ratio(r.Num().Int64(), r.Denom().Int64())
	}
	num := constant(whole(new(big.Int).Set(r.Num())))
	return f.written(f.tower.fraction(num, whole(new(big.Int).Set(r.Denom()))))
}

// ratio is num/den, which must be in lowest terms.
func (f *Field) ratio(num, den int64) *Real {
	return &Real{field: f, num: num, den: den, bounds: ratioInterval(num, den)}
}

// reduced is num/den for den ≠ 0; nil if lowest terms with a positive
// denominator do not fit.
func (f *Field) reduced(num, den int64) *Real {
	if den < 0 {
		num, den = -num, -den
	}
	g := gcd64(num, den)
	if g <= 0 || den < 0 || num == -num && num != 0 {
		return nil
	}
	return f.ratio(num/g, den/g)
}

// written is a node for a number of the tower.
func (f *Field) written(n *number) *Real {
	x := &Real{field: f, op: written, exact: n, bounds: everything}
	x.near = n.enclose(64)
	x.bounds = x.near.interval()
	if n.isZero() {
		return f.Int(0)
	}
	return x
}

// wholeRoot is √m for a square-free m > 0, one node for each m.
func (f *Field) wholeRoot(m int64) *Real {
	if m == 1 {
		return f.Int(1)
	}
	z := f.roots[m]
	if z == nil {
		x := f.Int(m)
		z = f.node(root, x, nil, x.bounds.sqrt())
		f.roots[m] = z
	}
	return z
}
