package lang_test

// leftToChance are figures whose givens and openings are left to chance, in
// every form that the language has for it. Each has points A and B.
var leftToChance = []struct{ name, lines string }{
	{"perpendicular", `given line m through A (0, 0) and B (8, 0)
given P on m, 4 from A
arc c centre P radius any cuts m at L and R
arc d centre L radius any over PL
arc e centre R radius d
d meets e at X above m
line n through P and X
claim n perpendicular to m`},
	{"dropped", `given A (0, 0)
given B (8, 0)
line m through A and B
given P above m
arc c centre P radius any cuts m at L and R
arc d centre L radius any
arc e centre R radius d
d meets e at Y below m
line n through P and Y cuts m at F
join PL, PR`},
	{"bisected", `given A (0, 0)
given B (8, 1)
join AB
arc c centre A radius any over half AB
arc d centre B radius c
c meets d at X and Y
line n through X and Y cuts AB at M`},
	{"half angle", `given A (0, 0)
given B (8, 0)
given angle BAC = 50°
ray AB
ray AC
arc c centre A radius any cuts AB at S, AC at T
arc d centre S radius any over half ST
arc e centre T radius d
d meets e at H farthest from A
ray AH
claim angle BAH = 25°`},
	{"angle", `given A (0, 0)
given B (8, 0)
given angle BAC
ray AB
ray AC
H by halve(B, A, C)`},
	{"sixty", `given A (0, 0)
given B (8, 0)
ray AB
arc c centre A radius any cuts AB at S
arc d centre S radius c
c meets d at T left of AB
ray AT
claim angle SAT = 60°`},
	{"two bounds", `given A (0, 0)
given B (8, 0)
join AB
arc c centre A radius any over half AB under AB
arc d centre B radius c
c meets d at X above AB
join AXB`},
	{"unequal", `given A (0, 0)
given B (8, 0)
arc c centre A radius any
arc d centre B radius any
c meets d at X above AB
join AXB
join AB`},
	{"chain", `given A (0, 0)
given B (8, 0)
join AB
arc c centre A radius any over half AB
arc d centre B radius c
c meets d at X above AB
arc e centre X radius any over half AX
arc f centre A radius e
e meets f at Y left of AX
join AXB
join AYX`},
	{"between two", `given A (0, 0)
given B (8, 0)
given C between A and B
arc c centre A radius any over half AC
arc d centre C radius c
arc e centre C radius any over half CB
arc f centre B radius e
c meets d at X above AB
e meets f at Y above AB
join AXC, CYB`},
	{"third", `given A (0, 0)
given B (8, 0)
given C 5 from A
arc c centre A radius any cuts AB at D nearest B
join CD`},
	{"stepped", `given A (0, 0)
given B (8, 0)
ray AB
step off P[1 to 4] on AB from A, radius any`},
	{"taken", `given A (0, 0)
given B (8, 0)
join AB
take X on AB
n by erect(AB, X)
take Y on n, above AB
join AYB`},
	{"free line", `given line m
given A on m
given B above m
n, F by drop(m, B)
join AB`},
	{"above two", `given A (0, 0)
given B (8, 0)
line m through A and B
given P above m
given Q above m
n by parallel(m, P)
r by parallel(m, Q)`},
	{"inside", `given A (0, 0)
given B (8, 0)
given C (3, 5)
join ABCA
given P inside ABC
join AP, BP, CP`},
	{"inside circle", `given circle k centre O radius 3
given A on k
given B inside k
line n through A and B
n meets k at C other than A
join OB`},
	{"outside", `given circle k centre O (0, 0) radius 2
given A outside k
B, T, n, r by tangents(k, A)`},
	{"on circle", `given circle k centre O (0, 0) radius 3
given A on k at 210°
given B on k at 330°
given C on k, above AB
join ACB
join AOB
claim angle AOB = 2 angle ACB`},
	{"on arc", `given circle k centre O (0, 0) radius 3
given A on k at 20°
take B on k
take C on k
join ABCA`},
	{"free points", `given points A, B, C, D
join ABCDA
K by middle(A, B)
L by middle(B, C)
M by middle(C, D)
N by middle(D, A)
join KLMNK
claim parallelogram KLMN`},
	{"free three", `given points A, B, C
join ABCA
arc c centre A radius any cuts AB at D, AC at E
arc d centre D radius any over half DE
arc e centre E radius d
d meets e at H farthest from A
line h through A and H cuts BC at K`},
	{"free triangle", `given triangle ABC
arc c centre A radius any over half AB
arc d centre B radius c
c meets d at X and Y
line n through X and Y cuts AB at M
join CM`},
	{"acute", `given acute triangle ABC
a, D by drop(BC, A)
b, E by drop(CA, B)
c, F by drop(AB, C)
claim concurrent a, b, c`},
	{"obtuse", `given obtuse triangle ABC
k, O by circumcircle(A, B, C)`},
	{"right", `given right triangle ABC
a, D by drop(AB, C)`},
	{"isosceles", `given isosceles triangle ABC
a, D by drop(BC, A)`},
	{"many inside", `given triangle ABC
given P inside ABC
a, D by drop(BC, P)
b, E by drop(CA, P)
c, F by drop(AB, P)`},
	{"quadrilaterals", `given parallelogram ABCD
join AC, BD
AC meets BD at M
claim M midpoint of AC`},
	{"trapezium", `given trapezium ABCD
join AC, BD
AC meets BD at M`},
	{"kite", `given kite ABCD
join AC, BD
claim AC perpendicular to BD`},
	{"copied", `given A (0, 0)
given B (8, 0)
given C (6, 4)
ray AB
ray AC
given line m
given Q on m
given R on m
S by copyangle(B, A, C, Q, R)`},
	{"vertical", `given A (0, 0)
given B (0, 7)
line m through A and B
given P right of AB
n, F by drop(m, P)
r by parallel(m, P)`},
	{"chain of free points", `given A (0, 0)
given B 6 from A
given C above AB
given D inside ABC
given E between A and D
given F on BC
join ABCA, AD, EF`},
	{"any quadrilateral", `given quadrilateral ABCD
K by middle(A, B)
L by middle(B, C)
M by middle(C, D)
N by middle(D, A)
join KLMNK
claim parallelogram KLMN`},
	{"quadrilateral with diagonals", `given quadrilateral ABCD with AB = 6
join AC, BD
AC meets BD at M`},
	{"three circles", `given circle k centre A
given circle l centre B
given circle m centre C
o, U, X, Y, Z by touchthree(k, l, m)`},
	{"two circles", `given circle k centre A
given circle l centre B
C, D, E, F, s, t by belts(k, l)`},
	{"tangents of two points", `given circle k centre O
given A outside k
given B outside k
S, T, s, t by tangents(k, A)
U, V, u, v by tangents(k, B)
s meets u at X`},
	{"an opening kept", `given angle BAC = 50°
arc c centre A radius any cuts AB at S, AC at T
arc d centre S radius any
arc e centre T radius d
d meets e at X other than A
ray AX
take P on AX
n, F by drop(AB, P)`},
	{"two free lines", `given line m
given line n
m meets n at O
take A on m
take B on n
join AB`},
	{"on a square", `given square ABCD
take P between A and B
join PC, PD
take Q between C and D
join QA, QB`},
	{"points over a line", `given line m
given A above m
given B above m
given C above m
given D above m
n, F by drop(m, A)
o, G by drop(m, B)
p, H by drop(m, C)
q, K by drop(m, D)`},
	{"beside a line", `given line m
given points A, B
n by alongside(m, A)
join AB`},
	{"near the incentre", `given triangle ABC
given P inside ABC
k, I by incircle(A, B, C)
join PB`},
	{"square and tangents", `given circle a centre A
take B on a
take C on a
take D on BC
E, F by squareon(C, A)
given G outside a
H, I, c, d by tangents(a, G)`},
	{"square and medians", `given A (2, 3)
given B (0.1, -5.0)
given C (0, 0)
line m1 through B and C
m2 by parallel(m1, A)
E, F by squareon(B, A)
G, H, I, J by centroid(B, E, A)
circle k2 centre F radius 3`},
	{"tangents at a triangle's corners", `given obtuse triangle ABC
k, O by circumcircle(A, B, C)
t by tangent(k, A)
u by tangent(k, B)
t meets u at X`},
	{"kite with an axis", `given kite ABCD with AC = 7
join AC, BD
AC meets BD at M
mark right AMB`},
	{"rectangle", `given rectangle ABCD
join AC, BD
AC meets BD at M
circle k centre M through A`},
	{"nested", `given A (0, 0)
given B (7, 1)
given C (2, 5)
join BAC
arc c centre A radius any cuts AB at D, AC at E
arc d centre D radius any over half DE
arc e centre E radius d
d meets e at F farthest from A
ray AF
arc g centre F radius any cuts AF at G and H
arc h centre G radius any over FG
arc i centre H radius h
h meets i at X and Y
line n through X and Y`},
	{"outside triangle", `given triangle ABC with AB = 7
given P outside ABC
a, D by drop(AB, P)
b, E by drop(BC, P)
c, F by drop(CA, P)`},
	{"flat angle", `given A (0, 0)
given B 8 from A
given angle BAC = 20°
H by halve(B, A, C)
ray AH
given P on AC
n, F by drop(AB, P)`},
	{"obtuse angle", `given A (0, 0)
given B 6 from A
given angle BAC = 140°
H by halve(B, A, C)
ray AH`},
	{"on a circle", `given circle k centre O radius 3
given A on k
given B on k
given C on k
given D on k
join ABCDA
join AC, BD`},
	{"seven points", `given points A, B, C, D, E, F, G
join ABCDEFG`},
	{"on a bisector", `given triangle ABC with AB = 6, BC = 5
H by halve(A, B, C)
ray BH
given P on BH
n, F by drop(AB, P)
r, G by drop(BC, P)
mark PF = PG`},
	{"mirrored", `given line m
given A above m
given B above m
n, F by drop(m, A)
produce AF beyond F by AF to C
join CB
CB meets m at X
join AX, XB`},
	{"far from the origin", `given A (20, 30)
given B (27, 31)
given points C, D
join ABCDA
M by middle(A, C)
N by middle(B, D)
join MN`},
	{"three centres", `given points A, B, C
join ABCA
k, O by circumcircle(A, B, C)
l, I by incircle(A, B, C)
G by centroid(A, B, C)`},
}
