package templates

import (
	"context"
	"strings"
	"testing"

	"dustbook/plan/duct"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// sizesText is a shop with a main that is given and a drop to be chosen; an
// invented one. Its planer needs the saw's gate open as well.
const sizesText = `
[shop]
name = "Two drops"
units = "metric"
[[collector]]
name = "Fan"
inlet = "200 mm"
fan_curve = [["0 m3/s", "2800 Pa"], ["0.4 m3/s", "2400 Pa"], ["0.9 m3/s", "600 Pa"], ["1.1 m3/s", "0 Pa"]]
filter = { clean = "100 Pa", change = "250 Pa", at = "0.5 m3/s" }
[[machine]]
name = "Saw"
kind = "other"
transport = "5 m/s"
port = { size = "100 mm", flow = "500 m3/h" }
[[machine]]
name = "Planer"
kind = "other"
transport = "18 m/s"
port = { size = "120 mm", flow = "300 m3/h" }
[[duct]]
name = "Main"
to = "Fan"
size = "200 mm"
length = "9 m"
[[duct]]
name = "Saw drop"
to = "Main"
joins = "0 m"
size = "choose"
length = "3 m"
serves = ["Saw"]
[[duct]]
name = "Planer drop"
to = "Main"
joins = "4 m"
size = "140 mm"
length = "2 m"
serves = ["Planer"]
[[gate]]
name = "Saw gate"
on = "Saw drop"
[[gate]]
name = "Planer gate"
on = "Planer drop"
`

func sizesBook(t *testing.T, changes ...string) *Book {
	t.Helper()
	return newBook(t, strings.NewReplacer(changes...).Replace(sizesText))
}

// The sheet shows the figures of the choice, what the sizes next to it would
// do, what to write, how it was chosen and where stock sizes come from.
func TestSizesSheet(t *testing.T) {
	b := sizesBook(t)
	list, err := b.Plan.Air.Choose(context.Background(), b.Plan.Shop)
	if err != nil || len(list) != 1 || !list[0].Met || len(list[0].Relief) != 1 {
		t.Fatalf("%v %+v", err, list)
	}
	c := list[0]
	steps, err := b.Plan.Air.Steps(context.Background(), b.Plan.Shop, c)
	if err != nil || steps[0].Up == nil || !steps[0].Up.Met {
		t.Fatal(err, steps)
	}
	body, words := b.sheet(t, "sizes.html")
	size := unit.Size.Print(b.units, c.Sizes[0].Size)
	inOrder(t, "sizes", words, "sizes found", "every use gets its air and carries its dust", "Write the sizes below", "The search was complete",
		"One size down", "One size up", "Saw drop "+size+" "+unit.Floor.Figure(b.units, steps[0].Area),
		unit.Size.Print(b.units, steps[0].Up.Size)+": meets every use as well, with "+unit.Floor.Print(b.units, steps[0].Up.Area-steps[0].Area)+" more sheet",
		"Sheet in all "+unit.Floor.Print(b.units, c.Area), "1 gate in one use", unit.Floor.Print(b.units, c.Cost), unit.Fixed(c.Energy/1000, 2)+" kWh",
		`in [[duct]] Saw drop : size = "`+size+`"`, `in [[machine]] Planer : also_open = ["Saw gate"]`,
		"How they were chosen", unit.Floor.Print(b.units, duct.ReliefPrice()), "Stock sizes 80, 100, ", "500 mm", "common practice, no source", "not a proof")
	if !strings.Contains(body, `href="ducts.html#duct-saw-drop"`) {
		t.Error("the duct leads nowhere")
	}
}

// What the sheet says to write does what it says.
func TestSizesWritten(t *testing.T) {
	b := sizesBook(t)
	list, _ := b.Plan.Air.Choose(context.Background(), b.Plan.Shop)
	size := unit.Size.Print(b.units, list[0].Sizes[0].Size)
	done := sizesBook(t, `"choose"`, `"`+size+`"`, "name = \"Planer\"\n", "name = \"Planer\"\nalso_open = [\"Saw gate\"]\n")
	for _, u := range done.Plan.Air.Uses {
		for _, r := range u.Results {
			if len(u.Machines) > 0 && (!r.Captured || !r.Carried) {
				t.Errorf("%s, %s: captured %v, carried %v", u.Name, r.Filter, r.Captured, r.Carried)
			}
		}
	}
	for _, s := range done.Sheets {
		if s.Path == "sizes.html" {
			t.Error("no size is to be chosen, and the sheet stands")
		}
	}
}

// Nothing meets, nothing fits: the verdict says what breaks it and what to do,
// and no size is to be written.
func TestSizesVerdict(t *testing.T) {
	for name, c := range map[string]struct {
		changes []string
		says    []string
	}{
		"near": {[]string{"300 m3/h", "3000 m3/h"}, []string{"no sizes do", "Fan: no stock sizes meet every use. The nearest miss: ", "% of its need", "Mend what breaks it first"}},
		"fits": {[]string{"to = \"Main\"\njoins = \"0 m\"\nsize = \"choose\"", "to = \"Main\"\njoins = \"0 m\"\nsize = \"140 mm\"", "size = \"200 mm\"\nlength", "size = \"choose\"\nlength", `inlet = "200 mm"`, `inlet = "100 mm"`}, []string{"no sizes do", "no stock size fits between", "Mend the sizes in the file"}},
	} {
		b := sizesBook(t, c.changes...)
		_, words := b.sheet(t, "sizes.html")
		inOrder(t, name, words, c.says...)
		if strings.Contains(words, "Write into the shop file") || strings.Contains(words, "sizes found") {
			t.Errorf("%s: sizes to write stand on the sheet", name)
		}
	}
}

// A search that ended at its bound says so; uses that no size meets are named.
func TestSizesNotProven(t *testing.T) {
	b := sizesBook(t)
	list, _ := b.Plan.Air.Choose(context.Background(), b.Plan.Shop)
	c := *list[0]
	if got := b.sure(&c); !strings.Contains(got, "complete") {
		t.Errorf("%q", got)
	}
	c.Proven, c.Tried = false, 12
	if got := b.sure(&c); got != "The search stopped at its bound, with 12 choices reckoned in full: there may be better sizes." {
		t.Errorf("%q", got)
	}
	c.Beyond = b.Plan.Air.Uses[:1]
	if v := b.sizesCollector(&c); !strings.Contains(v.Beyond, "Saw") {
		t.Errorf("%q", v.Beyond)
	}
	if v := b.sizesVerdict([]*duct.Choice{&c}); !strings.Contains(v.Says, "every use but those left out") {
		t.Errorf("%+v", v)
	}
	c.Sizes, c.Met = nil, false
	if v := b.sizesVerdict([]*duct.Choice{list[0], &c}); v.Words[0].Class != "notmet" || !strings.Contains(v.Says, "found no sizes") {
		t.Errorf("%+v", v)
	}
}

// Each kind of miss is said in its own words.
func TestMissSays(t *testing.T) {
	b := sizesBook(t)
	use, stretch := b.Plan.Air.Uses[0], b.Plan.Shop.Ducts[1].Stretches[0]
	for want, m := range map[string]*duct.Miss{
		"Saw: Saw/port gets 50 % of its need, filter clean":                                      {Port: use.Machines[0].Ports[0], Share: 0.5},
		"Saw: dust settles in Saw drop, at 99.9 % of the speed it needs, filter clean":           {Stretch: stretch, Share: 0.9990},
		"Saw: dust settles in the hose of Saw drop, at 40 % of the speed it needs, filter clean": {Stretch: stretch, Hose: true, Share: 0.4},
		"Saw: filter clean: the ducts draw more air than the curve's last point":                 {Why: source.Because("past-end")},
	} {
		m.Use, m.Filter = use, duct.Clean
		if got := b.missSays(m); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
