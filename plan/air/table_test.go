package air

import (
	"testing"

	"dustbook/plan/source"
)

func TestTablesNameTheirSources(t *testing.T) {
	names := map[string]bool{}
	for _, table := range Tables() {
		if names[table.Name] || table.Name == "" || len(table.Rows) == 0 {
			t.Errorf("table %q stands twice or is empty", table.Name)
		}
		names[table.Name] = true
		for i, row := range table.Rows {
			b := row.Basis
			if b.Mark == 0 || b.Title() == "" {
				t.Errorf("%s, row %d: no mark", table.Name, i+1)
			}
			if b.Document == "" && b.Mark != source.Practice && b.Clause == "" {
				t.Errorf("%s, row %d: neither document nor reason", table.Name, i+1)
			}
		}
	}
}

func TestNamedRowsStandOnce(t *testing.T) {
	for _, table := range []source.Table{atmosphereTable, frictionTable, handTable, fittingTable} {
		seen := map[string]bool{}
		for _, row := range table.Rows {
			name := row.Text("name")
			if seen[name] || row.Text("about") == "" {
				t.Errorf("%s: row %q stands twice or says nothing", table.Name, name)
			}
			seen[name] = true
		}
	}
}

func TestMissingRowStopsTheProgram(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a missing row was read")
		}
	}()
	fittingTable.Figure("no such row")
}

func TestCurve(t *testing.T) {
	c := curve{at: []float64{1, 2, 4}, value: []float64{10, 20, 0}}
	for x, want := range map[float64]float64{0: 10, 1: 10, 1.5: 15, 2: 20, 3: 10, 4: 0, 9: 0} {
		near(t, "curve", c.read(x), want, 1e-15)
	}
}
