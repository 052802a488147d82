package oracle

import (
	"bufio"
	"context"
	"flag"
	"fmt"
	"math/big"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

var bars = flag.Bool("bars", false, "print the table of bars; .ci/bench does")

const (
	runs     = 5                // of which the median counts
	patience = 20 * time.Second // with one program's runs of one task
)

// TestTasks holds the tasks to being true.
func TestTasks(t *testing.T) {
	t.Parallel()
	var questions []question
	for name, task := range tasks {
		q := newWorld().ask(name, task(), whole(0))
		if q.told != "0" {
			t.Errorf("%s: sign %s", name, q.told)
		}
		questions = append(questions, q)
	}
	t.Log(compare(t, questions))
}

// reference is a general-purpose program that is given the tasks.
type reference struct {
	name    string
	command []string
	prelude string
	write   func(*term) string
}

// TestBars prints each task's bar, trammel's median, whether that meets it and in
// how much memory, and for each reference its median and how many times as long
// trammel takes. All is in milliseconds of the processor.
func TestBars(t *testing.T) {
	if !*bars {
		t.Skip("not asked for: .ci/bench prints the table")
	}
	references := []reference{
		{"PARI/GP", []string{need(t, "gp"), "--quiet", "--fast", "--stacksize", "1G"}, timer(), (*term).inTower},
		{"ca", []string{calcium(t), "ca"}, "", (*term).steps},
		{"qqbar", []string{calcium(t), "qqbar", "100000"}, "", (*term).steps},
		{"CORE", []string{built(t, "core.cpp", "c++", "-lgmp", "-lmpfr")}, "", (*term).steps},
	}
	heads := []string{"task", "bar", "trammel", "met", "MB"}
	for _, r := range references {
		heads = append(heads, r.name)
	}
	fmt.Println(strings.Join(heads, "\t"))
	programs, missed := map[string]*program{}, 0
	for _, row := range readBars(t) {
		if programs[row[1]] == nil {
			programs[row[1]] = benchmarksOf(t, row[1])
		}
		took, bytes := programs[row[1]].median(t, row[2])
		bar, err := strconv.ParseFloat(row[3], 64)
		if err != nil {
			t.Fatal(err)
		}
		met := "yes"
		if took > bar {
			met, missed = "NO", missed+1
		}
		cells := []string{row[0], row[3], fmt.Sprintf("%.3g", took), met, fmt.Sprint(bytes >> 20)}
		for _, r := range references {
			cells = append(cells, r.cell(t, row[4], took))
		}
		fmt.Println(strings.Join(cells, "\t"))
	}
	fmt.Printf("%d bars missed\n", missed)
}

// readBars are the rows of testdata/bars.tsv.
func readBars(t *testing.T) (rows [][]string) {
	text, err := os.ReadFile(filepath.Join("testdata", "bars.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimRight(string(text), "\n"), "\n")[1:] {
		rows = append(rows, strings.Split(line, "\t"))
	}
	return rows
}

// program is a package's benchmarks, built once.
type program struct {
	path string
	idle time.Duration // of the processor, to run none of them
}

// benchmarksOf builds the tests of a package.
func benchmarksOf(t *testing.T, pkg string) *program {
	p := &program{path: filepath.Join(t.TempDir(), "test")}
	if out, err := exec.Command("go", "test", "-c", "-o", p.path, "trammel/"+pkg).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	_, p.idle, _ = p.run(t, "^$", time.Millisecond)
	return p
}

var iterations = regexp.MustCompile(`(?m)^Benchmark\S*\s+(\d+)\s`)

// run runs the benchmarks that a pattern names, and tells how often it did, what
// processor time that took in all, and the memory in use at most.
func (p *program) run(t *testing.T, pattern string, atLeast time.Duration) (n int64, spent time.Duration, bytes int64) {
	command := exec.Command(p.path, "-test.run", "^$", "-test.cpu", "1", "-test.bench", pattern, "-test.benchtime", atLeast.String())
	out, err := command.Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	if m := iterations.FindSubmatch(out); m != nil {
		n, _ = strconv.ParseInt(string(m[1]), 10, 64)
	}
	state := command.ProcessState
	return n, state.UserTime() + state.SystemTime(), state.SysUsage().(*syscall.Rusage).Maxrss << 10
}

// median is a benchmark's, in milliseconds of the processor, and what it had in
// memory at most. Time on the clock would count what else the machine does.
func (p *program) median(t *testing.T, name string) (ms float64, bytes int64) {
	var times []float64
	for range runs {
		n, spent, resident := p.run(t, "^Benchmark"+name+"$", 200*time.Millisecond)
		if n == 0 {
			t.Fatalf("there is no Benchmark%s", name)
		}
		times = append(times, (spent-p.idle).Seconds()*1000/float64(n))
		bytes = max(bytes, resident)
	}
	return median(times), bytes
}

func median(times []float64) float64 {
	slices.Sort(times)
	return times[len(times)/2]
}

// cell is a reference's median and the ratio to it.
func (r reference) cell(t *testing.T, task string, trammel float64) string {
	make, known := tasks[task]
	if !known {
		return "–"
	}
	times, wrong := r.times(t, r.write(make()))
	switch {
	case wrong != "":
		return wrong
	case len(times) == 0:
		return fmt.Sprintf("none in %v", patience)
	}
	m := median(times)
	return fmt.Sprintf("%.3g (×%.2g)", m, trammel/m)
}

// times runs a task some times over; wrong says so where the program's answer is
// not 0: "?" is none.
func (r reference) times(t *testing.T, line string) (times []float64, wrong string) {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	command := exec.CommandContext(ctx, r.command[0], r.command[1:]...)
	command.Dir = t.TempDir() // CORE leaves a file of notes
	command.Stdin = strings.NewReader(r.prelude + strings.Repeat(line+"\n", runs))
	out, err := command.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	for lines := bufio.NewScanner(out); lines.Scan(); {
		answer, spent, _ := strings.Cut(lines.Text(), " ")
		ms, err := strconv.ParseFloat(spent, 64)
		if answer != "0" || err != nil {
			wrong = "answers " + answer
			break
		}
		times = append(times, ms)
	}
	cancel()
	command.Wait() // an error: it may have been stopped
	return times, wrong
}

// inTower writes x for PARI/GP in a tower of fields: the roots must be
// independent, and the cosines lie in one cyclotomic field.
func (x *term) inTower() string {
	var out strings.Builder
	place, roots, turn := map[*term]int{}, 0, x.turn()
	nodes := x.nodes()
	fmt.Fprintf(&out, "Time(()->my(v = vector(%d)); ", len(nodes))
	for i, t := range nodes {
		place[t] = i + 1
		fmt.Fprintf(&out, "v[%d] = ", i+1)
		switch t.op {
		case 'q':
			out.WriteString(t.q.RatString())
		case 'c':
			part := new(big.Rat).Quo(t.q, big.NewRat(360, 1))
			fmt.Fprintf(&out, "Cos(%v, %d)", part.Mul(part, big.NewRat(turn, 1)).Num(), turn)
		case 'r':
			roots++
			fmt.Fprintf(&out, "Mod(t%d, t%d^2 - v[%d])", roots, roots, place[t.x])
		default:
			fmt.Fprintf(&out, "v[%d] %c v[%d]", place[t.x], t.op, place[t.y])
		}
		out.WriteString("; ")
	}
	fmt.Fprintf(&out, "v[%d])", len(nodes))
	return out.String()
}

// timer makes PARI/GP's variables, the outermost root's first, and what times a
// task: as often as 20 ms have room for.
func timer() string {
	var out strings.Builder
	for i := 30; i > 0; i-- {
		fmt.Fprintf(&out, "t%d; ", i)
	}
	return out.String() + `z;
Cos(k, n) = my(x = Mod(z, polcyclo(n, 'z))); (x^k + x^-k) / 2;
{Time(f) = my(start = getabstime(), n = 0, x);
  until(getabstime() - start > 20, x = f(); n++);
  print(if(x == 0, 0, 1), " ", (getabstime() - start) * 1. / n)};
`
}
