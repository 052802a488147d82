package check

import "trammel/lang/syntax"

// adds tells whether an act only adds to what is there: a straight through points, or a call.
func adds(st *syntax.Statement) bool {
	switch {
	case st.Join != nil:
		return st.Join.Cuts == nil
	case st.Ray != nil:
		return st.Ray.Cuts == nil
	case st.Line != nil:
		return st.Line.Cuts == nil
	}
	return st.Named != nil && st.Named.By != nil
}

// addSteps notes that the steps from one on are of such an act.
func (s *scope) addSteps(from int) {
	s.c.added++
	for _, step := range s.c.prog.Steps[from:] {
		step.Adds = s.c.added
	}
}
