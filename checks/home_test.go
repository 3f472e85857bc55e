package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

// Texts for work places and public buildings decide nothing in a home: what they
// say is advice there, and nobody is asked. What the owner has had confirmed for
// the home decides.
func TestTextsOfWorkPlacesAtHome(t *testing.T) {
	blown := change{`cleaned = "vacuum"`, `cleaned = "blowing"`}
	deep := change{`layer = { depth = "0.01 in", area = "40 sq ft"`, `layer = { depth = "1/2 in", area = "400 sq ft"`}
	stove := change{`kind = "electric"`, `kind = "wood stove"`}
	wide := change{mainHangers, `hangers = "12 ft"`}
	for _, c := range []struct {
		check, about string
		broken       change
		figure       string // a figure of it that [[confirmed]] may give, and a value
		value        string
	}{
		{"dust-cleaning", "Hall", blown, "", ""},
		{"flame-near-dust", "Hall", stove, "", ""},
		{"settled-dust", "Hall", deep, "layer-depth", "1/8 in"},
		{"duct-supports", "Cyclone", wide, "duct-supports", "10 ft"},
		{"collector-place", "Cyclone", outside("8 ft"), "collector-outdoors", "10 ft"},
		{"duct-clean-outs", "Cyclone", change{mainCleanOuts, `clean_outs = []`}, "duct-clean-outs", "12 ft"},
		{"duct-thickness", "Cyclone", change{"gauge = \"24 ga\"\nroute = [[20, 10, 8]", "gauge = \"30 ga\"\nroute = [[20, 10, 8]"}, "duct-thickness-8", "0.02 in"},
		{"outlet-property", "Cyclone", change{`to_property = "40 ft"`, `to_property = "10 ft"`}, "outlet-property", "30 ft"},
		{"extinguisher-reach", "Hall", floor("90", "20"), "extinguisher-reach", "75 ft"},
		{"extinguisher-rating", "", hung("1, 7", "1-A"), "extinguisher-area", "150 sq ft"},
	} {
		f := only(t, checks.Run(planOf(t, atHome, c.broken)), c.check, c.about)
		if f.State != checks.Advice || f.Asks != "" || !strings.Contains(f.Says, "other places than a home") {
			t.Errorf("%s at home: %s, asks %q: %s", c.check, f.State, f.Asks, f.Says)
		}
		if c.figure == "" {
			continue
		}
		f = only(t, checks.Run(planOf(t, atHome, c.broken, confirmFigure(c.figure, c.value))), c.check, c.about)
		if f.State != checks.NotMet {
			t.Errorf("%s at home, %s confirmed: %s: %s", c.check, c.figure, f.State, f.Says)
		}
	}
}

// Whoever has had confirmed the floor that each unit answers for at the gravest
// hazard needs the label of that hazard as well; at a lighter one not.
func TestConfirmedHazard(t *testing.T) {
	for each, want := range map[string]checks.State{"1000 sq ft": checks.Ask, "1500 sq ft": checks.Met} {
		f := only(t, checks.Run(planOf(t, hung("1, 7", "3-A:40-B:C"), confirmFigure("extinguisher-area", each))), "extinguisher-rating", "")
		if f.State != want {
			t.Errorf("%s for each unit, an extinguisher of 3-A: %s, want %s: %s", each, f.State, want, f.Says)
		}
	}
}

// The question about a door has what the file says of its leaf.
func TestDoorInTheQuestion(t *testing.T) {
	for leaf, want := range map[string]string{`thick = "1 in"`: "Its leaf is 1 in thick.", `rating = "15 min"`: "Its label says 15 min.", `thick = "1 in", rating = "15 min"`: "1 in thick. Its label says 15 min."} {
		f := only(t, checks.Run(planOf(t, door("door = { "+leaf+", closes = true, into_bedroom = false }"))), "garage-door", "")
		if !strings.Contains(f.Asks, want) {
			t.Errorf("%s: %s", leaf, f.Asks)
		}
	}
	if f := only(t, checks.Run(planOf(t, door("door = { into_bedroom = true }"))), "garage-door", ""); !strings.Contains(f.Asks, "not measured yet") {
		t.Errorf("no leaf given: %s", f.Asks)
	}
}

// A text that was confirmed is called so, never by the name of the text that it
// takes the place of.
func TestConfirmedIsNamed(t *testing.T) {
	for figure, in := range map[string][3]string{
		"dust-scope-flow":    {"1600 cfm", "dust-scope", ""},
		"outlet-property":    {"35 ft", "outlet-property", "Cyclone"},
		"way-out-width":      {"40 in", "way-out", "Hall"},
		"sprinkler-area":     {"2000 sq ft", "sprinkler-area", ""},
		"garage-board":       {"1/2 in", "garage-board", ""},
		"extractor-flow":     {"5000 m3/h", "extractor-type", "Cyclone"},
		"collector-outdoors": {"12 ft", "collector-place", "Cyclone"},
	} {
		rules := change{"[[stop]]", "[[stop]]"}
		if figure == "extractor-flow" {
			rules = asEU
		}
		f := only(t, checks.Run(planOf(t, confirmFigure(figure, in[0]), rules)), in[1], in[2])
		if strings.Contains(f.Says, "  ") || strings.Contains(f.Says, ". the ") || strings.Contains(f.Says, " wants a collector") && !strings.Contains(f.Says, "IMC wants") {
			t.Errorf("%s: %s", figure, f.Says)
		}
		if figure != "collector-outdoors" && !strings.Contains(f.Says, "building official") {
			t.Errorf("%s: it does not say who confirmed it: %s", figure, f.Says)
		}
	}
}
