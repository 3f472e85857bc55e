package templates

import (
	"fmt"
	"strings"
	"testing"

	"dustbook/content"
)

// The self-check asks, and answers with the shop's own gates, stops and
// numbers.
func TestSelfCheckAnswersForTheShop(t *testing.T) {
	b := newBook(t, string(content.Example()))
	v := b.selfCheck()
	if len(v.Questions) != 8 {
		t.Fatalf("%d questions", len(v.Questions))
	}
	_, words := b.sheet(t, "self-check.html")
	for _, text := range []string{"Stop by the west door : Machine hall; stops Cyclone", "Planer : opened for you: East zone gate and Planer gate; wait for it", "Everybody out", "If the stop is not on the way out, leave it.", "12.78 in wg", "Planer fills it soonest: 14.1 min"} {
		if !strings.Contains(words, text) {
			t.Errorf("%q is not among %s", text, words)
		}
	}
	for i, q := range v.Questions {
		if q.Number != i+1 || q.Asks == "" || len(q.Answers) == 0 {
			t.Errorf("%+v", q)
		}
	}
	if !v.Questions[1].Order || len(v.Questions[1].Answers) != 5 {
		t.Errorf("smoke: %+v", v.Questions[1])
	}
	// a shop that gives no stop says so
	bare := newBook(t, "[shop]\nname = \"Bare\"\n[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\n[[collector]]\nname = \"Fan\"\ninlet = \"6 in\"\nclaims = { flow = \"1000 cfm\", suction = \"8 inwg\" }\n")
	if _, words := bare.sheet(t, "self-check.html"); !strings.Contains(words, "Ask, and write it down") {
		t.Error(words)
	}
}

// Every machine stands in the matrix once, in tables of about one length.
func TestMatrixHoldsEveryMachine(t *testing.T) {
	for _, n := range []int{1, 8, 9, 17} {
		file := "[shop]\nname = \"Row\"\n"
		for i := range n {
			file += fmt.Sprintf("[[machine]]\nname = \"Saw %d\"\nkind = \"table saw\"\n", i)
		}
		v := newBook(t, file).trainingView()
		seen, most, least := map[string]int{}, 0, n
		for _, across := range v.Tables {
			most, least = max(most, len(across)), min(least, len(across))
			for _, m := range across {
				seen[m.Name]++
			}
		}
		if len(seen) != n || most > machinesAcross || most-least > 1 || len(v.People) != peopleDown {
			t.Errorf("%d machines: %d in %d tables of %d to %d", n, len(seen), len(v.Tables), least, most)
		}
		for name, times := range seen {
			if times != 1 {
				t.Errorf("%s stands %d times", name, times)
			}
		}
	}
	if v := newBook(t, string(content.Example())).trainingView(); len(v.Halted) == 0 || len(v.Tables) != 2 {
		t.Errorf("the school: %d halted, %d tables", len(v.Halted), len(v.Tables))
	}
}
