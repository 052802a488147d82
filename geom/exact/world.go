package exact

import "slices"

// claimLines is a claim on a sheet.
type claimLines struct {
	zeros []int32 // must be 0
	signs []int32 // must be positive
	moved []int32 // are not 0 in any figure
	must  []int32 // are 0 in every figure
	bent  []int32 // must not be 0
}

// claimOf is the claim that is asked about. What is decided of numbers is told to be so in
// all figures as far as no other doubtful root comes in.
func (b *branches) claimOf(q Question) *claimLines {
	c := &claimLines{
		zeros: b.linesOf(slices.Concat(q.Figure.Zero, q.Claim.Zero)),
		signs: b.linesOf(slices.Concat(q.Figure.Ways, q.Claim.Ways, q.Claim.Sides)),
		bent:  b.linesOf(slices.Concat(q.Figure.Bent, q.Claim.Bent)),
	}
	b.active = b.cone(slices.Concat(c.zeros, c.signs, c.bent))
	for _, i := range slices.Concat(b.sure, b.linesOf(slices.Concat(q.Figure.Moved, q.Figure.Must))) {
		cone := b.cone([]int32{i})
		if !b.hasOtherDoubts(cone) {
			for k := range cone {
				b.active[k] = b.active[k] || cone[k]
			}
		}
	}
	isIdle := func(i int32) bool { return !b.active[i] }
	c.moved = slices.DeleteFunc(b.linesOf(q.Figure.Moved), isIdle)
	c.must = slices.DeleteFunc(b.linesOf(q.Figure.Must), isIdle)
	return c
}

// hasOtherDoubts tells whether some lines have doubtful roots among them that are not active.
func (b *branches) hasOtherDoubts(lines []bool) bool {
	for i, in := range lines {
		if in && !b.active[i] && i >= int(b.ends[0]) && b.lines[i].isDoubtful() {
			return true
		}
	}
	return false
}

// cone is which lines some lines are made of, and what the signs of roots among them are told by.
func (b *branches) cone(of []int32) []bool {
	in := make([]bool, len(b.lines))
	for _, i := range of {
		in[i] = true
	}
	for i := len(b.lines) - 1; i >= 0; i-- {
		l := &b.lines[i]
		if !in[i] {
			continue
		}
		in[l.a] = in[l.a] || l.x.x != nil
		in[l.b] = in[l.b] || l.x.y != nil
		if l.rule.relation != nil && l.x.op == root {
			for _, k := range l.rule.relation.others {
				in[k] = true
			}
		}
		if l.rule.known != nil {
			for _, f := range l.rule.known.factors {
				in[f.line] = true
			}
		}
	}
	return in
}

// judge tells whether a claim holds in every world that has figures.
func (b *branches) judge(c *claimLines) bool {
	signs, guesses := b.nameWorlds()
	b.done = b.ruledOut()
	if signs+guesses == 0 {
		held, failed := c.part(b.points)
		return len(held) > 0 && len(failed) == 0 && b.holds(c, held, nil, 0, true)
	}
	if signs > mostSigns || guesses > mostChances {
		return false
	}
	for world := range uint(1) << signs {
		if b.isDone(world) {
			continue
		}
		points, ok := b.drawAll(c, world)
		if !ok {
			return false
		}
		held, failed := c.part(points)
		home := world == 0 && guesses == 0
		if home && (len(held) == 0 || len(failed) > 0) || !b.holds(c, held, failed, world, home) {
			return false
		}
	}
	return true
}

// A claim with more signs is not judged.
const mostSigns = 10

// nameWorlds numbers the doubtful roots that are active and known up to their signs; the signs of
// others are guessed at each point.
func (b *branches) nameWorlds() (signs, guesses int) {
	for i := b.ends[0]; int(i) < len(b.lines); i++ {
		l := &b.lines[i]
		l.rule.world = 0
		switch {
		case !b.active[i] || !l.isDoubtful():
		case l.rule.known == nil:
			guesses++
		default:
			signs++
			l.rule.world = signs
		}
	}
	return signs, guesses
}

// signs are those of the roots in a mask, as in a world.
type signs struct{ mask, world uint }

func (b *branches) isDone(world uint) bool {
	return slices.ContainsFunc(b.done, func(s signs) bool { return world&s.mask == s.world })
}

// finish notes that there is nothing more to look for with the signs that some lines hang on.
func (b *branches) finish(world uint, lines []bool) signs {
	s := signs{mask: b.signsOf(lines)}
	s.world = world & s.mask
	b.done = append(b.done, s)
	return s
}

// ruleOut notes that there are no figures with the signs that some lines hang on, whatever is claimed.
func (b *branches) ruleOut(world uint, lines []bool) {
	s := b.finish(world, lines)
	none := map[int32]bool{}
	for i, l := range b.lines {
		if n := l.rule.world - 1; n >= 0 && s.mask>>n&1 == 1 {
			none[int32(i)] = s.world>>n&1 == 1
		}
	}
	b.none = append(b.none, none)
}

// ruledOut is what has been noted so, as far as this claim's worlds are made of such roots.
func (b *branches) ruledOut() (out []signs) {
	for _, none := range b.none {
		var s signs
		all := true
		for i, minus := range none {
			n := b.lines[i].rule.world - 1
			if all = all && n >= 0; !all {
				break
			}
			s.mask |= 1 << n
			if minus {
				s.world |= 1 << n
			}
		}
		if all {
			out = append(out, s)
		}
	}
	return out
}

// signsOf is which of the roots that worlds are made of are among lines.
func (b *branches) signsOf(lines []bool) (mask uint) {
	for i, l := range b.lines {
		if lines[i] && l.rule.world > 0 {
			mask |= 1 << (l.rule.world - 1)
		}
	}
	return mask
}

// generalize looks for other worlds that are empty as well, by the lines in conflict in one.
func (b *branches) generalize(world uint, conflict []int32) {
	if b.signsOf(b.cone(conflict)) != b.signsOf(b.active) {
		b.excludes(world, conflict)
	}
}

// excludes tells whether there is no figure with those signs of a world alone that some lines hang
// on, without what else is asked of the world's figures; and notes that.
func (b *branches) excludes(world uint, lines []int32) bool {
	all, guessed, failed := b.active, slices.Clone(b.guessed), slices.Clone(b.failed)
	defer func() { b.active, b.guessed, b.failed = all, guessed, failed }()
	b.active = b.cone(lines)
	clear(b.guessed)
	clear(b.failed)
	none := b.isEmpty(world)
	if none {
		b.ruleOut(world, b.active)
	}
	return none
}

// isEmpty tells whether there are no points of a world, or what is at them contradicts itself.
func (b *branches) isEmpty(world uint) bool {
	var points []*place
	for len(points) < len(b.points) {
		pt, _, sure := b.draw(world)
		if pt == nil {
			return sure
		}
		points = append(points, pt)
	}
	return b.chances(b.active) == 0 && b.deduce(points, false, nil).none
}

// drawAll draws points of a world, so many that each choice of the signs that are left to
// chance is among them; none where the world has no figure. It fails where these are too
// many, or it takes too long.
func (b *branches) drawAll(c *claimLines, world uint) (points []*place, ok bool) {
	clear(b.guessed)
	clear(b.failed)
	meant, patience := false, fewPoints
	for wanted := 1; len(points) < wanted; {
		pt, stuck, ended := b.drawPatiently(world, patience)
		switch {
		case pt == nil && ended && patience < samples && !b.excludes(world, []int32{stuck}):
			patience = samples
			continue
		case pt == nil:
			return nil, ended
		}
		points, meant = append(points, pt), meant || c.see(pt) != noneAt
		if len(points) < wanted {
			continue
		}
		chances := b.chances(b.active)
		switch {
		case len(points) < fewPoints && meant:
			wanted = fewPoints
		case len(points) < fewPoints:
			wanted++
		case chances == 0 && !meant:
			return nil, true
		case chances == 0:
			return points, true
		case len(points) < samples:
			wanted = samples
		case chances > mostChances:
			return nil, false
		default:
			wanted = b.wanted(chances)
		}
	}
	return points, true
}

// fewPoints is at how many points of a world a claim is seen, if no sign is left to chance: what is not 0
// in that world is 0 at each by chance with degree/p, and so at all with 2^-60 if its degree is below 2^26.
const fewPoints = 16

// part parts the points at which a claim means something.
func (c *claimLines) part(points []*place) (held, failed []*place) {
	for _, pt := range points {
		switch c.see(pt) {
		case heldAt:
			held = append(held, pt)
		case failedAt:
			failed = append(failed, pt)
		}
	}
	return held, failed
}

// holds tells whether a claim holds in a world where it does at some points, and fails at
// others: the signs that it hangs on follow, and where it fails there is no figure. home is
// whether it is the world of the figure at hand.
func (b *branches) holds(c *claimLines, held, failed []*place, world uint, home bool) bool {
	if slices.ContainsFunc(held, func(pt *place) bool { return slices.ContainsFunc(c.bent, pt.isZero) }) {
		return false
	}
	if len(held) > 0 && len(c.signs) > 0 {
		if held = b.enough(c, held, world, heldAt); held == nil {
			return false
		}
		d := b.deduce(held, home, c.signs)
		if !d.none && slices.ContainsFunc(c.signs, func(i int32) bool { return d.sign[i] <= 0 }) {
			return false
		}
		if d.none && !home && len(failed) == 0 {
			b.generalize(world, d.conflict.elements())
			return true
		}
	}
	if len(failed) == 0 && len(c.signs) == 0 {
		b.finish(world, b.cone(slices.Concat(c.zeros, c.bent)))
	}
	if len(failed) == 0 {
		return true
	}
	if failed = b.enough(c, failed, world, failedAt); failed == nil {
		return false
	}
	d := b.deduce(failed, home, nil)
	if d.none && !home && len(held) == 0 {
		b.generalize(world, d.conflict.elements())
	}
	return d.none
}

// enough draws more points at which the same is seen of a claim, until signs can be told; nil
// where that takes too long.
func (b *branches) enough(c *claimLines, points []*place, world uint, seen int) []*place {
	for len(points) < len(b.points) {
		pt, _, _ := b.draw(world)
		if pt == nil {
			return nil
		}
		if c.see(pt) == seen {
			points = append(points, pt)
		}
	}
	return points
}

// What is seen of a claim at a point: that it is of no figure, or that the claim holds or fails.
const (
	noneAt = iota
	heldAt
	failedAt
)

func (c *claimLines) see(pt *place) int {
	isNot := func(i int32) bool { return pt.value[i] != 0 }
	switch {
	case slices.ContainsFunc(c.moved, pt.isZero) || slices.ContainsFunc(c.must, isNot):
		return noneAt
	case slices.ContainsFunc(c.zeros, isNot):
		return failedAt
	}
	return heldAt
}
