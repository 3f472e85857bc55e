package templates

import (
	"slices"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/shop"
)

// Every thing of the shop and every sheet of the whole book stands in the list,
// once under its letter, and leads to a sheet that there is.
func TestEveryNameIsFound(t *testing.T) {
	b := upkeepBook(t, content.Example(), day(2026, 11, 24))
	letters := b.foundLetters()
	names := map[string]int{}
	last := ""
	for _, l := range letters {
		if l.Letter <= last && last != "#" {
			t.Errorf("%s comes after %s", l.Letter, last)
		}
		last = l.Letter
		for _, thing := range l.Things {
			names[thing.What+" "+thing.Name]++
			if l.Letter != "#" && !strings.HasPrefix(strings.ToUpper(shop.Slug(thing.Name)), l.Letter) {
				t.Errorf("%s stands under %s", thing.Name, l.Letter)
			}
			for _, link := range thing.Links {
				if !b.has(link.Path) || link.Text == "" {
					t.Errorf("%s leads to %q by %q", thing.Name, link.Path, link.Text)
				}
			}
		}
	}
	var want []string
	for _, m := range b.Plan.Shop.Machines {
		want = append(want, "machine "+m.Name)
	}
	for _, g := range b.Plan.Shop.Gates {
		want = append(want, "gate "+g.Name)
	}
	for _, d := range b.Plan.Shop.Ducts {
		want = append(want, "duct "+d.Name)
	}
	want = append(want, "sheet Ducts and gates", "check Air captured")
	for _, name := range want {
		if names[name] != 1 {
			t.Errorf("%s stands %d times", name, names[name])
		}
	}
}

// A name that begins with no letter of the alphabet stands under a mark.
func TestNamesWithoutALetter(t *testing.T) {
	text := strings.ReplaceAll(string(content.Small()), `"Table saw"`, `"12 in saw"`)
	letters := upkeepBook(t, []byte(strings.ReplaceAll(text, `kind = "12 in saw"`, `kind = "table saw"`)), day(2026, 11, 24)).foundLetters()
	i := slices.IndexFunc(letters, func(l foundLetter) bool { return l.Letter == "#" })
	if i < 0 || !slices.ContainsFunc(letters[i].Things, func(f foundThing) bool { return f.Name == "12 in saw" }) {
		t.Errorf("%+v", letters)
	}
}
