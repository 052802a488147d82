package lang

// refuseAccidents makes an error of claims that hold only because of what was
// chosen for the source: a claim is meant of every figure that it describes.
func (r *Result) refuseAccidents() {
	for i, c := range r.program.Claims {
		if c.Here || !r.hangs(c.Step) || !r.Claims[i].Holds || r.onAllSides(fewLines)[i] || !r.far().isRefuted(i) {
			continue
		}
		p := r.Problems.Add(c.Step.Span, "the claim holds only for what was chosen here, and not always")
		p.Help = "give what makes it true, or write: claim here " + c.Text
		r.Claims[i].Holds, r.Claims[i].Accident = false, true
	}
}
