package checks_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/unit"
)

// Ratings are read as labels in the United States have them; a label that counts
// otherwise is not turned into one.
func TestLabels(t *testing.T) {
	for text, read := range map[string]bool{
		"2-A:10-B:C": true, "4-a:80-b:c": true, "2-A 10-B C": true, "2-A, 10-B, C": true, "10-B:C": true, "D": true, "K": true, "40-A": true,
		"2A:10B:C": false, "21A 144B C": false, "A": false, "B:C": false, "0-A": false, "-A": false, "-2-A": false, "2-": false, "2-C": false, "2-D": false,
		"2-A;10-B": false, "1000-A": false, "2-A:X": false, "ABC": false, "powder": false, "2-Ä": false, ":": false,
	} {
		f := only(t, checks.Run(planOf(t, hung("1, 7", text))), "extinguisher-rating", "")
		if got := f.State != checks.NotGiven; got != read {
			t.Errorf("%q: read is %v, want %v: %s", text, got, read, f.Says)
		}
		if !read && !strings.Contains(f.Says, text) {
			t.Errorf("%q is not named: %s", text, f.Says)
		}
	}
}

// The farthest place of a floor, against what geometry gives. The straight
// distance is a figure of the finding.
func TestFarthestPlace(t *testing.T) {
	four := "[[extinguisher]]\nat = [0.1, 0.1]\n[[extinguisher]]\nat = [59.9, 0.1]\n[[extinguisher]]\nat = [0.1, 39.9]\n[[extinguisher]]\nat = [59.9, 39.9]\n"
	for _, c := range []struct {
		name    string
		changes []change
		feet    float64
	}{
		{"a corner", nil, math.Hypot(29, 13)},
		{"the middle, one in each corner", []change{floor("60", "40"), {hangs, four}}, math.Hypot(29.9, 19.9)},
		{"the middle of a side, one at each end", []change{floor("60", "2"), {"at = [2, 10]\n", "at = [2, 1]\nroom = \"Hall\"\n"}, {hangs, "[[extinguisher]]\nat = [0, 0]\n[[extinguisher]]\nat = [60, 0]\n"},
			{"kind = \"table saw\"\nat = [10, 5]", "kind = \"table saw\"\nroom = \"Hall\""}, {"kind = \"lathe\"\nat = [20, 5]", "kind = \"lathe\"\nroom = \"Hall\""}}, math.Hypot(30, 2)},
		// round the corner of an L the straight line cuts through the wall: it is still the least that anybody walks
		{"the end of an L", []change{{hallFloor, "outline = [[0, 0], [60, 0], [60, 10], [20, 10], [20, 60], [0, 60]]"}}, math.Hypot(59, 7)},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := only(t, checks.Run(planOf(t, c.changes...)), "extinguisher-reach", "Hall")
			if len(f.Figures) != 1 {
				t.Fatalf("%+v", f)
			}
			want := c.feet * float64(unit.Must[unit.Length]("1 ft"))
			if got := f.Figures[0].Value; math.Abs(got-want) > want/1000 {
				t.Errorf("%g m, want %g", got, want)
			}
		})
	}
}

// A run that slopes counts for the part that hangs low: it is a passage where
// that part runs sideways farther than a way out is wide. The figures are those
// of 29 CFR 1910.36(g): 6 ft 8 in under what hangs, 28 in of width.
func TestLowPartOfASlope(t *testing.T) {
	// the pipe is 5 in wide, so its underside is 6 ft 8 in up where its route is at 82.5 in
	low := 82.5 / 12
	for _, c := range []struct {
		name  string
		feet  float64 // how far the low part runs sideways
		state checks.State
	}{
		{"shorter than a way is wide", 2.3, checks.Met},
		{"as long", 28.0 / 12, checks.Met},
		{"longer", 2.4, checks.Ask},
	} {
		t.Run(c.name, func(t *testing.T) {
			// from 1 ft under the figure the pipe rises to it on this way, and on to the roof
			route := fmt.Sprintf("route = [[20, 5, 2], [20, 5, %.6f], [%.6f, 5, %.6f], [27, 5, 9], [20, 10, 8]]", low-1, 20+c.feet, low)
			f := only(t, checks.Run(planOf(t, change{latheDrop, route})), "duct-headroom", "")
			if f.State != c.state {
				t.Errorf("%s, want %s: %s", f.State, c.state, f.Says)
			}
		})
	}
}

// A pipe that comes down at a machine and leads away from it is no hindrance to
// whoever works there; one that bends back over the way from it is.
func TestOwnPipe(t *testing.T) {
	for name, c := range map[string]struct {
		route string
		state checks.State
	}{
		"away":                  {"[20, 5, 2], [20, 5, 6], [28, 5, 6], [28, 5, 8], [20, 10, 8]", checks.Ask},
		"away, to the side":     {"[20, 5, 2], [20, 5, 6], [20, 1, 6], [20, 1, 8], [20, 10, 8]", checks.Ask},
		"away, on the other":    {"[20, 5, 2], [20, 5, 6], [20, 9, 6], [20, 9, 8], [20, 10, 8]", checks.Ask},
		"back over its own way": {"[20, 5, 2], [20, 5, 6], [20, 9, 6], [15, 9, 6], [15, 2, 6], [15, 2, 8], [20, 10, 8]", checks.NotMet},
	} {
		f := only(t, checks.Run(planOf(t, change{latheDrop, "route = [" + c.route + "]"})), "duct-headroom", "")
		if f.State != c.state || c.state == checks.NotMet && !strings.Contains(f.Says, "between Lathe and the nearest exit") {
			t.Errorf("%s: %s: %s", name, f.State, f.Says)
		}
	}
}

// What is broken by a text that does not decide is asked, also where another
// figure decides that it has had confirmed.
func TestConfirmedBesideAsked(t *testing.T) {
	width := change{"[[stop]]", "[[confirmed]]\nfigure = \"way-out-width\"\nvalue = \"28 in\"\nby = \"fire marshal\"\n[[stop]]"}
	for feet, state := range map[string]checks.State{"8 ft": checks.Met, "7 ft": checks.Ask} {
		if f := only(t, checks.Run(planOf(t, noRules, width, high(feet))), "way-out", "Hall"); f.State != state {
			t.Errorf("%s: %s, want %s: %s", feet, f.State, state, f.Says)
		}
	}
}

// A small extinguisher beside a large one does no harm: the large one counts for
// the gravest hazard, the small one not.
func TestSmallExtinguisherBesideLarge(t *testing.T) {
	beside := change{hangs, hangs + "[[extinguisher]]\nat = [29, 7]\nrating = \"2-A\"\nserviced = 2026-03-02\n"}
	if f := only(t, checks.Run(planOf(t, beside)), "extinguisher-rating", ""); f.State != checks.Met {
		t.Errorf("%s: %s", f.State, f.Says)
	}
	// 4-A of 1,000 sq ft each is the most floor for the gravest hazard (IFC 2018, Table 906.3(1))
	if f := only(t, checks.Run(planOf(t, beside, floor("70", "70"))), "extinguisher-rating", ""); f.State != checks.Ask {
		t.Errorf("%s: %s", f.State, f.Says)
	}
}

// A machine that stands in no room is named, once for the shop, beside what is
// found of the rooms that are known.
func TestMachineInNoRoom(t *testing.T) {
	list := checks.Run(planOf(t, lost))
	for _, check := range []string{"way-out", "extinguisher-reach", "extinguisher-rating"} {
		if f := only(t, list, check, ""); f.State != checks.NotGiven || !strings.Contains(f.Says, "Which room Lathe stands in is not given") || f.At.Line == 0 {
			t.Errorf("%s: %+v", check, f)
		}
	}
	if f := only(t, list, "way-out", "Hall"); f.State != checks.Met {
		t.Errorf("the room that is known: %+v", f)
	}
}

// Where two walls keep a dwelling apart, each finding says which it is about.
func TestTwoWallsToTheDwelling(t *testing.T) {
	second := change{"[[appliance]]", "[[wall]]\nfrom = [0, 20]\nto = [30, 20]\ndivides = \"garage from dwelling\"\nboard = \"3/8 in\"\nno_door = true\n[[appliance]]"}
	list := pick(checks.Run(planOf(t, second)), "garage-board", "")
	if len(list) != 2 || list[0].State != checks.NotMet || list[1].State != checks.Met || !strings.HasPrefix(list[0].Says, "In the wall from 0 ft, 20 ft to 30 ft, 20 ft: The board") {
		t.Errorf("%+v", list)
	}
	for _, f := range pick(checks.Run(planOf(t)), "garage-board", "") {
		if strings.Contains(f.Says, "In the wall from") {
			t.Errorf("one wall needs no place: %s", f.Says)
		}
	}
}

// american is a figure in feet or inches.
var american = regexp.MustCompile(`[0-9] (ft|in|sq ft)\b`)

// In metric shops the figures are turned into metric units.
func TestBuildingInMetric(t *testing.T) {
	p := changed(t, strings.Replace(whole, "setting = \"school\"", "setting = \"school\"\nunits = \"metric\"", 1), nil)
	for check, says := range map[string]string{"way-out": "711.2", "outlet-property": "9.14", "sprinkler-area": "232.26"} {
		list := pick(checks.Run(p), check, "")
		if len(list) != 1 || !strings.Contains(list[0].Says, says) || american.MatchString(list[0].Says) {
			t.Errorf("%s: %+v", check, list)
		}
	}
}

// Ducts without a route are told of at once, not one by one.
func TestDuctsWithoutRoutes(t *testing.T) {
	p := planOf(t, change{latheDrop, `length = "12 ft"`}, change{"route = [[10, 5, 2], [10, 5, 8], [10, 8, 8], [8, 10, 8]]", `length = "9 ft"`})
	for _, check := range []string{"garage-separation", "duct-headroom"} {
		if f := only(t, checks.Run(p), check, ""); f.State != checks.NotGiven || !strings.Contains(f.Says, "Saw drop and Lathe drop have no route") {
			t.Errorf("%s: %+v", check, f)
		}
	}
}
