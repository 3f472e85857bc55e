package export

import (
	"context"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/duct"
)

// The keys of the documents, in the order they are written.
func TestChooseShape(t *testing.T) {
	doc, err := MakeChoose(context.Background(), planOf(t, strings.Replace(stepText, "900 m3/h", "3900 m3/h", 1)))
	if err != nil {
		t.Fatal(err)
	}
	data, err := JSON(doc)
	if err != nil {
		t.Fatal(err)
	}
	keysStand(t, data, map[string]string{
		"format": "shop", "shop": "as_of", "as_of": "relief_gate_price_m2", "relief_gate_price_m2": "collectors",
		"met": "proven", "proven": "tried", "tried": "score", "score": "sheet_m2", "price_m2": "fan_energy_j_day", "fan_energy_j_day": "ducts",
	})
	c := doc.Collectors[0]
	if doc.Format != "dustbook-choose/1" || c.Met || c.Miss == nil || c.Score == nil || *c.Score != c.Miss.Share || c.Miss.Use == "" || len(c.Ducts) != 2 || c.Ducts[0].Down == nil {
		t.Errorf("%+v", c)
	}
}

// keysStand checks that each key is followed by another.
func keysStand(t *testing.T, data []byte, next map[string]string) {
	t.Helper()
	var keys []string
	for line := range strings.Lines(string(data)) {
		if key, _, is := strings.Cut(strings.TrimSpace(line), `":`); is {
			keys = append(keys, strings.TrimPrefix(key, `"`))
		}
	}
	for key, want := range next {
		if at := slices.Index(keys, key); at < 0 || at+1 == len(keys) || keys[at+1] != want {
			t.Errorf("%q is not followed by %q: %v", key, want, keys[:min(len(keys), 20)])
		}
	}
}

// The document carries the figures of the choice in SI units; energy in joules.
func TestChooseFigures(t *testing.T) {
	p := planOf(t, stepText)
	c := choiceOf(t, p)
	doc, err := MakeChoose(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	v := doc.Collectors[0]
	if v.Collector != "Fan" || v.Met != c.Met || v.Proven != c.Proven || v.Tried != c.Tried || float64(*v.Sheet) != float64(c.Area) || float64(*v.Price) != float64(c.Cost) || float64(*v.Energy) != 3600*c.Energy || float64(doc.ReliefPrice) != float64(duct.ReliefPrice()) {
		t.Errorf("%+v, want %+v", v, c)
	}
	for i, at := range v.Ducts {
		if at.Duct != c.Sizes[i].Duct.Name || float64(at.Size) != float64(c.Sizes[i].Size) || float64(at.Bore) != float64(c.Sizes[i].Bore) {
			t.Errorf("%+v, want %+v", at, c.Sizes[i])
		}
	}
	for i, opened := range c.Relief {
		if v.Relief[i].Use != opened.Use.Name || len(v.Relief[i].Gates) != len(opened.Gates) {
			t.Errorf("%+v", v.Relief[i])
		}
	}
}

// Without a duct to be chosen the list is empty, and where nothing fits the
// figures are null.
func TestChooseFarSides(t *testing.T) {
	none := planOf(t, strings.ReplaceAll(stepText, `"choose"`, `"140 mm"`))
	doc, err := MakeChoose(context.Background(), none)
	if data, _ := JSON(doc); err != nil || !strings.Contains(string(data), `"collectors": []`) {
		t.Errorf("%s %v", data, err)
	}
	narrow := planOf(t, strings.Replace(stepText, `inlet = "200 mm"`, `inlet = "100 mm"`, 1))
	doc, err = MakeChoose(context.Background(), narrow)
	if err != nil {
		t.Fatal(err)
	}
	v := doc.Collectors[0]
	data, _ := JSON(doc)
	if v.Score != nil || v.Sheet != nil || len(v.Ducts) > 0 || !strings.Contains(string(data), `"ducts": []`) || !strings.Contains(string(data), `"fan_energy_j_day": null`) {
		t.Errorf("%s", data)
	}
}

// The document of sets says of every set what the plan says.
func TestSetsDocument(t *testing.T) {
	text, err := os.ReadFile("../../content/example/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	p := planOf(t, string(text))
	x := p.Together()
	doc := MakeSets(p, x)
	data, err := JSON(doc)
	if err != nil {
		t.Fatal(err)
	}
	var back struct {
		Format string
		Sets   []struct {
			Machines []string
			Stands   string
			Works    bool
			Thin     []string
			On       []struct {
				Port  string
				Share *float64 `json:"port_share"`
				Speed *float64 `json:"speed_share"`
			}
			Relief []struct{ Gates []string }
		}
		Pairs [][]string
	}
	if err := json.Unmarshal(data, &back); err != nil || back.Format != "dustbook-sets/1" || len(back.Sets) != len(x.All) {
		t.Fatal(err, back.Format, len(back.Sets))
	}
	words := map[string]int{}
	for i, s := range x.All {
		at := back.Sets[i]
		words[at.Stands]++
		thin := []string{}
		for _, d := range s.Thin {
			thin = append(thin, string(d))
		}
		if !slices.Equal(at.Thin, thin) || at.Thin == nil {
			t.Errorf("%v: thin %v, want %v", at.Machines, at.Thin, thin)
		}
		if at.Works != s.Works || (at.Stands == "works") != s.Works || len(at.On) != len(s.On) || len(at.Relief) != len(s.Relief) || at.Machines[0] != s.Machines[0].Name {
			t.Errorf("%v: %+v", at.Machines, at)
		}
		for k, on := range s.On {
			if (on.Port != nil) != (at.On[k].Share != nil) || on.Port != nil && *at.On[k].Share != on.PortShare || on.Slowest != nil && *at.On[k].Speed != on.Speed {
				t.Errorf("%v: %+v, want %+v", at.Machines, at.On[k], on)
			}
		}
	}
	for i := range back.Pairs {
		for j, word := range back.Pairs[i] {
			if word != back.Pairs[j][i] || (word == "works") != x.Pair(i, j).Works {
				t.Errorf("%d with %d: %q and %q", i, j, word, back.Pairs[j][i])
			}
		}
	}
	for _, word := range []string{"works", "air", "dust", "relief", "apart"} {
		if words[word] == 0 {
			t.Errorf("the school has no set that is %q: %v", word, words)
		}
	}
}
