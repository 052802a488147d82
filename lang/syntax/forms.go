package syntax

// A Form is one kind of statement with the ways to write it.
type Form struct {
	Family   string // the chapter of the reference it belongs to
	Keyword  string // the word it begins with; "" if it begins with a name
	Called   string // what messages call it: "a circle"
	Examples []Example
}

// An Example is one way to write a statement, as an example that parses, and what
// it means. The first line of a block stands without its end.
type Example struct{ Line, Means string }

// Forms is the whole language, in the order in which it is taught. Messages,
// the suggestions for misspelt words and the reference are all made from it.
var Forms = []Form{
	{"figure", "figure", "a figure line", []Example{
		{`figure "The bisector of an angle"`, "names the figure, for readers and for programs that read it aloud"},
	}},
	{"figure", "unit", "a unit line", []Example{
		{"unit 8 mm", "says what a length of 1 measures on paper; unsaid, it is 1 cm"},
	}},
	{"figure", "paper", "a paper line", []Example{
		{"paper a5 landscape", "sets the figure on a sheet of that format; unsaid, the sheet is cut to the figure"},
		{"paper 120 mm by 80 mm", "sets the figure on a sheet of that width and height"},
	}},
	{"figure", "theme", "a theme line", []Example{
		{"theme textbook", "chooses how the ink looks: textbook, as happens unsaid, exam (all black), slide, large-print, or tactile for raised lines with braille"},
	}},
	{"figure", "language", "a language line", []Example{
		{"language de", "says in what language the figure speaks and writes numbers (4,5 cm), by its tag, such as pt-BR; unsaid, English"},
	}},
	{"figure", "use", "a use line", []Example{
		{`use "circles.trm"`, "takes in the constructions of another file, beside the source or in a folder below"},
	}},
	{"figure", "using", "a using line", []Example{
		{"using straightedge and compasses only", "says which tools may be used, as an exam paper does: any act with another is refused; in a worksheet, any of any task"},
		{"using compasses only", "leaves the compasses alone"},
		{"using ruler, compasses and protractor only", "lets lengths and angles be measured; a ruler draws straights too"},
	}},
	{"givens", "given", "a given", givenLines},
	{"chosen on the way", "take", "a point taken", []Example{
		{"take X on m", "chooses any point of a line or a circle"},
		{"take P on AB, 3 from A", "measures a point off with the ruler"},
		{"take C 5 from A at 40° to AB", "measures a point off with ruler and protractor"},
		{"take O centre of k", "takes the centre of a circle that is drawn without it"},
		{"take X on m, right of AB", "chooses a point on the side that is said"},
	}},
	{"acts", "arc", "an arc", []Example{
		{"arc c centre P radius any", "strikes an arc with an opening that the compiler chooses"},
		{"arc c centre P radius any over half AB", "strikes one with any opening above a bound; under sets one below"},
		{"arc c centre P radius 2.5", "strikes an arc with a measured opening"},
		{"arc c centre P radius AB", "takes the opening between the compasses from A to B"},
		{"arc d centre Q radius c", "keeps the opening that arc c was struck with"},
		{"arc c centre O through A", "strikes the arc that passes through A"},
		{"arc c centre O from A to B", "draws the part of the circle from A anticlockwise to B"},
		{"arc c centre P radius any cuts m at L and R", "strikes an arc and names where it cuts a line"},
		{"arc c centre A radius any cuts AB at S, AC at T", "names where it cuts one line, then another"},
	}},
	{"acts", "circle", "a circle", []Example{
		{"circle k centre O radius 3", "draws a whole circle; its radius is said as an arc's is"},
		{"circle k centre O through A", "draws the circle that passes through A"},
		{"circle k centre O radius 3 cuts m at L and R", "draws it and names where it cuts a line"},
	}},
	{"acts", "line", "a line", []Example{
		{"line n through P and X", "draws the whole line through two points"},
		{"line n through P and X cuts m at F", "draws it and names where it cuts another"},
	}},
	{"acts", "ray", "a ray", []Example{
		{"ray AX", "draws from A through X and on"},
		{"ray AX cuts m at F", "draws it and names where it cuts another"},
	}},
	{"acts", "join", "a join", []Example{
		{"join AB", "draws the straight from A to B"},
		{"join ABCA", "draws from letter to letter"},
		{"join LX, RX", "draws several straights"},
	}},
	{"acts", "produce", "a straight produced", []Example{
		{"produce AB beyond B", "carries a straight on past its end"},
		{"produce AB beyond B by 2", "carries it on by a length"},
		{"produce AB beyond B by 2 to C", "carries it on by a length and names the new end"},
		{"produce AB beyond B to meet m at C", "carries it on until it meets a line"},
	}},
	{"meetings", "", "a meeting", []Example{
		{"d meets e at X", "names the one point where two drawn things meet"},
		{"k meets m at L and R", "names both points where two things meet"},
		{"d meets e at X above m", "names the meeting that a phrase picks: above, below, left of, right of, nearest, …"},
		{"k meets m at X left of AB and Y right of AB", "picks each meeting with a phrase of its own"},
	}},
	{"named constructions", "", "a call", []Example{
		{"n by erect(m, P)", "carries out a named construction and names its result"},
		{"M, n by bisect(A, B)", "names several results, in the order in which the construction gives them"},
		{"P[1 to 4] by divide(A, B, 5)", "names a family of results P1, P2, …"},
		{"n by erect(m, P) in full", "shows each act of the construction as a step"},
		{"n by erect(m, P) in brief", "shows one step, as happens unsaid"},
		{"n by erect(m, P) unseen", "draws the result only"},
	}},
	{"named constructions", "construction", "a construction", []Example{
		{"construction erect(line m, point P) gives line n", "defines a construction: what it takes and what it gives; closed by end"},
		{"construction divide(point A, point B, number n) gives points P[i] from 1 to n - 1", "gives a family of points"},
	}},
	{"named constructions", "needs", "a needs line", []Example{
		{"needs P on m", "says what must hold of a construction's parameters"},
		{"needs AB = CD", "says it in any form of a claim"},
		{"needs angle ABP < 90° \"{P} before {B}\"", "words it for who calls it"},
		{"needs P on m else \"drop({m}, {P}) does it from a point off the line\"", "tells who calls it what to do instead"},
	}},
	{"loci", "locus", "a locus", []Example{
		{"locus k 3 from A", "draws all the points at a distance from a point: a circle"},
		{"locus p, q 2 from m", "draws all the points at a distance from a line: two parallels, the left one first"},
		{"locus k 2 from AB", "draws all the points at a distance from a join: two parallels and two half circles"},
		{"locus n equidistant from A and B", "draws all the points equally far from two points: the perpendicular bisector"},
		{"locus p, q equidistant from m and n", "draws both bisectors of lines that cross; of parallels there is one, midway"},
		{"locus n equidistant from AB and AC", "draws the bisector of the angle at A"},
	}},
	{"steps", "step", "a step", []Example{
		{`step "Strike two arcs"`, "puts the lines down to its end under one caption"},
	}},
	{"steps", "end", "an end", []Example{
		{"end", "closes a step, a repeat or a construction"},
	}},
	{"loops", "repeat", "a repeat", []Example{
		{"repeat i from 1 to 5", "does the lines down to its end once for each whole number"},
	}},
	{"loops", "step", "a stepping off", []Example{
		{"step off P[1 to 6] on k from A, radius any", "marks equal openings along a line or round a circle"},
	}},
	{"claims", "claim", "a claim", claimLines},
	{"marks", "mark", "a mark", []Example{
		{"mark AB = CD = EF", "ticks straights that are equal; the next group takes the next count"},
		{"mark angle ABC = DEF", "marks angles that are equal with arcs"},
		{"mark right ABC", "sets the square of a right angle at B"},
		{"mark AB parallel to CD", "sets the arrows of parallels"},
	}},
	{"marks", "label", "a label", []Example{
		{`label AB "5 cm"`, "writes a text at a thing; an underscore lowers what follows, as in h_c"},
		{"label AB length", "writes the length of a straight at it"},
		{"label angle ABC size", "writes the size of an angle in it"},
		{"label reflex angle ABC size", "writes the size of the angle over 180°"},
		{"label A at 10 o'clock", "says where the letter stands, as on a clock face; of a length, a size and a name of a line too"},
		{"label A below", "says on which side the letter stands"},
		{"label m", "writes the name of a thing at it"},
	}},
	{"marks", "note", "a note", []Example{
		{`note "the foot" near X`, "writes a remark beside a point"},
	}},
	{"marks", "shade", "a shading", []Example{
		{"shade ABC", "shades the inside of a figure or a circle"},
		{"shade sector OAB", "shades the sector from OA anticlockwise to OB"},
		{"shade where nearer A than B", "hatches all the points that are nearer to one point or line than to another"},
		{"shade where under 3 from A", "hatches the points at less than a distance from a point, a line or a join; over is more"},
		{"shade where above m", "hatches one side of a line: above, below, left of, right of, same side of, other side of"},
		{"shade where inside ABC", "hatches the inside of a figure or a circle; outside is the rest"},
		{"shade where nearer A than B, under 3 from C, inside PQRS", "hatches the points for which all of it holds"},
	}},
	{"pencil", "hide", "a hide", []Example{{"hide c, AB", "takes the ink of things away"}}},
	{"pencil", "faint", "a faint line", []Example{{"faint AB, c", "draws things as help lines"}}},
	{"pencil", "bold", "a bold line", []Example{{"bold ABCA, k", "draws things as results"}}},
	{"pencil", "dashed", "a dashed line", []Example{{"dashed AB, CD", "draws things dashed"}}},
	{"exam", "choose", "a choice", []Example{
		{"choose a from 4 to 8 by 1/2", "lets each variant have its own value; a picture by itself takes the middle one, or what is nearest to it and makes a figure"},
		{"choose α from 40° to 70° by 5°", "the same of an angle, or of lengths in mm or cm; {α} in a task brings the unit that was typed here"},
	}},
	{"exam", "task", "a task", []Example{
		{`task "Construct the bisector of angle ABC." for 3 marks`, "says what is to be done, for a worksheet to set"},
	}},
	{"exam", "answer", "an answer", []Example{
		{"answer AX, angle AXB, AX : XB", "names what the answer sheet gives, exactly and as measured"},
	}},
	{"worksheets", "worksheet", "a worksheet", []Example{
		{`worksheet "Bisectors"`, "begins a file that sets tasks instead of drawing one figure"},
	}},
	{"worksheets", "instructions", "instructions", []Example{
		{`instructions "Leave every arc."`, "stands under the title; more lines make more paragraphs"},
	}},
	{"worksheets", "task", "a task of a worksheet", []Example{
		{`task from "bisect.trm"`, "sets the task of a figure: its givens, true to scale, and its own words"},
		{`task "Bisect AB." from "bisect.trm" for 2 marks, room 60 mm, hint 2 steps`, "sets it in other words, with clear room below and its first steps drawn faintly"},
	}},
}

var givenLines = []Example{
	{"given A (0, 0)", "puts a point where its coordinates say"},
	{"given points A, B, C", "puts points anywhere, in no special position"},
	{"given B 6 from A", "puts a point at a distance, level with A and to its right"},
	{"given C 5 from A, 4 from B, above AB", "puts a point at two distances, on the side that is said"},
	{"given C 5 from A at 40° to AB", "puts a point at a distance and an angle, to the left unless a side is said"},
	{"given P on m, 3 from A", "puts a point on a line at a distance, in the line's own direction"},
	{"given P on m, 3 from A towards C", "puts it at a distance in the direction that is said"},
	{"given P on m", "puts a point anywhere on a line or a circle"},
	{"given P on k at 20°", "puts a point on a circle, anticlockwise from its right"},
	{"given P above m", "puts a point anywhere on one side"},
	{"given Q between A and B", "puts a point anywhere between two others"},
	{"given P inside ABC", "puts a point anywhere within a figure or a circle"},
	{"given line m", "lays a line anywhere"},
	{"given line m through A and B", "lays a line through points; new ones take coordinates: A (0, 0)"},
	{"given line m parallel to n", "lays a line parallel to another"},
	{"given circle k centre O radius 3", "lays a circle; the centre is made if it is new"},
	{"given angle BAC = 50°", "makes C, so that the angle at A has that size"},
	{"given triangle ABC with AB = 6, AC = 5, angle A = 40°", "makes a triangle from data that settle it"},
	{"given triangle ABC with AB = 2 BC, angle B = 70°", "makes one of which a side, or an angle, is a multiple of another"},
	{"given acute triangle ABC", "makes a triangle of that kind that looks like nothing special"},
	{"given square ABCD with AB = 4", "makes a square; or a rectangle, parallelogram, rhombus, convex kite, trapezium (AB parallel to DC and longer), isosceles trapezium"},
	{"given quadrilateral ABCD", "makes any convex quadrilateral; with data such as AB = 5, angle B = 100° of what they settle"},
	{"given length a = 4", "shows a length as a bar of its own"},
	{"given length a = about 4", "shows one that is meant of any length"},
	{"given A about (2, 3)", "draws it there, and means any place"},
	{"given B about 6 from A", "draws it with that measurement, and means any; so do radius about 3, angle BAC = about 50°"},
	{"given triangle ABC with AB = about 6, AC = about 5, angle A = 40°", "makes a triangle of which some data are as they happen to be drawn"},
}

var claimLines = []Example{
	{"claim n perpendicular to m", "states that two straights stand at right angles"},
	{"claim AB = CD", "states that lengths are equal; so do < > ≤ ≥ ≠, and a chain compares neighbours"},
	{"claim AB + BC = 2 CD", "states it of sums and multiples"},
	{"claim AB : CD = 2 : 3", "states a ratio"},
	{"claim angle ABC = 90°", "states the size of an angle"},
	{"claim AB parallel to CD", "states that straights are parallel"},
	{"claim triangle ABC congruent to PQR", "states congruence, corner by corner in the written order"},
	{"claim triangle ABC similar to PQR", "states similarity, corner by corner in the written order"},
	{"claim P on k", "states that a point lies on a thing"},
	{"claim collinear ABC", "states that points lie on one straight"},
	{"claim concyclic ABCD", "states that points lie on one circle"},
	{"claim concurrent l, m, n", "states that straights pass through one point"},
	{"claim k touches m", "states that a circle touches a thing; at T, inside or outside say more"},
	{"claim P between A and B", "states that a point lies between two others"},
	{"claim P inside k", "states that a point lies inside a circle or a figure; or outside"},
	{"claim P same side of m as Q", "states that two points lie on one side of a line; other side of m from Q is the contrary"},
	{"claim c inside k", "states that a whole circle lies in another"},
	{"claim X midpoint of AB", "states that a point halves a straight"},
	{"claim O centre of k", "states that a point is the centre of a circle"},
	{"claim AX bisects angle BAC", "states that a straight halves an angle"},
	{"claim regular ABCDEF", "states that a polygon is regular"},
	{"claim square ABCD", "states the kind of a quadrilateral"},
	{"claim area of ABC = 12", "states an area; perimeter of works alike"},
	{"claim not P on k", "states that one relation does not hold"},
	{"claim here AB = CD", "states it of this figure only, not of what is left to chance"},
}

// starts are the words that a statement can begin with.
var starts = func() map[string]bool {
	set := map[string]bool{}
	for _, f := range Forms {
		set[f.Keyword] = true
	}
	delete(set, "")
	return set
}()
