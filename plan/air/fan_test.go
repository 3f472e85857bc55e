package air

import (
	"testing"

	"dustbook/plan/unit"
)

// Source: question bank on industrial ventilation, questions 31 and 32.
func TestFanPressures(t *testing.T) {
	near(t, "FSP, in wg", StaticOfFan(10*inwg, -5*inwg, 1*inwg)/inwg, 14, 1e-9)
	near(t, "FTP, in wg", TotalOfFan(8*inwg, -5*inwg)/inwg, 13, 1e-9)
}

// Source: published exercises on the fan laws: 6000 cfm, 4 in wg, 6 hp from
// 2000 to 1500 rpm; 2000 cfm, 3.00 in wg, 1.0 kW from 1300 to 1500 rpm.
func TestFanLawsBySpeed(t *testing.T) {
	slower := Scaling{Speed: 1500. / 2000, Diameter: 1, Density: 1}
	near(t, "cfm", slower.Flow(6000*cfm)/cfm, 4500, .5)
	near(t, "in wg", slower.Pressure(4*inwg)/inwg, 2.25, .005)
	near(t, "hp", slower.Power(6*hp)/hp, 2.53, .005)
	faster := Scaling{Speed: 1500. / 1300, Diameter: 1, Density: 1}
	near(t, "cfm", faster.Flow(2000*cfm)/cfm, 2308, .5)
	near(t, "in wg", faster.Pressure(3*inwg)/inwg, 3.99, .005)
	near(t, "kW", faster.Power(1000)/1000, 1.54, .005)
}

// Source: textbook exercise on fans: 2.4 m³/s, 340 Pa, 1.8 kW at 20 °C; at 40
// °C and the same speed 1.685 kW; flow and pressure recomputed.
func TestFanLawsByTemperature(t *testing.T) {
	warm := Unchanged()
	warm.Density = float64(At(0, 313.15).Density / At(0, 293.15).Density)
	near(t, "kW", warm.Power(1800)/1000, 1.685, .0005)
	near(t, "m³/s", warm.Flow(2.4), 2.4, 0)
	near(t, "Pa", warm.Pressure(340), 318.3, .05)
}

// Source: question bank, questions 28 to 30: 400 cfm and 5 in wg from 1000 to
// 3000 rpm; 20 hp with the diameter doubled.
func TestFanLawsOfQuestionBank(t *testing.T) {
	fast := Scaling{Speed: 3, Diameter: 1, Density: 1}
	near(t, "cfm", fast.Flow(400*cfm)/cfm, 1200, 1e-9)
	near(t, "in wg", fast.Pressure(5*inwg)/inwg, 45, 1e-9)
	wide := Scaling{Speed: 1, Diameter: 2, Density: 1}
	near(t, "hp", wide.Power(20*hp)/hp, 640, 1e-9)
	near(t, "flow by the cube of the diameter", wide.Flow(1), 8, 0)
	near(t, "pressure by its square", wide.Pressure(1), 4, 0)
}

// Source: unit tests of a US national laboratory's plant-energy library: a
// rating moved from 1180 to 1187 rpm and from 0.0308 to 0.0332 lb/ft³. The
// library adds a compressibility term, none at no flow, 0.04 % at the second
// point and 0.14 % at the third; the plain law's own values are recomputed.
func TestFanLawsOfRating(t *testing.T) {
	x := Scaling{Speed: 1187. / 1180, Diameter: 1, Density: .0332 / .0308}
	for _, c := range []struct{ cfm, inwg, bhp, toFlow, toPressure, toPower, share float64 }{
		{0, 22.3, 115, 0, 24.3237, 126.180, 5e-6},
		{14410, 22.5, 154, 14500.85, 24.5509, 169.034, 4e-4},
		{100871, 18, 462, 101607.89, 19.6603, 507.607, 1.4e-3},
	} {
		nearly(t, "flow", x.Flow(unit.Flow(c.cfm)), c.toFlow, c.share)
		nearly(t, "pressure", x.Pressure(unit.Pressure(c.inwg)), c.toPressure, c.share)
		nearly(t, "power", x.Power(unit.Power(c.bhp)), c.toPower, c.share)
	}
	near(t, "no flow, in wg", x.Pressure(22.3), 24.3237, .00005)
	near(t, "no flow, bhp", x.Power(115), 126.180, .0005)
	near(t, "plain law, cfm", x.Flow(14410), 14495.5, .05)
	near(t, "plain law, in wg", x.Pressure(22.5), 24.5419, .00005)
	near(t, "plain law, bhp", x.Power(154), 168.972, .0005)
}

func TestUnchangedChangesNothing(t *testing.T) {
	x := Unchanged()
	if x.Flow(.5) != .5 || x.Pressure(2500) != 2500 || x.Power(3700) != 3700 {
		t.Error("something changed")
	}
}
