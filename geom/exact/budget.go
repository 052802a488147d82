package exact

// What decisions may cost. Work is counted in products of two machine words; what
// exceeds its budget is not decided.

// account is what the decisions of a field have cost, task by task. The first task is
// the figure itself. Each of its claims is another, so that a hard claim takes
// nothing from an easy one that comes after it.
//
// A claim may cost what all decisions of a figure may, less half of what the claims
// before it have cost; but a tenth of what one decision may cost in any case, until
// all claims together have cost four times what a figure may: so many hard claims come
// to an end as well.
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

// mostWorkOfAll bounds what all decisions of a figure may cost, however much one of
// them may.
const mostWorkOfAll = 500_000_000

// overdrawn says why the task may cost no more, or nothing if it may; most is what one
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

// exhausted is the panic of a computation in a tower that would cost too much.
type exhausted struct{ why string }

// The budget of one decision: the longest number that may be written out (2048 terms of
// 8 kbit, say), and the work on the way. A product of coefficients costs some thirty units
// before it begins.
const (
	mostCoefficientBits = 2048 * 8192
	mostWork            = 400_000_000
)

// checkWork panics with *exhausted when the work of a decision exceeds its budget.
func (t *tower) checkWork() {
	if t.work > t.limit {
		panic(&exhausted{"too many steps"})
	}
}

// checkSize panics with *exhausted when x is too long.
func (t *tower) checkSize(x *number) {
	if terms, bits := x.num.size(); terms*(bits+x.den.bitLen()) > mostCoefficientBits {
		panic(&exhausted{"too long an expression"})
	}
}

// spend runs something with the budget of one decision, or one part in so many of it, and
// returns why that was exhausted, if it was.
func (f *Field) spend(part int, run func()) (spent *exhausted) {
	defer func() {
		switch e := recover().(type) {
		case nil:
		case *exhausted:
			spent = e
		default:
			panic(e)
		}
	}()
	if why := f.account.overdrawn(f.most); why != "" {
		return &exhausted{why}
	}
	f.tower.work, f.tower.limit = 0, f.most/part
	defer func() { f.account.worked += f.tower.work }()
	f.settled(run)
	return nil
}
