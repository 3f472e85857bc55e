package templates

import (
	"strings"
	"testing"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

const (
	benchFilter = "filter = { clean = \"1 inwg\", change = \"3 inwg\", at = \"1000 cfm\", area = \"200 sq ft\" }\n"
	inletLine   = "inlet = \"6 in\"\n"
)

// The filter's table has every use with its flow and pressure in both states;
// the pressure is in proportion to the flow, as the file gives it. One use of
// machines is marked as the hardest.
func TestFilterOfEveryUse(t *testing.T) {
	b := newBook(t, benchOf(inletLine, inletLine+benchFilter)+secondSaw)
	v := b.keeping(b.Plan.Shop.Collectors[0]).Filter.Uses
	most := 0
	for _, row := range v.Rows {
		if row.Most {
			most++
		}
		if row.Use == "Duct off" {
			t.Error("the fan without its ducts stands in the table")
		}
		if row.Use != "Planer" {
			continue
		}
		clean := printedNumber(t, row.Clean.Flow) / 1000
		change := printedNumber(t, row.Change.Flow) / 1000 * 3
		if a, c := printedNumber(t, row.Clean.Press), printedNumber(t, row.Change.Press); a < clean-.06 || a > clean+.06 || c < change-.06 || c > change+.06 {
			t.Errorf("the planer: %+v", row)
		}
		// 200 ft2: ft/min are cfm/200
		if x, want := printedNumber(t, row.Clean.Speed), clean*5; x < want-.1 || x > want+.1 {
			t.Errorf("the planer's speed %g, want %g", x, want)
		}
		if printedNumber(t, row.Clean.Flow) <= printedNumber(t, row.Change.Flow) {
			t.Errorf("a filter due for change lets more by: %+v", row)
		}
	}
	if most != 1 || len(v.Rows) != 4 {
		t.Errorf("%d uses, %d marked", len(v.Rows), most)
	}
	page := pageOf(t, b, "collector-fan.html")
	if n := strings.Count(page, b.words.Text("keep.filter-most")); n != 1 || strings.Contains(page, b.words.Text("keep.filter-no-area")) {
		t.Errorf("%d marks on the sheet", n)
	}
}

// Without the filter's area there is no speed, and the sheet says what to give;
// without a filter there is no table.
func TestFilterWithoutArea(t *testing.T) {
	b := newBook(t, benchOf(inletLine, inletLine+strings.Replace(benchFilter, ", area = \"200 sq ft\"", "", 1)))
	v := b.keeping(b.Plan.Shop.Collectors[0]).Filter.Uses
	if v.Area || v.Rows[0].Clean.Speed != "—" || v.Rows[0].Clean.Press == "—" {
		t.Errorf("%+v", v.Rows[0])
	}
	if !strings.Contains(pageOf(t, b, "collector-fan.html"), b.words.Text("keep.filter-no-area")) {
		t.Error("the sheet does not ask for the area")
	}
	bare := newBook(t, benchOf())
	if bare.keeping(bare.Plan.Shop.Collectors[0]).Filter != nil || strings.Contains(pageOf(t, bare, "collector-fan.html"), b.words.Text("keep.filter-uses")) {
		t.Error("a table of no filter")
	}
}

// Every duct stands in the table of what bears the suction: one whose gauge is
// not given as that, with the field, one whose gauge is given with a figure.
func TestDuctsOfNoGauge(t *testing.T) {
	const long = "length = \"LONG ft\"\n"
	for gauge, state := range map[string]string{"": "not given", "gauge = \"26 ga\"\n": "holds"} {
		b := newBook(t, benchOf(long, long+gauge)+secondSaw)
		v := b.keeping(b.Plan.Shop.Collectors[0]).Shut
		if len(v.Rows) != 2 || v.Rows[0].State.Text != state || (v.Rows[0].Waits == "duct.gauge") != (gauge == "") || v.Rows[1].State.Text != "not given" {
			t.Errorf("with %q: %+v", gauge, v.Rows)
		}
		if row := v.Rows[0]; (row.Wall == "—") != (gauge == "") {
			t.Errorf("with %q the wall is %s", gauge, row.Wall)
		}
	}
}

// The uses that every shop has show their working, in both states of the
// filter; what they move stands in the verdict.
func TestWorkingOfStandingUses(t *testing.T) {
	gated := sawGate + "[[gate]]\nname = \"Planer gate\"\non = \"Pipe\"\n"
	b := newBook(t, benchOf(inletLine, inletLine+benchFilter)+secondSaw+gated)
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) > 0 {
			continue
		}
		part := b.workingView(u).Parts[0]
		_, words := b.sheet(t, b.Path("working", u.Name))
		r := lastOn(u, b.Plan.Shop.Collectors[0])
		if !r.OnCurve {
			if len(part.Ends) > 0 || part.Why == "" {
				t.Errorf("%s is off the curve: %+v", u.Name, part)
			}
			continue
		}
		if !strings.Contains(b.workingVerdict(u).Says, unit.Air.Print(b.units, r.Flow)) || !strings.Contains(words, b.words.Text("working.no-hand")) {
			t.Errorf("%s: the verdict says %q", u.Name, b.workingVerdict(u).Says)
		}
		if off := u.Kind == duct.DuctOff; (part.Terms == nil) != off || (part.NoWays != "") != off {
			t.Errorf("%s: terms %v, says %q", u.Name, part.Terms != nil, part.NoWays)
		}
		if len(part.CleanEnds) != len(part.Ends) {
			t.Errorf("%s: %d ends with the filter clean, %d due for change", u.Name, len(part.CleanEnds), len(part.Ends))
		}
	}
}

// Both states of the filter are written out term by term, and add up as
// printed; without a filter there is one state.
func TestWorkingOfBothStates(t *testing.T) {
	for filter, both := range map[string]bool{benchFilter: true, "": false} {
		b := newBook(t, benchOf(inletLine, inletLine+filter))
		u := b.Plan.Air.FindUse("Planer")
		part := b.workingView(u).Parts[0]
		if (part.CleanTerms != nil) != both || part.Clean != nil || part.Both != both {
			t.Fatalf("filter %v: %+v", both, part)
		}
		if !both {
			continue
		}
		if len(part.CleanTerms.Rows) != len(part.Terms.Rows) || part.CleanTerms.Rows[0].Flow == part.Terms.Rows[0].Flow {
			t.Errorf("the states do not tell apart: %+v", part.CleanTerms.Rows)
		}
		for _, s := range part.CleanTerms.Rows {
			checkPrinted(t, "clean", s, .001)
		}
	}
}

// The letters of the flow-split formulas are explained where a stretch goes by
// them, with their source, and nowhere else.
func TestLettersOfTheSplit(t *testing.T) {
	for angle, want := range map[string]bool{"45 deg": true, "none": false} {
		text := forked("45 deg")
		if !want {
			text = strings.Replace(text, `junctions = "flow split"`, `junctions = "by angle"`, 1)
		}
		b := newBook(t, text)
		_, words := b.sheet(t, b.Path("working", "All three"))
		for _, letter := range []string{"x", "b", "F", "C", "R"} {
			if strings.Contains(words, b.words.Text("working.symbol."+letter)) != want {
				t.Errorf("%s: the letter %s is explained: %v", angle, letter, !want)
			}
		}
		if strings.Contains(words, "by flow split ( TP 410") != want {
			t.Errorf("%s: the letters have their source: %v", angle, !want)
		}
	}
}
