package warn

import (
	"slices"

	"trammel/lang/source"
)

// looks warns of what things look like that they are not, unless something told before
// explains it, or the line says why it is meant that places the last of the points.
func (f *finder) looks(at source.Span, about []int, help, format string, args ...any) {
	points := f.roots(about)
	if f.explained(points) || f.latest(points).Intended() {
		return
	}
	f.warn(at, help, format, args...)
}

// roots are the points that straights are drawn between, in place of these; lines and
// circles that are given by themselves stay.
func (f *finder) roots(slots []int) (all []int) {
	for _, slot := range slots {
		if ends := f.st.Program.Slots[slot].Between; ends != nil {
			all = append(all, ends[0], ends[1])
		} else {
			all = append(all, slot)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// explains notes that where points stand has been told of.
func (f *finder) explains(slots ...int) { f.causes = append(f.causes, f.roots(slots)) }

// explained tells whether it is plain from what has been told how these three or fewer stand.
func (f *finder) explained(points []int) bool {
	return len(points) <= 3 && slices.ContainsFunc(f.causes, func(cause []int) bool {
		return !slices.ContainsFunc(cause, func(slot int) bool { return !slices.Contains(points, slot) })
	})
}

func (f *finder) span(slot int) source.Span { return f.st.Program.Slots[slot].Span }

// latest is the place of that one of some things which was made last.
func (f *finder) latest(slots []int) source.Span {
	at := slots[0]
	for _, slot := range slots {
		if f.later(at, slot) == f.span(slot) {
			at = slot
		}
	}
	return f.span(at)
}

// later is the place of that one of two things which was made last.
func (f *finder) later(a, b int) source.Span {
	s, t := f.st.Program.Slots[a].Span, f.st.Program.Slots[b].Span
	if s.File != f.st.Program.Source || t.File == s.File && t.Start > s.Start {
		return t
	}
	return s
}

// told tells whether there is such a warning.
func (f *finder) told(text string) bool {
	return slices.ContainsFunc(*f.problems, func(p *source.Problem) bool { return p.Severity == source.Warning && p.Text == text })
}
