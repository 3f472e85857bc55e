package checks

import (
	"slices"
	"strings"
	"unicode"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

var controlBox = &Check{
	ID:       "control-box",
	Name:     say("check.control-box.name"),
	Title:    say("check.control-box.title"),
	Needs:    "control.enclosure_type, shop.rules",
	Whom:     Electrician,
	Compares: []string{"dust-tight-box", "settling-dust-box", "open-box"},
	Run: func(p *plan.Plan, report func(Finding)) {
		if p.Shop.Control.Given {
			report(boxed(p.Shop))
		}
	},
}

// boxed judges the type of the control box. It says nothing of a listing for
// places with combustible dust: that is another thing.
func boxed(s *shop.Shop) Finding {
	keeps, settling, open := rulesOn(s, "dust-tight-box"), rulesOn(s, "settling-dust-box"), rulesOn(s, "open-box")
	f := Finding{At: s.Control.At, By: ByRule, Weight: Know, Basis: []source.Basis{keeps.Basis}}
	if !s.Control.EnclosureType.Known() {
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-control-box.not-given.says"), say("finding-control-box.not-given.do")
		return f
	}
	is, rule := s.Control.EnclosureType.V, keeps
	switch of := typesIn(is); {
	case amongTypes(of, keeps):
		f.State = softly(keeps, true)
		f.Says, f.Do = say("finding-control-box.keeps.says", is, textOf(keeps)), say("finding-control-box.keeps.do")
	case amongTypes(of, settling):
		rule = settling
		if f.State = Ask; settling.Decides {
			f.State = Thin
		}
		f.Says, f.Do = say("finding-control-box.settling.says", is, textOf(settling)), say("finding-control-box.other.do")
	case amongTypes(of, open):
		rule = open
		if f.State = open.holds(false); f.State == NotMet {
			f.Weight = Mend
		}
		f.Says, f.Do = say("finding-control-box.open.says", is, textOf(open)), say("finding-control-box.other.do")
	default:
		f.State = Ask
		f.Says, f.Do = say("finding-control-box.unknown.says", is), say("finding-control-box.unknown.do")
	}
	f.Says = join(f.Says, unread(rule))
	if f.State != Met && f.State != Advice {
		f.Asks = say("finding-control-box.asks", is)
	}
	return f
}

// typesIn are the types that the words of a label name; none where it names a
// degree of protection of another system.
func typesIn(text string) []string {
	list := strings.FieldsFunc(strings.ToUpper(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	if slices.ContainsFunc(list, func(word string) bool { return strings.HasPrefix(word, foreignType) }) {
		return nil
	}
	return list
}

// foreignType starts the words of a label of the other system.
const foreignType string = "IP"

// amongTypes reports whether one of the types stands in the list of a figure.
func amongTypes(types []string, rule ruled) bool {
	return slices.ContainsFunc(strings.Split(rule.Value, ", "), func(t string) bool { return slices.Contains(types, t) })
}
