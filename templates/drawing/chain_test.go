package drawing_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"dustbook/plan"
	"dustbook/templates/drawing"
)

// chained is a shop with one chain of so many powered gates.
func chained(count int, name string) string {
	text := `
[shop]
name = "Chained"
[[machine]]
name = "Saw"
kind = "table saw"
[[collector]]
name = "Fan"
inlet = "6 in"
claims = { flow = "900 cfm", suction = "9 inwg" }
[[duct]]
name = "Run"
to = "Fan"
size = "6 in"
length = "30 ft"
serves = ["Saw/cabinet"]
[control]
supply = "24 V"
`
	stops := ""
	for i := range count {
		gate := fmt.Sprintf("%s %d", name, i+1)
		text += fmt.Sprintf("[[gate]]\nname = %q\non = \"Run\"\nat = \"%d ft\"\ndrive = \"powered\"\n", gate, i+1)
		stops += fmt.Sprintf("  { device = %q, cable = \"%d ft\" },\n", gate, 10+i)
	}
	return text + "[[chain]]\nname = \"Chain <one> & only\"\ncable = \"18 AWG\"\nstops = [\n" + stops + "]\n"
}

func knownClasses() map[string]bool {
	known := map[string]bool{}
	for _, c := range drawing.Classes {
		known[c.Name] = true
	}
	return known
}

// A chain of any length: well formed, nothing over anything, every device in
// order with its run.
func TestChain(t *testing.T) {
	for _, count := range []int{1, 3, 4, 7, 8, 23} {
		p := read(t, "chained.toml", chained(count, "Gate"))
		svg := drawing.Chain(p, p.Shop.Chains[0], "c")
		key := strconv.Itoa(count) + " devices"
		checkForm(t, key, svg, knownClasses())
		checkTexts(t, key, svg)
		root := parse(t, svg)
		written := map[string]int{}
		for _, v := range textsOf(t, root) {
			written[v.text]++
		}
		for i := 1; i <= count; i++ {
			for _, want := range []string{"G" + strconv.Itoa(i), "Gate " + strconv.Itoa(i), fmt.Sprintf("%d · %d ft", i, 9+i)} {
				if written[want] != 1 {
					t.Errorf("%s: %q is written %d times", key, want, written[want])
				}
			}
		}
		// two terminals at each end of each run
		if written["+"] != 2*count || written["−"] != 2*count || written["P1"] != 1 {
			t.Errorf("%s: %d + and %d −, want %d of each; the supply %d times", key, written["+"], written["−"], 2*count, written["P1"])
		}
		if strings.Count(string(svg), "<rect") != count+1 {
			t.Errorf("%s: %d boxes", key, strings.Count(string(svg), "<rect"))
		}
		if again := drawing.Chain(p, p.Shop.Chains[0], "c"); again != svg {
			t.Errorf("%s: drawn twice it differs", key)
		}
	}
}

// The two conductors never cross or touch each other, and each leads from box
// to box.
func TestConductorsKeepApart(t *testing.T) {
	p := read(t, "chained.toml", chained(9, "Gate"))
	root := parse(t, drawing.Chain(p, p.Shop.Chains[0], "c"))
	var plus, minus [][][2]float64
	root.each(func(n *node) {
		if n.name != "path" {
			return
		}
		switch n.attr["stroke-width"] {
		case "3":
			plus = append(plus, points(t, n.attr["d"]))
		case "1.2":
			minus = append(minus, points(t, n.attr["d"]))
		}
	})
	if len(plus) != 10 || len(minus) != 10 { // nine runs and the sample of the key
		t.Fatalf("%d and %d conductors", len(plus), len(minus))
	}
	for _, a := range plus[:9] {
		for _, b := range minus[:9] {
			for i := 1; i < len(a); i++ {
				for j := 1; j < len(b); j++ {
					if meet(a[i-1], a[i], b[j-1], b[j]) {
						t.Errorf("%v to %v meets %v to %v", a[i-1], a[i], b[j-1], b[j])
					}
				}
			}
		}
	}
}

// meet reports whether two upright or level pieces share a place.
func meet(a, b, c, d [2]float64) bool {
	for i := range 2 {
		if max(a[i], b[i]) < min(c[i], d[i]) || max(c[i], d[i]) < min(a[i], b[i]) {
			return false
		}
	}
	return true
}

// Names cannot leave their place, and one that is cut short is whole in a
// title.
func TestHostileChain(t *testing.T) {
	for _, name := range []string{"<script>alert(1)", strings.Repeat("W", 76), "🪚🔥 日本のこぎり", "a\u202eb"} {
		p := read(t, "chained.toml", chained(5, name))
		svg := drawing.Chain(p, p.Shop.Chains[0], `x"><script>`)
		checkForm(t, name, svg, knownClasses())
		checkTexts(t, name, svg)
		if strings.Contains(string(svg), "<script") {
			t.Errorf("%q became an element", name)
		}
		titles := ""
		parse(t, svg).each(func(n *node) { titles += n.title + "\n" })
		if want := strings.ReplaceAll("G5 "+name+" 5", "\u202e", ""); !strings.Contains(titles, want) {
			t.Errorf("%q is in no title", want)
		}
	}
}

// Without [control] and tags of its own, a chain is drawn all the same.
func TestSparseChain(t *testing.T) {
	p := read(t, "chained.toml", strings.Replace(chained(1, "Gate"), "[control]\nsupply = \"24 V\"\n", "", 1))
	svg := drawing.Chain(p, p.Shop.Chains[0], "c")
	checkForm(t, "sparse", svg, knownClasses())
	if !strings.Contains(string(svg), "P1 supply") {
		t.Errorf("the supply: %s", svg)
	}
}

// TestChainLook writes a page to look at, where DUSTBOOK_LOOK names a folder.
func TestChainLook(t *testing.T) {
	dir := os.Getenv("DUSTBOOK_LOOK")
	if dir == "" {
		t.Skip("DUSTBOOK_LOOK names no folder")
	}
	page := lookStyle
	for _, p := range []*plan.Plan{read(t, "a", chained(9, "Gate")), read(t, "b", chained(3, "A gate with a rather long name by the far wall"))} {
		page += `<div class="box">` + string(drawing.Chain(p, p.Shop.Chains[0], "c")) + "</div>"
	}
	if err := os.WriteFile(filepath.Join(dir, "chain.html"), []byte(page), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Every box of a chain below its device's lowest says so, a verdict that waits
// for a current or not; those above it do not.
func TestChainMarksTooLittle(t *testing.T) {
	text := strings.Replace(chained(12, "Gate"), "supply = \"24 V\"\n", "supply = \"24 V\"\nlowest = \"20 V\"\nmoves_together = 1\n", 1)
	p := read(t, "chained.toml", text)
	root := parse(t, drawing.Chain(p, p.Shop.Chains[0], "c"))
	said, below := 0, 0
	for _, n := range p.Chains.Chains[0].Nodes {
		if n.Volts < 20 {
			below++
		}
	}
	for _, v := range textsOf(t, root) {
		if strings.HasSuffix(v.text, "too little") || v.text == "little" {
			said++
		}
	}
	if said != below || below == 0 || below == 12 {
		t.Errorf("%d boxes say too little, %d of 12 lie below", said, below)
	}
}
