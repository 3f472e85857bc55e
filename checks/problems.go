package checks

import (
	"errors"
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Problems are the faults of a shop file that only the checks can see: an
// edition of a text that they do not know, a confirmed figure that no check asks for or whose value is of the wrong
// kind, and an acceptance of what no check has found or of what cannot be
// accepted.
func Problems(p *plan.Plan) entry.Problems {
	var list entry.Problems
	list = append(list, EditionProblems(p.Shop)...)
	for _, c := range p.Shop.Confirmed {
		if problem, found := confirmedProblem(c); found {
			problem.File, problem.Place = p.Shop.File, c.At
			list = append(list, problem)
		}
	}
	if len(p.Shop.Accepted) > 0 {
		findings := Run(p)
		for _, a := range p.Shop.Accepted {
			if problem, found := acceptedProblem(p, a, findings); found {
				problem.File, problem.Place = p.Shop.File, a.At
				list = append(list, problem)
			}
		}
	}
	list.Sort()
	return list
}

// confirmedProblem is what is wrong with a confirmed figure.
func confirmedProblem(c shop.Confirmed) (entry.Problem, bool) {
	asked, known := findConfirm(c.Figure)
	if !known {
		return entry.Problem{Read: say("finding-problem.figure.read", entry.Quote(c.Figure)), Expected: say("finding-problem.figure.expected"), Do: nearest(c.Figure, Figures())}, true
	}
	if asked.Kind == 0 {
		return entry.Problem{}, false
	}
	_, err := unit.ReadKind(asked.Kind, c.Value)
	var fault *unit.Error
	if !errors.As(err, &fault) {
		return entry.Problem{}, false
	}
	return entry.Problem{Read: say("finding-problem.value.read", fault.Read, entry.Quote(c.Figure)), Expected: fault.Expected, Do: fault.Do}, true
}

// acceptedProblem is what is wrong with an acceptance. One whose finding may be
// back when sizes are chosen is left alone.
func acceptedProblem(p *plan.Plan, a *shop.Accepted, findings []Finding) (entry.Problem, bool) {
	if Find(a.Check) == nil {
		return entry.Problem{Read: say("finding-problem.check.read", entry.Quote(a.Check)), Expected: say("finding-problem.check.expected"), Do: nearest(a.Check, ids())}, true
	}
	var things []string
	found, stops := false, false
	for _, f := range findings {
		if f.Check != a.Check {
			continue
		}
		if !slices.Contains(things, f.About) {
			things = append(things, f.About)
		}
		found, stops = found || f.About == a.About, stops || f.About == a.About && f.Weight == Stop
	}
	switch {
	case !found && mayReturn(p, a.About):
	case len(things) == 0:
		return entry.Problem{Read: say("finding-problem.check.read", entry.Quote(a.Check)), Expected: say("finding-problem.nothing.expected"), Do: say("finding-problem.nothing.do")}, true
	case !found:
		return entry.Problem{Read: say("finding-problem.about.read", entry.Quote(a.About)), Expected: say("finding-problem.about.expected", entry.Quote(a.Check)), Do: nearest(a.About, things)}, true
	case stops:
		return entry.Problem{Read: say("finding-problem.stop.read", entry.Quote(a.Check), entry.Quote(a.About)), Expected: say("finding-problem.stop.expected"), Do: settling(a.Check)}, true
	}
	return entry.Problem{}, false
}

// settling says how a stop of a check is settled.
func settling(check string) string {
	for _, c := range Find(check).Confirms() {
		if c.Settles {
			return say("finding-problem.stop-or-confirmed.do", entry.Quote(c.ID))
		}
	}
	return say("finding-problem.stop.do")
}

// ids are the ids of all checks, in the order of the alphabet.
func ids() []string {
	var list []string
	for _, c := range All {
		list = append(list, c.ID)
	}
	slices.Sort(list)
	return list
}

// nearest says which of some words to write.
func nearest(word string, known []string) string {
	if near := entry.Nearest(word, known, 2); len(near) > 0 {
		return say("finding-problem.write", quoted(near))
	}
	return say("finding-problem.use-one-of", quoted(known))
}

func quoted(list []string) string {
	var out []string
	for _, word := range list {
		out = append(out, entry.Quote(word))
	}
	return strings.Join(out, ", ")
}
