package unit

import (
	"errors"
	"strings"
	"testing"
)

func TestReadAt(t *testing.T) {
	for _, c := range []struct {
		text     string
		flow, at float64
	}{
		{"2000 cfm at 50 Pa", 2000 * cfm, 50},
		{"15 cfm at 8 inwg", 15 * cfm, 8 * inwg},
		{"15 CFM AT 8 in wg", 15 * cfm, 8 * inwg},
		{" 1,200 m3/h  at  0.05 kPa ", 1200.0 / 3600, 50},
		{"2000 cfm (944 L/s) at 50 Pa (0.2 inwg)", 2000 * cfm, 50},
	} {
		q, p, err := ReadAt[Flow, Pressure](c.text)
		if err != nil || float64(q) != c.flow || float64(p) != c.at {
			t.Errorf("%q: %v at %v, %v", c.text, q, p, err)
		}
	}
}

func TestReadAtRefuses(t *testing.T) {
	for _, c := range []struct{ text, hint string }{
		{"", `Write two quantities with "at" between them.`},
		{"2000 cfm", `expected an air flow at a pressure, such as "350 cfm at 2.5 inwg". Write two quantities`},
		{"2000 cfm @ 50 Pa", `with "at" between them`},
		{"2000 cfmat50 Pa", `with "at" between them`},
		{"2000 cfm at 50 Pa at 1 Pa", `with "at" between them`},
		{"2000 at 50 Pa", `Write the unit: "2000 cfm".`},
		{"2000 cfm at 50", `Write the unit: "50 inwg".`},
		{"2000 cfm at 8 in", `Write "8 inwg".`},
		{"50 Pa at 2000 cfm", `Write an air flow`},
		{" at ", `Write a number and a unit`},
		{strings.Repeat("x", 60) + " at " + strings.Repeat("y", 60), "no more than 100 characters"},
	} {
		q, p, err := ReadAt[Flow, Pressure](c.text)
		var e *Error
		if !errors.As(err, &e) || !strings.Contains(e.Error(), c.hint) || q != 0 || p != 0 {
			t.Errorf("%q: %v at %v, %v: want it to say %s", c.text, q, p, err, c.hint)
		}
	}
}

func TestReadRange(t *testing.T) {
	low, high, err := ReadRange[Current]("0.5 A to 50 A")
	if err != nil || low != 0.5 || high != 50 {
		t.Errorf("read %v to %v, %v", low, high, err)
	}
	if low, high, err = ReadRange[Current]("40 mA to 0.04 A"); err != nil || low != high {
		t.Errorf("read %v to %v, %v: want equal ends", low, high, err)
	}
	for _, c := range []struct{ text, hint string }{
		{"50 A to 0.5 A", "Write the lower end first."},
		{"0.5 to 50 A", `Write the unit: "0.5 A".`},
		{"0.5 A", `expected the two ends of a range with "to" between them, each a current such as "17 A"`},
		{"0.5 A - 50 A", `Write two quantities with "to" between them.`},
	} {
		_, _, err := ReadRange[Current](c.text)
		var e *Error
		if !errors.As(err, &e) || !strings.Contains(e.Error(), c.hint) {
			t.Errorf("%q: %v: want it to say %s", c.text, err, c.hint)
		}
	}
}
