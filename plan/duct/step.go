package duct

import (
	"context"
	"math"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Stepped is a duct with the size chosen for it, and what the stock sizes next
// to that would do.
type Stepped struct {
	Sized
	Area     unit.Area // its sheet
	Down, Up *Step     // nil where none is stocked
}

// Step is a stock size next to the one chosen for a duct: everything else as
// chosen, with the same gates open as relief.
type Step struct {
	Size unit.Length // nominal
	Area unit.Area   // sheet of the duct

	Wider, Into string // the duct that would be wider than the duct or collector it empties into; empty where the size fits
	Met         bool   // every use is captured and carried, but those that no size meets
	Miss        *Miss  // else what is missed by most
}

// Steps looks, for each duct of a choice, at the stock sizes next to its own.
// It stops and returns the context's error when that is done.
func (k *Reckoning) Steps(ctx context.Context, s *shop.Shop, c *Choice) ([]Stepped, error) {
	var list []Stepped
	stock := StockSizes(s.Units)
	for i, at := range c.Sizes {
		v := Stepped{Sized: at, Area: unit.Area(unit.Six(sheetOf(at.Duct, at.Bore)))}
		own := slices.Index(stock, at.Size)
		if own > 0 {
			v.Down = k.stepTo(s, c, i, stock[own-1])
		}
		if own+1 < len(stock) {
			v.Up = k.stepTo(s, c, i, stock[own+1])
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		list = append(list, v)
	}
	return list, nil
}

// sheetOf is the sheet of a duct of a bore, in m2.
func sheetOf(d *shop.Duct, bore unit.Length) float64 {
	return math.Pi * float64(bore) * float64(d.Length)
}

// stepTo looks at one size in the place of one that was chosen.
func (k *Reckoning) stepTo(s *shop.Shop, c *Choice, i int, size unit.Length) *Step {
	sizes := slices.Clone(c.Sizes)
	bore, _ := shop.Bore(sizes[i].Duct.Material, size)
	sizes[i].Size, sizes[i].Bore = size, bore
	v := &Step{Size: size, Area: unit.Area(unit.Six(sheetOf(sizes[i].Duct, bore)))}
	if v.Wider, v.Into = blocked(s, sizes, sizes[i].Duct); v.Wider == "" {
		v.Miss = k.Missed(s, c, sizes)
		v.Met = v.Miss == nil
	}
	return v
}

// blocked finds a duct that is wider than what it empties into: the named one,
// or one that empties into it.
func blocked(s *shop.Shop, sizes []Sized, of *shop.Duct) (upper, lower string) {
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
