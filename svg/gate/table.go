package gate

import (
	"fmt"
	"io"
	"math"
	"text/tabwriter"
)

// Table prints a line for each report, the sums, and every fault.
func Table(w io.Writer, all []*Report) error {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "figure\tlabels\toverlaps\tcontacts\toff paper\tforeign marks\tnearer\tunowned\toutside\tjoined\tmixed\tin gaps\tmm to ink\tmm to label\t")
	sum := &Report{Name: fmt.Sprintf("all %d", len(all)), Ink: math.Inf(1), Words: math.Inf(1)}
	for _, r := range all {
		r.row(t)
		sum.Labels, sum.Breaks = sum.Labels+r.Labels, sum.Breaks+r.Breaks
		sum.Faults = append(sum.Faults, r.Faults...)
		sum.Ink, sum.Words = min(sum.Ink, r.Ink), min(sum.Words, r.Words)
	}
	sum.row(t)
	if err := t.Flush(); err != nil {
		return err
	}
	for _, r := range all {
		for _, f := range r.Faults {
			if _, err := fmt.Fprintf(w, "%s: %s\n", r.Name, f); err != nil {
				return err
			}
		}
	}
	return nil
}

func (r *Report) row(w io.Writer) {
	fmt.Fprintf(w, "%s\t%d", r.Name, r.Labels)
	for k := range kinds {
		fmt.Fprintf(w, "\t%d", r.Count(k))
	}
	fmt.Fprintf(w, "\t%d\t%s\t%s\t\n", r.Breaks, distance(r.Ink), distance(r.Words))
}

func distance(mm float64) string {
	if math.IsInf(mm, 1) {
		return "-"
	}
	return fmt.Sprintf("%.2f", mm)
}

// String says the fault in a line.
func (f Fault) String() string {
	at := fmt.Sprintf(" at (%.1f, %.1f)", f.X, f.Y)
	switch f.Kind {
	case Overlap, Contact, Foreign:
		return f.What + " touches " + f.With + at
	case Outside:
		return f.What + " stands outside of its angle" + at
	case Joined:
		return f.What + " reads as one with " + f.With + at
	case Mixed:
		return f.What + " is counted with " + f.With + at
	case Off:
		return fmt.Sprintf("%s is %.2f mm off the paper", f.What, f.By)
	case Nearer:
		return fmt.Sprintf("%s is %.2f mm nearer to %s than to its own%s", f.What, f.By, f.With, at)
	}
	return f.What + " belongs to nothing on the paper" + at
}
