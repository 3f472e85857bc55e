package main

import (
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/unit"
	"dustbook/templates/book"
)

func loadShop(t *testing.T, name string) *plan.Plan {
	t.Helper()
	p, _ := quiet(io.Discard)
	l, err := p.loadFile(filepath.Join("testdata", "beside", name), entry.Date{})
	if err != nil {
		t.Fatal(err)
	}
	return l.plan
}

// needed is what a use asks of its only collector with the filter due.
func needed(t *testing.T, p *plan.Plan, use string) (*duct.Demand, unit.Pressure) {
	t.Helper()
	e := p.Air.BigEnough()[0]
	for i := range e.Demands {
		if d := &e.Demands[i]; d.Use.Name == use && d.Filter == duct.ChangeOut {
			loss, known := p.Air.RunLoss(e.Collector, d)
			if !known {
				t.Fatalf("%s: the loss of its way is not known", use)
			}
			return d, loss
		}
	}
	t.Fatalf("no use %s", use)
	return nil, 0
}

const inwg = 249.089 // Pa

// Move the collector rather than buy a bigger fan: the published account of a
// members' shop gives a fan of 10 to 12 in wg and 4 to 5 in wg saved at the
// sanders. What it does not give is marked as assumed in the two shop files.
func TestMovedCollectorSavesAlongTheWay(t *testing.T) {
	far, near := loadShop(t, "far.toml"), loadShop(t, "near.toml")
	for _, sander := range []string{"Drum sander", "Belt sander"} {
		before, long := needed(t, far, sander)
		after, short := needed(t, near, sander)
		if saved := float64(long-short) / inwg; saved < 4 || saved > 5 {
			t.Errorf("%s: %.2f in wg saved, the case says 4 to 5", sander, saved)
		}
		if before.Need != after.Need || after.Delivered <= before.Delivered || after.Static >= before.Static {
			t.Errorf("%s: the move brings %g for %g m³/s, at %g for %g Pa", sander, after.Delivered, before.Delivered, after.Static, before.Static)
		}
	}
	// the way to the saw hardly changes: the far side
	_, long := needed(t, far, "Table saw")
	_, short := needed(t, near, "Table saw")
	if saved := float64(long-short) / inwg; saved > 2 {
		t.Errorf("the saw, whose way was short, saves %.2f in wg as well", saved)
	}
}

// The sheet has two layouts with the way that governs, total pressure and
// delivered air, and says first what the move saves.
func TestSheetOfTheMovedCollector(t *testing.T) {
	folder := t.TempDir()
	p, said := quiet(io.Discard)
	p.book = book.Order.Make
	at := filepath.Join("testdata", "beside")
	if status := p.run([]string{"publish", filepath.Join(at, "far.toml"), "--beside", filepath.Join(at, "near.toml"), "--to", filepath.Join(folder, "book")}); status != statusDone {
		t.Fatal(said)
	}
	data, err := os.ReadFile(filepath.Join(folder, "book", "beside.html"))
	if err != nil {
		t.Fatal(err)
	}
	text := regexp.MustCompile(`\s+`).ReplaceAllString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(string(data), " "), " ")
	for _, want := range []string{
		`the other layout saves 4\.\d\d in wg on the way that governs`,
		`Port that governs Drum sander/hood Drum sander/hood same Its ducts Drum sander pipe › Main Drum sander pipe › Main same Length of hose and duct ft 128\.8 38\.8 -90`,
		`Loss on that way, at the air needed in wg [\d.]+ [\d.]+ -4\.\d\d Fan static asked for, at the air needed in wg [\d.]+ [\d.]+ -4\.\d\d`,
		`Air the ports need in all cfm 720 720 same Air the ports get in all cfm 766 \d+ \+\d+`,
		`Fan static pressure in wg [\d.]+ [\d.]+ -[\d.]+ Fan total pressure in wg [\d.]+ [\d.]+ -[\d.]+`,
		`6 in spiral steel 151\.7 61\.7 -90\.0`,
		`Cyclone stands elsewhere in the other layout`,
		`far\.toml.*near\.toml ?, revision B of 2026-11-20`,
	} {
		if !regexp.MustCompile(want).MatchString(text) {
			t.Errorf("the sheet does not say %s", want)
		}
	}
	if strings.Contains(string(data), "testdata") {
		t.Error("the sheet names a folder of the machine")
	}
}
