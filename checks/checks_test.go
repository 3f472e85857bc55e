package checks_test

import (
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
)

// stateCase is a shop, the whole one with some changes, and what one check finds
// about one thing in it.
type stateCase struct {
	name    string
	changes []change
	check   string
	about   string
	state   checks.State
	by      checks.By
	weight  checks.Weight
	says    string // part of what it says
}

// stateCases are the cases of all families.
var stateCases = slices.Concat(firstStates, captureStates, collectorStates, dustStates, bondingStates, ductStates,
	buildingStates, airStates, electricalStates, controlStates, peopleStates, paperStates)

// Each check has a shop that meets it, one that does not or is asked, and one
// with the input missing. Flipping the compared figure flips the state.
func TestEveryCheck(t *testing.T) {
	for _, c := range stateCases {
		t.Run(c.name, func(t *testing.T) {
			found := pick(checks.Run(planOf(t, c.changes...)), c.check, c.about)
			if len(found) != 1 {
				t.Fatalf("%d findings, want one: %+v", len(found), found)
			}
			f := found[0]
			if f.State != c.state || f.By != c.by || f.Weight != c.weight {
				t.Errorf("got %s by %s, %s; want %s by %s, %s\n%s", f.State, f.By, f.Weight, c.state, c.by, c.weight, f.Says)
			}
			if !strings.Contains(f.Says, c.says) {
				t.Errorf("says %q, want something with %q", f.Says, c.says)
			}
			if f.Do == "" || (f.State == checks.Ask && f.Asks == "") {
				t.Errorf("no advice or no question: %+v", f)
			}
			if place.MatchString(f.Says + f.Do + f.Asks) {
				t.Errorf("a place is not filled: %s %s %s", f.Says, f.Do, f.Asks)
			}
		})
	}
}

var (
	plasticMain = change{`material = "spiral steel"
gauge = "24 ga"
route = [[20, 10, 8]`, `material = "smooth plastic"
route = [[20, 10, 8]`}
	// through leads the lathe's drop from the other side of the wall
	through = change{`route = [[20, 5, 2], [20, 5, 8], [20, 10, 8]]`, `route = [[20, 5, 2], [35, 5, 8], [20, 10, 8]]`}
)

func TestSchoolWithoutDwellingHasNoSeparationFinding(t *testing.T) {
	list := checks.Run(planOf(t, change{`divides = "garage from dwelling"`, ``}))
	if found := pick(list, "garage-separation", ""); len(found) != 0 {
		t.Errorf("a school without such a wall: %+v", found)
	}
}

func TestWholeShopMeetsEverything(t *testing.T) {
	for _, f := range checks.Run(planOf(t)) {
		if short(f) {
			t.Errorf("%s about %s: %s: %s", f.Check, f.About, f.State, f.Says)
		}
	}
}

// A confirmation takes the weight off a stop and leaves the state; it must
// name a figure that a check asks for.
func TestConfirmed(t *testing.T) {
	grinder := change{`kind = "lathe"
at = [20, 5]
makes = "wood"`, `kind = "bench grinder"
at = [20, 5]`}
	confirm := func(figure string) change {
		return change{`[[room]]
name = "Hall"`, `[[confirmed]]
figure = "` + figure + `"
value = "accepted with a spark trap"
by = "fire marshal's letter of 2026-10-02"
[[room]]
name = "Hall"`}
	}
	p := planOf(t, grinder, confirm("metal-on-wood-main"))
	f := pick(checks.Run(p), "metal-on-wood-main", "Cyclone")[0]
	if f.State != checks.NotMet || f.Weight != checks.Know || !strings.Contains(f.Says, "fire marshal's letter of 2026-10-02") {
		t.Errorf("confirmed: %+v", f)
	}
	if problems := checks.Problems(p); len(problems) != 0 {
		t.Error(problems)
	}
	f = pick(checks.Run(planOf(t, grinder, confirm("open-flue"))), "metal-on-wood-main", "Cyclone")[0]
	if f.Weight != checks.Stop {
		t.Errorf("another figure confirmed: %s", f.Weight)
	}
	problems := checks.Problems(planOf(t, confirm("metal-on-wood-mine")))
	if len(problems) != 1 || problems[0].Line == 0 || !strings.Contains(problems[0].Error(), `write "metal-on-wood-main"`) {
		t.Errorf("a figure nobody asks for: %v", problems)
	}
	problems = checks.Problems(planOf(t, confirm("zzz")))
	for _, id := range checks.Figures() {
		if len(problems) != 1 || !strings.Contains(problems[0].Error(), id) {
			t.Errorf("the list of figures lacks %s: %v", id, problems)
		}
	}
}

func TestOrder(t *testing.T) {
	list := checks.Run(planOf(t, change{`kind = "electric"`, `kind = "open-flue gas"`}, plasticMain))
	rank := map[checks.Weight]int{checks.Stop: 0, checks.Mend: 1, checks.Know: 2}
	if !slices.IsSortedFunc(list, func(a, b checks.Finding) int {
		if d := rank[a.Weight] - rank[b.Weight]; d != 0 {
			return d
		}
		if d := strings.Compare(a.Check, b.Check); d != 0 {
			return d
		}
		return a.At.Line - b.At.Line
	}) {
		t.Error("findings are not in order of weight, check and line")
	}
	if list[0].Weight != checks.Stop || checks.Standing(list) != 1 {
		t.Errorf("first %+v, %d standing", list[0], checks.Standing(list))
	}
}

// forbidden words: no text of ours claims that a shop is within the law.
func TestNothingClaims(t *testing.T) {
	for _, c := range checks.All {
		prose := string(content.CheckProse(c.ID))
		if len(prose) < 400 {
			t.Errorf("%s has no prose", c.ID)
		}
		for _, heading := range []string{"## What is compared", "## What to do", "## Whom to ask"} {
			if !strings.Contains(prose, heading) {
				t.Errorf("the prose of %s lacks %q", c.ID, heading)
			}
		}
		for _, word := range []string{"compliant", "exempt", " safe ", " safe."} {
			if strings.Contains(strings.ToLower(prose+c.Title), word) {
				t.Errorf("%s says %q", c.ID, word)
			}
		}
		if c.Title == "" || c.Needs == "" || strings.HasSuffix(c.Title, "?") {
			t.Errorf("%s: title %q, needs %q", c.ID, c.Title, c.Needs)
		}
	}
	ids := map[string]bool{}
	for _, c := range checks.All {
		if ids[c.ID] || checks.Find(c.ID) != c {
			t.Errorf("the id %s stands twice or is not found", c.ID)
		}
		ids[c.ID] = true
	}
}
