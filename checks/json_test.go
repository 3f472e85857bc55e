package checks_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// keys of a finding, as the contract of inspect --json names them, and the
// two that stand beside them.
var keys = []string{
	"about", "accepted", "asks", "basis", "by", "check", "column", "do", "figures", "file", "line", "says", "state", "weight",
	"kind", "settled_by", "whom",
}

func read(t *testing.T, data []byte) *plan.Plan {
	t.Helper()
	s, problems := shop.Read("shop.toml", data)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	return plan.Make(s, nil, entry.Date{Year: 2026, Month: 11, Day: 24})
}

// decoded is the document as any other program reads it.
func decoded(t *testing.T, p *plan.Plan, list []checks.Finding) map[string]any {
	t.Helper()
	data, err := checks.JSON(p, list)
	if err != nil {
		t.Fatal(err)
	}
	var doc map[string]any
	if err := json.Unmarshal(data, &doc); err != nil {
		t.Fatalf("%v in\n%s", err, data)
	}
	return doc
}

func TestJSONHasTheKeysOfTheContract(t *testing.T) {
	p := read(t, content.Example())
	list := checks.Run(p)
	doc := decoded(t, p, list)
	if doc["format"] != "dustbook-inspect/1" || doc["as_of"] != "2026-11-24" || doc["shop"] != p.Shop.Name {
		t.Errorf("head: %v %v %v", doc["format"], doc["as_of"], doc["shop"])
	}
	findings := doc["findings"].([]any)
	if len(findings) != len(list) || len(list) == 0 {
		t.Fatalf("%d findings in the document, %d in the list", len(findings), len(list))
	}
	want := slices.Sorted(slices.Values(keys))
	for i, item := range findings {
		at := item.(map[string]any)
		got := []string{}
		for key := range at {
			got = append(got, key)
		}
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("finding %d has the keys %v, want %v", i, got, want)
		}
		if at["check"] != list[i].Check || at["line"] != float64(list[i].At.Line) || at["file"] != "shop.toml" {
			t.Errorf("finding %d: %v %v %v", i, at["check"], at["line"], at["file"])
		}
	}
}

func TestJSONOfOneFinding(t *testing.T) {
	p := read(t, content.Small())
	limit := 17.780049
	list := []checks.Finding{{
		Check: "dust-carried", State: checks.NotMet, By: checks.ByModel, Weight: checks.Mend,
		About: "Saw <1> & co", Kind: "machine", At: entry.Place{Line: 12, Column: 3},
		Says: "It is slow.", Do: "Open a gate.", Asks: "Is it?",
		Figures: []checks.Figure{
			{Name: "Saw pipe", Value: 12.34567891, Unit: "m/s", Limit: &limit, Basis: source.Basis{Mark: source.Given}},
			{Name: "air drawn out", Value: 0.000012, Unit: "m3/s"},
		},
		Basis:   []source.Basis{{Document: "nfpa-91", Clause: "5-3", Mark: source.Reported}, {Mark: source.Practice}},
		Settled: "the fire marshal",
	}, {Check: "air-captured"}}
	data, err := checks.JSON(p, list)
	if err != nil {
		t.Fatal(err)
	}
	document, _ := source.FindDocument("nfpa-91")
	for _, want := range []string{
		`"state": "not met"`, `"by": "model"`, `"weight": "mend"`, `"about": "Saw <1> & co"`, `"line": 12`, `"column": 3`,
		`"value": 12.3457`, `"limit": 17.78`, `"source": "the shop file"`, `"value": 1.2e-5`, `"limit": null`, `"source": ""`,
		fmt.Sprintf(`"document": %q`, document.Title), fmt.Sprintf(`"edition": %q`, document.Edition), `"clause": "5-3"`, `"mark": "as reported"`,
		`"document": "common practice, no source"`, `"mark": "practice"`,
		`"settled_by": "the fire marshal"`, `"settled_by": null`, `"accepted": null`, `"figures": []`, `"basis": []`,
	} {
		if !strings.Contains(string(data), want) {
			t.Errorf("the document lacks %s:\n%s", want, data)
		}
	}
}

func TestJSONWithoutFindingsIsAnEmptyList(t *testing.T) {
	doc := decoded(t, read(t, content.Small()), nil)
	if list, ok := doc["findings"].([]any); !ok || len(list) != 0 {
		t.Errorf("findings: %v, want an empty list", doc["findings"])
	}
}
