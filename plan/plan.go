// Package plan knows the order in which the rooms of the house are asked and
// keeps their answers: a Plan is everything reckoned about one shop, read
// only. It holds no formula.
package plan

import (
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// Plan is one shop, reckoned as of a day.
type Plan struct {
	Shop *shop.Shop
	AsOf entry.Date
	Air  *duct.Reckoning
}

// Make reckons a shop as of a day; with the zero date, as of the latest date
// that stands in the shop file.
func Make(s *shop.Shop, asOf entry.Date) *Plan {
	if asOf == (entry.Date{}) {
		asOf = latest(s)
	}
	return &Plan{Shop: s, AsOf: asOf, Air: duct.Reckon(s)}
}

// latest is the latest date in the shop file.
func latest(s *shop.Shop) entry.Date {
	var last entry.Date
	for _, r := range s.Revisions {
		if r.Date.String() > last.String() {
			last = r.Date
		}
	}
	return last
}

// Revision is the newest revision as of the plan's day: the last in the file
// whose date has come. It is false where there is none.
func (p *Plan) Revision() (shop.Revision, bool) {
	for i := len(p.Shop.Revisions) - 1; i >= 0; i-- {
		if r := p.Shop.Revisions[i]; r.Date.String() <= p.AsOf.String() {
			return r, true
		}
	}
	return shop.Revision{}, false
}
