package templates

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// bench is one machine on one duct.
const bench = `
[shop]
name = "NAME"
air = { density = "1.2 kg/m3", viscosity = "1.8e-5 Pa s" }
[[collector]]
name = "FAN"
inlet = "6 in"
fan_curve = [["0 cfm", "10 inwg"], ["600 cfm", "9 inwg"], ["1200 cfm", "7 inwg"], ["1800 cfm", "1 inwg"]]
exhaust = "outside"
[[machine]]
name = "Planer"
kind = "planer"
port = { size = "6 in", flow = "NEED cfm", flow_from = "test", hood_loss = 1 }
[[duct]]
name = "Pipe"
to = "FAN"
size = "6 in"
material = "spiral steel"
length = "LONG ft"
serves = ["Planer"]
`

// benchOf is the bench with its words replaced.
func benchOf(words ...string) string {
	text := bench
	for i := 0; i+1 < len(words); i += 2 {
		text = strings.ReplaceAll(text, words[i], words[i+1])
	}
	return strings.NewReplacer("NAME", "Bench", "FAN", "Fan", "NEED", "700", "LONG", "40").Replace(text)
}

func layoutOf(t *testing.T, text string) Layout {
	t.Helper()
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := plan.Make(s, nil, entry.Date{})
	return Layout{p, checks.Run(p)}
}

// besideOf is what the sheet on two layouts shows.
func besideOf(t *testing.T, this, other string) (Verdict, besideView) {
	t.Helper()
	a := layoutOf(t, this)
	b, err := New(a.Plan, a.Findings, layoutOf(t, other))
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range b.Sheets {
		if s.Path == "beside.html" {
			if _, err := b.Render(s); err != nil {
				t.Fatal(err)
			}
			return s.Verdict, s.view().(besideView)
		}
	}
	t.Fatal("there is no sheet beside.html")
	return Verdict{}, besideView{}
}

func wordsOf(v Verdict) string {
	var list []string
	for _, w := range v.Words {
		list = append(list, w.Text)
	}
	return strings.Join(list, ", ")
}

func TestWhichLayoutServesMore(t *testing.T) {
	good, bad := benchOf(), benchOf("LONG", "400")
	for _, c := range []struct{ this, other, words, says, saves string }{
		{good, good, "both serve all", "1 in this layout, 1 in the other", "On no way"},
		{good, bad, "this layout serves all", "1 in this layout, 0 in the other", "this layout saves "},
		{bad, good, "the other serves all", "0 in this layout, 1 in the other", "the other layout saves "},
		{bad, benchOf("LONG", "500"), "neither serves all", "0 in this layout, 0 in the other", "this layout saves "},
		{good, benchOf("Planer", "Sander"), "nothing to compare", "No use", "the same names"},
	} {
		v, _ := besideOf(t, c.this, c.other)
		if v.Words[0].Class == "met" {
			t.Errorf("%s is called sure, though what a planer needs is common practice", wordsOf(v))
		}
		if wordsOf(v) != c.words || !strings.Contains(v.Says, c.says) || !strings.Contains(v.Do, c.saves) {
			t.Errorf("want %s, %s, %s; got %s, %q, %q", c.words, c.says, c.saves, wordsOf(v), v.Says, v.Do)
		}
	}
}

// Of two uses that neither layout serves alike, the one with more says so.
func TestMoreIsNotAll(t *testing.T) {
	two := func(planer, saw string) string {
		return benchOf("LONG", planer) + `
[[machine]]
name = "Saw"
kind = "table saw"
port = { size = "6 in", flow = "700 cfm", flow_from = "test", hood_loss = 1 }
[[machine]]
name = "Far saw"
kind = "table saw"
port = { size = "6 in", flow = "700 cfm", flow_from = "test", hood_loss = 1 }
[[duct]]
name = "Saw pipe"
to = "Fan"
size = "6 in"
material = "spiral steel"
length = "` + saw + ` ft"
serves = ["Saw"]
[[duct]]
name = "Far pipe"
to = "Fan"
size = "6 in"
material = "spiral steel"
length = "600 ft"
serves = ["Far saw"]
[[gate]]
name = "Planer gate"
on = "Pipe"
[[gate]]
name = "Saw gate"
on = "Saw pipe"
[[gate]]
name = "Far gate"
on = "Far pipe"
`
	}
	if v, _ := besideOf(t, two("40", "40"), two("400", "40")); wordsOf(v) != "neither serves all, this layout serves more" {
		t.Errorf("%s: %s", wordsOf(v), v.Says)
	}
	if v, _ := besideOf(t, two("40", "400"), two("40", "40")); wordsOf(v) != "neither serves all, the other serves more" {
		t.Errorf("%s: %s", wordsOf(v), v.Says)
	}
}

func rowOf(t *testing.T, v besideView, of string) besideRow {
	t.Helper()
	for _, r := range v.Uses[0].Parts[0].Rows {
		if r.Of == of {
			return r
		}
	}
	t.Fatalf("no row %q", of)
	return besideRow{}
}

func TestFiguresOfTwoLayouts(t *testing.T) {
	_, v := besideOf(t, benchOf("LONG", "100"), benchOf("NEED", "650", "LONG", "40.5"))
	for _, c := range []besideRow{
		{Of: "Port that governs", This: "Planer/hood", Other: "Planer/hood", Off: "same", Words: true},
		{Of: "Its ducts", This: "Pipe", Other: "Pipe", Off: "same", Words: true},
		{Of: "Length of hose and duct", Unit: "ft", This: "100", Other: "40.5", Off: "-59.5"},
		{Of: "Air the ports need in all", Unit: "cfm", This: "700", Other: "650", Off: "-50"},
	} {
		if got := rowOf(t, v, c.Of); got != c {
			t.Errorf("%+v, want %+v", got, c)
		}
	}
	if r := rowOf(t, v, "Loss on that way, at the air needed"); r.Off[0] != '-' {
		t.Errorf("%+v", r)
	}
	if r := rowOf(t, v, "Air the ports get in all"); r.Off[0] != '+' {
		t.Errorf("%+v", r)
	}
	for _, r := range v.Uses[0].Parts[0].Rows {
		if r.Of == "Shaft power" || r.Of == "Fan total pressure" {
			t.Errorf("%s is known in neither layout and shown", r.Of)
		}
	}
	if a := v.Amounts[0].Rows; len(a) != 1 || a[0] != (amountRow{"6 in", "spiral steel", "100", "40.5", "-59.5"}) {
		t.Errorf("%+v", a)
	}
	if len(v.Moved)+len(v.Lists) > 0 {
		t.Errorf("moved %v, lists %v", v.Moved, v.Lists)
	}
}

// A fan off its curve has a way and no point.
func TestALayoutOffTheCurveHasNoFigures(t *testing.T) {
	_, v := besideOf(t, benchOf(), benchOf(`["0 cfm", "10 inwg"], ["600 cfm", "9 inwg"], ["1200 cfm", "7 inwg"], ["1800 cfm", "1 inwg"]`, `["0 cfm", "10 inwg"], ["100 cfm", "9.9 inwg"]`))
	if r := rowOf(t, v, "Fan static pressure"); r.This == "—" || r.Other != "—" || r.Off != "—" {
		t.Errorf("%+v", r)
	}
	if r := rowOf(t, v, "Loss on that way, at the air needed"); r.Off != "same" {
		t.Errorf("%+v", r)
	}
}

// Collectors of other names are held against each other where each layout has
// one; what is named otherwise is listed.
func TestACollectorOfAnotherName(t *testing.T) {
	_, v := besideOf(t, benchOf(), benchOf("FAN", "Cyclone"))
	if p := v.Uses[0].Parts; len(p) != 1 || p[0].Collector != "Fan, in the other layout Cyclone" {
		t.Errorf("%+v", p)
	}
	if len(v.Lists) != 1 || v.Lists[0].Kind != "Collectors" || strings.Join(v.Lists[0].This, "") != "Fan" || strings.Join(v.Lists[0].Other, "") != "Cyclone" {
		t.Errorf("%+v", v.Lists)
	}
	if len(v.Amounts) != 2 {
		t.Errorf("%+v", v.Amounts)
	}
}

func TestACollectorThatMoves(t *testing.T) {
	at := func(place string) string { return benchOf("[[machine]]", "at = "+place+"\n[[machine]]") }
	if _, v := besideOf(t, at("[1, 2]"), at("[1, 3]")); len(v.Moved) != 1 || v.Moved[0] != "Fan" {
		t.Errorf("moved: %v", v.Moved)
	}
	if _, v := besideOf(t, at("[1, 2]"), at("[1, 2]")); len(v.Moved) > 0 {
		t.Errorf("stays, and is said to move: %v", v.Moved)
	}
}

func TestFindingsThatTellLayoutsApart(t *testing.T) {
	if _, v := besideOf(t, benchOf(), benchOf()); len(v.Findings) > 0 {
		t.Errorf("alike, and still: %+v", v.Findings)
	}
	heads := func(v besideView) string {
		var list []string
		for _, g := range v.Findings {
			for _, r := range g.Rows {
				list = append(list, g.Head+": "+r.CheckTitle+" of "+r.About)
			}
		}
		return strings.Join(list, "\n")
	}
	_, v := besideOf(t, benchOf("LONG", "400"), benchOf())
	if got := heads(v); !strings.Contains(got, "Only in this layout: Air captured of Planer") || strings.Contains(got, "Only in the other layout: Air captured") {
		t.Errorf("new: %s", got)
	}
	_, v = besideOf(t, benchOf(), benchOf("LONG", "400"))
	if got := heads(v); !strings.Contains(got, "Only in the other layout: Air captured of Planer") || strings.Contains(got, "Only in this layout: Air captured") {
		t.Errorf("gone: %s", got)
	}
}

// A use that is the same in both is named and not spelt out.
func TestAUseThatIsAlike(t *testing.T) {
	if _, v := besideOf(t, benchOf(), benchOf()); !v.Uses[0].Alike || strings.Join(v.Alike, "") != "Planer" {
		t.Errorf("%v", v.Alike)
	}
	if _, v := besideOf(t, benchOf(), benchOf("LONG", "41")); v.Uses[0].Alike || len(v.Alike) > 0 {
		t.Errorf("%v", v.Alike)
	}
}

func TestOff(t *testing.T) {
	for _, c := range []struct {
		here, there, text string
		sign              int
	}{
		{"5.63", "4.63", "-1.00", -1}, {"826", "1060", "+234", 1}, {"100", "40.5", "-59.5", -1},
		{"0.1", "0.3", "+0.2", 1}, {"12", "12", "", 0}, {"—", "3", "", 0}, {"3", "—", "", 0},
	} {
		if text, sign := off(c.here, c.there); text != c.text || sign != c.sign {
			t.Errorf("%s to %s: %s %d, want %s %d", c.here, c.there, text, sign, c.text, c.sign)
		}
	}
}

// The figures stand in this book's units, whatever the other's.
func TestTheOtherLayoutInThisBooksUnits(t *testing.T) {
	_, v := besideOf(t, benchOf("air =", "units = \"metric\"\nair ="), benchOf())
	if r := rowOf(t, v, "Length of hose and duct"); r.This != r.Other || r.Unit != unit.Run.Unit(unit.Metric) {
		t.Errorf("%+v", r)
	}
}

func TestWithoutAnotherLayoutNothingIsAdded(t *testing.T) {
	b := newBook(t, benchOf())
	for _, s := range b.Sheets {
		if s.Path == "beside.html" {
			t.Error("the sheet is there")
		}
	}
}
