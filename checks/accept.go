package checks

import (
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// Acceptance is what the file says of a finding that someone lives with for
// now.
type Acceptance struct {
	Reason, Role string
	Until        entry.Date // zero where it has no end
}

// Says is the acceptance in words: until when, by whom and why.
func (a *Acceptance) Says() string {
	key := "finding-common.accepted-until-by"
	switch {
	case a.Until == (entry.Date{}) && a.Role == "":
		key = "finding-common.accepted"
	case a.Until == (entry.Date{}):
		key = "finding-common.accepted-by"
	case a.Role == "":
		key = "finding-common.accepted-until"
	}
	return say(key, a.Reason, a.Role, a.Until.String())
}

// accept notes that a finding is accepted. A stop cannot be: that is a
// problem of the file. Past its last day an acceptance does not count, and
// the finding says so.
func accept(p *plan.Plan, f *Finding) {
	if f.Weight == Stop || f.State == Met {
		return
	}
	for _, a := range p.Shop.Accepted {
		if a.Check != f.Check || a.About != f.About {
			continue
		}
		if lapsed(p, a) {
			f.Says = join(f.Says, say("finding-common.lapsed", a.Until.String()))
			continue
		}
		f.Accepted = &Acceptance{a.Reason, a.Role, a.Until}
	}
}

// lapsed reports whether an acceptance has run out on the day of the plan.
func lapsed(p *plan.Plan, a *shop.Accepted) bool {
	return a.Until != (entry.Date{}) && p.AsOf.String() > a.Until.String()
}
