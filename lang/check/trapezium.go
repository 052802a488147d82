package check

// trapezium has AB parallel to DC, and AB longer. What is left to chance of it is first
// the parallel sides, then AD and the angle at A.
func (sh *shape) trapezium(isosceles bool) corners {
	if isosceles {
		sh.alike([2]element{sideOf(0, 3), sideOf(1, 2)}, [2]element{sideOf(0, 2), sideOf(1, 3)},
			[2]element{angleAt(0), angleAt(1)}, [2]element{angleAt(2), angleAt(3)})
	}
	sh.addUp(0, 3)
	sh.addUp(1, 2)
	return newSurvey(sh, sideOf(0, 1), sideOf(2, 3), sideOf(0, 3), angleAt(0), angleAt(1), sideOf(1, 2)).plan()
}
