package templates

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// shownAs are the sheets that print an assumed value: there it is a link.
func (b *Book) shownAs(a shop.Assumption) []string {
	s := b.Plan.Shop
	switch a.Field {
	case "duct.material", "duct.roughness", "duct.entry", "hose.material", "hose.roughness", "hose.stretched", "gate.leak":
		return []string{"ducts.html"}
	case "hose.size":
		sheets := []string{"ducts.html"}
		for _, d := range s.Ducts {
			if d.Name == a.Thing {
				sheets = append(sheets, b.Path("use", d.Serves[0].Machine.Name))
			}
		}
		return sheets
	case "duct.elbows":
		for _, d := range s.Ducts {
			if d.Name == a.Thing && len(d.Turns) > 0 {
				return []string{"ducts.html"}
			}
		}
	case "port.flow":
		machine, _, _ := strings.Cut(a.Thing, "/")
		return []string{b.Path("use", machine)}
	case "collector.curve_density":
		for _, c := range s.Collectors {
			if c.Name == a.Thing && len(c.Curve) > 0 {
				return []string{b.Path("collector", a.Thing)}
			}
		}
	case "motor.service_factor":
		for i, c := range s.Collectors {
			if c.Name == a.Thing && b.Plan.Air.Loads[i].Known {
				return []string{b.Path("collector", a.Thing)}
			}
		}
	}
	return nil
}

// embedded are the shops that the program carries.
func embedded(t *testing.T) map[string]*Book {
	t.Helper()
	return map[string]*Book{"school": newBook(t, string(content.Example())), "small": newBook(t, string(content.Small())), "starter": newBook(t, string(content.Starter()))}
}

var (
	assumedLink = regexp.MustCompile(`href="assumptions\.html#([^"]+)"`)
	valueLink   = regexp.MustCompile(`<a class="assumed" href="assumptions\.html#([^"]+)"><bdi>([^<]*)</bdi><sup aria-hidden="true">A</sup><span class="unseen"> \(assumed\)</span></a>`)
)

// Every assumed value that a sheet prints leads to its row, and every such
// link to a row that is there.
func TestAssumedFiguresLead(t *testing.T) {
	for name, b := range embedded(t) {
		rows := pageOf(t, b, "assumptions.html")
		looked := 0
		for _, a := range b.Plan.Shop.Assumed {
			g := b.taken.at[[2]string{a.Thing, a.Field}]
			if g == nil || !slices.Contains(g.Things, a.Thing) || strings.Count(rows, `id="`+g.ID+`"`) != 1 {
				t.Errorf("%s: %s of %s has no row of its own", name, a.Field, a.Thing)
				continue
			}
			for _, path := range b.shownAs(a) {
				looked++
				if !strings.Contains(pageOf(t, b, path), `<a class="assumed" href="`+g.path()+`">`) {
					t.Errorf("%s: %s does not lead to the %s of %s", name, path, a.Field, a.Thing)
				}
			}
		}
		if looked < 5 {
			t.Errorf("%s: only %d values are looked for", name, looked)
		}
		for _, s := range b.Sheets {
			page := pageOf(t, b, s.Path)
			for _, m := range assumedLink.FindAllStringSubmatch(page, -1) {
				if !strings.Contains(rows, `id="`+m[1]+`"`) {
					t.Errorf("%s: %s leads to %q, which is not there", name, s.Path, m[1])
				}
			}
		}
	}
}

// A value that the file gives leads nowhere; once it is left out it does.
func TestGivenFiguresDoNotLead(t *testing.T) {
	flows := func(b *Book, machine string) (list []string) {
		page := pageOf(t, b, b.Path("use", machine))
		_, ports, _ := strings.Cut(page, b.words.Text("use.at-the-ports"))
		ports, _, _ = strings.Cut(ports, "</table>")
		for _, m := range valueLink.FindAllStringSubmatch(ports, -1) {
			list = append(list, m[2])
		}
		return list
	}
	school := newBook(t, string(content.Example()))
	if got := flows(school, "Planer"); got != nil {
		t.Errorf("the planer's need is given, and leads to %q", got)
	}
	if got := flows(school, "Disc sander"); !slices.Equal(got, []string{"350"}) {
		t.Errorf("the disc sander's need is assumed, and leads to %q", got)
	}
	const kind = "kind = \"disc sander\"\n"
	if !strings.Contains(string(content.Example()), kind) {
		t.Fatal("the school has no disc sander")
	}
	given := newBook(t, strings.Replace(string(content.Example()), kind, kind+"port = { name = \"hood\", size = \"4 in\", flow = \"350 cfm\" }\n", 1))
	if got := flows(given, "Disc sander"); got != nil {
		t.Errorf("the disc sander's need is given now, and leads to %q", got)
	}
	for _, c := range []struct {
		kind, thing, field string
		leads              bool
	}{
		{"port", "Planer/hood", "flow", false}, {"port", "Disc sander/hood", "flow", true}, {"hose", "Planer drop", "size", true}, {"hose", "Saw drop", "size", false},
		{"gate", "Saw gate", "leak", true}, {"gate", "Spindle gate", "leak", false}, {"method", "", "size_changes", true}, {"shop", "", "altitude", false}, {"duct", "No such duct", "size", false},
	} {
		if got := school.assumed(c.kind, c.thing, c.field) != ""; got != c.leads {
			t.Errorf("%s of %s %q is assumed: %v", c.field, c.kind, c.thing, got)
		}
	}
}

// The row of an assumption keeps its name when other things come and go.
func TestAssumedRowsKeepTheirNames(t *testing.T) {
	text := string(content.Example())
	before, after := newBook(t, text), newBook(t, strings.Replace(text, "material = \"conductive ribbed hose\", stretched = true }\nserves = [\"Planer\"]", "size = \"6 in\", material = \"conductive ribbed hose\", stretched = true }\nserves = [\"Planer\"]", 1))
	if len(before.Plan.Shop.Assumed) == len(after.Plan.Shop.Assumed) {
		t.Fatal("the planer's hose is as it was")
	}
	for key, g := range after.taken.at {
		if old := before.taken.at[key]; old == nil || old.ID != g.ID {
			t.Errorf("%v is %s now", key, g.ID)
		}
	}
}

// A use rests on what its machines, ducts and gates leave to defaults, and on
// nothing of others.
func TestUsesRestOnTheirOwn(t *testing.T) {
	b := newBook(t, string(content.Example()))
	rests := map[string]string{}
	for _, u := range b.Plan.Air.Uses {
		if u.Kind == duct.OneMachine {
			for _, s := range b.restsOn(b.thingsOf(u)) {
				rests[u.Name] += s.Text + "\n"
			}
		}
	}
	if !strings.Contains(rests["Disc sander"], "port.flow: 350 cfm") || strings.Contains(rests["Planer"], "port.flow") {
		t.Errorf("disc sander: %s\nplaner: %s", rests["Disc sander"], rests["Planer"])
	}
	for name, list := range rests {
		if !strings.Contains(list, "method.size_changes: taper") || strings.Contains(list, "service_factor") {
			t.Errorf("%s: %s", name, list)
		}
	}
}

// A junction that the flow split does not reach is an assumption, with the
// basis of the coefficient by angle; none is where all are reached, and none
// where the shop asks for the angle itself.
func TestJunctionsByAngleAreAssumed(t *testing.T) {
	const method = "junctions = \"flow split\"\n"
	if strings.Count(forked("20 deg"), method) != 1 {
		t.Fatal("the forked shop does not say how junctions are reckoned")
	}
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"reached", forked("45 deg"), nil},
		{"not reached", forked("20 deg"), []string{"Lathe drop"}},
		{"by angle", strings.Replace(forked("20 deg"), method, "junctions = \"by angle\"\n", 1), nil},
	} {
		b := newBook(t, c.text)
		var groups []*assumptionGroup
		for _, g := range b.taken.groups {
			if g.Field == "method.junctions" {
				groups = append(groups, g)
			}
		}
		page := pageOf(t, b, "assumptions.html")
		if says := b.words.Text("assumed.by-angle"); strings.Contains(page, says) != (c.want != nil) {
			t.Errorf("%s: the sheet of assumptions says %q: %v", c.name, says, c.want == nil)
		}
		if c.want == nil {
			if len(groups) != 0 {
				t.Errorf("%s: assumed %+v", c.name, groups[0])
			}
			continue
		}
		if len(groups) != 1 || !slices.Equal(groups[0].Things, c.want) || groups[0].Weak.Class != "thin" || groups[0].FieldPath == "" {
			t.Fatalf("%s: %+v", c.name, groups)
		}
		if air.EntryBasis().Document != "vent-manual" || air.EntryBasis().Mark != source.Memory || !slices.Equal(groups[0].Sources, b.cited([]source.Basis{air.EntryBasis()})) {
			t.Errorf("%s: %+v", c.name, groups[0].Sources)
		}
		rests := false
		for _, u := range b.Plan.Air.Uses {
			if u.Name == "All three" {
				rests = slices.Contains(b.restsOn(b.thingsOf(u)), sourced{b.words.Text("assumed.field-value", groups[0].Field, groups[0].Value), groups[0].path()})
			}
		}
		if !rests {
			t.Errorf("%s: the use does not say that it rests on it", c.name)
		}
	}
}
