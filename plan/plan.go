// Package plan knows the order in which the rooms of the house are asked and
// keeps their answers: a Plan is everything reckoned about one shop, read
// only. It holds no formula.
package plan

import (
	"context"
	"sync"

	"dustbook/plan/control"
	"dustbook/plan/control/chain"
	"dustbook/plan/control/circuit"
	"dustbook/plan/control/timing"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/room"
	"dustbook/plan/shop"
	"dustbook/plan/takeoff"
)

// Plan is one shop, reckoned as of a day.
type Plan struct {
	Shop     *shop.Shop
	AsOf     entry.Date
	Air      *duct.Reckoning
	Rooms    *room.Reckoning
	Takeoff  *takeoff.Reckoning
	Control  *control.Reckoning
	Times    *timing.Reckoning
	Chains   *chain.Reckoning
	Circuits *circuit.Reckoning

	Records []*record.Record // up to the day, in the order of their files

	names    record.Names
	together func() *duct.Sets
	first    func() map[*duct.Result]*duct.First
	settles  sync.Map // of a settledAt: where its dust settles
}

// Make reckons a shop as of a day; with the zero date, as of the latest date
// on which something happened, by the shop file's revisions and the records.
// Records of a later day are left out.
func Make(s *shop.Shop, records []*record.Record, asOf entry.Date) *Plan {
	if asOf == (entry.Date{}) {
		asOf = latest(s, records)
	}
	ducts := duct.Reckon(s)
	together := sync.OnceValue(func() *duct.Sets {
		sets, _ := ducts.RunTogether(context.Background(), s, nil) // nothing ends that context
		return sets
	})
	first := sync.OnceValue(func() map[*duct.Result]*duct.First {
		all := map[*duct.Result]*duct.First{}
		for _, u := range ducts.Uses {
			for _, r := range u.Results {
				if len(u.Machines) > 0 {
					all[r] = ducts.First(r)
				}
			}
		}
		return all
	})
	taken, controls := takeoff.Reckon(s, drawn(ducts)), control.Reckon(s)
	return &Plan{together: together, first: first, Shop: s, AsOf: asOf, Air: ducts, Rooms: rooms(s, ducts), Takeoff: taken, Control: controls, Times: times(s, ducts, controls, taken), Chains: chain.Reckon(s, controls), Circuits: circuit.Reckon(s), Records: until(records, asOf), names: Names(s)}
}

// Together says which machines may run at once. It is reckoned when it is
// first asked for, and once.
func (p *Plan) Together() *duct.Sets { return p.together() }

// First is what to change first for the weakest port of a result of a use of
// machines; nil where there is nothing to say. All are reckoned when the first
// is asked for, and once.
func (p *Plan) First(r *duct.Result) *duct.First { return p.first()[r] }

// settledAt is a use on one collector.
type settledAt struct {
	use       *duct.Use
	collector *shop.Collector
}

// Settles is where dust settles in a use on a collector, and what helps; nil
// where there is nothing to say. It is reckoned when it is asked for, and once.
func (p *Plan) Settles(u *duct.Use, c *shop.Collector) *duct.Settling {
	found, _ := p.settles.LoadOrStore(settledAt{u, c}, sync.OnceValue(func() *duct.Settling {
		return p.Air.Settles(context.Background(), u, c) // nothing ends that context
	}))
	return found.(func() *duct.Settling)()
}

// latest is the latest date of a revision or record.
func latest(s *shop.Shop, records []*record.Record) entry.Date {
	var last entry.Date
	for _, r := range s.Revisions {
		if r.Date.String() > last.String() {
			last = r.Date
		}
	}
	for _, r := range records {
		if r.Date.String() > last.String() {
			last = r.Date
		}
	}
	return last
}

// until keeps the records of a day and of those before it.
func until(records []*record.Record, day entry.Date) []*record.Record {
	var kept []*record.Record
	for _, r := range records {
		if r.Date.String() <= day.String() {
			kept = append(kept, r)
		}
	}
	return kept
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
