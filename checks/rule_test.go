package checks_test

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/source"
)

// ruleCase is how a figure of the rules shows in a finding: the check, the
// thing it is about, changes of the whole shop with which it keeps the figure
// and with which it does not. For a figure that [[confirmed]] may give there is
// a value that the first of the two shops keeps, and one that it does not.
type ruleCase struct {
	figure, check, about string
	kept, broken         []change
	threshold            bool // passing it brings a text into play
	driven               bool // the shop has its control half
	loose, tight         string
	best, worst          checks.State // where the check says something else than met and not met of it
}

// ruleCases are the cases of all families.
var ruleCases = slices.Concat(captureRules, collectorRules, dustRules, bondingRules, ductRules,
	buildingRules, airRules, electricalRules, controlRules, peopleRules, paperRules)

// under puts the whole shop under a pack of rules and, where there is one, in an
// edition of a text.
func under(r checks.Rule) change {
	text := fmt.Sprintf("rules = %q", r.Rules)
	if d, known := source.FindDocument(r.Basis.Document); known {
		text += fmt.Sprintf("\neditions = { %q = %q }", d.Short, r.Basis.Edition())
	}
	return change{`rules = "us"`, text}
}

// found is what a check finds about a thing in the whole shop with changes.
func found(t *testing.T, c ruleCase, changes ...change) checks.Finding {
	t.Helper()
	read := planOf
	if c.driven {
		read = drivenPlan
	}
	list := pick(checks.Run(read(t, changes...)), c.check, c.about)
	if len(list) != 1 {
		t.Fatalf("%s: %d findings of %s about %q", c.figure, len(list), c.check, c.about)
	}
	return list[0]
}

// Every row of every pack: a figure that was read decides, one from memory asks,
// one of practice advises, and a threshold that is not passed still asks.
func TestMarks(t *testing.T) {
	for _, c := range ruleCases {
		rows := 0
		for _, r := range checks.Rules() {
			if r.Figure != c.figure {
				continue
			}
			rows++
			kept, broken := found(t, c, append(slices.Clone(c.kept), under(r))...), found(t, c, append(slices.Clone(c.broken), under(r))...)
			about := fmt.Sprintf("%s under %s, %s: kept %s by %s, broken %s by %s", c.figure, r.Rules, r.Basis, kept.State, kept.By, broken.State, broken.By)
			if kept.State == broken.State && r.Basis.Mark.Decides() {
				t.Errorf("%s: the figure changes nothing", about)
			}
			if fault := markFault(c, r.Basis.Mark, kept, broken); fault != "" {
				t.Errorf("%s: %s", about, fault)
			}
			if !slices.Contains(broken.Basis, r.Basis) {
				t.Errorf("%s: it does not cite %s", about, r.Basis)
			}
		}
		if rows == 0 {
			t.Errorf("no row has the figure %s", c.figure)
		}
	}
}

// states are what a figure that decides comes to, kept and broken: met and not
// met, or a question and in play.
func (c ruleCase) states() (best, worst checks.State) {
	best, worst = cmp.Or(c.best, checks.Met), cmp.Or(c.worst, checks.NotMet)
	if c.threshold {
		best, worst = checks.Ask, checks.InPlay
	}
	return best, worst
}

// markFault says what a pair of states breaks of what a mark allows; empty where
// nothing.
func markFault(c ruleCase, mark source.Mark, kept, broken checks.Finding) string {
	best, worst := c.states()
	decided := []checks.State{checks.Met, checks.NotMet, checks.InPlay}
	switch {
	case mark.Decides() && (broken.State != worst || kept.State != best):
		return fmt.Sprintf("a figure that was read decides: want %s and %s", best, worst)
	case mark.Decides() && broken.By != checks.ByRule:
		return "it is decided by rule"
	case mark == source.Memory && (slices.Contains(decided, broken.State) || slices.Contains(decided, kept.State)):
		return "a figure from memory decides nothing"
	case mark == source.Memory && broken.State == checks.Ask && broken.Asks == "":
		return "nobody is asked"
	case mark == source.Practice && (slices.Contains(decided, broken.State) || slices.Contains(decided, kept.State)):
		return "common practice decides nothing"
	}
	return ""
}

// Under no rules, and under a pack that has no row of a figure, nothing is
// decided: the figure is shown and asked.
func TestNoRules(t *testing.T) {
	for _, c := range ruleCases {
		for _, pack := range []string{"none", "us", "uk", "eu", "quebec"} {
			if slices.ContainsFunc(checks.Rules(), func(r checks.Rule) bool { return r.Figure == c.figure && r.Rules == pack }) {
				continue
			}
			f := found(t, c, append(slices.Clone(c.broken), change{`rules = "us"`, fmt.Sprintf("rules = %q", pack)})...)
			if f.State == checks.Met || f.State == checks.NotMet && f.By == checks.ByRule || f.State == checks.InPlay {
				t.Errorf("%s under %s, broken: %s by %s", c.figure, pack, f.State, f.By)
			}
		}
	}
}

// A figure that the owner has had confirmed decides whatever the rules; moved
// past what the shop has, it decides the other way.
func TestConfirmedFigureFlips(t *testing.T) {
	for _, c := range ruleCases {
		if c.loose == "" {
			continue
		}
		for _, pack := range []string{"us", "none"} {
			rules := change{`rules = "us"`, fmt.Sprintf("rules = %q", pack)}
			say := func(value string) change {
				return change{"[[stop]]", fmt.Sprintf("[[confirmed]]\nfigure = %q\nvalue = %q\nby = \"building official\"\n[[stop]]", c.figure, value)}
			}
			kept := found(t, c, append(slices.Clone(c.kept), rules, say(c.loose))...)
			broken := found(t, c, append(slices.Clone(c.kept), rules, say(c.tight))...)
			if best, worst := c.states(); kept.State != best || broken.State != worst {
				t.Errorf("%s under %s: %s where it is %s, %s where it is %s", c.figure, pack, kept.State, c.loose, broken.State, c.tight)
			}
		}
	}
}

// Every figure of the rules has a case, every check that compares with one names
// it, and the figures that [[confirmed]] may give are flipped.
func TestEveryRuleHasACase(t *testing.T) {
	compared := map[string]string{}
	for _, c := range checks.All {
		for _, figure := range c.Compares {
			compared[figure] += c.ID + " "
		}
	}
	for _, r := range checks.Rules() {
		if compared[r.Figure] == "" {
			t.Errorf("no check compares with %s", r.Figure)
		}
		i := slices.IndexFunc(ruleCases, func(c ruleCase) bool { return c.figure == r.Figure })
		if i < 0 {
			t.Errorf("no case has the figure %s", r.Figure)
			continue
		}
		if c := ruleCases[i]; r.Kind != 0 && c.loose == "" || !strings.Contains(compared[r.Figure], c.check+" ") {
			t.Errorf("%s: its case flips nothing, or is of a check that does not compare with it", r.Figure)
		}
	}
}
