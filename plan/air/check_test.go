package air

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// The units that published examples are written in, by their definitions.
const (
	inwg  = 249.08891
	sqft  = foot * foot
	mm    = 0.001
	hp    = 745.7
	pound = 0.45359237
)

func fahrenheit(t float64) unit.Temperature { return unit.Temperature((t-32)/1.8 + 273.15) }

// near fails unless got is within an absolute tolerance of want.
func near[T ~float64](t *testing.T, name string, got T, want, within float64) {
	t.Helper()
	if !(math.Abs(float64(got)-want) <= within*(1+1e-9)+1e-15) {
		t.Errorf("%s: got %.8g, want %.8g within %.2g", name, float64(got), want, within)
	}
}

// nearly fails unless got is within a relative tolerance of want.
func nearly[T ~float64](t *testing.T, name string, got T, want, share float64) {
	t.Helper()
	near(t, name, got, want, share*math.Abs(want))
}

type record map[string]string

func (r record) number(t *testing.T, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%s: column %s: %v", r["id"], column, err)
	}
	return x
}

// reference reads a table of testdata; all were computed with the open
// fluid-mechanics library 1.0.22 (MIT), each row naming its call.
func reference(t *testing.T, file string, rows int) []record {
	t.Helper()
	text, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	in := csv.NewReader(strings.NewReader(string(text)))
	in.Comment = '#'
	lines, err := in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []record
	for _, line := range lines[1:] {
		r := record{}
		for i, name := range lines[0] {
			r[name] = line[i]
		}
		list = append(list, r)
	}
	if len(list) != rows {
		t.Fatalf("%s: %d rows, want %d", file, len(list), rows)
	}
	return list
}
