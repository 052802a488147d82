package svg

// Moved is the items elsewhere: by so much to the right and down.
func Moved(items []Item, by XY) []Item {
	out := make([]Item, len(items))
	for i, item := range items {
		switch x := item.(type) {
		case Path:
			out[i] = x.moved(by)
		case Disc:
			x.Centre = x.Centre.plus(by)
			out[i] = x
		case Text:
			x.At = x.At.plus(by)
			out[i] = x
		}
	}
	return out
}

func (p Path) moved(by XY) Path {
	p.Start = p.Start.plus(by)
	pieces := make([]Piece, len(p.Pieces))
	for i, piece := range p.Pieces {
		piece.To = piece.To.plus(by)
		pieces[i] = piece
	}
	p.Pieces = pieces
	return p
}

func (a XY) plus(b XY) XY { return XY{a.X + b.X, a.Y + b.Y} }
