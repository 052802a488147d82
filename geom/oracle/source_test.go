package oracle

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"

	"trammel/lang"
	"trammel/lang/source"
)

// page is a source that grows at random, line by line, with the places of its
// points beside it.
type page struct {
	draw
	name    string
	lines   []string
	points  []place
	lineOf  [][2]int // the points through which line l1, l2, … was drawn
	circles [][2]int // the centre of circle k1, k2, … and the point on it
	asked   []asked
}

// asked is a claim: x is 0 if the statement on that line holds; or, where there
// are three lines, negative, 0 or positive as it is the first, second or third that does.
type asked struct {
	name  string
	x     *term
	lines []int
}

func (p *page) write(format string, args ...any) int {
	p.lines = append(p.lines, fmt.Sprintf(format, args...))
	return len(p.lines)
}

func newPage(seed uint64) *page {
	p := &page{draw: newDraw(seed), name: fmt.Sprintf("source %d", seed)}
	p.write("figure %q", p.name)
	for range p.between(4, 5) {
		x, y := p.between(-4, 4), p.between(-4, 4)
		at := place{whole(x), whole(y)}
		text := fmt.Sprint(y)
		if n := p.between(2, 7); p.IntN(4) == 0 {
			at.y, text = at.y.plus(root(n)), fmt.Sprintf("%d + sqrt(%d)", y, n)
		}
		if !p.has(at) {
			p.points = append(p.points, at)
			p.write("given P%d (%d, %s)", len(p.points), x, text)
		}
	}
	for len(p.points) < 4 {
		n := int64(len(p.points))
		p.points = append(p.points, place{whole(7 + n), whole(n * n)})
		p.write("given P%d (%d, %d)", n+1, 7+n, n*n)
	}
	return p
}

// has tells whether a point stands about there.
func (p *page) has(at place) bool {
	for _, q := range p.points {
		if d := at.to(q).norm2().about; d < 1e-9 || math.IsNaN(d) {
			return true
		}
	}
	return math.IsNaN(at.x.about) || math.Abs(at.x.about)+math.Abs(at.y.about) > 1e4
}

// pick is n numbers of different points.
func (p *page) pick(n int) []int { return p.Perm(len(p.points))[:n] }

// apart is two numbers of points that clearly are two places.
func (p *page) apart() []int {
	for {
		ends := p.pick(2)
		if p.points[ends[0]].to(p.points[ends[1]]).norm2().about > 1e-9 {
			return ends
		}
	}
}

// line draws one and gives its number; circle does too.
func (p *page) line() int {
	ends := p.apart()
	p.lineOf = append(p.lineOf, [2]int(ends))
	p.write("line l%d through P%d and P%d", len(p.lineOf), ends[0]+1, ends[1]+1)
	return len(p.lineOf)
}

func (p *page) circle() int {
	ends := p.apart()
	p.circles = append(p.circles, [2]int(ends))
	p.write("circle k%d centre P%d through P%d", len(p.circles), ends[0]+1, ends[1]+1)
	return len(p.circles)
}

func (p *page) lineEnds(l int) (a, b place) {
	return p.points[p.lineOf[l-1][0]], p.points[p.lineOf[l-1][1]]
}

func (p *page) round(k int) (centre place, r2 *term) {
	centre = p.points[p.circles[k-1][0]]
	return centre, centre.to(p.points[p.circles[k-1][1]]).norm2()
}

// grow draws two things and names where they meet, if they clearly do.
func (p *page) grow() {
	switch p.IntN(3) {
	case 0:
		p.crossLines(p.line(), p.line())
	case 1:
		p.pierce(p.line(), p.circle())
	case 2:
		p.strike(p.circle(), p.circle())
	}
}

func (p *page) crossLines(l, m int) {
	a, b := p.lineEnds(l)
	c, d := p.lineEnds(m)
	if math.Abs(a.to(b).cross(c.to(d)).about) < 1e-6 {
		return
	}
	p.name1(crossing(a, b, c, d), "l%d meets l%d at P%d", l, m)
}

// name1 names one meeting unless a point stands there already.
func (p *page) name1(at place, format string, l, m int) {
	if !p.has(at) {
		p.points = append(p.points, at)
		p.write(format, l, m, len(p.points))
	}
}

func (p *page) pierce(l, k int) {
	a, b := p.lineEnds(l)
	c, r2 := p.round(k)
	first, second := piercing(a, b, c, r2, -1), piercing(a, b, c, r2, 1)
	p.name2(first, second, "l%d meets k%d at P%d and P%d", l, k)
}

func (p *page) strike(k, m int) {
	c, r := p.round(k)
	d, s := p.round(m)
	if c.to(d).norm2().about < 1e-9 {
		return
	}
	first, second := around(c, r, d, s, 1), around(c, r, d, s, -1)
	p.name2(first, second, "k%d meets k%d at P%d and P%d", k, m)
}

// name2 names two meetings that are apart; they may be points that have names.
func (p *page) name2(first, second place, format string, l, m int) {
	gap := first.to(second).norm2().about
	if math.IsNaN(gap) || gap < 1e-6 || len(p.points) > 12 || first.x.roots() > mostRoots {
		return
	}
	p.points = append(p.points, first, second)
	p.write(format, l, m, len(p.points)-1, len(p.points))
}

// claim writes a claim, or its three comparisons, of points taken at random.
func (p *page) claim() {
	n := p.pick(4)
	a, b, c, d := p.points[n[0]], p.points[n[1]], p.points[n[2]], p.points[n[3]]
	u, v := a.to(b), c.to(d)
	name := func(i int) string { return fmt.Sprintf("P%d", n[i]+1) }
	ab, cd := name(0)+name(1), name(2)+name(3)
	for _, apart := range []*term{u.norm2(), v.norm2(), a.to(c).norm2()} {
		if apart.about < 1e-9 {
			return // two names of one point, perhaps
		}
	}
	switch p.IntN(8) {
	case 0:
		p.ask("claim collinear "+name(0)+name(1)+name(2), u.cross(a.to(c)))
	case 1:
		p.compare(ab, cd, u.norm2().root().minus(v.norm2().root()))
	case 2:
		p.compare(ab+" + "+cd, name(0)+name(2), u.norm2().root().plus(v.norm2().root()).minus(a.to(c).norm2().root()))
	case 3:
		p.ask("claim "+ab+" perpendicular to "+cd, u.dot(v))
	case 4:
		p.ask("claim "+ab+" parallel to "+cd, u.cross(v))
	case 5:
		p.angle(name(1)+name(0)+name(2), u, a.to(c))
	case 6:
		p.ask("claim "+ab+"² = 2 "+cd+"²", u.norm2().minus(v.norm2().times(whole(2))))
	case 7:
		if len(p.circles) > 0 {
			k := p.IntN(len(p.circles)) + 1
			centre, r2 := p.round(k)
			p.ask(fmt.Sprintf("claim %s on k%d", name(0), k), centre.to(a).norm2().minus(r2))
		}
	}
}

// angle claims the size of an angle to the nearest degree.
func (p *page) angle(corner string, u, v place) {
	cross, dot := u.cross(v).sized(), u.dot(v)
	if cross.about < 1e-6 {
		return
	}
	size := int64(math.Round(math.Atan2(cross.about, dot.about) * 180 / math.Pi))
	if size == 0 || size == 180 {
		return
	}
	degrees := big.NewRat(size, 1)
	p.ask(fmt.Sprintf("claim angle %s = %d°", corner, size), dot.times(sine(degrees)).minus(cross.times(cosine(degrees))))
}

func (p *page) ask(claim string, x *term) {
	p.asked = append(p.asked, asked{claim, x, []int{p.write("%s", claim)}})
}

func (p *page) compare(left, right string, x *term) {
	var three []int
	for _, relation := range []string{"<", "=", ">"} {
		three = append(three, p.write("claim %s %s %s", left, relation, right))
	}
	p.asked = append(p.asked, asked{fmt.Sprintf("%s against %s", left, right), x, three})
}

// verdicts compiles the source and reads off what it says of each claim.
func (p *page) verdicts(t *testing.T) (out []question) {
	text := strings.Join(p.lines, "\n") + "\n"
	said := map[int]string{}
	for _, problem := range lang.Compile(p.name+".trm", []byte(text)).Problems {
		line, _ := problem.Span.File.Position(problem.Span.Start)
		if problem.Severity == source.Error {
			said[line] = problem.Text
		}
	}
	for _, a := range p.asked {
		out = append(out, question{p.name + ": " + a.name, a.x, a.told(said)})
		for _, line := range a.lines {
			delete(said, line)
		}
	}
	for line, problem := range said {
		t.Errorf("%s:%d: %s\n%s", p.name, line, problem, text)
	}
	return out
}

// told words what was said of a claim's lines as a sign.
func (a asked) told(said map[int]string) string {
	var held []int
	for i, line := range a.lines {
		problem, refused := said[line]
		switch {
		case !refused:
			held = append(held, i)
		case strings.Contains(problem, "not decided"):
			return "undecided"
		case !strings.HasPrefix(problem, "the claim does not hold"):
			return problem
		}
	}
	switch {
	case len(a.lines) == 1 && len(held) == 0:
		return "not 0"
	case len(a.lines) == 1:
		return "0"
	case len(held) == 1:
		return []string{"-1", "0", "1"}[held[0]]
	}
	return fmt.Sprintf("%d of <, = and > hold", len(held))
}

func TestSourcesAgainstPARI(t *testing.T) {
	t.Parallel()
	var questions []question
	for seed := range uint64(many(200)) {
		p := newPage(*from + seed)
		for range p.between(2, 4) {
			p.grow()
		}
		for range 12 {
			p.claim()
		}
		questions = append(questions, p.verdicts(t)...)
	}
	t.Log(compare(t, questions))
}
