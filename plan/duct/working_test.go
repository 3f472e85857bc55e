package duct

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/unit"
)

// The terms of the working add up to the stretch's loss, in every use that
// stands on the curve.
func TestWorkingAddsUp(t *testing.T) {
	example := func(name string) string {
		text, err := os.ReadFile("../../content/example/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	split := replaced(t, twig, "[method]\n", "[method]\njunctions = \"flow split\"\n")
	tests := []struct{ name, file string }{
		{"school", example("school.toml")}, {"small", example("small.toml")}, {"yard", yard}, {"twig", twig}, {"flow split", split},
		{"a join at the upstream end of a duct with a port", replaced(t, twig, "joins = \"2 m\"\n", "")},
		{"a hole at the upstream end", twig + "[[leak]]\non = \"Branch\"\nhole = \"30 mm\"\nat = \"0 m\"\n"},
	}
	for _, test := range tests {
		k := Reckon(mustRead(t, test.file))
		checked := 0
		for _, u := range k.Uses {
			for _, r := range u.Results {
				if !r.OnCurve {
					continue
				}
				for _, v := range r.Stretches {
					sum := 0.0
					for _, term := range treeOf(k, r).Working(r, v.Stretch) {
						sum += float64(term.Loss)
					}
					checked++
					// flows stand on the sixth digit of the fan's: a leak of few digits
					// is off by that
					slack := 1e-5*float64(r.Static) + float64(v.Loss)*math.Min(1, 2e-5*float64(r.Flow)/math.Max(float64(v.Flow), 1e-12))
					if v.Flow == 0 {
						sum = 0
					}
					if math.Abs(sum-float64(v.Loss)) > slack {
						t.Errorf("%s, %s, %s: the terms of %s add up to %.6g Pa, it loses %.6g", test.name, u.Name, r.Filter, v.Stretch.Name(), sum, v.Loss)
					}
				}
			}
		}
		if checked == 0 {
			t.Errorf("%s: nothing checked", test.name)
		}
	}
}

func treeOf(k *Reckoning, r *Result) *Tree {
	for _, tree := range k.Trees {
		if tree.Collector == r.Collector {
			return tree
		}
	}
	return nil
}

// Source: Crane TP 410 (2009) converging wyes, as the open fluid-mechanics
// library 1.0.22 computes them: what the working shows for branch and run of
// each of its rows.
func TestWorkingSplitAgainstLibrary(t *testing.T) {
	text, err := os.ReadFile("../air/testdata/converging_junctions.csv")
	if err != nil {
		t.Fatal(err)
	}
	in := csv.NewReader(bytes.NewReader(text))
	in.Comment = '#'
	rows, err := in.ReadAll()
	if err != nil || len(rows) != 41 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	column := func(row []string, name string) float64 {
		x, err := strconv.ParseFloat(row[slices.Index(rows[0], name)], 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	s := mustRead(t, twig)
	tree := Grow(s, s.Collectors[0], StateOf(s))
	const all = 0.6
	for _, row := range rows[1:] {
		run, branch := unit.Length(column(row, "D_run_m")), unit.Length(column(row, "D_branch_m"))
		wye, ok := air.Converging(unit.Angle(column(row, "angle_deg")), run, branch, run)
		if !ok {
			t.Errorf("%s is out of range", row[0])
		}
		share := column(row, "flow_ratio_branch")
		for _, half := range []struct {
			branch bool
			flow   float64
			column string
		}{{true, share * all, "K_branch_on_combined"}, {false, (1 - share) * all, "K_run_on_combined"}} {
			w := worker{t: tree, flow: unit.Flow(half.flow)}
			w.junction(&Split{Branch: half.branch, Wye: wye, Dynamic: dynamic(tree.State, run)}, all, run)
			got, want := w.terms[0], column(row, half.column)
			if math.Abs(got.K-want) > 1e-6 || !near(got.Share, share, 1e-9) || !near(float64(got.Loss), got.K*float64(got.Dynamic), 1e-9) {
				t.Errorf("%s, branch %v: K %.9g on share %g, want %.9g on %g", row[0], half.branch, got.K, got.Share, want, share)
			}
		}
	}
}
