package export

import (
	"context"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// stepText is a row with two drops, one with a hose of the duct's size, a gate
// on each and on the main, a leak and a use; an invented shop.
const stepText = `
[shop]
name = "Row"
units = "metric"
people_at_machines = 2
[[collector]]
name = "Fan"
inlet = "200 mm"
fan_curve = [["0 m3/s", "2800 Pa"], ["0.4 m3/s", "2400 Pa"], ["0.9 m3/s", "600 Pa"], ["1.1 m3/s", "0 Pa"]]
filter = { clean = "100 Pa", change = "250 Pa", at = "0.5 m3/s" }
[[machine]]
name = "Saw"
kind = "other"
port = { size = "100 mm", flow = "500 m3/h" }
[[machine]]
name = "Planer"
kind = "other"
also_open = ["Saw gate"]
port = { size = "120 mm", flow = "900 m3/h" }
[[duct]]
name = "Main"
to = "Fan"
size = "choose"
length = "9 m"
[[duct]]
name = "Saw drop"
to = "Main"
joins = "0 m"
size = "choose"
length = "3 m"
hose = { length = "1 m" }
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
[[leak]]
on = "Planer drop"
at = "1 m"
hole = "12 mm"
[[use]]
name = "Both"
machines = ["Saw", "Planer"]
`

func planOf(t *testing.T, text string) *plan.Plan {
	t.Helper()
	s, problems := shop.Read("shop.toml", []byte(text))
	if s == nil {
		t.Fatal(problems)
	}
	return plan.Make(s, nil, entry.Date{})
}

func choiceOf(t *testing.T, p *plan.Plan) *duct.Choice {
	t.Helper()
	list, err := p.Air.Choose(context.Background(), p.Shop)
	if err != nil || len(list) == 0 {
		t.Fatal(list, err)
	}
	return list[0]
}

var toChoose = regexp.MustCompile(`(?m)^name = "([^"]+)"\n(?:to|joins) = [^\n]*\n(?:joins = [^\n]*\n)?size = "choose"$`)

// filled is a shop file with sizes in the place of "choose", as a steward
// writes them.
func filled(t *testing.T, text string, sizes []duct.Sized) string {
	t.Helper()
	return toChoose.ReplaceAllStringFunc(text, func(part string) string {
		name := toChoose.FindStringSubmatch(part)[1]
		for _, at := range sizes {
			if at.Duct.Name == name {
				return strings.Replace(part, `"choose"`, `"`+unit.Short(1000*float64(at.Size))+` mm"`, 1)
			}
		}
		t.Fatalf("%s was not chosen", name)
		return ""
	})
}

// Each step says what the file with that size in it says.
func TestSteps(t *testing.T) {
	seen := map[string]int{}
	slow := strings.ReplaceAll(stepText, `kind = "other"`, "kind = \"other\"\ntransport = \"8 m/s\"")
	wide := strings.NewReplacer("also_open = [\"Saw gate\"]\n", "", "900 m3/h", "300 m3/h", "name = \"Main\"\nto = \"Fan\"\nsize = \"choose\"", "name = \"Main\"\nto = \"Fan\"\nsize = \"200 mm\"",
		"name = \"Saw\"\n", "name = \"Saw\"\ntransport = \"5 m/s\"\n", "name = \"Planer\"\n", "name = \"Planer\"\ntransport = \"18 m/s\"\n").Replace(stepText)
	for _, text := range []string{stepText, strings.Replace(stepText, "900 m3/h", "3900 m3/h", 1), strings.Replace(stepText, `inlet = "200 mm"`, `inlet = "140 mm"`, 1), slow, wide} {
		p := planOf(t, text)
		c := choiceOf(t, p)
		steps, err := p.Air.Steps(context.Background(), p.Shop, c)
		if err != nil || len(steps) != len(c.Sizes) {
			t.Fatal(steps, err)
		}
		if !reflect.DeepEqual(p.Shop, planOf(t, text).Shop) {
			t.Error("the shop of the plan changed")
		}
		sum := 0.0
		stock := duct.StockSizes(p.Shop.Units)
		for i, at := range steps {
			own := math.Pi * float64(at.Bore) * float64(at.Duct.Length)
			if sum += own; unit.Compare(float64(at.Area), own) != 0 {
				t.Errorf("%s: sheet %g, want %g", at.Duct.Name, float64(at.Area), own)
			}
			for by, step := range map[int]*duct.Step{-1: at.Down, 1: at.Up} {
				checkStep(t, text, c, i, step, seen)
				place := -1
				for k, size := range stock {
					if size == at.Size {
						place = k
					}
				}
				if place+by >= 0 && place+by < len(stock) && (step == nil || step.Size != stock[place+by]) {
					t.Errorf("%s by %d: %+v", at.Duct.Name, by, step)
				}
			}
		}
		if unit.Compare(sum, float64(c.Area)) != 0 {
			t.Errorf("sheet %g, want %g", sum, float64(c.Area))
		}
	}
	for _, kind := range []string{"met", "port", "stretch", "wider", "relief"} {
		if seen[kind] == 0 {
			t.Errorf("no step is %s: %v", kind, seen)
		}
	}
}

func checkStep(t *testing.T, text string, c *duct.Choice, i int, step *duct.Step, seen map[string]int) {
	t.Helper()
	if step == nil {
		return
	}
	name := c.Sizes[i].Duct.Name + " " + unit.Short(float64(step.Size))
	if step.Wider != "" {
		seen["wider"]++
		if step.Met || step.Miss != nil {
			t.Errorf("%s: does not fit, and: %+v", name, step)
		}
		return
	}
	sizes := append([]duct.Sized(nil), c.Sizes...)
	sizes[i].Size = step.Size
	text = filled(t, text, sizes)
	for _, opened := range c.Relief {
		seen["relief"]++
		text = strings.Replace(text, "name = \""+opened.Use.Name+"\"\n", "name = \""+opened.Use.Name+"\"\nalso_open = [\""+opened.Gates[0].Name+"\"]\n", 1)
	}
	written := planOf(t, text)
	met, least := true, 1.0
	for _, u := range written.Air.Uses {
		for _, r := range u.Results {
			if len(u.Machines) == 0 {
				continue
			}
			met = met && r.Captured && r.Carried
			if _, share := r.Weakest(); share < least {
				least = share
			}
			if s, share := r.Slowest(); s != nil && share < least {
				least = share
			}
		}
	}
	switch {
	case met != step.Met || met != (step.Miss == nil):
		t.Errorf("%s: met %v, want %v", name, step.Met, met)
	case met:
		seen["met"]++
	case step.Miss.Share != least:
		t.Errorf("%s: %+v, want %g", name, step.Miss, least)
	case step.Miss.Port != nil:
		seen["port"]++
	case step.Miss.Stretch != nil:
		seen["stretch"]++
	}
}

// What the choice itself misses is found again with its own sizes, and nothing
// where it meets all.
func TestMissOfTheChoice(t *testing.T) {
	for _, flow := range []string{"900 m3/h", "3900 m3/h"} {
		p := planOf(t, strings.Replace(stepText, "900 m3/h", flow, 1))
		c := choiceOf(t, p)
		got := p.Air.Missed(p.Shop, c, c.Sizes)
		if (got == nil) != c.Met {
			t.Fatalf("%s: %+v, met %v", flow, got, c.Met)
		}
		if got != nil && (got.Share != c.Score || got.Use.Name != c.Miss.Use.Name || got.Filter != c.Miss.Filter || got.Hose != c.Miss.Hose || (got.Port == nil) != (c.Miss.Port == nil)) {
			t.Errorf("%+v, want %+v", got, c.Miss)
		}
	}
}

// A context that is done stops it.
func TestStepsStop(t *testing.T) {
	p := planOf(t, stepText)
	c := choiceOf(t, p)
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if list, err := p.Air.Steps(ctx, p.Shop, c); err == nil {
		t.Errorf("%d steps", len(list))
	}
	if _, err := MakeChoose(ctx, p); err == nil {
		t.Error("the document was made")
	}
}
