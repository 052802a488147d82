package syntax

import (
	"sync"

	"trammel/lang/source"
)

// Phrases are the pieces that many statements share: the phrases that tell
// one meeting or place from another, and the values.
var Phrases = []Form{
	{"which one", "above", "a phrase", []Example{{"above m", "the one higher on the page than the line"}}},
	{"which one", "below", "a phrase", []Example{{"below m", "the one lower on the page than the line"}}},
	{"which one", "left", "a phrase", []Example{{"left of AB", "the one to the left of one who stands at A and looks to B"}}},
	{"which one", "right", "a phrase", []Example{{"right of AB", "the one to the right of one who stands at A and looks to B"}}},
	{"which one", "same", "a phrase", []Example{{"same side of m as Q", "the one on the side of the line where Q is"}}},
	{"which one", "other", "a phrase", []Example{
		{"other side of m from Q", "the one on the side of the line where Q is not"},
		{"other than A", "the one that is not A"},
	}},
	{"which one", "nearest", "a phrase", []Example{{"nearest A", "the one with the least distance from A"}}},
	{"which one", "farthest", "a phrase", []Example{{"farthest from A", "the one with the greatest distance from A"}}},
	{"which one", "between", "a phrase", []Example{{"between A and B", "the one on the straight from A to B"}}},
	{"which one", "beyond", "a phrase", []Example{{"beyond B on AB", "the one on AB produced past B"}}},
	{"values", "radius", "a radius", []Example{{"radius k", "the radius of a circle"}}},
	{"values", "circumference", "a circumference", []Example{{"circumference k", "the way round a circle"}}},
	{"values", "area", "an area", []Example{{"area of ABC", "the area of a figure or a circle"}}},
	{"values", "perimeter", "a perimeter", []Example{{"perimeter of ABC", "the way round a figure"}}},
	{"values", "angle", "an angle", []Example{{"angle ABC", "the angle at B, from 0° to 180°"}}},
	{"values", "reflex", "a reflex angle", []Example{{"reflex angle ABC", "the angle at B that is over 180°"}}},
	{"values", "half", "a half", []Example{{"half AB", "half of a value"}}},
	{"values", "sqrt", "a square root", []Example{{"sqrt(2)", "the square root of a number"}}},
}

// phraseModels are the phrases, cut up as the statements are.
var phraseModels = sync.OnceValue(func() []model { return modelsOf(Phrases) })

func modelsOf(forms []Form) []model {
	var all []model
	for i := range forms {
		for _, e := range forms[i].Examples {
			var none source.List
			tokens := scan(source.NewFile("", e.Line), &none)
			all = append(all, model{&forms[i], e.Line, chunks(tokens)})
		}
	}
	return all
}
