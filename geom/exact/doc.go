// Package exact does arithmetic without error in the real numbers that compass and
// straightedge construct, and in those that the cosines of degrees, tenths of degrees and
// minutes generate with them. It decides which of two numbers is greater, or whether they
// are equal; and what it says is so.
//
// The files are meant to be read in this order. Each begins with what it is for, the
// theorem by which it is right and its source, and what is proved.
//
// A whole number is a rational integer. A level of the tower is a field, its root the √d that it
// adjoins, its radicand that d. A number is written 0 when its form is 0, and is 0 when its
// value is: the first implies the second. An enclosure holds a value between two floats. A joint
// is a number that others are built on, such as a coordinate of a point.
//
// # Numbers
//
// A number is written out in a tower of fields K₀ ⊂ K₁ ⊂ …, each the one before it with a
// root √d, where d > 0 is no square yet.
//
//	integer.go     whole numbers
//	tower.go       the tower; levelset.go: sets of its levels
//	element.go     whole polynomials in its roots: the ring, norms and conjugates
//	number.go      one of these over one denominator: the field
//	root.go        √x: found, denested, or adjoined as a new level
//
// # Layers
//
// To be written out is the last thing that happens to a number. It starts as a node: an
// operation, its operands, and an interval of floats. Each layer is asked only when the
// one before cannot tell.
//
//	field.go       the numbers of one figure
//	real.go        the node, lazy and shared
//	interval.go    intervals of floats
//	enclosure.go   enclosures by big floats; approximate.go: of nodes, towersign.go: of elements
//	filter.go      images modulo primes: surely not written 0
//	form.go        the exact form, on demand
//	sign.go        the way through all of these
//
// # Truth
//
// What decides that a number is 0, and with what chance it is wrong:
//
//	its exact form is written 0 (form.go)                              proved
//	more primes divide its conjugates than could (conjugates.go)       proved
//	it is a polynomial in π whose coefficients are all 0 (mixed.go)    proved
//	it is 0 by an identity between numbers below it (cut.go)           below 2^-80
//
// That it is positive or negative is told by an enclosure that excludes 0, and so proved. A
// form that is not written 0 proves nothing: if no enclosure excludes 0, a dependence between
// roots was missed, which is found and mended (mend.go). What exceeds the budget (budget.go)
// is a panic with *Undecided (errors.go), never a verdict. Rough and trusting fields, whose
// maker has asked for it, take for 0 what only looks like it; they serve to try things.
//
// # Is x a square already?
//
//	square.go      the test, by S and S' of the levels that x needs
//	ringmap.go     maps to residues, which give quadratic characters
//	modulo.go      arithmetic modulo primes; polynomial.go: roots of polynomials there
//	parity.go      which radicands make x a square: linear equations over F₂
//	ramify.go      a proof that x is none, by ramification
//
// A "no" is proved by characters, by ramification, or by norms and inert primes. Only where too
// few maps are found may a square be missed.
//
// # Printing
//
//	surd.go        as a textbook writes it: (1 + √5)/2
//	decimal.go     correctly rounded, at any length
//	mixed.go       polynomials in π; pi.go: π and arctangents by enclosures
//
// # Angles in degrees
//
//	degrees.go     cosines and sines, put together from few parts
//	base.go        the base of the tower: fields of odd degree over the rationals
//	turns.go       sums of angles, compared by enclosures
//	conjugates.go  identities between cosines of minutes: proofs by conjugates
//	formula.go     formulas of sums and products; expansion.go: with roots, fraction.go: quotients
//	splitprime.go  cosines modulo primes
//
// # Deeper than the tower can carry
//
//	cut.go         identities between the numbers on which another is built; box.go: where they hold
//	height.go      free values, and how often what is made from them is 0 by accident
//	loose.go       angles in degrees as free values
//
// # On which sides a claim holds
//
//	notes.go       what a figure was asked, in formulas
//	sheet.go       these formulas modulo primes, at random values of what is free
//	kummer.go      what a root is that is no new one, by logarithms modulo primes
//	relation.go    which products of positive numbers are squares, by quadratic characters
//	branch.go      whether an equation holds in all figures, and which signs of roots there are
//	world.go       the same for one choice of signs
//	deduce.go      which signs follow from others
package exact
