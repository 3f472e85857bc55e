package checks_test

import (
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// A machine alone that works is thin among the sets where a finding about its
// air or dust is, and nowhere better than the findings.
func TestSetsAreThinWhereFindingsAre(t *testing.T) {
	filter := "filter = { clean = \"0.4 inwg\", change = \"2 inwg\", at = \"800 cfm\" }\n"
	small := string(content.Small())
	curve := strings.Replace(small, `claims = { flow = "1500 cfm", suction = "11 inwg" }`, `fan_curve = [["0 cfm", "14 inwg"], ["900 cfm", "12 inwg"], ["1500 cfm", "4 inwg"]]`, 1)
	own := strings.ReplaceAll(curve, `, at = [`, `, transport = "30 ft/s", at = [`)
	easy := strings.ReplaceAll(strings.ReplaceAll(own, `flow = "350 cfm"`, `flow = "200 cfm"`), `flow = "500 cfm"`, `flow = "200 cfm"`)
	thin, sure := 0, 0
	for _, text := range []string{string(content.Example()), small, curve, own, easy, strings.Replace(easy, filter, "", 1)} {
		s, problems := shop.Read("shop.toml", []byte(text))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		p := plan.Make(s, nil, entry.Date{})
		states := map[string][]checks.State{}
		for _, f := range checks.Run(p) {
			if f.Kind == "machine" && (f.Check == "air-captured" || f.Check == "dust-carried") {
				states[f.About] = append(states[f.About], f.State)
			}
		}
		for _, set := range p.Together().All {
			if len(set.Machines) > 1 || !set.Works {
				continue
			}
			found := states[set.Machines[0].Name]
			switch {
			case slices.Contains(found, checks.Thin):
				thin++
				if len(set.Thin) == 0 {
					t.Errorf("%s: findings %v, and its set is in no doubt", set.Machines[0].Name, found)
				}
			case len(set.Thin) == 0:
				sure++
			default: // another port or stretch than the one that the finding names
				if slices.ContainsFunc(set.Thin, func(d duct.Doubt) bool { return d != duct.ByNeed && d != duct.BySpeed }) {
					t.Errorf("%s: findings %v, and its set is thin by %v", set.Machines[0].Name, found, set.Thin)
				}
			}
		}
	}
	if thin < 5 || sure < 2 {
		t.Errorf("%d thin and %d sure: too few to say anything", thin, sure)
	}
}
