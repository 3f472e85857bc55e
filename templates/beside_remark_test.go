package templates

import (
	"strings"
	"testing"
)

const secondSaw = `
[[machine]]
name = "Saw"
kind = "table saw"
port = { size = "6 in", flow = "300 cfm", flow_from = "test", hood_loss = 1 }
[[duct]]
name = "Saw pipe"
to = "Fan"
size = "6 in"
material = "spiral steel"
length = "20 ft"
serves = ["Saw"]
`

const sawGate = "[[gate]]\nname = \"Saw gate\"\non = \"Saw pipe\"\n"

// A layout that lacks a machine does not serve all: the verdict speaks of what
// both have, counts the rest, and is never sure.
func TestUsesOfOneLayoutAlone(t *testing.T) {
	for _, c := range []struct{ this, other, words, counted string }{
		{benchOf(), benchOf(), "both serve all", ""},
		{benchOf() + secondSaw + sawGate, benchOf(), "both serve what both have", "uses of this layout 1, of the other 0"},
		{benchOf(), benchOf() + secondSaw + sawGate, "both serve what both have", "uses of this layout 0, of the other 1"},
		{benchOf() + secondSaw + sawGate, benchOf("LONG", "400"), "this layout serves what both have", "uses of this layout 1, of the other 0"},
		{benchOf("LONG", "400"), benchOf() + secondSaw + sawGate, "the other serves what both have", "uses of this layout 0, of the other 1"},
	} {
		v, _ := besideOf(t, c.this, c.other)
		if wordsOf(v) != c.words || strings.Contains(v.Says, "Not compared") != (c.counted != "") || !strings.Contains(v.Says, c.counted) {
			t.Errorf("want %s, %q; got %s, %q", c.words, c.counted, wordsOf(v), v.Says)
		}
		if c.counted != "" && v.Words[0].Class == "met" {
			t.Errorf("%s is called sure", wordsOf(v))
		}
	}
}

// Needs that differ are remarked at the use and in the verdict; the same need
// is not.
func TestNeedsThatDiffer(t *testing.T) {
	for need, differ := range map[string]bool{"700": false, "703": true} {
		v, view := besideOf(t, benchOf(), benchOf("NEED", need))
		remarks := ""
		for _, r := range view.Uses[0].Remarks {
			remarks += r.Says + "\n"
		}
		if strings.Contains(v.Says, "Not the same task in both: the air needed differs in Planer.") != differ || strings.Contains(remarks, "700 here, "+need+" cfm in the other") != differ {
			t.Errorf("700 against %s: %q, remarks %q", need, v.Says, remarks)
		}
	}
}

// What keeps a use from being sure stands at the use for both layouts: here a
// fan that is only known by claims, there one with a curve.
func TestRemarksOfBothLayouts(t *testing.T) {
	const curve = `fan_curve = [["0 cfm", "10 inwg"], ["600 cfm", "9 inwg"], ["1200 cfm", "7 inwg"], ["1800 cfm", "1 inwg"]]`
	claims := benchOf(curve, `claims = { flow = "1800 cfm", suction = "10 inwg" }`)
	const says = "only known by its maker's two claims"
	for _, c := range []struct {
		this, other string
		of          string
	}{{benchOf(), claims, "The other layout"}, {claims, benchOf(), "This layout"}} {
		_, view := besideOf(t, c.this, c.other)
		found := ""
		for _, r := range view.Uses[0].Remarks {
			if strings.Contains(r.Says, says) {
				found += r.Of
			}
		}
		if found != c.of {
			t.Errorf("claims are remarked of %q, want %q: %+v", found, c.of, view.Uses[0].Remarks)
		}
	}
}

// A layout whose filter is not given says so, one that blows outdoors has none.
func TestFilterNotGivenBeside(t *testing.T) {
	inside := benchOf(`exhaust = "outside"`, `exhaust = "returns to room"`)
	for _, c := range []struct{ this, other, says string }{
		{benchOf(), benchOf(), ""},
		{benchOf(), inside, "In the other layout the filter's pressure is not given"},
		{inside, benchOf(), "In this layout the filter's pressure is not given"},
	} {
		v, _ := besideOf(t, c.this, c.other)
		if strings.Contains(v.Says, "filter's pressure") != (c.says != "") || !strings.Contains(v.Says, c.says) {
			t.Errorf("want %q, got %q", c.says, v.Says)
		}
	}
}
