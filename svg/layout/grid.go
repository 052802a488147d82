package layout

import "math"

// obstacle is ink that a label must not touch.
type obstacle struct {
	shape
	half   float64 // of the stroke's width
	weight int     // what touching it costs
	thin   bool    // a line of the construction
	stroke int     // index into drawing.strokes, -1 for a dot
	dot    int     // index into drawing.dots, -1 for a stroke
}

// within tells whether ink of o is in b.
func (o *obstacle) within(b box) bool { return o.touches(b.grow(o.half)) }

// grid finds the obstacles near a box: the paper is cut into cells, each with
// the indices of the obstacles that enter it. Cells at the border reach beyond
// it without end.
type grid struct {
	all        []obstacle
	lo         vec
	cell       float64
	cols, rows int
	cells      [][]int32
	seen       []int32 // by obstacle, the last query that met it
	query      int32
}

func newGrid(all []obstacle) *grid {
	whole := nowhere
	for _, o := range all {
		whole = whole.union(o.bounds().grow(o.half))
	}
	g := &grid{cell: 2.5 * mm, cols: 1, rows: 1}
	if !whole.empty() {
		size := whole.size()
		g.lo, g.cell = whole.lo, max(g.cell, size.x/64, size.y/64)
		g.cols, g.rows = int(size.x/g.cell)+1, int(size.y/g.cell)+1
	}
	g.cells = make([][]int32, g.cols*g.rows)
	for _, o := range all {
		g.add(o)
	}
	return g
}

// add notes the obstacle in each cell that it touches.
func (g *grid) add(o obstacle) {
	i := int32(len(g.all))
	g.all, g.seen = append(g.all, o), append(g.seen, 0)
	c := g.reach(o.bounds().grow(o.half))
	for row := c.row; row <= c.lastRow; row++ {
		for col := c.col; col <= c.lastCol; col++ {
			if o.within(g.square(col, row)) {
				g.cells[row*g.cols+col] = append(g.cells[row*g.cols+col], i)
			}
		}
	}
}

// square is the paper of a cell.
func (g *grid) square(col, row int) box {
	const beyond = 1e8
	lo := g.lo.add(vec{float64(col) * g.cell, float64(row) * g.cell})
	b := box{lo, lo.add(vec{g.cell, g.cell})}
	if col == 0 {
		b.lo.x -= beyond
	}
	if row == 0 {
		b.lo.y -= beyond
	}
	if col == g.cols-1 {
		b.hi.x += beyond
	}
	if row == g.rows-1 {
		b.hi.y += beyond
	}
	return b
}

// cells is a rectangle of them, its ends included.
type cells struct{ col, lastCol, row, lastRow int }

func (g *grid) reach(b box) cells {
	return cells{
		g.index(b.lo.x-g.lo.x, g.cols), g.index(b.hi.x-g.lo.x, g.cols),
		g.index(b.lo.y-g.lo.y, g.rows), g.index(b.hi.y-g.lo.y, g.rows),
	}
}

func (g *grid) index(x float64, n int) int {
	return int(clamp(math.Floor(x/g.cell), 0, float64(n-1)))
}

// near visits, once each, the obstacles in the cells that b enters, until visit
// has had enough.
func (g *grid) near(b box, visit func(o *obstacle) (more bool)) {
	g.query++
	c := g.reach(b)
	for row := c.row; row <= c.lastRow; row++ {
		for col := c.col; col <= c.lastCol; col++ {
			for _, i := range g.cells[row*g.cols+col] {
				if g.seen[i] == g.query {
					continue
				}
				g.seen[i] = g.query
				if !visit(&g.all[i]) {
					return
				}
			}
		}
	}
}
