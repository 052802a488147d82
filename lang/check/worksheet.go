package check

import (
	"math/big"
	"slices"
	"strings"

	"trammel/geom/figure"
	"trammel/lang/program"
	"trammel/lang/source"
	"trammel/lang/syntax"
)

// Worksheet is a file that sets tasks: figures of other files, each with its
// words. It draws nothing itself.
type Worksheet struct {
	Title        string
	Instructions []string
	Paper        *figure.Paper // nil: A4
	Language     string
	Theme        string
	Using        program.Tools // with which every task is to be done; 0: any
	Tasks        []SetTask
}

// SetTask is a task of a worksheet.
type SetTask struct {
	Span  source.Span
	From  string   // the figure's file, from the worksheet's folder
	Text  string   // "" is the figure's own
	Marks int      // 0 is the figure's own
	Room  *big.Rat // clear paper below the givens, in millimetres; nil: unsaid
	Hint  int      // how many of the first steps are drawn faintly
}

// The most tasks of a worksheet, and the most room, in millimetres, for one.
const (
	maxTasks = 200
	maxRoom  = 250
)

// IsWorksheet tells by a file's statements that it sets tasks.
func IsWorksheet(f *syntax.File) bool {
	for _, st := range f.Statements {
		if st.Worksheet != nil {
			return true
		}
	}
	return false
}

// Sheet makes the Worksheet of a file, and adds what is wrong with it to problems.
func Sheet(f *syntax.File, problems *source.List) *Worksheet {
	c := newChecker(f, nil, problems, Options{})
	s := newScope(c, f.Source)
	w := &Worksheet{}
	titled := false
	for i, st := range f.Statements {
		switch {
		case st.Worksheet != nil && titled:
			s.fail(st.Node, "a file is one worksheet, and this one has begun").Help = "put the second into a file of its own"
		case st.Worksheet != nil:
			titled, w.Title = true, st.Worksheet.Title
			if i > 0 {
				s.fail(st.Node, "the worksheet line comes after what belongs to the worksheet").Help = "put it first"
			}
		default:
			s.sheetStatement(w, st)
		}
	}
	if !slices.ContainsFunc(f.Statements, func(st *syntax.Statement) bool { return st.Task != nil }) {
		s.fail(f.Statements[0].Node, "the worksheet sets no task").Help = `such as: task from "bisect.trm"`
	}
	w.Paper, w.Language, w.Theme = c.prog.Paper, c.prog.Language, c.prog.Theme
	w.Using = c.allowed
	return w
}

func (s *scope) sheetStatement(w *Worksheet, st *syntax.Statement) {
	switch {
	case st.Instructions != nil:
		w.Instructions = append(w.Instructions, st.Instructions.Text)
	case st.Paper != nil:
		s.paper(st.Paper)
	case st.Language != nil:
		s.language(st.Language)
	case st.Theme != nil:
		s.theme(st.Theme)
	case st.Using != nil:
		s.using(st.Using)
	case st.Task != nil:
		if t, ok := s.setTask(st.Task); ok {
			w.Tasks = append(w.Tasks, t)
		}
	default:
		s.fail(st.Node, "a worksheet sets tasks, and draws nothing itself").Help = `put the figure into a file of its own, and set it: task from "figure.trm"`
	}
	if len(w.Tasks) == maxTasks+1 {
		s.fail(st.Node, "the worksheet has more than %d tasks", maxTasks)
	}
}

func (s *scope) setTask(t *syntax.Task) (SetTask, bool) {
	out := SetTask{Span: s.span(t.Node), From: t.From, Text: t.Text}
	if t.From == "" {
		s.fail(t.Node, "the task names no figure").Help = `say the file: task "Bisect AB." from "bisect.trm"`
		return out, false
	}
	if strings.HasPrefix(out.Span.Text(), `task ""`) {
		s.fail(t.Node, "the task has no text").Help = "leave the quotes out for the figure's own words, or write what is to be done"
		return out, false
	}
	var ok bool
	if out.Marks, ok = s.marks(t); !ok {
		return out, false
	}
	for _, o := range t.Options {
		if !s.taskOption(o, &out) {
			return out, false
		}
	}
	return out, true
}

func (s *scope) taskOption(o *syntax.TaskOption, t *SetTask) bool {
	if o.Hint != nil {
		n, ok := s.whole(o.Hint)
		if ok && n < 1 {
			s.fail(o.Node, "a hint shows 1 step or more, not %d", n)
			return false
		}
		t.Hint = n
		return ok
	}
	room, ok := s.millimetres(o.Room, "the room")
	if ok && room.Cmp(rat(maxRoom, 1)) > 0 {
		s.fail(o.Node, "the room for a task is at most %d mm", maxRoom)
		return false
	}
	t.Room = room
	return ok
}
