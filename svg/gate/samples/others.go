package samples

import (
	"math/big"
	"strconv"
)

func itoa(n int) string { return strconv.Itoa(n) }

// ratio is an exact fraction as a source has it.
func ratio(a, b int) string { return big.NewRat(int64(a), int64(b)).RatString() }

// parallels crosses two with a transversal and marks the angles there.
func parallels(s *sample) {
	s.say("given line m through A (0, 0) and B (%s, %s)", s.tenths(7.5, 9), s.tenths(-0.6, 0.6))
	s.say("given P %s from A at %d° to AB", s.tenths(3.6, 4.8), s.from(48, 75))
	s.say("n by parallel(m, P)%s", s.pick("", " unseen", " in full"))
	s.say("take Q on n, 5 from P right of AP")
	s.say("line t through A and P\ntake R on t, %s from P beyond P on AP", s.tenths(1.8, 2.4))
	s.say("mark AB parallel to PQ")
	switch s.turn % 3 {
	case 0:
		s.say("mark angle BAP = QPR")
		s.say("label m\nlabel n\nlabel t")
	case 1:
		s.say("label angle BAP size\nlabel angle QPR size\nlabel angle APQ size")
	default:
		s.say("label angle BAP \"α\"\nlabel angle QPR \"α\"\nlabel angle APQ \"β\"\nlabel m")
	}
}

// parallelogram draws one of its kinds with its diagonals.
func parallelogram(s *sample) {
	kind := s.turn % 4
	switch kind {
	case 1:
		s.say("given rhombus ABCD with AB = %s, angle A = %d°", s.tenths(4.5, 5.5), s.from(50, 72))
	case 2:
		s.say("given rectangle ABCD with AB = %s, BC = %s", s.tenths(6, 8), s.tenths(3.4, 4.6))
	default:
		s.say("given parallelogram ABCD with AB = %s, BC = %s, angle A = %d°", s.tenths(6.5, 8), s.tenths(3.6, 4.8), s.from(52, 70))
	}
	s.say("join AC, BD\nAC meets BD at M\nmark AM = MC\nmark BM = MD")
	s.say([]string{
		"mark AB parallel to DC\nmark AD parallel to BC\nmark angle BAC = DCA",
		"mark AB = BC = CD = DA\nmark right AMB",
		"mark right ABC, BCD\nlabel AB length\nlabel BC length\nlabel angle BMC \"φ\"",
		"label AB length\nlabel BC length\nlabel angle DAB size\nlabel angle ABC size",
	}[kind])
}

// construction calls the library as a teacher would, with all its letters.
func construction(s *sample) {
	s.say("given A (0, 0)\ngiven B (%s, %s)", s.tenths(6, 8), s.tenths(-1, 1))
	switch s.turn % 10 {
	case 0:
		s.say("join AB\nM, n by bisect(A, B) in full\nmark AM = MB")
	case 1:
		s.say("line m through A and B\ngiven P (3, 4)\nn, F by drop(m, P) in full\nmark right PFB\nlabel m")
	case 2:
		s.say("line m through A and B\ntake P on AB, 3 from A\nn by erect(m, P) in full\nlabel n")
	case 3:
		s.say("given C 5 from A at %d° to AB\njoin AB, AC\nH by halve(B, A, C) in full\nray AH\nmark angle BAH = HAC", s.from(55, 85))
	case 4:
		s.say("line m through A and B\ngiven P (2.4, 3.4)\nn by parallel(m, P) in full\nlabel m\nlabel n")
	case 5:
		s.say("join AB\nC, D by squareon(A, B) in full\njoin BCDA\nmark AB = BC = CD = DA\nmark right DAB")
	case 6:
		s.say("join AB\nG by golden(A, B) in full")
	case 7:
		s.say("join AB\nC by triangleon(A, B) in full\njoin BCA\nmark AB = BC = CA\nlabel angle BAC size")
	case 8:
		s.say("given C 4 from A at %d° to AB\njoin AB, AC\ngiven P (0, -6)\ngiven Q (5, -5.6)\nray PQ\nR by copyangle(B, A, C, P, Q) in full\nray PR\nmark angle BAC = QPR", s.from(38, 60))
	default:
		s.say("join AB\nC by angle60(A, B) in full\nray AC\nlabel angle BAC size")
	}
}

func division(s *sample) {
	n := s.from(3, 7)
	s.say("given A (0, 0)\ngiven B %s from A\ngiven C %s from A at %d° to AB", s.tenths(8, 9.5), s.tenths(7, 8.5), s.from(28, 42))
	s.say("join AB\nray AC\nstep off Q[1 to %d] on AC from A, radius any\njoin Q%dB\nhide C", n, n)
	s.say("repeat i from 1 to %d\n  n[i] by parallel(Q%dB, Q[i]) unseen\n  n[i] meets AB at P[i]\n  join Q[i]P[i]\n  hide n[i]\nend", n-1, n)
	s.say("mark AQ1 = Q1Q2 = Q2Q3\nmark AP1 = P1P2")
	if s.turn%2 == 0 {
		s.say("label AB length")
	}
}

func locus(s *sample) {
	s.say("given A (0, 0)\ngiven B (%s, %s)", s.tenths(5.5, 7), s.tenths(0.5, 2))
	switch s.turn % 4 {
	case 0:
		s.say("locus n equidistant from A and B\nlocus k %s from A", s.tenths(4, 4.6))
		s.say("shade where nearer A than B, under 4 from A\nlabel n\nlabel k\nn meets k at X and Y")
	case 1:
		s.say("join AB\nlocus k %s from AB\nlabel k", s.tenths(1.5, 2.2))
	case 2:
		s.say("line m through A and B\nlocus p, q %s from m\nlabel m\nlabel p\nlabel q\nshade where under 1 from m", s.tenths(1.5, 2.2))
		s.say("given P (3, 3)\nlocus k 2.2 from P\nlabel k")
	default:
		s.say("given C 5 from A at %d° to AB\njoin AB, AC\nlocus n equidistant from AB and AC", s.from(50, 75))
		s.say("take P on n, 4 from A\ns, D by drop(AB, P) unseen\nt, E by drop(AC, P) unseen\nhide s, t\njoin PD, PE\nmark PD = PE\nmark right PDA, PEA\nmark angle BAP = PAC")
	}
}

// lattice crosses parallels with parallels and letters all the meetings: the
// crowded ones among the figures.
func lattice(s *sample) {
	rows, columns := s.from(2, 4), s.from(3, 5)
	if s.turn%5 == 4 {
		rows, columns = 6, 7
	}
	lean := s.from(2, 9)
	for i := 1; i <= columns; i++ {
		x := 10 * i
		s.say("given line a%d through C%d (%s, -0.7) and D%d (%s, %s)\nhide C%d, D%d", i, i, ratio(x, 7), i, ratio(7*x+rows*70*lean/10, 49), ratio(rows*10+7, 7), i, i)
	}
	for j := 1; j <= rows; j++ {
		y := ratio(13*j, 10)
		s.say("given line b%d through E%d (0, %s) and F%d (%d, %s)\nhide E%d, F%d", j, j, y, j, 2*columns, y, j, j)
	}
	names := 0
	for j := 1; j <= rows; j++ {
		for i := 1; i <= columns; i++ {
			names++
			s.say("a%d meets b%d at P%d", i, j, names)
		}
	}
	if rows*columns < 20 {
		s.say("label a1\nlabel b1")
	}
}

// treasure is a map with places and words.
func treasure(s *sample) {
	s.say("given A (0, 0)\ngiven B (%s, %s)\ngiven C (%s, %s)", s.tenths(7, 9), s.tenths(-1, 1), s.tenths(2, 5), s.tenths(4.5, 6))
	s.say("note \"church\" near A\nnote \"mill\" near B\nnote \"old oak\" near C")
	s.say("join AB, AC\nlabel AB length")
	s.say("M, n by bisect(A, B)%s\narc d centre C radius %s\nlabel d", s.pick("", " unseen"), s.tenths(3, 3.9))
	s.say("arc e centre A radius %s\nlabel e", s.tenths(3.6, 4.4))
	s.say("d meets e at T below AC\nnote \"treasure\" near T")
	if s.turn%2 == 0 {
		s.say("join BC\nlabel angle BAC size\nlabel BC \"path\"")
	}
}
