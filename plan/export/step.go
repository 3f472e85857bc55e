package export

import (
	"context"
	"math"
	"slices"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Stepped is a duct with the size chosen for it, and what the stock sizes next
// to that would do.
type Stepped struct {
	duct.Sized
	Area     unit.Area // its sheet
	Down, Up *Step     // nil where none is stocked
}

// Step is a stock size next to the one chosen for a duct: everything else as
// chosen, with the same gates open as relief.
type Step struct {
	Size unit.Length // nominal
	Area unit.Area   // sheet of the duct

	Wider, Into string     // the duct that would be wider than the duct or collector it empties into; empty where the size fits
	Met         bool       // every use is captured and carried, but those that no size meets
	Miss        *duct.Miss // else what is missed by most
}

// Steps looks, for each duct of a choice, at the stock sizes next to its own.
// It stops and returns the context's error when that is done.
func Steps(ctx context.Context, p *plan.Plan, c *duct.Choice) ([]Stepped, error) {
	var list []Stepped
	stock := duct.StockSizes(p.Shop.Units)
	for i, at := range c.Sizes {
		v := Stepped{Sized: at, Area: sheet(at.Duct, at.Bore)}
		own := slices.Index(stock, at.Size)
		if own > 0 {
			v.Down = stepTo(p, c, i, stock[own-1])
		}
		if own+1 < len(stock) {
			v.Up = stepTo(p, c, i, stock[own+1])
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		list = append(list, v)
	}
	return list, nil
}

// sheet of a duct, as the choice reckons it.
func sheet(d *shop.Duct, bore unit.Length) unit.Area {
	return unit.Area(unit.Six(math.Pi * float64(bore) * float64(d.Length)))
}

// stepTo looks at one size in the place of one that was chosen.
func stepTo(p *plan.Plan, c *duct.Choice, i int, size unit.Length) *Step {
	sizes := slices.Clone(c.Sizes)
	bore, _ := shop.Bore(sizes[i].Duct.Material, size)
	sizes[i].Size, sizes[i].Bore = size, bore
	v := &Step{Size: size, Area: sheet(sizes[i].Duct, bore)}
	if v.Wider, v.Into = wider(p.Shop, sizes, sizes[i].Duct); v.Wider == "" {
		v.Miss = p.Air.Missed(p.Shop, c, sizes)
		v.Met = v.Miss == nil
	}
	return v
}

// wider finds a duct that is wider than what it empties into: the named one,
// or one that empties into it.
func wider(s *shop.Shop, sizes []duct.Sized, of *shop.Duct) (upper, lower string) {
	size := map[*shop.Duct]unit.Length{}
	for _, d := range s.Ducts {
		size[d] = d.Size
	}
	for _, at := range sizes {
		size[at.Duct] = at.Size
	}
	for _, d := range s.Ducts {
		into, below := d.Collector.Name, d.Collector.Inlet
		if d.Into != nil {
			into, below = d.Into.Name, size[d.Into]
		}
		if (d == of || d.Into == of) && unit.Compare(float64(size[d]), float64(below)) > 0 {
			return d.Name, into
		}
	}
	return "", ""
}
