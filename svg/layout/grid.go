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

// grid finds the obstacles near a box: the paper is cut into cells, each with
// the indices of the obstacles that enter it.
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
	g := &grid{all: all, seen: make([]int32, len(all))}
	if whole.empty() {
		return g
	}
	size := whole.size()
	g.lo, g.cell = whole.lo, max(4*mm, size.x/64, size.y/64)
	g.cols, g.rows = int(size.x/g.cell)+1, int(size.y/g.cell)+1
	g.cells = make([][]int32, g.cols*g.rows)
	for i, o := range all {
		g.enter(int32(i), o)
	}
	return g
}

// enter notes the obstacle in each cell that it touches.
func (g *grid) enter(i int32, o obstacle) {
	g.each(o.bounds().grow(o.half), func(col, row int) {
		lo := g.lo.add(vec{float64(col) * g.cell, float64(row) * g.cell})
		if o.touches(box{lo, lo.add(vec{g.cell, g.cell})}.grow(o.half)) {
			g.cells[row*g.cols+col] = append(g.cells[row*g.cols+col], i)
		}
	})
}

func (g *grid) each(b box, visit func(col, row int)) {
	c0, c1 := g.index(b.lo.x-g.lo.x, g.cols), g.index(b.hi.x-g.lo.x, g.cols)
	r0, r1 := g.index(b.lo.y-g.lo.y, g.rows), g.index(b.hi.y-g.lo.y, g.rows)
	for row := r0; row <= r1; row++ {
		for col := c0; col <= c1; col++ {
			visit(col, row)
		}
	}
}

func (g *grid) index(x float64, n int) int {
	return int(clamp(math.Floor(x/g.cell), 0, float64(n-1)))
}

// near visits, once each, the obstacles in the cells that b enters.
func (g *grid) near(b box, visit func(o *obstacle)) {
	if len(g.cells) == 0 {
		return
	}
	g.query++
	g.each(b, func(col, row int) {
		for _, i := range g.cells[row*g.cols+col] {
			if g.seen[i] != g.query {
				g.seen[i] = g.query
				visit(&g.all[i])
			}
		}
	})
}
