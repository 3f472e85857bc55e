// Package plan knows the order in which the rooms of the house are asked and
// keeps their answers: a Plan is everything reckoned about one shop, read
// only. It holds no formula.
package plan

import (
	"dustbook/plan/control"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/room"
	"dustbook/plan/shop"
	"dustbook/plan/takeoff"
)

// Plan is one shop, reckoned as of a day.
type Plan struct {
	Shop    *shop.Shop
	AsOf    entry.Date
	Air     *duct.Reckoning
	Rooms   *room.Reckoning
	Takeoff *takeoff.Reckoning
	Control *control.Reckoning

	Records []*record.Record // up to the day, in the order of their files

	names record.Names
}

// Make reckons a shop as of a day; with the zero date, as of the latest date
// on which something happened, by the shop file's revisions and the records.
// Records of a later day are left out.
func Make(s *shop.Shop, records []*record.Record, asOf entry.Date) *Plan {
	if asOf == (entry.Date{}) {
		asOf = latest(s, records)
	}
	ducts := duct.Reckon(s)
	return &Plan{Shop: s, AsOf: asOf, Air: ducts, Rooms: rooms(s, ducts), Takeoff: takeoff.Reckon(s, drawn(ducts)), Control: control.Reckon(s), Records: until(records, asOf), names: Names(s)}
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
