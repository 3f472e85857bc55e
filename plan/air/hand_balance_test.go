package air

import (
	"testing"

	"dustbook/plan/unit"
)

// Source: question bank on industrial ventilation, question 19: a branch of
// 1500 cfm at 1 in wg meets a governing 4 in wg: 3000 cfm. The ratio is far past
// what the method corrects: its size is wrong.
func TestRaisedFlowOfQuestionBank(t *testing.T) {
	near(t, "cfm", RaisedFlow(1500*cfm, 4*inwg, 1*inwg)/cfm, 3000, 1e-9)
	ratio, does := Weigh(4*inwg, 1*inwg)
	near(t, "ratio", ratio, 4, 0)
	if does != WrongSize {
		t.Errorf("at four times the pressure the method does %v", does)
	}
}

// Source: question bank on industrial ventilation, question 16: 200 cfm at a
// velocity pressure of 1.5 in wg and 300 cfm at 2.0 bring 1.8.
func TestMergedOfQuestionBank(t *testing.T) {
	near(t, "in wg", Merged(Stream{200 * cfm, 1.5 * inwg}, Stream{300 * cfm, 2 * inwg})/inwg, 1.8, 1e-9)
	near(t, "one stream", Merged(Stream{200 * cfm, 100}), 100, 1e-12)
	near(t, "no stream", Merged(), 0, 0)
}

// Source: the limits of 5 and 20 % are the ventilation manual's, from memory.
func TestBalanceLimits(t *testing.T) {
	for _, c := range []struct {
		ratio float64
		want  Balance
	}{{1, Even}, {1.0499, Even}, {1.05, Raised}, {1.2, Raised}, {1.2001, WrongSize}, {3, WrongSize}} {
		if _, does := Weigh(unit.Pressure(1000*c.ratio), 1000); does != c.want {
			t.Errorf("at %v the method does %v, want %v", c.ratio, does, c.want)
		}
	}
}

// A raised flow through a way that loses by its square loses the governing
// pressure; so does the flow it had, through the balancing gate.
func TestBalanceUndoes(t *testing.T) {
	const k, governing = 3.5, 700.0
	own := unit.Pressure(600)
	raised := RaisedFlow(.2, governing, own)
	nearly(t, "raised", float64(own)*float64(raised*raised)/(.2*.2), governing, 1e-12)
	dynamic := unit.Pressure(150)
	nearly(t, "gated", float64(own)+GateToBalance(governing, own, dynamic)*float64(dynamic), governing, 1e-12)
}

func TestHasten(t *testing.T) {
	near(t, "faster behind", Hasten(200, 260), 60, 0)
	near(t, "slower behind", Hasten(260, 200), 0, 0)
}

func TestInFit(t *testing.T) {
	for speed, want := range map[float64]bool{1999: false, 2000: true, 4000: true, 6000: true, 6001: false} {
		if got := InFit(unit.Velocity(speed * fpm)); got != want {
			t.Errorf("%v fpm: %v", speed, got)
		}
	}
}
