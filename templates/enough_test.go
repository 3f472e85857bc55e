package templates

import (
	"context"
	"os"
	"strings"
	"testing"

	"dustbook/plan/duct"
)

// pairBook is the book of two machines on a fan, with pieces of its file
// replaced.
func pairBook(t *testing.T, changes ...string) *Book {
	t.Helper()
	data, err := os.ReadFile("../plan/duct/testdata/pair.toml")
	if err != nil {
		t.Fatal(err)
	}
	return newBook(t, strings.NewReplacer(changes...).Replace(string(data)))
}

// Both sheets say the same of a shop: met, thin, not served, off the curve,
// not enough, dust that settles.
func TestEnoughAndFirstAgree(t *testing.T) {
	lathe := "name = \"Lathe\"\nkind = \"other\"\n"
	for name, c := range map[string]struct {
		changes       []string
		enough, first string
		says, do      []string // of enough, then of first
	}{
		"met":           {nil, "big enough", "nothing first", []string{"Every use gets its need, the worst by +", "Every port of every use"}, []string{"Prove the worst use with a gauge.", "Keep it so: close what leaks."}},
		"due filter":    {[]string{`exhaust = "outside"`, `filter = { clean = "100 Pa", change = "200 Pa", at = "0.5 m3/s" }`}, "big enough", "nothing first", []string{"filter due for change", "in both states of the filter"}, []string{"filter due for change", "clean the filter in time"}},
		"no filter":     {[]string{`exhaust = "outside"`, `exhaust = "returns to room"`}, "thin", "thin", []string{"filter not given. Not sure: the filter's pressure is not given", "the filter's pressure is not given"}, []string{"Add filter = ", "Add filter = "}},
		"two claims":    {[]string{`fan_curve = [["0 m3/s", "2800 Pa"], ["0.3 m3/s", "2500 Pa"], ["0.7 m3/s", "800 Pa"]]`, `claims = { flow = "0.8 m3/s", suction = "2800 Pa" }`}, "thin", "thin", []string{"two claims", "two claims"}, []string{"Ask the maker for the fan curve", "Ask the maker"}},
		"shared end":    {[]string{`serves = ["Saw"]`, `serves = ["Saw", "Lathe"]`, `serves = ["Lathe"]`, ``}, "not all served", "not all served", []string{"In Both, Lathe/port gets no air: another machine of the use has the end of Saw drop.", "In Both"}, []string{"end of its own", "take turns"}},
		"no duct":       {[]string{`serves = ["Lathe"]`, ``}, "not all served", "not all served", []string{"In Lathe, Lathe/port gets no air: no duct leads from it.", "no duct leads"}, []string{"end of its own", "end of its own"}},
		"off the curve": {[]string{`["0.3 m3/s", "2500 Pa"], ["0.7 m3/s", "800 Pa"]`, `["0.3 m3/s", "2500 Pa"], ["0.55 m3/s", "1600 Pa"]`}, "not known", "not all known", []string{"the fan leaves its curve: Both", "leave the fan's curve: Both."}, []string{"rest of the fan's curve", ""}},
		"weak fan":      {[]string{`"2800 Pa"`, `"60 Pa"`, `"2500 Pa"`, `"50 Pa"`, `"800 Pa"`, `"10 Pa"`}, "not enough", "change first", []string{"% of its need", "is the weakest"}, []string{"Look at the fan, or at the need.", "Look at the fan as well"}},
		"bad duct":      {[]string{`size = "120 mm"` + "\nlength = \"3 m\"\nserves = [\"Lathe\"]", `size = "60 mm"` + "\nlength = \"3 m\"\nserves = [\"Lathe\"]"}, "not enough", "change first", []string{"% of its need", "is the weakest"}, []string{"changes of the ducts can give this port its need", "cost little first"}},
		"dust":          {[]string{lathe + `transport = "12 m/s"`, lathe + `transport = "20 m/s"`, `size = "160 mm"`, `size = "180 mm"`}, "big enough", "dust settles", []string{"Every use gets its need", "dust settles in Lathe"}, []string{"Prove", "open a gate as well"}},
	} {
		b := pairBook(t, c.changes...)
		enough, first := b.enoughVerdict(b.Plan.Air.BigEnough()), b.changesVerdict(b.shortOfAir())
		if enough.Words[0].Text != c.enough || !strings.Contains(enough.Says, c.says[0]) || !strings.Contains(enough.Do, c.do[0]) {
			t.Errorf("%s, big enough: %+v", name, enough)
		}
		if first.Words[0].Text != c.first || !strings.Contains(first.Says, c.says[1]) || !strings.Contains(first.Do, c.do[1]) {
			t.Errorf("%s, what to change first: %+v", name, first)
		}
		if name == "met" && strings.Contains(enough.Do+first.Says+first.Do, "filter") {
			t.Errorf("there is no filter: %q, %q, %q", enough.Do, first.Says, first.Do)
		}
		for _, row := range b.enoughView(b.Plan.Air.BigEnough()).Collectors[0].Rows {
			if off := row.Gets == b.words.Text("enough.off"); off && (row.Short || row.Weakest != "—") {
				t.Errorf("%s: off the curve stands as a figure: %+v", name, row)
			}
		}
	}
}

// Where dust settles the sheet names the gate and the size that help; a use
// with all its air has a short list; one without is not among those served.
func TestDustAndServedOnFirst(t *testing.T) {
	lathe := "name = \"Lathe\"\nkind = \"other\"\n"
	_, words := pairBook(t, lathe+`transport = "12 m/s"`, lathe+`transport = "20 m/s"`, `size = "160 mm"`, `size = "180 mm"`).sheet(t, "first.html")
	inOrder(t, "first", words, "dust settles", "Where dust settles", "Dust settles in Main 2", "Open as well: Saw gate.", "Main in 160 mm", "Uses with all their air", "Air gained", "These have all the air they need: Saw, Lathe, Both.")
	_, words = pairBook(t, `serves = ["Lathe"]`, ``).sheet(t, "first.html")
	inOrder(t, "first", words, "In these a port that needs air gets none: Lathe, Both.", "These have all the air they need: Saw.")
}

// Where the fan can settle at several flows, the sheet says so beside what is
// to spare; where it cannot, it does not.
func TestSeveralFlows(t *testing.T) {
	hump := []string{`["0 m3/s", "2800 Pa"], ["0.3 m3/s", "2500 Pa"], ["0.7 m3/s", "800 Pa"]`, `["0 m3/s", "1500 Pa"], ["0.25 m3/s", "450 Pa"], ["0.4 m3/s", "2000 Pa"], ["0.7 m3/s", "300 Pa"]`}
	b := pairBook(t, hump...)
	var several []string
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.Results {
			if len(u.Machines) > 0 && len(r.Crossings) > 1 {
				several = append(several, u.Name)
			}
		}
	}
	if len(several) == 0 {
		t.Fatal("no use has several crossings")
	}
	note := b.enoughView(b.Plan.Air.BigEnough()).Collectors[0].Several
	for _, name := range several {
		if !strings.Contains(note, name) {
			t.Errorf("%s is not in %q", name, note)
		}
	}
	if note := pairBook(t).enoughView(pairBook(t).Plan.Air.BigEnough()).Collectors[0].Several; note != "" {
		t.Errorf("one crossing each, and the sheet says %q", note)
	}
}

// The sheet holds the fan against its claim and the port against its need.
func TestEnoughFacts(t *testing.T) {
	b := pairBook(t)
	e := b.Plan.Air.BigEnough()[0]
	c := b.enoughView([]duct.Enough{e}).Collectors[0]
	if !strings.Contains(c.Delivered, e.Worst.Use.Name) || !strings.HasPrefix(c.Margin, e.Worst.Port.Full()+": ") || !strings.Contains(c.Margin, " of 500 ") {
		t.Errorf("%+v", c)
	}
}

// Sizes that meet every use by the model are thin where something keeps them
// from being sure, and then say what; the two states of a filter are only named
// where there is one. The margins and the gates stand there by name.
func TestSizesThin(t *testing.T) {
	filter := `filter = { clean = "100 Pa", change = "250 Pa", at = "0.5 m3/s" }`
	for _, c := range []struct {
		line, word string
		due, asks  bool
	}{
		{filter, "sizes found", true, false},
		{`exhaust = "outside"`, "sizes found", false, false},
		{`exhaust = "returns to room"`, "sizes found, thin", false, true},
	} {
		b := sizesBook(t, filter, c.line)
		list, _ := b.Plan.Air.Choose(context.Background(), b.Plan.Shop)
		if !list[0].Met {
			t.Fatalf("%s: not met", c.line)
		}
		v := b.sizesVerdict(list)
		if v.Words[0].Text != c.word || strings.Contains(v.Says, "due for change") != c.due || strings.Contains(v.Says, "filter's pressure is not given") != c.asks {
			t.Errorf("%s: %+v", c.line, v)
		}
	}
	b := sizesBook(t)
	_, words := b.sheet(t, "sizes.html")
	inOrder(t, "sizes", words, "Least air: ", "% of what ", "eight times of ten between", "Least speed: ", "Opened as well in Planer: Saw gate")
}
