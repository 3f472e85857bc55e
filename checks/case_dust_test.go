package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

// Cases of dust and its collector, as shop files of testdata/cases.
func TestCasesOfDust(t *testing.T) {
	letter := change{"held = false", "held = true\ndate = 2026-10-02\nby = \"authority having jurisdiction\""}
	for _, c := range []struct {
		file    string
		changes []change
		expected
	}{
		// C23: the sum of what the machines need counts, not the floor and not the fan
		{"c23-one-person-shop", nil, expected{check: "dust-scope", state: checks.InPlay, by: checks.ByRule, weight: checks.Know, says: "1600 sq ft of floor, and its machines together need 1890 cfm"}},
		{"c23-one-person-shop", []change{{`flow = "884 cfm"`, `flow = "491 cfm"`}}, expected{check: "dust-scope", state: checks.Ask, by: checks.ByRule, weight: checks.Know, says: "Neither is passed"}},
		{"c23-one-person-shop", []change{{`flow = "884 cfm"`, `flow = "492 cfm"`}}, expected{check: "dust-scope", state: checks.InPlay, by: checks.ByRule, weight: checks.Know, says: "in play"}},
		// the newer text took the older one in; its clauses were not read
		{"c23-one-person-shop", []change{{`"NFPA 664" = "2012"`, `"NFPA 660" = "2025"`}}, expected{check: "dust-scope", state: checks.Ask, by: checks.ByRule, weight: checks.Know, says: "from memory"}},
		// and classification is another question: a letter answers it, a blank is open
		{"c23-one-person-shop", nil, expected{check: "area-classification", state: checks.Ask, by: checks.ByGiven, weight: checks.Know, says: "an open item"}},
		{"c23-one-person-shop", []change{letter}, expected{check: "area-classification", state: checks.Met, by: checks.ByGiven, weight: checks.Know, says: "By authority having jurisdiction, letter dated 2026-10-02"}},
		// C25: a vacuum cleaner, not air
		{"c25-plenum", nil, expected{check: "dust-cleaning", about: "Shop", state: checks.NotMet, by: checks.ByRule, weight: checks.Mend, says: "blown off"}},
		{"c25-plenum", []change{{`cleaned = "blowing"`, `cleaned = "vacuum"`}}, expected{check: "dust-cleaning", about: "Shop", state: checks.Met, by: checks.ByRule, weight: checks.Know, says: "vacuum cleaner"}},
		// C34: whether the air may come back is decided by nobody who knows the
		// filter, until its maker has said what it holds back
		{"c34-school-below", nil, expected{check: "returned-air-filter", about: "Collector", state: checks.NotGiven, by: checks.ByGiven, weight: checks.Know, says: "Its air comes back into a room"}},
		{"c34-school-below", []change{{`filter = { clean`, `filter = { removes = 0.99, removes_at = "10 um", clean`}}, expected{check: "returned-air-filter", about: "Collector", state: checks.NotMet, by: checks.ByRule, weight: checks.Mend, says: "99 % of particles"}},
		{"c34-school-below", []change{{`filter = { clean`, `filter = { removes = 0.999, removes_at = "2 um", clean`}}, expected{check: "returned-air-filter", about: "Collector", state: checks.Met, by: checks.ByRule, weight: checks.Know, says: "99.9 % of particles"}},
		{"c34-school-below", nil, expected{check: "collector-place", about: "Collector", state: checks.Ask, by: checks.ByTopology, weight: checks.Know, says: "It stands in Collector closet"}},
	} {
		t.Run(c.file+" "+c.check, func(t *testing.T) { c.hold(t, checks.Run(readCase(t, c.file, c.changes...))) })
	}
}

// C34: a collector whose air comes back is asked for spark detection as well;
// one whose air goes outdoors is not.
func TestCaseOfReturnedAir(t *testing.T) {
	const sparks = "spark detection"
	back := only(t, checks.Run(readCase(t, "c34-school-below")), "explosion-protection", "Collector")
	out := only(t, checks.Run(readCase(t, "c34-school-below", change{"exhaust = \"returns to room\"", "exhaust = \"outside\""}, change{"returns_to = \"Wood shop\"\n", ""})), "explosion-protection", "Collector")
	if !strings.Contains(back.Asks, sparks) || strings.Contains(out.Asks, sparks) {
		t.Errorf("it comes back: %s; it goes out: %s", back.Asks, out.Asks)
	}
}
