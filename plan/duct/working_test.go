package duct

import (
	"math"
	"os"
	"testing"
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
