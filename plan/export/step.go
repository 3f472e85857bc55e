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
	Miss        *duct.Miss // else what is missed by most; its things are copies: only their names count
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
	if v.Wider, v.Into = wider(withSizes(p.Shop, sizes), sizes[i].Duct.Name); v.Wider == "" {
		v.Miss = worst(p, c, sizes)
		v.Met = v.Miss == nil
	}
	return v
}

// wider finds a duct that is wider than what it empties into: the named one,
// or one that empties into it.
func wider(s *shop.Shop, name string) (upper, lower string) {
	for _, d := range s.Ducts {
		into, size := d.Collector.Name, d.Collector.Inlet
		if d.Into != nil {
			into, size = d.Into.Name, d.Into.Size
		}
		if (d.Name == name || d.Into != nil && into == name) && unit.Compare(float64(d.Size), float64(size)) > 0 {
			return d.Name, into
		}
	}
	return "", ""
}

// worst is what sizes miss by most, in the uses that a choice is about; nil
// where they meet all.
func worst(p *plan.Plan, c *duct.Choice, sizes []duct.Sized) (most *duct.Miss) {
	s := withSizes(p.Shop, sizes)
	tree := duct.Grow(s, c.Collector, p.Air.State)
	for i, u := range duct.Uses(s) {
		own := p.Air.Uses[i]
		if len(u.Machines) == 0 || !slices.Contains(u.Collectors(s), c.Collector) || slices.Contains(c.Beyond, own) {
			continue
		}
		for _, opened := range c.Relief {
			for k, g := range p.Shop.Gates {
				if opened.Use == own && slices.Contains(opened.Gates, g) {
					u.Open[s.Gates[k]] = true
				}
			}
		}
		for _, filter := range duct.States(c.Collector) {
			if miss := missed(tree.Solve(u, filter)); miss != nil && (most == nil || miss.Share < most.Share) {
				most = miss
			}
		}
	}
	return most
}

// missed is what a result misses by most; nil where it is captured and carried.
func missed(r *duct.Result) *duct.Miss {
	if r.Captured && r.Carried {
		return nil
	}
	m := &duct.Miss{Use: r.Use, Filter: r.Filter, Why: r.Why}
	if !r.OnCurve {
		return m
	}
	m.Share = 1
	if p, share := r.Weakest(); p != nil {
		m.Port, m.Share = p.Port, share
	}
	if s, share := r.Slowest(); s != nil && !r.Carried && share < m.Share {
		m.Port, m.Stretch, m.Share = nil, s.Stretch, share
		m.Hose = s.Hose && s.HoseVelocity < s.Velocity
	}
	return m
}
