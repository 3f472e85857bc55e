package templates

import (
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// The sheet says for every bore which set to take, where its points lie and
// how much straight pipe it needs, and has room beside each point.
func TestTraverseSheet(t *testing.T) {
	b := proofBook(t, nil)
	v := b.traverseView()
	if len(v.Sizes) < 2 || len(v.Sizes) != len(boresOf(b.Plan.Shop)) {
		t.Fatalf("%d sizes", len(v.Sizes))
	}
	for i, bore := range boresOf(b.Plan.Shop) {
		size := v.Sizes[i]
		set := duct.TraverseSetFor(bore)
		if size.Set != set.Family || len(size.Points) != len(set.Fractions) || size.Points[0].From != unit.Size.Figure(b.units, set.Points(bore)[0]) {
			t.Errorf("%+v", size)
		}
		if want := unit.Run.Print(b.units, unit.Length(7.5*float64(bore))); size.Before != want {
			t.Errorf("%s: straight pipe %s, want %s", size.Size, size.Before, want)
		}
		if want := unit.Run.Print(b.units, unit.Length(5*float64(bore))); size.Fan != want {
			t.Errorf("%s: behind a fan %s, want %s", size.Size, size.Fan, want)
		}
	}
	_, words := b.sheet(t, traversePath)
	inOrder(t, "traverse", words, "drilled with the fan locked out", "Which points to take", "twelve readings", "Public manuals of pitot tubes", "7.5 bores behind an elbow", "5 behind a fan", "UFGS", "log-linear 6", "Across the bore", "right angles",
		"Take the root of every velocity pressure first", "0.16", "0.40", "0.25", "0.50", "0.36", "0.60", "0.50 × 4005 = 2002.5 fpm", "root 0.507 and 2029 fpm", "To fill in", "log-linear rule", "0.032", "0.979", "0.981", "equal areas", "0.0436", "0.9873")
	if strings.Count(words, "Never take points of two sets in one traverse") != 2 {
		t.Error("it does not say with each family that sets are not mixed")
	}
}

// A narrow and a wide duct get different sets, each drawn; the families stand
// in tables of their own, each with all of its sets.
func TestTraverseSets(t *testing.T) {
	b := proofBook(t, nil, `size = "5 in"`, `size = "12 in"`)
	v := b.traverseView()
	if len(v.Drawings) != 2 || v.Drawings[0].Set != "log-linear 6" || v.Drawings[1].Set != "log-linear 10" || len(v.Drawings[1].Points) != 10 {
		t.Fatalf("%+v", v.Drawings)
	}
	if last := v.Sizes[len(v.Sizes)-1]; last.Size != "12 in" || last.Readings != "20" {
		t.Errorf("%+v", last)
	}
	if len(v.Families) != 2 || len(v.Families[0].Sets) != 3 || len(v.Families[1].Sets) != 3 {
		t.Fatalf("%+v", v.Families)
	}
	for i, counts := range [][]int{{6, 8, 10}, {6, 10, 20}} {
		for j, n := range counts {
			if set := v.Families[i].Sets[j]; len(set.Rows) != n || len(set.Rows[0].From) != len(v.Sizes) {
				t.Errorf("%s has %d rows, want %d", set.Name, len(set.Rows), n)
			}
		}
	}
}

// The points of the drawing lie on the diameters, as far along as their shares
// of the bore.
func TestTraverseDrawing(t *testing.T) {
	v := proofBook(t, nil).traverseDrawing(duct.TraverseSets()[0])
	if v.Left != "37.0" || v.Right != "293.0" || v.Points[0].Along != "45.2" || v.Points[5].Along != "284.8" {
		t.Errorf("%+v", v)
	}
}

// The readings of a main go by the set of its bore.
func TestTraverseOfReadings(t *testing.T) {
	b := upkeepBook(t, content.Example(), day(2026, 11, 24))
	for _, main := range b.Plan.Air.Traverses() {
		if want := duct.TraverseSetFor(main.Stretch.Duct.Bore).Family; main.Set.Family != want {
			t.Errorf("%s: %s, want %s", main.Stretch.Name(), main.Set.Family, want)
		}
	}
}
