package checks

import (
	"slices"
	"strings"

	"dustbook/plan/shop"
)

// ductHeld is one duct held against a figure of the rules.
type ductHeld struct {
	duct  *shop.Duct
	state State
	rule  ruled
	got   string // the duct with what it has, as a sentence lists it
}

// worstFirst is how states stand where one finding is for several ducts.
var worstFirst = []State{NotMet, Ask, Thin, NotGiven, Advice, Met}

// softly is what a figure comes to where one finding is for several ducts: one
// that is kept and does not decide is advice, so that nobody is asked about it.
func softly(r ruled, kept bool) State {
	if state := r.holds(kept); state != Ask || !kept {
		return state
	}
	return Advice
}

// worstDucts are the ducts that stand worst, and how.
func worstDucts(list []ductHeld) (State, []ductHeld) {
	for _, s := range worstFirst {
		if of := ductsIn(list, s); len(of) > 0 {
			return s, of
		}
	}
	return "", nil
}

func ductsIn(list []ductHeld, s State) []ductHeld {
	return slices.DeleteFunc(slices.Clone(list), func(h ductHeld) bool { return h.state != s })
}

// gotOf are ducts as a sentence lists them.
func gotOf(list []ductHeld) string {
	var names []string
	for _, h := range list {
		names = append(names, h.got)
	}
	return listed(firstFew(names))
}

// ductsOf is the finding about the ducts of a collector that stand worst,
// without its words.
func ductsOf(c *shop.Collector, list []ductHeld) (f Finding, worst []ductHeld) {
	f = Finding{About: c.Name, Kind: "collector", At: c.At, By: ByRule, Weight: Know}
	f.State, worst = worstDucts(list)
	switch f.State {
	case NotMet:
		f.Weight = Mend
	case NotGiven:
		f.By = ByGiven
	}
	for _, h := range worst {
		if !slices.Contains(f.Basis, h.rule.Basis) {
			f.Basis = append(f.Basis, h.rule.Basis)
		}
	}
	return f, worst
}

// ductsOn are the ducts whose air goes to a collector, in the order of the file.
func ductsOn(s *shop.Shop, c *shop.Collector) []*shop.Duct {
	return slices.DeleteFunc(slices.Clone(s.Ducts), func(d *shop.Duct) bool { return d.Collector != c })
}

// remarkOf says why the figure of the worst ducts does not decide.
func remarkOf(list []ductHeld) string {
	for _, h := range list {
		if text := h.rule.remark(); text != "" {
			return text
		}
	}
	return ""
}

// unread is remark for a text without a number.
func unread(r ruled) string {
	switch {
	case r.Decides || r.Other && r.Basis.Mark.Decides() || r.Local:
		return r.remark()
	case r.Elsewhere:
		return say("finding-duct.elsewhere.says")
	}
	return say("finding-duct.memory.says")
}

// textsOf are the texts that some figures are of, with their clauses, each once.
func textsOf(rules ...ruled) string {
	var list []string
	for _, r := range rules {
		list = append(list, r.Basis.In(english.Mark))
	}
	return strings.Join(unique(list), "; ")
}

// textOf is the text that a figure is of, by its short name; a figure that was
// confirmed is of the file.
func textOf(r ruled) string {
	if r.Confirmed {
		return say("finding-duct.confirmed", r.Basis.Clause)
	}
	return shortOf(r.Basis)
}
