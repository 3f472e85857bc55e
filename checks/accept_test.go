package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// accepted adds an acceptance and a revision, whose day is the plan's.
func accepted(check, about, until string) change {
	text := "[[accepted]]\ncheck = \"" + check + "\"\nabout = \"" + about + "\"\nreason = \"replaced in spring\"\nrole = \"steward\"\n"
	if until != "" {
		text += "until = " + until + "\n"
	}
	return change{"[[room]]\nname = \"Hall\"", "[[revision]]\nmark = \"A\"\ndate = 2026-11-24\n" + text + "[[room]]\nname = \"Hall\""}
}

var plainSwitch = change{`starter = "magnetic, three-wire"`, `starter = "switch"`}

// An acceptance holds to its last day, that day included; past it the finding
// says so and counts again.
func TestAccepted(t *testing.T) {
	for until, counts := range map[string]bool{"2027-04-01": true, "2026-11-24": true, "2026-11-23": false, "": true} {
		f := only(t, checks.Run(planOf(t, plainSwitch, accepted("power-cut", "Cyclone", until))), "power-cut", "Cyclone")
		if (f.Accepted != nil) != counts {
			t.Errorf("until %q on 2026-11-24: %+v, want accepted %v", until, f.Accepted, counts)
			continue
		}
		if f.State != checks.NotMet || f.Weight != checks.Mend {
			t.Errorf("accepting changes the finding itself: %s, %s", f.State, f.Weight)
		}
		if !counts {
			if !strings.Contains(f.Says, "accepted until 2026-11-23, and is no longer") {
				t.Errorf("past its day it says %q", f.Says)
			}
			continue
		}
		if f.Accepted.Reason != "replaced in spring" || f.Accepted.Role != "steward" {
			t.Errorf("%+v", f.Accepted)
		}
		want := "Accepted until " + until + " by the steward: replaced in spring."
		if until == "" {
			want = "Accepted by the steward: replaced in spring."
		}
		if got := f.Accepted.Says(); got != want {
			t.Errorf("says %q, want %q", got, want)
		}
	}
	// another check, another thing
	for _, about := range []change{accepted("motor-power", "Cyclone", ""), accepted("power-cut", "Saw", "")} {
		if f := only(t, checks.Run(planOf(t, plainSwitch, about)), "power-cut", "Cyclone"); f.Accepted != nil {
			t.Errorf("%s accepts it too", about.new)
		}
	}
}

// The day it is asked on decides, not the day of the file.
func TestAcceptedOnTheDayAsked(t *testing.T) {
	text := strings.Replace(whole, plainSwitch.old, plainSwitch.new, 1) + "\n[[accepted]]\ncheck = \"power-cut\"\nabout = \"Cyclone\"\nreason = \"for now\"\nrole = \"steward\"\nuntil = 2027-04-01\n"
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for day, counts := range map[entry.Date]bool{{Year: 2027, Month: 4, Day: 1}: true, {Year: 2027, Month: 4, Day: 2}: false} {
		if f := only(t, checks.Run(plan.Make(s, nil, day)), "power-cut", "Cyclone"); (f.Accepted != nil) != counts {
			t.Errorf("on %s: %+v, want %v", day, f.Accepted, counts)
		}
	}
}

// A stop cannot be accepted: it stands, and the file is at fault.
func TestAStopIsNotAccepted(t *testing.T) {
	grinder := change{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"bench grinder\"\nat = [20, 5]"}
	p := planOf(t, grinder, accepted("metal-on-wood-main", "Cyclone", ""))
	list := checks.Run(p)
	if f := only(t, list, "metal-on-wood-main", "Cyclone"); f.Accepted != nil || f.Weight != checks.Stop || checks.Standing(list) != 1 {
		t.Errorf("a stop was accepted: %+v", f)
	}
	problems := checks.Problems(p)
	if len(problems) != 1 || problems[0].Line == 0 || !strings.Contains(problems[0].Error(), "does not say stop") || !strings.Contains(problems[0].Do, `figure = "metal-on-wood-main"`) {
		t.Errorf("the file's problem: %v", problems)
	}
	// once it is settled there is no stop left to accept, and no fault
	settled := change{grinder.old, grinder.new}
	p = planOf(t, settled, change{"[[wall]]\nfrom", "[[confirmed]]\nfigure = \"metal-on-wood-main\"\nvalue = \"accepted with a spark trap\"\nby = \"fire marshal's letter of 2026-10-02\"\n[[wall]]\nfrom"}, accepted("metal-on-wood-main", "Cyclone", ""))
	if problems := checks.Problems(p); len(problems) != 0 {
		t.Error(problems)
	}
}

// What an acceptance names must exist; the nearest is offered.
func TestProblemsOfAcceptances(t *testing.T) {
	for _, c := range []struct{ check, about, read, do string }{
		{"power-cat", "Cyclone", `check = "power-cat"`, `write "power-cut"`},
		{"zzz", "Cyclone", `check = "zzz"`, `use one of "air-captured", "`},
		{"power-cut", "Cyclon", `about = "Cyclon"`, `write "Cyclone"`},
		{"power-cut", "zzz", `about = "zzz"`, `use one of "Cyclone"`},
		{"threshold", "Saw runs", `check = "threshold"`, "take the table out"},
	} {
		p := planOf(t, plainSwitch, accepted(c.check, c.about, ""))
		problems := checks.Problems(p)
		if len(problems) != 1 || problems[0].Read != c.read || !strings.Contains(problems[0].Do, c.do) || problems[0].Line != p.Shop.Accepted[0].At.Line || problems[0].Line == 0 {
			t.Errorf("%s about %s: %v", c.check, c.about, problems)
		}
	}
	if problems := checks.Problems(planOf(t, plainSwitch, accepted("power-cut", "Cyclone", ""))); len(problems) != 0 {
		t.Errorf("a sound acceptance: %v", problems)
	}
}

// A confirmed value must be of the kind its figure has.
func TestProblemsOfConfirmedValues(t *testing.T) {
	for _, c := range []struct{ figure, value, want string }{
		{"open-bag-distance", "20 ft", ""},
		{"open-bag-distance", "6 m", ""},
		{"open-bag-distance", "20", "a length with its unit"},
		{"open-bag-distance", "20 cfm", "not an air flow"},
		{"open-bag-distance", "far enough", "a length with its unit"},
		{"open-bag-flow", "5000 cfm", ""},
		{"open-bag-flow", "20 ft", "an air flow with its unit"},
		{"open-flue", "tested, draws with all fans on", ""},
	} {
		problems := checks.Problems(planOf(t, confirm(c.figure, c.value)))
		switch {
		case c.want == "" && len(problems) != 0:
			t.Errorf("%s = %s: %v", c.figure, c.value, problems)
		case c.want != "" && (len(problems) != 1 || problems[0].Line == 0 || !strings.Contains(problems[0].Error(), c.want) || !strings.Contains(problems[0].Read, c.figure)):
			t.Errorf("%s = %s: %v, want something with %q", c.figure, c.value, problems, c.want)
		}
	}
}

// Problems of both kinds are reported together, in the order of the file.
func TestAllProblemsAtOnce(t *testing.T) {
	problems := checks.Problems(planOf(t, change{"[[wall]]\nfrom", "[[accepted]]\ncheck = \"no-such\"\nabout = \"\"\nreason = \"for now\"\nrole = \"steward\"\n[[wall]]\nfrom"}, confirm("open-bag-distance", "near")))
	if len(problems) != 2 || problems[0].Line >= problems[1].Line {
		t.Errorf("%v", problems)
	}
}

func TestJSONOfAnAcceptance(t *testing.T) {
	p := planOf(t, plainSwitch, accepted("power-cut", "Cyclone", "2027-04-01"))
	data, err := checks.JSON(p, checks.Run(p))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"reason": "replaced in spring"`, `"role": "steward"`, `"until": "2027-04-01"`, `"accepted": null`} {
		if !strings.Contains(string(data), want) {
			t.Errorf("the document lacks %s", want)
		}
	}
	p = planOf(t, plainSwitch, accepted("power-cut", "Cyclone", ""))
	if data, _ = checks.JSON(p, checks.Run(p)); !strings.Contains(string(data), `"until": null`) {
		t.Error("an acceptance without an end")
	}
}
