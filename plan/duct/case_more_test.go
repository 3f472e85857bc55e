package duct

import (
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// C13: with every gate shut there is no flow and the most suction; with every
// gate open there is the most flow and the least suction.
func TestCaseSuctionAgainstFlow(t *testing.T) {
	k := readCase(t, "c16-forgotten-inlet.toml")
	shut, one := theResult(t, k, "Everything shut", NoFilter), theResult(t, k, "Demo hose", NoFilter)
	two, open := theResult(t, k, "Two open", NoFilter), theResult(t, k, "Everything open", NoFilter)
	if shut.Flow != 0 || !near(float64(shut.Static)/inwg, 12*float64(k.State.Density)/1.2, 0.02) {
		t.Errorf("shut: %g m3/s, %.2f inwg", float64(shut.Flow), float64(shut.Static)/inwg)
	}
	last := shut
	for _, r := range []*Result{one, two, open} {
		if r.Flow <= last.Flow || r.Inlet >= last.Inlet {
			t.Errorf("%s: %g m3/s and %g Pa, after %g and %g", r.Use.Name, float64(r.Flow), float64(r.Inlet), float64(last.Flow), float64(last.Inlet))
		}
		last = r
	}
}

// C35: about 125 cfm with a separator, 155 without, 3670 fpm in 2.5 in: chips
// are carried, a saw is not served.
func TestCaseVacuumNetwork(t *testing.T) {
	const file = "c35-vacuum-network.toml"
	with := theResult(t, readCase(t, file), "Saw", NoFilter)
	bare := theResult(t, readCase(t, file, "separator =", "# separator ="), "Saw", NoFilter)
	if flow := float64(with.Flow) / cfm; !between(flow, 119, 131) {
		t.Errorf("%.0f cfm with the separator", flow)
	}
	if flow := float64(bare.Flow) / cfm; !between(flow, 150, 165) {
		t.Errorf("%.0f cfm without", flow)
	}
	if v := float64(with.Stretches[0].Velocity) / fpm; !between(v, 3500, 3850) {
		t.Errorf("%.0f fpm", v)
	}
	if with.Captured || !with.Carried && with.Stretches[0].Transport < unit.Must[unit.Velocity]("3670 fpm") {
		t.Errorf("captured %v, carried %v at a need of %g m/s", with.Captured, with.Carried, float64(with.Stretches[0].Transport))
	}
	if _, share := with.Weakest(); !between(share, 0.33, 0.40) {
		t.Errorf("the saw gets %.2f of its need", share)
	}
}

// C39: a hose that is not pulled out loses four times as much (a public test of
// flexible duct under moderate compression).
func TestCaseCompressedHose(t *testing.T) {
	hose := strings.Replace(oneHood, "serves =", "hose = { size = \"100 mm\", length = \"3 m\", material = \"ribbed hose\", stretched = true }\nserves =", 1)
	loss := func(text string) (float64, *Result) {
		k := Reckon(mustRead(t, text))
		tree := k.Trees[0]
		at := tree.byEnd[tree.shop.Ducts[0]]
		return tree.parts[at].ends[0].Fric, k.Uses[0].Results[0]
	}
	long, pulled := loss(hose)
	short, squeezed := loss(strings.Replace(hose, "stretched = true", "stretched = false", 1))
	if !near(short, 4*long, 1e-9) || squeezed.Flow >= pulled.Flow {
		t.Errorf("friction %g and %g, flow %g and %g", long, short, float64(pulled.Flow), float64(squeezed.Flow))
	}
}
