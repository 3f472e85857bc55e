package takeoff

import (
	"fmt"
	"slices"
	"testing"

	"dustbook/plan/entry"
)

// serviced is a shop with a planer on a drum, and what it has besides.
func serviced(t *testing.T, rules, cut, rest string) []Service {
	t.Helper()
	s := mustRead(t, fmt.Sprintf(`
[shop]
name = "S"
rules = %q
[[machine]]
name = "Planer"
kind = "planer"
hours = 2
%s
[[collector]]
name = "Cyclone"
inlet = "6 in"
claims = { flow = "1000 cfm", suction = "10 inwg" }
bin = "55 gal"
[[duct]]
name = "Drop"
to = "Cyclone"
size = "6 in"
length = "10 ft"
serves = ["Planer"]
%s
`, rules, cut, rest))
	return Reckon(s, nil).Jobs
}

func job(list []Service, name string) (Service, bool) {
	i := slices.IndexFunc(list, func(s Service) bool { return s.Job == name })
	if i < 0 {
		return Service{}, false
	}
	return list[i], true
}

// A bin is emptied as often as its machines fill it; one whose filling is not
// known is looked at every day.
func TestBinsByTheirFilling(t *testing.T) {
	for _, c := range []struct {
		cut  string
		job  string
		days int
	}{
		{`cut = { width = "12 in", depth = "1/16 in", feed = "20 ft/min" }`, "bin", 1}, // within the day
		{`cut = { width = "1 in", depth = "1/64 in", feed = "5 ft/min" }`, "bin", 22},  // 80 % of 7.35 ft3 at 4 times 0.00054 ft3/min: 2717 min, 22 days of 2 h
		{``, "bin look", 1},
	} {
		list := serviced(t, "none", c.cut, "")
		s, there := job(list, c.job)
		if !there || s.Collector == nil || s.Every.Months || s.Every.Count != c.days {
			t.Errorf("%s: %+v, there: %v", c.cut, s, there)
		}
		other := map[string]string{"bin": "bin look", "bin look": "bin"}[c.job]
		if _, there := job(list, other); there {
			t.Errorf("%s: a %s as well", c.cut, other)
		}
	}
}

// One machine whose cut or hours are not given fills the bin as well, so that its
// days are only the most there can be: it is looked at every day.
func TestBinWithAMachineLeftOut(t *testing.T) {
	cut := `cut = { width = "1 in", depth = "1/64 in", feed = "5 ft/min" }`
	other := "[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\n[[duct]]\nname = \"Saw drop\"\nto = \"Drop\"\nsize = \"4 in\"\nlength = \"3 ft\"\nserves = [\"Saw\"]\n"
	list := serviced(t, "none", cut, other)
	if _, there := job(list, "bin"); there {
		t.Errorf("it is emptied by a figure that leaves the saw out: %+v", list)
	}
	if s, there := job(list, "bin look"); !there || s.Every != (Interval{Count: 1}) {
		t.Errorf("%+v, there: %v", s, there)
	}
}

// What the shop does not have needs no upkeep.
func TestJobsOfWhatThereIs(t *testing.T) {
	list := serviced(t, "none", "", "")
	for name, want := range map[string]bool{"gates": false, "hoses": false, "filter": false, "settled dust": false, "stops": false, "extinguishers": false, "extinguisher look": false, "bonds": true, "weekly look": true, "test": true} {
		if _, there := job(list, name); there != want {
			t.Errorf("%s is there: %v", name, there)
		}
	}
	list = serviced(t, "none", "", "[[gate]]\nname = \"G\"\non = \"Drop\"\n[[room]]\nname = \"Hall\"\noutline = [[0,0],[9,0],[9,9]]\n[[extinguisher]]\nat = [1, 1]\n[[stop]]\nname = \"Stop\"\nstops = [\"Cyclone\"]\n")
	for _, name := range []string{"gates", "settled dust", "stops", "extinguishers", "extinguisher look"} {
		if s, there := job(list, name); !there || !s.Every.Months {
			t.Errorf("%s: %+v, there: %v", name, s, there)
		}
	}
}

// How often a system is measured again: 14 months in Great Britain (COSHH,
// regulation 9, as reported), else yearly by common
// practice: California's text is no text of every state.
func TestTestByRules(t *testing.T) {
	for rules, want := range map[string]struct {
		months   int
		document string
	}{"uk": {14, "gb-coshh"}, "us": {12, ""}, "eu": {12, ""}, "none": {12, ""}} {
		s, _ := job(serviced(t, rules, "", ""), "test")
		if !s.Every.Months || s.Every.Count != want.months || s.Basis.Document != want.document {
			t.Errorf("%s: %+v", rules, s)
		}
	}
}

func TestIntervals(t *testing.T) {
	day := func(year, month, day int) entry.Date { return entry.Date{Year: year, Month: month, Day: day} }
	for _, c := range []struct {
		every      Interval
		from, want entry.Date
	}{
		{Interval{7, false}, day(2026, 12, 28), day(2027, 1, 4)},
		{Interval{1, true}, day(2026, 1, 31), day(2026, 2, 28)},
		{Interval{1, true}, day(2028, 1, 31), day(2028, 2, 29)},
		{Interval{12, true}, day(2028, 2, 29), day(2029, 2, 28)},
		{Interval{14, true}, day(2026, 11, 24), day(2028, 1, 24)},
		{Interval{3, true}, day(2026, 11, 30), day(2027, 2, 28)},
	} {
		if got := c.every.After(c.from); got != c.want {
			t.Errorf("%+v after %s: %s, want %s", c.every, c.from, got, c.want)
		}
	}
}
