package shop

import (
	"slices"
	"strings"
	"testing"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// TestFigureRows: every row of the data has a mark, names a document of the
// list or says that there is none, and holds a figure that can be.
func TestFigureRows(t *testing.T) {
	check := func(what string, basis source.Basis, value, least, most float64) {
		t.Helper()
		if basis.Mark == 0 {
			t.Errorf("%s has no mark", what)
		}
		if _, ok := source.FindDocument(basis.Document); basis.Document != "" && !ok {
			t.Errorf("%s names the unknown document %s", what, basis.Document)
		}
		if strings.HasPrefix(basis.Mark.String(), "verified") && basis.Document == "" {
			t.Errorf("%s is verified in no document", what)
		}
		if value < least || value > most {
			t.Errorf("%s: %v, want from %v to %v", what, value, least, most)
		}
	}
	for _, m := range Materials() {
		check(m.Name, m.Basis, float64(m.Roughness), 1e-6, 1e-3)
	}
	for _, h := range Hoses() {
		check(h.Name, h.Basis, float64(h.Roughness), 1e-4, 5e-3)
	}
	for _, e := range Elbows() {
		check(e.Name, e.Basis, e.K90, 0.05, 1.5)
	}
	for _, list := range bores {
		for _, row := range list {
			check("a bore", row.basis, float64(row.inside/row.nominal), 0.95, 1.05)
		}
	}
	for _, k := range Kinds() {
		for _, p := range k.Ports {
			check(k.Name+", hood loss", p.Hood, p.HoodLoss, 0.3, 2)
			check(k.Name+", us", p.Need[unit.US], float64(p.Flow[unit.US]), 0, 0.6)
			check(k.Name+", metric", p.Need[unit.Metric], float64(p.Flow[unit.Metric]), 0, 0.6)
		}
	}
	for _, f := range factors {
		check(f.Text("factor"), f.Basis, f.Number("value"), 1, 300)
	}
	for _, r := range Rows() {
		if r.Basis.Mark != 0 {
			check(r.Table+"."+r.Field, r.Basis, 1, 0, 1)
			if r.Default == "" {
				t.Errorf("%s.%s has a source and no default", r.Table, r.Field)
			}
		}
	}
}

// TestElbowsByShape: a tighter elbow and one of fewer pieces lose more.
func TestElbowsByShape(t *testing.T) {
	k := func(name string) float64 { return findElbow(name).K90 }
	for _, make := range []string{"stamped", "5-piece", "4-piece", "3-piece"} {
		if !(k(make+" R/D 1.0") > k(make+" R/D 1.5") && k(make+" R/D 1.5") > k(make+" R/D 2.0")) {
			t.Errorf("%s elbows do not fall with the radius", make)
		}
	}
	for _, bend := range []string{" R/D 1.0", " R/D 1.5", " R/D 2.0"} {
		if !(k("3-piece"+bend) > k("4-piece"+bend) && k("4-piece"+bend) > k("5-piece"+bend) && k("5-piece"+bend) > k("stamped"+bend)) {
			t.Errorf("elbows of%s do not fall with the pieces", bend)
		}
	}
	if DefaultElbow().Name != "stamped R/D 1.5" {
		t.Error(DefaultElbow())
	}
}

// TestFieldRows: the rows of fields.csv fit each other and the words.
func TestFieldRows(t *testing.T) {
	kinds := append([]string{"machine port"}, topTables...)
	seen := map[[2]string]bool{}
	for _, r := range Rows() {
		name := r.Table + "." + r.Field
		if seen[[2]string{r.Table, r.Field}] {
			t.Errorf("%s stands twice", name)
		}
		seen[[2]string{r.Table, r.Field}] = true
		if !strings.HasSuffix(r.Means, ".") && !strings.HasSuffix(r.Means, "…") {
			t.Errorf("%s means %q, which is no sentence", name, r.Means)
		}
		switch r.Kind {
		case "word", "words":
			if len(Words(r.Of)) < 2 {
				t.Errorf("%s: no words in the group %q", name, r.Of)
			}
			if r.Default != "" && wordOf[[2]string{r.Of, r.Default}] == "" {
				t.Errorf("%s: the default %q is no word of it", name, r.Default)
			}
		case "names", "name of":
			for _, k := range kindsIn(r.Of) {
				if !slices.Contains(kinds, k) {
					t.Errorf("%s names the kind %q", name, k)
				}
			}
		case "table", "tables", "bin":
			if len(fieldNames[r.Of]) == 0 {
				t.Errorf("%s: no fields of the table %q", name, r.Of)
			}
		}
		if r.Need == "must" && r.Default != "" {
			t.Errorf("%s must be given and has a default", name)
		}
	}
	for _, table := range topTables {
		if len(fieldNames[table]) == 0 {
			t.Errorf("no fields of the table %s", table)
		}
	}
}

// TestWordGroups: every group of words is used, and every word is explained.
func TestWordGroups(t *testing.T) {
	used := map[string]bool{}
	for _, r := range Rows() {
		if r.Kind == "word" || r.Kind == "words" {
			used[r.Of] = true
		}
	}
	for group, list := range words {
		if !used[group] {
			t.Errorf("no field takes a word of %q", group)
		}
		seen := map[string]bool{}
		for _, w := range list {
			if seen[w.Word] || w.Word == "" || w.Means == "" && group != "kind" && group != "elbows" {
				t.Errorf("%s: %+v", group, w)
			}
			seen[w.Word] = true
		}
	}
	for name := range longGroups {
		if !used[name] {
			t.Errorf("the long group %q is not used", name)
		}
	}
}
