package templates

import (
	"strconv"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// setName is the machines of a set, in file order.
func setName(s *duct.Set) string { return strings.Join(names(s.Machines), ", ") }

// setWith is the machines of a set, and the gates opened as well.
func (b *Book) setWith(s *duct.Set, also []*shop.Gate) string {
	if len(also) == 0 {
		return setName(s)
	}
	return b.words.Text("together.with-also", setName(s), namesOfGates(also))
}

// signWord says what a sign of the table stands for, with how many gates at once
// were tried.
func (b *Book) signWord(sign string, tried int) string {
	return b.words.Text("together.word."+sign, strconv.Itoa(tried))
}

// whyBroken says what breaks a set, of each collector and state of its filter.
func (b *Book) whyBroken(s *duct.Set) []string { return b.why(s, s.On) }

// whyWorst says what breaks a set, of each collector once: in the last state of
// its filter in which it fails.
func (b *Book) whyWorst(s *duct.Set) []string {
	var on []duct.Verdict
	for _, v := range s.On {
		switch last := len(on) - 1; {
		case v.Captured && v.Carried:
		case last >= 0 && on[last].Collector == v.Collector:
			on[last] = v
		default:
			on = append(on, v)
		}
	}
	return b.why(s, on)
}

// why says what breaks a set, by some of its verdicts.
func (b *Book) why(s *duct.Set, on []duct.Verdict) (list []string) {
	say := func(key string, about ...string) string { return b.words.Text("together.why."+key, about...) }
	if s.Works {
		return nil
	}
	if s.Apart != nil {
		return []string{say("apart", s.Apart.Name)}
	}
	for _, p := range s.Bare() {
		list = append(list, say("no-duct", p.Full()))
	}
	if len(s.On) == 0 && len(list) == 0 {
		return []string{say("unserved")}
	}
	for _, v := range on {
		state := b.stateOf(v)
		if !v.OnCurve {
			list = append(list, say("curve", v.Collector.Name, b.words.Because(v.Why)))
			continue
		}
		if v.Port != nil && v.Port.Duct != nil {
			list = append(list, say("air", v.Port.Full(), unit.Percent(v.PortShare), state))
		}
		switch {
		case v.Slowest == nil:
		case v.Hose:
			list = append(list, say("hose", v.Slowest.Duct.Name, unit.Percent(v.Speed), state))
		default:
			list = append(list, say("dust", v.Slowest.Name(), unit.Percent(v.Speed), state))
		}
	}
	return list
}

// stateOf says in which state the filter of a verdict is.
func (b *Book) stateOf(v duct.Verdict) string {
	if duct.FilterOpen(v.Collector) {
		return b.words.Text("together.filter-unknown")
	}
	return b.filterState(v.Filter)
}

// filterState says in which state a filter is.
func (b *Book) filterState(filter string) string {
	switch filter {
	case duct.Clean:
		return b.words.Text("together.clean")
	case duct.ChangeOut:
		return b.words.Text("together.change-out")
	}
	return b.words.Text("together.no-filter")
}

// helps says what would mend a set. Where it needs several collectors, each is
// named.
func (b *Book) helps(s *duct.Set) (list []string) {
	say := func(key string, about ...string) string { return b.words.Text("together.helps."+key, about...) }
	switch word := s.Stands(); word {
	case "works":
		return nil
	case "apart", "air", "curve":
		return []string{say(word)}
	case "unserved":
		return []string{say("duct")}
	}
	for _, r := range s.Relief {
		says := say("none")
		switch {
		case len(r.Gates) > 0:
			says = say("open", namesOfGates(r.Gates))
		case r.Through >= 0:
			says = say("bound", strconv.Itoa(r.Through))
		}
		if s.Several() {
			says = say("on", r.Collector.Name, says)
		}
		list = append(list, says)
	}
	return list
}

func namesOfGates(gates []*shop.Gate) string {
	return strings.Join(namesIn(gates, func(g *shop.Gate) string { return g.Name }), ", ")
}
