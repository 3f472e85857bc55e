package templates

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/record"
)

// The guide comes in the languages of the shop, each complete.
func TestFirstDayInEachLanguage(t *testing.T) {
	for _, c := range []struct {
		language string
		en, es   string // the path; empty where there is none
	}{{"en", "first-day.html", ""}, {"es", "", "first-day.html"}, {"both", "first-day.html", "es-first-day.html"}} {
		b := inLanguage(t, c.language)
		sheets := 0
		for _, s := range b.Sheets {
			if s.Kind == "first-day" {
				sheets++
			}
		}
		if want := len(strings.Fields(c.en + " " + c.es)); sheets != want {
			t.Errorf("%s: %d sheets, want %d", c.language, sheets, want)
		}
		if c.en != "" {
			page := pageOf(t, b, c.en)
			for _, want := range []string{`<html lang="en">`, "Let go of the work", "On your first day", "Read and signed", `href="card-planer.html"`} {
				if !strings.Contains(page, want) {
					t.Errorf("%s: the English guide does not say %q", c.language, want)
				}
			}
			if strings.Contains(page, "fluent speaker") {
				t.Errorf("%s: the English guide asks for a fluent speaker", c.language)
			}
		}
		if c.es != "" {
			page := pageOf(t, b, c.es)
			for _, want := range []string{`<html lang="es">`, "Suelte la pieza", "En su primer día", "Leído y firmado", "fluent speaker", "encienda Bench collector", "card-planer.html"} {
				if !strings.Contains(page, want) {
					t.Errorf("%s: the Spanish guide does not say %q", c.language, want)
				}
			}
			for _, no := range []string{"Let go", "switch on Bench", "starts by itself", "not given", "Not given", "way out"} {
				if strings.Contains(page, no) {
					t.Errorf("%s: the Spanish guide says %q", c.language, no)
				}
			}
		}
	}
	both := inLanguage(t, "both")
	for card, guide := range map[string]string{"card-planer.html": "first-day.html", "es-card-planer.html": "es-first-day.html"} {
		if !strings.Contains(pageOf(t, both, card), `href="`+guide+`"`) || !strings.Contains(pageOf(t, both, guide), `href="`+card+`"`) {
			t.Errorf("%s and %s do not lead to each other", card, guide)
		}
	}
	for _, key := range content.Keys() {
		if _, translated := content.Has(key, content.Spanish); strings.HasPrefix(key, "day.") && !translated {
			t.Errorf("%s is not translated", key)
		}
	}
}

// The guide asks for a fluent speaker until a record about it says that one
// read it; a record about a machine's card is not one.
func TestFirstDayWording(t *testing.T) {
	b := inLanguage(t, "both")
	for at, asks := range map[string]bool{plan.FirstDay: false, "Planer": true} {
		b.Plan.Records = []*record.Record{{Readings: []record.Reading{{Of: "wording", At: at, Value: record.Quantity{Text: "read by a fluent speaker"}}}}}
		again, err := New(b.Plan, b.Findings)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(pageOf(t, again, "es-first-day.html"), "fluent speaker"); got != asks {
			t.Errorf("a record about %s: the guide asks for a fluent speaker: %v", at, got)
		}
	}
}

// What the guide says of the school follows from its file.
func TestFirstDayOfTheSchool(t *testing.T) {
	b := newBook(t, string(content.Example()))
	v := b.firstDayView()
	rows := map[string]string{}
	for _, m := range v.Machines {
		rows[m.Name] = fmt.Sprint(m.ByItself, m.Open, m.Starts, m.Halted)
	}
	for name, want := range map[string]string{
		"Planer":      "[East zone gate Planer gate] [] [Cyclone starts by itself] true",
		"Lathe":       "[South zone gate Saw gate] [Far gate] [press Lathe switch: Cyclone starts] true",
		"Drum sander": "[] [Drum gate] [switch on Bench collector] false",
	} {
		if rows[name] != want {
			t.Errorf("%s: %s, want %s", name, rows[name], want)
		}
	}
	if len(v.Machines) != len(b.Plan.Shop.Machines) || v.More != 0 {
		t.Errorf("%d machines and %d more", len(v.Machines), v.More)
	}
	items := func(i int) string { return fmt.Sprint(v.Places[i].Items) }
	for i, want := range []string{
		"[{Stop by the west door register.html#device-b1 Machine hall stops Cyclone} {Switch on the bench collector register.html#device-b2 Bench room stops Bench collector}]",
		"[{2 ways out plan.html#room-machine-hall Machine hall } {1 way out plan.html#room-bench-room Bench room }]",
		"[{2-A:10-B:C  Machine hall } {2-A:10-B:C  Bench room }]",
	} {
		if items(i) != want || v.Places[i].Missing != "" {
			t.Errorf("%s: %s %q, want %s", v.Places[i].What, items(i), v.Places[i].Missing, want)
		}
	}
	if len(v.Together) != 0 || len(v.Not) != 4 || v.Not[0].Path != "use-planer-and-jointer.html" || !slices.Contains(v.Most, "Cyclone: at most 1, by the uses of this shop") {
		t.Errorf("together %v, not %v, at once %v", v.Together, v.Not, v.Most)
	}
	if len(v.Never) != 1 || v.Never[0].Of != "" {
		t.Errorf("never: %+v", v.Never)
	}
	for _, path := range []string{"index.html", "card-planer.html", "contents.html"} {
		if !strings.Contains(pageOf(t, b, path), `href="first-day.html"`) {
			t.Errorf("%s does not lead to the guide", path)
		}
	}
}

// Machines that the plan finds to work together stand so, and count.
func TestFirstDayTogether(t *testing.T) {
	b := newBook(t, string(content.Example()))
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.Results {
			if u.Name == "Both sanders" {
				r.Captured, r.Carried = true, true
			}
		}
	}
	most, together, not := b.dayTogether()
	if len(together) != 1 || together[0].Machines != "Drum sander and Edge sander" || len(not) != 3 || !slices.Contains(most, "Bench collector: at most 2, by the uses of this shop") {
		t.Errorf("together %v, not %v, at once %v", together, not, most)
	}
}

// Where metal and wood are worked in one shop, what must not go into a duct
// stands for each.
func TestFirstDayOfMetalAndWood(t *testing.T) {
	text := strings.Replace(string(content.Example()), "kind = \"disc sander\"\n", "kind = \"disc sander\"\nmakes = \"metal\"\n", 1)
	never := newBook(t, text).dayNever()
	if len(never) != 2 || never[0].Of == "" || never[1].Of == never[0].Of || !slices.Contains(never[1].Into, "wood dust") || slices.Contains(never[0].Into, "wood dust") {
		t.Errorf("%+v", never)
	}
}

// A shop file that says little gets no facts of its own: the guide says what
// is not given and what to do.
func TestFirstDayOfASilentShop(t *testing.T) {
	b := newBook(t, string(content.Small()))
	v := b.firstDayView()
	for i, want := range []string{"Nothing in the shop file stops Collector", "the shop file gives none", "Ask where one hangs", "Ask what the dust of Collector falls into"} {
		if p := v.Places[i]; len(p.Items) != 0 || !strings.Contains(p.Missing, want) {
			t.Errorf("%s: %v, %q, want %q", p.What, p.Items, p.Missing, want)
		}
	}
	page := pageOf(t, b, "first-day.html")
	if n := strings.Count(page, "Not given."); n != 4 {
		t.Errorf("not given stands %d times, want 4", n)
	}
	if strings.Contains(page, "Lockout") || strings.Contains(page, "Hit <bdi>") || strings.Contains(page, "opens by itself is left") {
		t.Error("the guide tells of what the shop does not have")
	}
}

// A shop with more than two sides hold names what is left to cards and plan.
func TestFirstDayOfManyMachines(t *testing.T) {
	text := string(content.Example())
	for i := range 40 {
		text += fmt.Sprintf("[[machine]]\nname = \"Drill %d\"\nkind = \"drill press\"\n[[use]]\nname = \"Use %d\"\nmachines = [\"Planer\", \"Drill %d\"]\n[[stop]]\nname = \"Stop %d\"\nstops = [\"Cyclone\"]\n", i, i, i, i)
	}
	b := newBook(t, text)
	v := b.firstDayView()
	if len(v.Machines) != mostDayMachines || v.More != len(b.Plan.Shop.Machines)-mostDayMachines || v.More == 0 {
		t.Errorf("%d machines and %d more of %d", len(v.Machines), v.More, len(b.Plan.Shop.Machines))
	}
	if len(v.Not) != mostDayUses || v.MoreUses != 44-mostDayUses || len(v.Places[0].Items) != mostDayItems+1 {
		t.Errorf("%d uses and %d more, %d stops", len(v.Not), v.MoreUses, len(v.Places[0].Items))
	}
	page := pageOf(t, b, "first-day.html")
	for _, want := range []string{"40 more machines", "40 more uses stand on", "37 more on the plan", "and 39 more"} {
		if !strings.Contains(strings.NewReplacer("<bdi>", "", "</bdi>", "").Replace(page), want) {
			t.Errorf("the guide does not say %q", want)
		}
	}
}
