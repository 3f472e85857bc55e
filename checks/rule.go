package checks

import (
	"embed"
	"io/fs"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Rule is one figure that a pack of rules compares with: what one text says in
// one edition. A pack is the rows that carry its name; it adds figures, never
// code. The first row of a figure in a pack is what counts where the shop names
// no edition.
type Rule struct {
	Rules  string    // a word of the group "rules"
	Figure string    // the id by which checks ask for it, and [[confirmed]] names it
	Value  string    // with its unit; empty where the text says it without a number
	Kind   unit.Kind // of its value; nought for a plain number, words and nothing
	Place  string    // the state or country whose text it is, where the pack is of more than that
	Basis  source.Basis
}

//go:embed rules/*.csv
var ruleFiles embed.FS

var ruleRows = mustRules(ruleFiles)

// mustRules reads every file of rows, in the order of their names. A malformed
// file is a fault of the program, found when it starts.
func mustRules(files fs.FS) []Rule {
	names, err := fs.Glob(files, "rules/*.csv")
	if err != nil {
		panic("checks: " + err.Error())
	}
	var list []Rule
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			panic("checks: " + err.Error())
		}
		for _, r := range source.MustRows(name, data, "rules", "figure", "value", "kind", "edition", "place") {
			list = append(list, Rule{r.Text("rules"), r.Text("figure"), r.Text("value"), kindNamed(r.Text("kind")), r.Text("place"), r.Basis})
		}
	}
	return list
}

// kindNamed is the kind of quantity of a name; nought where there is none.
func kindNamed(name string) unit.Kind {
	for _, k := range unit.Kinds() {
		if k.String() == name {
			return k
		}
	}
	if name != "" {
		panic("checks: rules: no quantity is called " + name)
	}
	return 0
}

// Rules lists every figure of every pack, in the order of the data.
func Rules() []Rule { return ruleRows }

// ruled is what the shop's rules say of a figure.
type ruled struct {
	Rule
	Decides   bool // it may give met and not met in this shop
	Elsewhere bool // no text of the shop's rules was read: it is another's, shown and asked
	Other     bool // the shop names another edition of its text than the one that was read
	Local     bool // it is the text of one place, and the shop does not name it
	Confirmed bool // the owner has had it confirmed
}

// rulesOn is what the shop's rules say of a figure: what the owner has had
// confirmed, else the row of the shop's pack in the edition that the shop names,
// else that of the first pack that has one, which is shown and asked. The text of
// one state or country decides for the rest of its pack only where the shop names
// it.
func rulesOn(s *shop.Shop, figure string) ruled {
	rows := rowsOf(figure)
	own := slices.DeleteFunc(slices.Clone(rows), func(r Rule) bool { return r.Rules != s.Rules })
	var is ruled
	if len(own) == 0 {
		is = ruled{Rule: rows[0], Elsewhere: true}
	} else {
		var named bool
		is.Rule, named, is.Other = adopted(s, own)
		is.Local = is.Place != "" && !named
		is.Decides = !is.Other && !is.Local && is.Basis.Mark.Decides()
	}
	for _, c := range s.Confirmed {
		if c.Figure != figure || is.Kind == 0 {
			continue
		}
		if _, err := unit.ReadKind(is.Kind, c.Value); err == nil {
			is = ruled{Rule: Rule{Rules: s.Rules, Figure: figure, Value: c.Value, Kind: is.Kind, Basis: given(c.By)}, Decides: true, Confirmed: true}
		}
	}
	return is
}

// adopted is the row of the edition that the shop names of its text; the first
// row where it names none, and as another edition where no row is of that one.
func adopted(s *shop.Shop, own []Rule) (rule Rule, named, other bool) {
	for _, e := range s.Editions {
		var of []Rule
		for _, r := range own {
			if d, known := source.FindDocument(r.Basis.Document); known && d.Short == e.Text {
				of = append(of, r)
			}
		}
		for _, r := range of {
			if r.Basis.Edition() == e.Edition {
				return r, true, false
			}
		}
		if len(of) > 0 && of[0] == own[0] {
			rule, named, other = of[0], true, true
		}
	}
	if other {
		return rule, named, other
	}
	return own[0], false, false
}

// rowsOf are the rows of a figure over all packs; a figure without any is a
// fault of the program.
func rowsOf(figure string) []Rule {
	var list []Rule
	for _, r := range ruleRows {
		if r.Figure == figure {
			list = append(list, r)
		}
	}
	if len(list) == 0 {
		panic("checks: no rule has a figure " + figure)
	}
	return list
}

// measureOf is the figure as a quantity; a value that is none is a fault of the
// program.
func measureOf[Q unit.Measure](r ruled) Q { return unit.Must[Q](r.Value) }

// holds says what a comparison with the figure comes to: met or not met where it
// decides; where it does not, a question, or advice of common practice.
func (r ruled) holds(kept bool) State {
	switch {
	case r.Decides && kept:
		return Met
	case r.Decides:
		return NotMet
	case r.Basis.Mark == source.Practice:
		return Advice
	}
	return Ask
}

// plays says what a threshold comes to that brings a text into play: in play
// where it is passed and the figure decides. One that is not passed is still a
// question, and so is every other: nobody is let off by a number.
func (r ruled) plays(passed bool) State {
	if passed && r.Decides {
		return InPlay
	}
	return Ask
}

// unlessMet is a question, and none where nothing is left to ask.
func unlessMet(s State, asks string) string {
	if s == Met {
		return ""
	}
	return asks
}

// remark says why a figure does not decide; empty where it does.
func (r ruled) remark() string {
	switch {
	case r.Decides:
		return ""
	case r.Other && r.Basis.Mark.Decides():
		return say("finding-rule.other-edition", r.Basis.Title(), r.Basis.Edition())
	case r.Elsewhere && r.Basis.Mark == source.Memory:
		return join(say("finding-rule.elsewhere"), say("finding-rule.memory"))
	case r.Elsewhere:
		return say("finding-rule.elsewhere")
	case r.Local:
		return say("finding-rule.local", r.Place)
	case r.Basis.Mark == source.Practice:
		return say("finding-rule.practice")
	}
	return say("finding-rule.memory")
}
