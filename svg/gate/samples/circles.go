package samples

import "strings"

func tangents(s *sample) {
	s.say("given circle k centre O (0, 0) radius %s", s.tenths(2, 2.9))
	s.say("given P (%s, %s)", s.tenths(5.5, 8), s.tenths(-1, 1.5))
	s.say("S, T, s, t by tangents(k, P)%s", s.pick("", " unseen", " in full"))
	s.say("join OS, OT, OP\ndashed OP")
	s.say("mark right OSP, OTP\nmark PS = PT\nmark OS = OT")
	if s.turn%2 == 0 {
		s.say("OP meets k at Q between O and P\njoin SQ, TQ, ST")
		s.say("mark angle SPO = OPT")
	} else {
		s.say("label OS \"r\"\nlabel k")
	}
}

func commonTangents(s *sample) {
	s.say("given circle k centre O (0, 0) radius %s", s.tenths(1.9, 2.5))
	s.say("given circle l centre Q (%s, %s) radius %s", s.tenths(6, 7.5), s.tenths(-0.8, 0.8), s.tenths(0.9, 1.5))
	s.say("A, B, C, D, s, t by %s(k, l)%s", s.pick("outers", "inners", "belts"), s.pick("", " unseen"))
	s.say("join OA, QB, OC, QD, OQ\ndashed OA, QB, OC, QD, OQ")
	s.say("mark right OAB, QBA\nmark AB = CD")
	if s.turn%2 == 0 {
		s.say("mark OA parallel to QB\nlabel k\nlabel l")
	}
}

func circleAngles(s *sample) {
	s.say("given circle k centre O (0, 0) radius %s", s.tenths(2.9, 3.6))
	a := s.from(195, 215)
	s.say("given A on k at %d°\ngiven B on k at %d°", a, s.from(310, 335))
	s.say("given C on k at %d°\ngiven D on k at %d°", s.from(35, 70), s.from(95, 140))
	switch s.turn % 3 {
	case 0:
		s.say("join ABCDA\nlabel angle DAB \"α\"\nlabel angle ABC \"β\"\nlabel angle BCD \"180° - α\"")
	case 1:
		s.say("join AC, CB, AD, DB, OA, OB\nmark OA = OB\nmark angle ACB = ADB\nlabel angle AOB \"2γ\"")
	default:
		s.say("AC meets BD at X\njoin AC, BD, AD, BC\nmark angle CAD = CBD\nlabel angle AXB \"φ\"\nlabel AX \"p\"\nlabel CX \"q\"")
	}
	s.say("label k")
}

// polygon letters regular ones, and draws what it is their business to have.
func polygon(s *sample) {
	n := []int{5, 6, 8, 9, 10, 12, 15, 18, 20, 24}[s.turn]
	s.say("given circle k centre O (0, 0) radius %s", s.tenths(3+float64(n)/10, 3.4+float64(n)/10))
	s.say("given P1 on k at %d°", s.from(0, 40))
	s.say("given Z on k at 300°\nhide Z")
	run := []string{"P1"}
	for i := 2; i <= n; i++ {
		run = append(run, "P"+itoa(i))
	}
	for i, name := range run[1:] {
		s.say("take %s %s from O at %s° to OP1", name, "radius k", ratio(360*(i+1), n))
	}
	s.say("join %s", strings.Join(append(run, "P1"), ""))
	s.say("join OP1, OP2\ndashed OP1, OP2\nmark P1P2 = P2P3 = P3P4")
	if n < 13 {
		s.say("label angle P1OP2 size")
	}
}

// chords of a few points of a circle, with a letter at every crossing.
func chords(s *sample) {
	n := []int{4, 5, 5, 6, 5, 4, 5, 6, 5, 6}[s.turn]
	s.say("given circle k centre O (0, 0) radius %d", 2+n/2)
	names := letters(n)
	s.ring(names)
	s.say("join %s", strings.Join(append(names, names[0]), ""))
	count := 0
	for i := range n {
		for j := i + 2; j < n; j++ {
			if i > 0 || j < n-1 {
				s.say("join %s%s", names[i], names[j])
			}
		}
	}
	for i := range n {
		for k := i + 1; k < n; k++ {
			for j := k + 1; j < n; j++ {
				for l := j + 1; l < n; l++ {
					count++
					s.say("%s%s meets %s%s at X%d", names[i], names[j], names[k], names[l], count)
				}
			}
		}
	}
}
