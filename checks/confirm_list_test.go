package checks_test

import (
	"encoding/json"
	"slices"
	"testing"

	"dustbook/checks"
)

// The list holds each id that the file may name once, and says where it is
// from.
func TestConfirmables(t *testing.T) {
	list := checks.Confirmables()
	var ids []string
	sources := map[string]string{}
	for _, f := range list {
		ids = append(ids, f.ID)
		if f.Means == "" || f.Wants() == "" || checks.Find(f.Check.ID) != f.Check || len(f.Source) == 0 {
			t.Errorf("%s: means %q, wants %q, %d sources", f.ID, f.Means, f.Wants(), len(f.Source))
		}
		for _, b := range f.Source {
			sources[f.ID] += b.Document + " " + b.Clause + "; "
		}
	}
	slices.Sort(ids)
	if !slices.Equal(ids, checks.Figures()) || len(ids) < 7 {
		t.Errorf("listed %v, known %v", ids, checks.Figures())
	}
	for id, want := range map[string]string{
		"open-bag-distance": "quebec-ohs 59.1(5), 59.1(6); nfpa-664 open-bag clauses; ",
		"open-bag-flow":     "quebec-ohs 59.1(2); nfpa-664 open-bag clauses; ",
		"garage-separation": "irc R302.5.2; ",
	} {
		if sources[id] != want {
			t.Errorf("%s is from %q, want %q", id, sources[id], want)
		}
	}
}

func TestConfirmablesJSON(t *testing.T) {
	for _, list := range [][]checks.Confirmable{nil, checks.Confirmables()} {
		data, err := checks.ConfirmablesJSON(list)
		if err != nil {
			t.Fatal(err)
		}
		var doc struct {
			Format  string
			Figures []struct {
				Check, ID, Confirms, Value string
				Settles                    bool
				Source                     []map[string]string
			}
		}
		if err := json.Unmarshal(data, &doc); err != nil || doc.Format != "dustbook-figures/1" || doc.Figures == nil || len(doc.Figures) != len(list) {
			t.Fatalf("%v in\n%s", err, data)
		}
		for i, f := range doc.Figures {
			w := list[i]
			if f.Check != w.Check.ID || f.ID != w.ID || f.Confirms != w.Means || f.Value != w.Wants() || f.Settles != w.Settles || len(f.Source) != len(w.Source) || f.Source[0]["document"] != w.Source[0].Title() {
				t.Errorf("%+v of %+v", f, w)
			}
		}
	}
}
