package checks_test

import (
	"strconv"
	"testing"

	"dustbook/checks"
	"dustbook/plan/takeoff"
)

// The calendar and the check go by the same months from test to test, wherever a
// text of a whole pack gives them.
func TestMonthsOfTheCalendar(t *testing.T) {
	seen := 0
	for _, r := range checks.Rules() {
		if r.Figure != "test-months" || r.Place != "" {
			continue
		}
		seen++
		for _, s := range planOf(t, under(r)).Takeoff.Jobs {
			if s.Job == "test" && (s.Every != takeoff.Interval{Count: months(t, r), Months: true} || s.Basis.Document != r.Basis.Document || s.Basis.Mark != r.Basis.Mark) {
				t.Errorf("%s: the calendar has %+v, the rules %s", r.Rules, s, r.Value)
			}
		}
	}
	if seen == 0 {
		t.Error("no text was compared")
	}
}

func months(t *testing.T, r checks.Rule) int {
	t.Helper()
	n, err := strconv.Atoi(r.Value)
	if err != nil {
		t.Fatal(err)
	}
	return n
}
