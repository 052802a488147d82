package exact

// What stops a computation: panics, which Try turns into errors.

// Undecided is the panic value of a decision that would cost more than the
// budget. Probably says what the number looks like, where that is known; it is
// no verdict.
type Undecided struct{ Why, Probably string }

// Error says so honestly.
func (u *Undecided) Error() string {
	text := "not decided exactly: it would need " + u.Why
	if u.Probably != "" {
		text += "; probably " + u.Probably
	}
	return text
}

// DivisionByZero is the panic value of a division by 0.
type DivisionByZero struct{}

// Error is the fact.
func (*DivisionByZero) Error() string { return "division by zero" }

// NegativeRoot is the panic value of the root of a negative number.
type NegativeRoot struct{}

// Error is the fact.
func (*NegativeRoot) Error() string { return "square root of a negative number" }

// Try runs f and returns the *Undecided, *DivisionByZero or *NegativeRoot that
// it panicked with.
func Try(f func()) (err error) {
	defer func() {
		switch e := recover().(type) {
		case nil:
		case *Undecided:
			err = e
		case *DivisionByZero:
			err = e
		case *NegativeRoot:
			err = e
		default:
			panic(e)
		}
	}()
	f()
	return nil
}
