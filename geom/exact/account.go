package exact

// account is what the decisions of a field have cost, task by task. The first
// task is the figure itself; each of its claims is another, so that a hard claim
// takes nothing from an easy one that comes after it.
//
// A claim may take half of what is left to all of them, and a tenth of what one
// decision may cost however little that is, until all together have cost twice as
// much as they share: so many hard claims come to an end as well.
type account struct {
	worked  int  // in this task
	earlier int  // in the claims before it
	claim   bool // this task is one
}

// Claim begins another task of the field, with a budget of its own.
func (f *Field) Claim() {
	if f.account.claim {
		f.account.earlier += f.account.worked
	}
	f.account.worked, f.account.claim = 0, true
}

// mostWorkOfAll bounds what a figure may cost, and half of what its claims may,
// however much one decision may cost.
const mostWorkOfAll = 500_000_000

// overdrawn says why the task may cost no more, if that is so; most is what one
// decision may cost.
func (a *account) overdrawn(most int) string {
	all := min(4*most, mostWorkOfAll)
	switch {
	case !a.claim && a.worked > all:
		return "more than all decisions of one figure may cost together"
	case a.claim && a.earlier > 4*all:
		return "more than all claims of one figure may cost together"
	case a.claim && a.worked > max(all-a.earlier/2, most/10):
		return "more than all decisions of one claim may cost together"
	}
	return ""
}
