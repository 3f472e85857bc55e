package templates

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// airShort sorts the uses of machines by their air.
type airShort struct {
	short  []*duct.First // what to change first, for every use and collector that is short of air
	served []string      // uses that are not
	enough []*duct.First // the weakest port of those
	dust   []*duct.Settling
	none   []*duct.Use // uses in which a port that needs air gets none from any fan
	doubt  duct.Doubts // of those that are served
	shut   []string    // uses that cannot be told
	off    []string    // uses off the fan's curve in some state of the filter
	open   []string    // uses that wait for sizes still to be chosen
}

// shortOfAir finds, for every use and collector, what to change first in the
// state of the filter in which the weakest port gets least, and where dust
// settles.
func (b *Book) shortOfAir() (found airShort) {
	found.none = b.unserved()
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) == 0 {
			continue
		}
		known, enough, open, off := false, true, false, false
		var fine []*duct.First
		for _, c := range u.Collectors(b.Plan.Shop) {
			open = open || b.unsized(c)
			var worst *duct.First
			for _, r := range u.On(c) {
				off = off || !r.OnCurve
				f := b.Plan.First(r)
				if f != nil && (worst == nil || f.Share < worst.Share) {
					worst = f
				}
			}
			if worst == nil {
				continue
			}
			known = true
			if worst.Share < 1 {
				enough = false
				found.short = append(found.short, worst)
			} else {
				fine = append(fine, worst)
			}
		}
		switch {
		case open:
			found.open = append(found.open, u.Name)
		case u.Unserved() != nil: // named apart
		case off && enough:
			found.off = append(found.off, u.Name)
		case !known:
			found.shut = append(found.shut, u.Name)
		case enough:
			found.serves(b, u, fine)
		}
	}
	return found
}

// serves notes a use that has all its air.
func (found *airShort) serves(b *Book, u *duct.Use, fine []*duct.First) {
	found.served = append(found.served, u.Name)
	found.enough = append(found.enough, fine...)
	for _, r := range u.Results {
		found.doubt = found.doubt.And(r.AirDoubts(b.Plan.Air.Spread(r)))
	}
	for _, c := range u.Collectors(b.Plan.Shop) {
		if s := b.Plan.Settles(u, c); s != nil {
			found.dust = append(found.dust, s)
		}
	}
}

// changesDust says where dust settles in a use, and what would carry it.
func (b *Book) changesDust(d *duct.Settling) changesDust {
	r := d.Result
	v := changesDust{Use: r.Use.Name, Path: b.Path("use", r.Use.Name)}
	key := "first.dust.stretch"
	if d.Slowest.Slower() < d.Slowest.Velocity {
		key = "first.dust.hose"
	}
	v.Says = b.words.Text(key, d.Slowest.Stretch.Name(), unit.Percent(d.Share), b.filterOf(r))
	switch gates := d.Relief.Gates; {
	case len(gates) > 0:
		v.Relief = b.words.Text("first.dust.relief", joined(namesIn(gates, func(g *shop.Gate) string { return g.Name })))
	case d.Relief.Through < 0:
		v.Relief = b.words.Text("first.dust.no-relief")
	default:
		v.Relief = b.words.Count("first.dust.tried", d.Relief.Through)
	}
	if s := d.Smaller; s != nil {
		key := "first.dust.smaller"
		switch {
		case s.Captured && s.Carried:
			key = "first.dust.smaller-met"
		case !s.Captured:
			key = "first.dust.smaller-short"
		}
		v.Smaller = b.words.Text(key, s.Duct.Name, unit.Size.Print(b.units, s.Size), unit.Percent(s.Share))
	} else {
		v.Smaller = b.words.Text("first.dust.no-smaller", d.Slowest.Stretch.Duct.Name)
	}
	return v
}
