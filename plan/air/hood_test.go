package air

import (
	"testing"

	"dustbook/plan/unit"
)

// Source: question bank on industrial ventilation, questions 4, 9 and 15.
func TestHoodOfQuestionBank(t *testing.T) {
	near(t, "plain duct, entry loss, in wg", HoodPressure(.93, .5*inwg)/inwg-.5, .47, .005)
	near(t, "F 0.6, VP 2, in wg", HoodPressure(.6, 2*inwg)/inwg, 3.2, .05)
	near(t, "SPh 0.8, VP 0.4: Ce", MeasuredEntry(.4*inwg, .8*inwg), .7, .05)
	near(t, "SPh 0.8, VP 0.4: Ce recomputed", MeasuredEntry(.4*inwg, .8*inwg), .7071, .00005)
}

// Source: published calculation: VP 3.2 and Ce 0.96 give SP 3.47; SP 2.56 and
// Ce 0.92 give VP 2.17.
func TestHoodOfCalculation(t *testing.T) {
	near(t, "SP, in wg", HoodPressure(HoodLoss(.96), 3.2*inwg)/inwg, 3.47, .005)
	vp := 2.56 / float64(HoodPressure(HoodLoss(.92), 1))
	near(t, "VP, in wg", vp, 2.17, .005)
}

// Source: question bank, question 17: 0.196 ft², Ce 0.98, SPh 4 in wg pass
// 1539 cfm; reckoned with 4005, so the exact formula in air of 0.075 lb/ft³
// lies within 0.1 %.
func TestHoodFlow(t *testing.T) {
	near(t, "hand, cfm", HandHoodFlow(HandInch, .196*sqft, .98, 4*inwg, 1)/cfm, 1539, .5)
	s := State{Density: .075 * pound / (foot * foot * foot)}
	nearly(t, "exact, cfm", HoodFlow(.196*sqft, .98, 4*inwg, s)/cfm, 1539, .001)
	if HoodFlow(1, .7, -500, s) != HoodFlow(1, .7, 500, s) {
		t.Error("the sign of the hood static pressure matters")
	}
}

// Source: study notes: plain duct end F 0.93, Ce 0.72; flanged F 0.49, Ce
// 0.82; bell mouth F 0.04, Ce 0.98.
func TestEntryCoefficient(t *testing.T) {
	for f, ce := range map[float64]float64{.93: .72, .49: .82, .04: .98} {
		near(t, "Ce", EntryCoefficient(f), ce, .005)
		near(t, "F back", HoodLoss(EntryCoefficient(f)), f, 1e-14)
	}
	near(t, "no loss", EntryCoefficient(0), 1, 0)
}

// A hood's pressure at a flow gives that flow back.
func TestHoodFlowUndoesHoodPressure(t *testing.T) {
	s, d := At(600, 290), unit.Length(.125)
	for _, f := range []float64{0, .49, 1.5} {
		hood := HoodPressure(f, s.VelocityPressure(SpeedIn(.25, d)))
		nearly(t, "flow", HoodFlow(Bore(d), EntryCoefficient(f), hood, s), .25, 1e-13)
	}
}
