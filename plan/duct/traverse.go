package duct

import (
	_ "embed"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed traverse.csv
var traverseData []byte

var traverseRows = source.MustRows("traverse.csv", traverseData, "family", "point", "fraction")

// TraverseRows are the points of a traverse as shares of the bore, for the
// page of sources.
func TraverseRows() []source.Row { return traverseRows }

// Traverse is a place for a traverse in a main: in the longest straight piece
// of it, as far from the disturbance before it as the data asks, or as it can
// be.
type Traverse struct {
	Stretch *shop.Stretch
	Place   unit.Length // from the duct's upstream end
	Before  unit.Length // straight pipe before it
	Behind  unit.Length // straight pipe behind it
	Long    bool        // both are as long as the data asks
	Guessed bool        // the file does not say where the duct's elbows stand
	Set     TraverseSet // its points along each of two diameters
	Results []*Result   // uses whose dust passes there, filter clean, in the order of the uses
}

// Traverses finds a place in every main, in file order: a duct that more than
// one machine shares, or that leads into a collector. Ducts without a length
// have none.
func (k *Reckoning) Traverses() []Traverse {
	var list []Traverse
	for _, t := range k.Trees {
		for _, d := range t.shop.Ducts {
			if d.Collector == t.Collector && d.Length > 0 && !d.Choose && isMain(d) {
				v := traverse(d)
				v.Results = k.passing(v.Stretch)
				list = append(list, v)
			}
		}
	}
	return list
}

func isMain(d *shop.Duct) bool {
	return d.Into == nil || slices.ContainsFunc(d.Stretches, Shared)
}

// traverse finds the place in a duct: its longest straight piece, of equals
// the last.
func traverse(d *shop.Duct) Traverse {
	at := disturbances(d)
	best := 1
	for i := 1; i < len(at); i++ {
		if unit.AtLeast(float64(at[i]-at[i-1]), float64(at[best]-at[best-1])) {
			best = i
		}
	}
	from, long := at[best-1], at[best]-at[best-1]
	before, _ := ProofFigure("straight before traverse")
	behind, _ := ProofFigure("straight behind traverse")
	v := Traverse{Set: TraverseSetFor(d.Bore), Guessed: d.Route == nil && len(d.Turns) > 0}
	v.Before = unit.Length(unit.Six(before * float64(d.Bore)))
	v.Long = unit.AtLeast(float64(long), (before+behind)*float64(d.Bore))
	if !v.Long { // share what there is in the same proportion
		v.Before = unit.Length(unit.Six(float64(long) * before / (before + behind)))
	}
	v.Place = unit.Length(unit.Six(float64(from + v.Before)))
	v.Behind = unit.Length(unit.Six(float64(long - v.Before)))
	v.Stretch = StretchAt(d, v.Place)
	return v
}

// disturbances are the places that disturb the air along a duct, its ends
// among them.
func disturbances(d *shop.Duct) []unit.Length {
	var at []unit.Length
	for _, s := range d.Stretches {
		at = append(at, s.From, s.To)
	}
	for _, turn := range d.Turns {
		at = append(at, turn.At)
	}
	for _, g := range d.Gates {
		at = append(at, g.Where)
	}
	slices.Sort(at)
	return slices.Compact(at)
}

// passing lists the results, filter clean or none, in which a machine's dust
// passes a stretch.
func (k *Reckoning) passing(s *shop.Stretch) []*Result {
	var list []*Result
	for _, u := range k.Uses {
		for _, r := range u.On(s.Duct.Collector) {
			if v := r.Stretch(s); r.Filter != ChangeOut && r.OnCurve && v != nil && v.Judged {
				list = append(list, r)
			}
		}
	}
	return list
}
