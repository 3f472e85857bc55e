package chain

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// table reads a table of figures to test against: its head, then numbers.
func table(t *testing.T, name string) (head []string, rows [][]float64, texts [][]string) {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	in := csv.NewReader(f)
	in.Comment = '#'
	texts, err = in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range texts[1:] {
		var row []float64
		for _, cell := range r {
			x, err := strconv.ParseFloat(cell, 64)
			if err != nil {
				t.Fatal(err)
			}
			row = append(row, x)
		}
		rows = append(rows, row)
	}
	return texts[0], rows, texts[1:]
}

// printed reports whether a figure rounds to what is printed, or to its
// neighbour from a twentieth beyond: the tables round step by step.
func printed(got float64, want string) bool {
	_, decimals, _ := strings.Cut(want, ".")
	x, _ := strconv.ParseFloat(want, 64)
	return math.Abs(got-x) <= 0.55*math.Pow(10, -float64(len(decimals)))
}

func celsius(t float64) unit.Temperature { return unit.Temperature(t + 273.15) }

func awg(gauge string) unit.Wire { return unit.Must[unit.Wire](gauge + " AWG") }

func near(a, b, off float64) bool { return math.Abs(a-b) <= off }

func mustFloat(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	return x
}
