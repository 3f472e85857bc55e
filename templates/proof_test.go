package templates

import (
	"strings"
	"testing"

	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/unit"
)

// The steps stand in the order of the work, each caution where its hazard is.
func TestOrderSheet(t *testing.T) {
	b := proofBook(t, nil)
	_, words := b.sheet(t, "commissioning.html")
	inOrder(t, "the order", words, "Two ways to go", "U-tube and smoke", "Pitot tube and manometer as well", "1 Before power", "Nobody opens bin, duct or filter while the fan can turn", "drilled with the fan locked out",
		"2 First start", "An electrician reads the amps", "Never run a fan with its duct off", "3 Smoke before numbers", "tell the fire service", "Planer/hood", "4–5 Readings", "6 Compare", "a second reading decides",
		"7 Repeat", "10 to 20 %", "within 10 %", "8 Controls", "9 Drill", "Let go of the work", "10 Marks", "11 Handover", "authority having jurisdiction decide", "Signature")
}

// A fan starts with the gates of the use that draws least; amps are read with
// those of the one that draws most.
func TestFirstStart(t *testing.T) {
	b := proofBook(t, nil)
	c := b.Plan.Shop.Collectors[0]
	row := b.firstRow(c, b.Plan.Air.Loads[0])
	if row.Use != "Table saw" || strings.Join(row.Gates, ",") != "Saw gate" || row.Wide != "Ripping while the planer runs" || strings.Join(row.WideGates, ",") != "Saw gate,Planer gate" {
		t.Errorf("%+v", row)
	}
	var low, high *duct.Result
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.On(c) {
			if r.Filter == duct.Clean && u.Name == row.Use {
				low = r
			}
			if r.Filter == duct.Clean && u.Name == row.Wide {
				high = r
			}
		}
	}
	if low.Flow >= high.Flow || row.Static != unit.Press.Print(unit.US, low.Static) || row.Power != unit.Shaft.Print(unit.US, high.Power) || row.Rated != "5.75 hp" {
		t.Errorf("%+v", row)
	}
	if strings.Contains(row.Use+row.Wide, "Everything") {
		t.Error("a fan starts with everything shut or open")
	}
}

// Every expected value of the sheet is the plan's, with the filter clean, and
// has room beside it.
func TestReadingsSheet(t *testing.T) {
	b := proofBook(t, nil)
	v := b.readingsView()
	if len(v.Hoods) != 2 || len(v.Taps) != 2 || len(v.Fans) != 1 || len(v.Mains) != 1 || len(v.Missing) != 0 {
		t.Fatalf("%d hoods, %d taps, %d fans, %d mains, missing %v", len(v.Hoods), len(v.Taps), len(v.Fans), len(v.Mains), v.Missing)
	}
	hood := b.Plan.Air.Alone(b.Plan.Shop.Machines[0]).Results[0].Ports[0].Hood
	if v.Hoods[0].Expected != unit.Press.Figure(unit.US, hood) || v.Hoods[0].Bounds != unit.Press.Figure(unit.US, hood*0.9)+" to "+unit.Press.Figure(unit.US, hood*1.1) {
		t.Errorf("%+v for %v", v.Hoods[0], hood)
	}
	for _, tap := range v.Taps {
		for _, row := range tap.Rows {
			e := b.Plan.Expect(record.Reading{Of: "tap pressure", At: tap.Name, Use: row.What, Filter: "clean"})
			if row.Expected != unit.Press.Figure(unit.US, unit.Pressure(e.Low)) || e.Low <= 0 {
				t.Errorf("%s in %s: %s, the plan says %+v", tap.Name, row.What, row.Expected, e)
			}
		}
	}
	if rows := v.Taps[0].Rows; len(rows) != 3 {
		t.Errorf("the tap on the main has %d rows", len(rows))
	}
	if rows := v.Taps[1].Rows; len(rows) != 2 || rows[0].What != "Table saw" {
		t.Errorf("the tap on the saw's drop has %v", rows)
	}
	body, words := b.sheet(t, "commissioning-readings.html")
	inOrder(t, "readings", words, "drilled with the fan locked out", "common practice, no source", "Hoods: U-tube", "Taps: U-tube", "A second reading decides", "Main tap", "Fan, filter and separator", "Velocity pressure before the fan",
		"Main, pitot tube", "Two holes at right angles", "0.22", "0.95", "2.25", "4.75", "6.06", "6.78", "Motors and rooms", "An electrician reads amps", "Hall against outdoors", "dustbook measure")
	if strings.Count(body, "<td></td>") < 40 {
		t.Error("there is no room to write")
	}
}

// The three readings at a fan make its static pressure.
func TestFanReadingsAddUp(t *testing.T) {
	b := proofBook(t, nil)
	for _, r := range b.Plan.Air.FanReadings() {
		if off := float64(-r.Inlet + r.Outlet - r.Dynamic - r.Static); off > 0.01 || off < -0.01 {
			t.Errorf("%s: off by %g Pa", r.Collector.Name, off)
		}
	}
}

func TestReadingsSheetWithoutTaps(t *testing.T) {
	b := proofBook(t, []*record.Record{}, "[[tap]]\nname = \"Main tap\"\non = \"Main\"\nat = \"19 ft\"\n", "", "[[tap]]\nname = \"Saw tap\"\non = \"Saw drop\"\nat = \"2 ft\"\n", "")
	if _, words := b.sheet(t, "commissioning-readings.html"); !strings.Contains(words, "The shop file has no tap") {
		t.Error("it does not say how to get one")
	}
}

func TestControlsSheet(t *testing.T) {
	_, words := proofBook(t, nil).sheet(t, "commissioning-controls.html")
	inOrder(t, "controls", words, "Nobody’s hand is in a gate", "Saw running", "current of Table saw , above 2.5 A", "Saw gate", "Cyclone , 1 s", "8 s", "Planer running", "not given",
		"Two together", "Table saw and Planer", "A gate that does not open", "Power cut", "Nothing starts by itself", "waits for a person", "Lockout", "no substitute for locking out the energy", "Stop by the door", "Cyclone stops", "Filter gauge", "2.00 in wg", "Electrician")
}

// Without triggers the stop and the power cut are proved all the same.
func TestControlsSheetByHand(t *testing.T) {
	b := proofBook(t, []*record.Record{}, "[[trigger]]\nname = \"Saw running\"\nsenses = \"current\"\nmachine = \"Table saw\"\nthreshold = \"2.5 A\"\nopens = [\"Saw gate\"]\nstarts = \"Cyclone\"\nstart_delay = \"1 s\"\nrun_on = \"8 s\"\n", "",
		"[[trigger]]\nname = \"Planer running\"\nsenses = \"contact\"\nmachine = \"Planer\"\nopens = [\"Planer gate\"]\nstarts = \"Cyclone\"\n", "", "waits for a person", "starts by itself")
	_, words := b.sheet(t, "commissioning-controls.html")
	inOrder(t, "controls", words, "has no trigger", "starts by itself when power comes back: keep clear", "No trigger", "Power cut", "Stop by the door", "Cyclone , by hand")
	for _, not := range []string{"Lockout", "Two together", "A gate that does not open"} {
		if strings.Contains(words, not) {
			t.Errorf("it says %q", not)
		}
	}
}

// Every row of the data of commissioning stands on the sheet of sources.
func TestProofSources(t *testing.T) {
	_, words := proofBook(t, nil).sheet(t, "sources.html")
	inOrder(t, "sources", words, "UFGS 23 08 01.00 20", "Figures of commissioning", "agree: measured and expected agree", "10 %", "common practice, no source", "straight before traverse", "7.5 bores", "traverse, log-linear 6, point 1", "0.032 of the bore")
}
