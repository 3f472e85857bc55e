package templates

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// printedNumber is a figure of a sheet as a number.
func printedNumber(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("%q is no number", text)
	}
	return x
}

// forked is a small shop with junctions by flow split: one that the formulas
// reach, and one by the angle given.
func forked(angle string) string {
	return `[shop]
name = "Forked"
[method]
junctions = "flow split"
[[collector]]
name = "Fan"
inlet = "8 in"
fan_curve = [["0 cfm", "10 inwg"], ["800 cfm", "8 inwg"], ["1600 cfm", "2 inwg"]]
[[machine]]
name = "Saw"
kind = "other"
port = { size = "5 in", flow = "400 cfm" }
[[machine]]
name = "Planer"
kind = "other"
port = { size = "6 in", flow = "500 cfm" }
[[machine]]
name = "Lathe"
kind = "other"
port = { size = "4 in", flow = "200 cfm" }
[[use]]
name = "All three"
machines = ["Saw", "Planer", "Lathe"]
[[duct]]
name = "Main"
to = "Fan"
size = "7 in"
length = "30 ft"
serves = ["Planer"]
[[duct]]
name = "Saw drop"
to = "Main"
joins = "10 ft"
entry = "45 deg"
size = "5 in"
length = "12 ft"
serves = ["Saw"]
[[duct]]
name = "Lathe drop"
to = "Main"
joins = "20 ft"
entry = "` + angle + `"
size = "4 in"
length = "9 ft"
serves = ["Lathe"]
`
}

// workingFiles are shops in either system of units and with either way of
// reckoning junctions.
func workingFiles(t *testing.T) map[string]string {
	t.Helper()
	school := string(content.Example())
	if strings.Contains(school, "[method]") || !strings.Contains(school, "units = \"us\"") {
		t.Fatal("the example says its method or other units: this test sets them")
	}
	return map[string]string{"us": school, "metric": strings.Replace(school, "units = \"us\"", "units = \"metric\"", 1), "flow split": forked("45 deg")}
}

// What the working prints adds up as printed: every loss to its stretch's,
// every level to the next, the collector's parts to the fan's, and a
// coefficient times its velocity pressure makes the loss to the digits shown.
func TestWorkingAddsUpAsPrinted(t *testing.T) {
	for name, text := range workingFiles(t) {
		b := newBook(t, text)
		grain := math.Pow10(-b.fineness())
		stretches := 0
		for _, u := range b.Plan.Air.Uses {
			if len(u.Machines) == 0 || u.Results[0].Collector == nil {
				continue
			}
			for _, part := range b.workingView(u).Parts {
				for _, list := range []*workingTerms{part.Terms, part.OtherTerms} {
					if list == nil {
						continue
					}
					for _, s := range list.Rows {
						stretches++
						checkPrinted(t, name+", "+u.Name, s, grain)
					}
				}
				if n := len(part.Ends); n > 0 {
					sum := 0.0
					for _, e := range part.Ends[:n-1] {
						sum += printedNumber(t, e.Loss)
					}
					if math.Abs(sum-printedNumber(t, part.Ends[n-1].Loss)) > grain/10 {
						t.Errorf("%s, %s: the ends %+v add up to %g", name, u.Name, part.Ends, sum)
					}
				}
			}
		}
		if stretches < 12 {
			t.Errorf("%s: only %d stretches", name, stretches)
		}
	}
}

func checkPrinted(t *testing.T, name string, s workingStretch, grain float64) {
	t.Helper()
	level, sum := printedNumber(t, s.Start), 0.0
	for _, x := range s.Terms {
		loss := printedNumber(t, x.Loss)
		level += loss
		sum += loss
		if math.Abs(level-printedNumber(t, x.Below)) > grain/10 {
			t.Errorf("%s, %s: %s leads to %g, printed %s", name, s.Name, x.Name, level, x.Below)
		}
		k, pv := printedNumber(t, x.K), printedNumber(t, x.Dynamic)
		slack := 2*grain + 0.0006*pv + math.Abs(k)*grain/2
		if math.Abs(k) > 10 { // four digits of K, three of pv
			slack = 2*grain + 0.006*math.Abs(loss)
		}
		if math.Abs(k*pv-loss) > slack {
			t.Errorf("%s, %s: %s has K %s on %s, which is %g, printed %s", name, s.Name, x.Name, x.K, x.Dynamic, k*pv, x.Loss)
		}
		if x.How == "" || x.Basis == "" {
			t.Errorf("%s, %s: %s does not say how or whence", name, s.Name, x.Name)
		}
	}
	if math.Abs(sum-printedNumber(t, s.Loss)) > grain/10 || math.Abs(level-printedNumber(t, s.End)) > grain/10 {
		t.Errorf("%s, %s: the losses add up to %g and lead to %g, printed %s and %s", name, s.Name, sum, level, s.Loss, s.End)
	}
}

// Every use of the school has a sheet with every stretch that carries air,
// whole, and the hand method beside it, which adds up as printed too.
func TestWorkingHoldsEveryStretch(t *testing.T) {
	b := newBook(t, string(content.Example()))
	remarks := 0
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) == 0 || u.Results[0].Collector == nil {
			continue
		}
		for i, part := range b.workingView(u).Parts {
			r := lastOn(u, u.Collectors(b.Plan.Shop)[i])
			if !r.OnCurve {
				continue
			}
			carry := 0
			for _, s := range r.Stretches {
				if s.Flow > 0 {
					carry++
				}
			}
			got := len(part.Terms.Rows)
			if part.OtherTerms != nil {
				got += len(part.OtherTerms.Rows)
			}
			if got != carry || part.TooMany {
				t.Errorf("%s: %d stretches of %d", u.Name, got, carry)
			}
			remarks += checkHandPrinted(t, u, part.Hand)
		}
	}
	if remarks == 0 {
		t.Error("no hand sheet has a remark")
	}
}

func checkHandPrinted(t *testing.T, u *duct.Use, v *handView) (remarks int) {
	t.Helper()
	if v == nil {
		t.Fatalf("%s: no hand sheet", u.Name)
	}
	for _, r := range v.Rows {
		remarks += len(r.Remarks)
		start := 0.0
		for _, part := range strings.Split(strings.ReplaceAll(strings.TrimSuffix(r.Start, " hood"), " − ", " + -"), " + ") {
			start += printedNumber(t, part)
		}
		if math.Abs(start+printedNumber(t, r.Loss)-printedNumber(t, r.Static)) > 1e-6 {
			t.Errorf("%s, %s by hand: %s and %s make %s", u.Name, r.Name, r.Start, r.Loss, r.Static)
		}
		off := 100 * (printedNumber(t, r.Static)/printedNumber(t, r.Solver) - 1)
		if math.Abs(off-printedNumber(t, r.Off)) > .2 {
			t.Errorf("%s, %s by hand: %s against %s is %g %%, printed %s", u.Name, r.Name, r.Static, r.Solver, off, r.Off)
		}
	}
	sum, sums := 0.0, 0
	for _, e := range v.Ends {
		figure := printedNumber(t, e.Hand)
		if !e.Sum {
			sum += figure
			continue
		}
		sums++
		if math.Abs(sum-figure) > 1e-6 {
			t.Errorf("%s by hand: %s is %s, the lines above add up to %g", u.Name, e.Name, e.Hand, sum)
		}
	}
	if sums != 2 {
		t.Errorf("%s by hand: %d sums", u.Name, sums)
	}
	return remarks
}

// A junction that the flow-split formulas do not reach is named on the sheet
// as assumed; none is where all are reached.
func TestWorkingNamesFallbacks(t *testing.T) {
	for angle, want := range map[string][]string{"45 deg": nil, "20 deg": {"Lathe drop"}} {
		b := newBook(t, forked(angle))
		path := b.Path("working", "All three")
		says := content.WordsIn(content.English).Text("working.fallbacks")
		if strings.Contains(pageOf(t, b, path), says) != (want != nil) {
			t.Errorf("at %s the sheet speaks of junctions by angle: %v", angle, want == nil)
		}
		for _, u := range b.Plan.Air.Uses {
			if u.Name != "All three" {
				continue
			}
			part, split := b.workingView(u).Parts[0], 0
			for _, s := range part.Terms.Rows {
				for _, x := range s.Terms {
					if strings.Contains(x.How, "x = ") {
						split++
					}
				}
			}
			var named []string
			for _, d := range part.Fallbacks {
				named = append(named, d.Text)
				if d.Assumed == "" || !strings.Contains(pageOf(t, b, "assumptions.html"), `id="`+strings.TrimPrefix(d.Assumed, "assumptions.html#")+`"`) {
					t.Errorf("at %s: %s leads to no assumption: %q", angle, d.Text, d.Assumed)
				}
			}
			if !slices.Equal(named, want) || split != 4-2*len(want) {
				t.Errorf("at %s: by angle %v, %d halves by flow split", angle, part.Fallbacks, split)
			}
		}
	}
}

// dropsAlong is a shop with drops along one main.
func dropsAlong(machines int) string {
	text := `[shop]
name = "Row"
[[collector]]
name = "Cyclone"
inlet = "10 in"
fan_curve = [["0 cfm", "14 inwg"], ["1000 cfm", "12.5 inwg"], ["2200 cfm", "6 inwg"], ["3000 cfm", "0 inwg"]]
filter = { clean = "1 inwg", change = "3 inwg", at = "1500 cfm" }
[[duct]]
name = "Long main of the machine hall"
to = "Cyclone"
size = "8 in"
length = "400 ft"
`
	for i := range machines {
		text += fmt.Sprintf(`[[machine]]
name = "Machine number %[1]d"
kind = "other"
port = { size = "5 in", flow = "500 cfm" }
[[duct]]
name = "Drop of machine number %[1]d"
to = "Long main of the machine hall"
joins = "%[2]d ft"
entry = "45 deg"
size = "6 in"
length = "14 ft"
fittings = ["elbow 90", "elbow 45"]
hose = { length = "6 ft" }
serves = ["Machine number %[1]d"]
[[gate]]
name = "Gate of machine number %[1]d"
on = "Drop of machine number %[1]d"
`, i+1, 5*i+2)
	}
	return text
}

// A telephone can load the sheets of a large shop: what a sheet weighs with the
// stylesheet, by the project's own budget. Of a shop larger still the ways
// nobody runs are not written out term by term, and the sheet says so.
func TestWorkingOfALargeShop(t *testing.T) {
	for machines, whole := range map[int]bool{22: true, 24: false, 40: false, 60: false} {
		s, problems := shop.Read("shop.toml", []byte(dropsAlong(machines)))
		if s == nil {
			t.Fatal(problems)
		}
		b, err := New(plan.Make(s, nil, entry.Date{}), nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range []string{"Everything shut", "Everything open"} {
			if size := len(pageOf(t, b, b.Path("working", name))) + len(Stylesheet()); size > 150_000 {
				t.Errorf("%d machines, %s: %d bytes", machines, name, size)
			}
		}
		page := pageOf(t, b, b.Path("working", "Machine number 1"))
		if size := len(page) + len(Stylesheet()); size > 150_000 {
			t.Errorf("%d machines: %d bytes", machines, size)
		}
		cut := strings.Contains(page, content.WordsIn(content.English).Text("working.too-many"))
		if strings.Contains(page, "<details") != whole || cut == whole {
			t.Errorf("%d machines: cut short %v", machines, cut)
		}
		if n := strings.Count(page, "Drop of machine number"); n < machines {
			t.Errorf("%d machines: %d drops on the sheet", machines, n)
		}
	}
}

// No sheet's verdict is the name of a thing, and none opens with a
// capital; a working names the stretch that
// costs most in what it says.
func TestVerdictsAreNoNames(t *testing.T) {
	for name, b := range embedded(t) {
		names, stretches := map[string]bool{}, []string{}
		for _, d := range b.Plan.Shop.Ducts {
			names[d.Name] = true
			for _, s := range d.Stretches {
				names[s.Name()] = true
				stretches = append(stretches, s.Name())
			}
		}
		for _, m := range b.Plan.Shop.Machines {
			names[m.Name] = true
		}
		workings := 0
		var standing []string // no stretch is named where nothing runs
		for _, u := range b.Plan.Air.Uses {
			if len(u.Machines) == 0 {
				standing = append(standing, b.Path("working", u.Name))
			}
		}
		for _, s := range b.Sheets {
			for _, w := range s.Verdict.Words {
				if first, _ := utf8.DecodeRuneInString(w.Text); unicode.IsUpper(first) {
					t.Errorf("%s: the verdict of %s opens with a capital: %q", name, s.Path, w.Text)
				}
				if names[w.Text] {
					t.Errorf("%s: the verdict of %s is %q, a name", name, s.Path, w.Text)
				}
			}
			if s.name != "working.html" || s.Verdict.Words[0].Class == "blank" || slices.Contains(standing, s.Path) {
				continue
			}
			workings++
			if !slices.ContainsFunc(stretches, func(stretch string) bool { return strings.HasPrefix(s.Verdict.Says, stretch+" costs most: ") }) {
				t.Errorf("%s: %s says %q", name, s.Path, s.Verdict.Says)
			}
		}
		if workings == 0 {
			t.Errorf("%s has no working that costs anything", name)
		}
	}
}
