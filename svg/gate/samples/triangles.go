package samples

func circumcircle(s *sample) {
	s.triangle()
	s.say("k, O by circumcircle(A, B, C)%s", s.pick("", " unseen", " in full"))
	s.say("join OA, OB, OC")
	s.say("dashed OA, OB, OC")
	s.say("mark OA = OB = OC")
	if s.turn%2 == 0 {
		s.say("label angle ACB \"γ\"")
		s.say("label angle AOB \"2γ\"")
	}
	s.say("label k")
}

func altitudes(s *sample) {
	s.triangle()
	s.say("H, D, E, F by orthocentre(A, B, C)%s", s.pick("", " unseen"))
	s.say("join AD, BE, CF")
	s.say("mark right ADB, BEC, CFA")
	switch s.turn % 3 {
	case 0:
		s.say("join DE, EF, FD")
		s.say("dashed DE, EF, FD")
	case 1:
		s.say("label AD \"h\"")
		s.say("label AB \"c\"\nlabel BC \"a\"\nlabel CA \"b\"")
	default:
		s.say("mark angle EAH = EBC")
	}
}

func medians(s *sample) {
	s.triangle()
	s.say("G, L, M, N by centroid(A, B, C)%s", s.pick("", " unseen"))
	s.say("join AL, BM, CN")
	s.say("mark BL = LC\nmark CM = MA\nmark AN = NB")
	if s.turn%2 == 0 {
		s.say("join LM\nmark AB parallel to ML")
		s.say("label AB length")
	}
}

func incircle(s *sample) {
	s.triangle()
	s.say("k, I by incircle(A, B, C)%s", s.pick("", " unseen"))
	s.say("n, D by drop(BC, I) unseen\no, E by drop(CA, I) unseen\np, F by drop(AB, I) unseen")
	s.say("hide n, o, p")
	s.say("join ID, IE, IF")
	s.say("mark ID = IE = IF")
	s.say("mark right IDC, IEA, IFB")
	if s.turn%2 == 0 {
		s.say("mark AE = AF\nmark BF = BD\nmark CD = CE")
		return
	}
	s.say("join AI, BI, CI\ndashed AI, BI, CI")
	s.say("mark angle FAI = IAE")
	s.say("label ID \"r\"")
}

func measures(s *sample) {
	s.triangle()
	s.say("label AB length")
	s.say("label angle BAC size\nlabel angle CBA size")
	s.say("n, D by drop(AB, C) unseen\nhide n\njoin CD\nmark right CDA")
	switch s.turn % 3 {
	case 0:
		s.say("label angle ACB size\nlabel CD \"h\"")
	case 1:
		s.say("label angle ACD size\nlabel angle DCB size")
	default:
		s.say("label AC \"b\"\nlabel BC \"a\"\nlabel AD \"p\"\nlabel DB \"q\"")
	}
}

func midSegments(s *sample) {
	s.triangle()
	s.say("L by middle(B, C) unseen\nM by middle(C, A) unseen\nN by middle(A, B) unseen")
	s.say("mark AN = NB\nmark BL = LC\nmark CM = MA")
	if s.turn%2 == 0 {
		s.say("join LMNL\nmark AB parallel to ML\nmark BC parallel to NM")
		s.say("label angle BAC \"α\"\nlabel angle LMC \"α\"")
		return
	}
	s.say("join ML\nmark AB parallel to ML\nlabel AB \"c\"\nlabel ML \"½ c\"")
	s.say("produce AB beyond B by %s to D", s.tenths(1.5, 3))
	s.say("label angle CBD \"δ\"\nlabel angle BAC \"α\"\nlabel angle ACB \"γ\"")
}

func squares(s *sample) {
	legs := [][3]int{{3, 4, 5}, {6, 8, 10}, {4, 3, 5}}[s.turn%3]
	unit := []int{8, 4, 8}[s.turn%3]
	s.say("unit %d mm", unit)
	s.say("given triangle ABC with AC = %d, BC = %d, AB = %d", legs[0], legs[1], legs[2])
	s.say("D, E by squareon(B, A) unseen\nF, G by squareon(C, B) unseen\nH, K by squareon(A, C) unseen")
	s.say("join BADEB, CBFGC, ACHKA")
	s.say("mark right ACB")
	s.say("label AB length\nlabel BC length\nlabel CA length")
	if s.turn%2 == 0 {
		s.say("n, L by drop(AB, C) unseen\nn meets DE at M\nhide n\njoin CM\ndashed CM")
		s.say("shade ACHK\nshade ALMD")
	}
}

func bars(s *sample) {
	s.say("given length a = %s\ngiven length b = %s\ngiven length c = %s", s.tenths(4.2, 5), s.tenths(5.3, 6), s.tenths(6.4, 7.4))
	s.say("given A (0, 0)\ngiven line m through A and Z (9, 0)\nhide Z")
	s.say("arc d centre A radius c cuts m at B nearest Z")
	s.say("arc e centre A radius b\narc f centre B radius a\ne meets f at C above m\njoin AC, CB")
	switch s.turn % 3 {
	case 0:
		s.say("H by halve(A, C, B) in full\nray CH\nmark angle ACH = HCB")
	case 1:
		s.say("n, F by drop(m, C) in full\nmark right CFB")
	default:
		s.say("M, n by bisect(A, C) in full\nmark AM = MC")
	}
}
