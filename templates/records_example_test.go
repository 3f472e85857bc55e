package templates

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// exampleBook is the book of the example with its records, as it is published.
func exampleBook(t testing.TB) *Book {
	t.Helper()
	s, problems := shop.Read("school.toml", content.Example())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	records, problems := record.ReadFolder(content.ExampleRecords())
	if problems = append(problems, plan.CheckRecords(s, records)...); len(problems) > 0 {
		t.Fatal(problems)
	}
	p := plan.Make(s, records, entry.Date{})
	b, err := New(p, checks.Run(p))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The records of the example show what records are for: readings that agree,
// one that changed, one that is too low; points in every state, one without a
// rule. None is later than the newest revision.
func TestExampleRecords(t *testing.T) {
	b := exampleBook(t)
	revisions := b.Plan.Shop.Revisions
	if last := revisions[len(revisions)-1].Date; b.Plan.AsOf != last {
		t.Errorf("as of %s, the newest revision is of %s", b.Plan.AsOf, last)
	}
	outcomes, states := map[plan.Outcome]int{}, map[string]int{}
	agreed, changed, ruleless := map[string]bool{}, false, false
	for _, r := range b.Plan.Records {
		for _, reading := range r.Readings {
			outcome := b.Plan.Expect(reading).Judge(reading.Value)
			outcomes[outcome]++
			key := reading.Of + reading.At + reading.Use
			changed = changed || outcome == plan.Under && agreed[key]
			agreed[key] = agreed[key] || outcome == plan.Agrees
		}
		for _, item := range r.Items {
			states[itemState(item)]++
			ruleless = ruleless || item.Rule == ""
		}
	}
	if outcomes[plan.Agrees] < 5 || outcomes[plan.Under] == 0 || outcomes[plan.TooLow] == 0 || outcomes[plan.NotJudged] == 0 {
		t.Errorf("the readings are %v", outcomes)
	}
	if !changed {
		t.Error("no reading is under its mark that agreed before")
	}
	if states["open"] == 0 || states["answered"] == 0 || states["closed"] == 0 || !ruleless {
		t.Errorf("the points are %v, one without a rule: %v", states, ruleless)
	}
}

// The sheets of the example show its records.
func TestExampleRecordsAreShown(t *testing.T) {
	b := exampleBook(t)
	for path, texts := range map[string][]string{
		"records.html":                         {"2026-11-20: inspection", "done: weekly look, bin and bin look", "role: shop steward", "2026-11-10: letter", "2026-11-06: service", "2026-10-16: commissioning", "all drawn in", "too low"},
		"letters-2026-11-10-letter-1.html":     {"open points", "1. Have the fire extinguisher", "Service of the extinguishers", "2. Send the dust hazard analysis", "Dust hazard analysis", "3. Say in writing", "none named", "4. Show that"},
		packetPath:                             {"16 readings are on record", "Letter of 2026-11-10, insurer", "4 2 1 1"},
		"commissioning.html":                   {"3 of 13 hoods have been measured"},
		b.Path("use", "Drum sander"):           {"Measured", "2.9 inwg", "under", "3.6 inwg", "agrees"},
		b.Path("collector", "Bench collector"): {"fan pressure", "8.7 inwg", "agrees"},
		"upkeep.html":                          {"2026-11-20"},
	} {
		_, words := b.sheet(t, path)
		inOrder(t, path, words, texts...)
	}
}

// What a record says was expected stands only where the plan expects another
// value today, and a text that nothing reckons is held against nothing.
func TestWhatTheRecordExpected(t *testing.T) {
	b := exampleBook(t)
	if body, _ := b.sheet(t, "records.html"); strings.Contains(body, "in the record:") {
		t.Error("what was expected is what is expected, and is said twice")
	}
	changed := strings.Replace(string(content.Example()), `claims = { flow = "1450 cfm", suction = "9.5 inwg" }`, `claims = { flow = "1450 cfm", suction = "9 inwg" }`, 1)
	s, problems := shop.Read("shop.toml", []byte(changed))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := plan.Make(s, b.Plan.Records, entry.Date{})
	other, err := New(p, checks.Run(p))
	if err != nil {
		t.Fatal(err)
	}
	_, words := other.sheet(t, "records.html")
	inOrder(t, "after a change", words, "smoke at Drum sander/hood Drum sander all drawn in —", "3.6 inwg", "in the record: 3.76 in wg", "sound level at Bench room", "the plan has no figure for it")
}
