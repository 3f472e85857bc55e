package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Confirm is one figure that [[confirmed]] may give to a check.
type Confirm struct {
	ID      string
	Means   string         // what it is, in words
	Kind    unit.Kind      // of its value; nought for words
	Settles bool           // it answers the stop of the check
	From    []source.Basis // the texts that it takes the place of, besides the figures of its id
}

// settledBy is the answer in words that settles the stop of a check; its id
// is the check's own.
func settledBy(id, means string) []Confirm {
	return []Confirm{{ID: id, Means: means, Settles: true}}
}

// Wants says what the value of a figure is to be.
func (c Confirm) Wants() string {
	if c.Kind == 0 {
		return say("finding-confirm.words")
	}
	if c.Kind == unit.KindDensity { // of dust in air, not of the air
		return say("finding-confirm.trace")
	}
	return say("finding-confirm.such-as", c.Kind.Example())
}

// Confirms lists what [[confirmed]] may give to a check: the figures that it
// compares with and that have a unit, and its answers.
func (c *Check) Confirms() []Confirm {
	var list []Confirm
	for _, figure := range c.Compares {
		if kind := rowsOf(figure)[0].Kind; kind != 0 {
			list = append(list, Confirm{ID: figure, Means: say("finding-figure." + figure), Kind: kind})
		}
	}
	return append(list, c.Answers...)
}

// Figures lists the ids that [[confirmed]] may name.
func Figures() []string {
	var ids []string
	for _, c := range All {
		for _, f := range c.Confirms() {
			ids = append(ids, f.ID)
		}
	}
	slices.Sort(ids)
	return ids
}

// findConfirm finds a figure by its id.
func findConfirm(id string) (Confirm, bool) {
	for _, c := range All {
		for _, f := range c.Confirms() {
			if f.ID == id {
				return f, true
			}
		}
	}
	return Confirm{}, false
}

// settle takes the weight off a stop that the owner has had confirmed by an
// authority, an electrician or an engineer. The state stays what it is.
func settle(p *plan.Plan, c *Check, f *Finding) {
	if f.Weight != Stop {
		return
	}
	for _, answer := range c.Confirms() {
		if !answer.Settles {
			continue
		}
		for _, given := range p.Shop.Confirmed {
			if given.Figure == answer.ID {
				f.Weight = Know
				f.Settled = given.By
				f.Says = join(f.Says, say("finding-common.settled", given.Value, given.By))
			}
		}
	}
}
