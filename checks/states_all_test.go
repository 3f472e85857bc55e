package checks_test

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"dustbook/checks"
)

// shown are the states that tests of this package look at: by check and state,
// the tests that do.
var (
	shown      = map[string]map[checks.State]map[string]bool{}
	shownGuard sync.Mutex
)

// show notes that the test that calls has looked at a finding.
func show(f checks.Finding) {
	test := callingTest()
	if test == "" {
		return
	}
	shownGuard.Lock()
	defer shownGuard.Unlock()
	if shown[f.Check] == nil {
		shown[f.Check] = map[checks.State]map[string]bool{}
	}
	if shown[f.Check][f.State] == nil {
		shown[f.Check][f.State] = map[string]bool{}
	}
	shown[f.Check][f.State][test] = true
}

// callingTest is the name of the test that calls; empty where none does.
func callingTest() string {
	calls := make([]uintptr, 20)
	frames := runtime.CallersFrames(calls[:runtime.Callers(3, calls)])
	for {
		frame, more := frames.Next()
		if _, name, found := strings.Cut(frame.Function, "_test.Test"); found {
			name, _, _ = strings.Cut(name, ".")
			return "Test" + name
		}
		if !more {
			return ""
		}
	}
}

var update = flag.Bool("update", false, "write the table of checks and states into DEVELOPERS.md")

// After a whole run of the tests, each check must have been seen to say at least
// two things, twenty-five must have said both met and not met, and the table of
// DEVELOPERS.md must be the one that the tests give.
func TestMain(m *testing.M) {
	status := m.Run()
	flag.Parse()
	if status == 0 && flag.Lookup("test.run").Value.String() == "" && flag.Lookup("test.fuzz").Value.String() == "" {
		for _, fault := range append(shownFaults(), tableFaults()...) {
			fmt.Println("FAIL: " + fault)
			status = 1
		}
	}
	os.Exit(status)
}

// stateOrder is the order of the states in the table.
var stateOrder = []checks.State{checks.Met, checks.NotMet, checks.Thin, checks.InPlay, checks.Ask, checks.NotGiven, checks.Advice}

// leastBoth is how many checks have to be seen to say both met and not met.
const leastBoth = 25

func shownFaults() []string {
	var faults []string
	both := 0
	for _, c := range checks.All {
		states := shown[c.ID]
		if states[checks.Met] != nil && states[checks.NotMet] != nil {
			both++
		}
		if len(states) < 2 {
			faults = append(faults, fmt.Sprintf("%s is only seen to say %v", c.ID, slices.Sorted(maps.Keys(states))))
		}
	}
	if both < leastBoth {
		faults = append(faults, fmt.Sprintf("%d of %d checks are seen to say both met and not met", both, len(checks.All)))
	}
	return faults
}

// The ends of the table in DEVELOPERS.md.
const (
	tableFile  = "../DEVELOPERS.md"
	tableStart = "<!-- checks: written by go test ./checks -update -->\n"
	tableEnd   = "<!-- end of checks -->"
)

// tableFaults compares the table of DEVELOPERS.md with what the tests show.
func tableFaults() []string {
	data, err := os.ReadFile(tableFile)
	if err != nil {
		return []string{err.Error()}
	}
	before, rest, found := strings.Cut(string(data), tableStart)
	table, after, ended := strings.Cut(rest, tableEnd)
	switch {
	case !found || !ended:
		return []string{"DEVELOPERS.md has no place for the table of checks"}
	case table == tableOfStates():
		return nil
	case !*update:
		return []string{"the table of checks in DEVELOPERS.md is not what the tests show; run go test ./checks -update"}
	}
	if err := os.WriteFile(tableFile, []byte(before+tableStart+tableOfStates()+tableEnd+after), 0o644); err != nil {
		return []string{err.Error()}
	}
	return nil
}

// tableOfStates is the table: check by check, the states that it is seen to
// give, and the tests that show them.
func tableOfStates() string {
	var text strings.Builder
	text.WriteString("| check | can say | tests |\n|---|---|---|\n")
	for _, c := range checks.All {
		var states []string
		tests := map[string]bool{}
		for _, s := range stateOrder {
			if of := shown[c.ID][s]; of != nil {
				states = append(states, string(s))
				maps.Copy(tests, of)
			}
		}
		fmt.Fprintf(&text, "| `%s` | %s | %s |\n", c.ID, strings.Join(states, ", "), strings.Join(slices.Sorted(maps.Keys(tests)), " "))
	}
	return text.String()
}
