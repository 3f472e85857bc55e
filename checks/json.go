package checks

import (
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/export"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// number is a number in SI units, in its shortest form of six significant
// digits.
type number float64

// MarshalJSON writes the number.
func (n number) MarshalJSON() ([]byte, error) { return []byte(unit.Short(float64(n))), nil }

// document is what inspect --json prints.
type document struct {
	Format   string        `json:"format"`
	Shop     string        `json:"shop"`
	AsOf     string        `json:"as_of"`
	Findings []findingJSON `json:"findings"`
}

// findingJSON is one finding. Nobody is asked where asks and whom are empty; a finding
// that nobody has accepted has null there.
type findingJSON struct {
	Check    string       `json:"check"`
	State    State        `json:"state"`
	By       By           `json:"by"`
	Weight   Weight       `json:"weight"`
	About    string       `json:"about"`
	Kind     string       `json:"kind"`
	File     string       `json:"file"`
	Line     int          `json:"line"`
	Column   int          `json:"column"`
	Says     string       `json:"says"`
	Do       string       `json:"do"`
	Asks     string       `json:"asks"`
	Whom     Person       `json:"whom"`
	Figures  []figureJSON `json:"figures"`
	Basis    []basisJSON  `json:"basis"`
	Settled  *string      `json:"settled_by"`
	Accepted *acceptJSON  `json:"accepted"`
}

// acceptJSON is an acceptance that counts. Until is null where it has no end.
type acceptJSON struct {
	Reason string  `json:"reason"`
	Role   string  `json:"role"`
	Until  *string `json:"until"`
}

// figureJSON is one number beside its limit, null where there is none.
type figureJSON struct {
	Name   string  `json:"name"`
	Value  number  `json:"value"`
	Unit   string  `json:"unit"`
	Limit  *number `json:"limit"`
	Source string  `json:"source"`
}

// basisJSON is where a figure or a rule stands.
type basisJSON struct {
	Document string `json:"document"`
	Edition  string `json:"edition"`
	Clause   string `json:"clause"`
	Mark     string `json:"mark"`
}

// JSON writes the findings about a plan as inspect --json prints them, in the
// order given. Figures are in SI units. A finding that stands nowhere in the
// file, as one about the whole shop, has line and column 0.
func JSON(p *plan.Plan, list []Finding) ([]byte, error) {
	doc := document{Format: "dustbook-inspect/1", Shop: p.Shop.Name, AsOf: p.AsOf.String(), Findings: []findingJSON{}}
	for _, f := range list {
		doc.Findings = append(doc.Findings, finding(p.Shop.File, f))
	}
	return export.JSON(doc)
}

func finding(file string, f Finding) findingJSON {
	v := findingJSON{
		Check: f.Check, State: f.State, By: f.By, Weight: f.Weight, About: f.About, Kind: f.Kind,
		File: f.FileBeside(file), Line: f.At.Line, Column: f.At.Column, Says: f.Says, Do: f.Do, Asks: f.Asks, Whom: f.Whom,
		Figures: []figureJSON{}, Basis: []basisJSON{},
	}
	for _, at := range f.Figures {
		v.Figures = append(v.Figures, figureJSON{at.Name, number(at.Value), at.Unit, limit(at.Limit), sourceOf(at.Basis)})
	}
	for _, b := range f.Basis {
		v.Basis = append(v.Basis, basisJSON{b.Title(), b.Edition(), b.Clause, b.Mark.String()})
	}
	if f.Settled != "" {
		v.Settled = &f.Settled
	}
	if a := f.Accepted; a != nil {
		v.Accepted = &acceptJSON{Reason: a.Reason, Role: a.Role}
		if a.Until != (entry.Date{}) {
			until := a.Until.String()
			v.Accepted.Until = &until
		}
	}
	return v
}

func limit(at *float64) *number {
	if at == nil {
		return nil
	}
	n := number(*at)
	return &n
}

// sourceOf is where a figure's limit comes from on one line; empty where the
// figure is compared with nothing.
func sourceOf(b source.Basis) string {
	if b == (source.Basis{}) {
		return ""
	}
	return b.String()
}
