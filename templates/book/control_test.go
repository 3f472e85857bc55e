package book_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/templates/book"
)

// hallText is the test shop of the control half.
func hallText(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile("../../plan/control/testdata/hall.toml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// A shop with a control half makes whole sheets of it, the same with any count
// of workers; a shop without one makes none.
func TestBookWithAControlHalf(t *testing.T) {
	files := bookOf(t, []byte(hallText(t)), 2)
	for _, path := range []string{"matrix.html", "register.html", "triggers.html", "wiring-hall-chain.html", "wiring-collector-chain.html", "switch-cyclone.html", "switch-bag-unit.html"} {
		if files[path] == nil {
			t.Errorf("no sheet %s", path)
			continue
		}
		checkPage(t, path, files[path])
	}
	if sums(files) != sums(bookOf(t, []byte(hallText(t)), 5)) {
		t.Error("with five workers it differs")
	}
	small := bookOf(t, content.Small(), 2)
	for _, path := range []string{"matrix.html", "register.html", "triggers.html"} {
		if small[path] != nil {
			t.Errorf("the smallest example has the sheet %s", path)
		}
	}
	if strings.Contains(string(small["index.html"]), "Control</a>") {
		t.Error("the smallest example has a tab for the control half")
	}
}

// The matrix lies beside its sheet as a table after RFC 4180, and reads back to
// the cells of the plan. The letters of the cells are our own.
func TestMatrixAsATable(t *testing.T) {
	data := bookOf(t, []byte(hallText(t)), 2)["cause-and-effect.csv"]
	if len(data) == 0 || strings.Count(string(data), "\n") != strings.Count(string(data), "\r\n") {
		t.Fatalf("no table, or its lines do not end in CR LF: %d bytes", len(data))
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	m := planOf(t, []byte(hallText(t))).Control.Matrix
	const before = 4 // columns that say what the cause is
	if want := 1 + len(m.Rows) + 1 + len(m.Acts()); len(rows) != want || len(rows[0]) != before+len(m.Columns) {
		t.Fatalf("%d rows of %d fields, want %d of %d", len(rows), len(rows[0]), want, before+len(m.Columns))
	}
	for i, r := range m.Rows {
		for j, c := range r.Cells {
			if got := rows[1+i][before+j]; got != c.String() {
				t.Errorf("%s %s, %s: %q, want %q", rows[1+i][0], rows[1+i][1], rows[0][before+j], got, c)
			}
		}
	}
	if bookOf(t, content.Small(), 2)["cause-and-effect.csv"] != nil {
		t.Error("a shop without a control half has a matrix")
	}
}

// Whatever people call their triggers, chains, sensors and stops, it appears
// as text and does nothing.
func TestHostileControlNames(t *testing.T) {
	for _, name := range []string{`<script>alert(1)`, `"onload="x`, "\u202eevil", `🪚🔥 saw`, `{{.}}`, `&amp;`, `日本のこぎり`, strings.Repeat("W", 70)} {
		quoted := strings.ReplaceAll(strings.ReplaceAll(name, `\`, `\\`), `"`, `\"`)
		text := strings.NewReplacer(`"Saw runs"`, `"`+quoted+` T"`, `"Hall chain"`, `"`+quoted+` C"`, `"Filter gauge"`, `"`+quoted+` S"`, `"Stop by the hall door"`, `"`+quoted+` B"`,
			`"East zone gate"`, `"`+quoted+` G"`, `"Lathe switch"`, `"`+quoted+` H"`, `"18 AWG"`, `"18 AWG"`, `lockout = "key`, `lockout = "`+quoted+` key`).Replace(hallText(t))
		s, problems := shop.Read("shop.toml", []byte(text))
		if len(problems) > 0 {
			t.Errorf("%q: %v", name, problems)
			continue
		}
		p := plan.Make(s, nil, entry.Date{})
		files, err := book.Make(p, checks.Run(p), nil, 2)
		if err != nil {
			t.Errorf("%q: %v", name, err)
			continue
		}
		for path, data := range files {
			if strings.HasSuffix(path, ".html") {
				checkHostile(t, name, path, data)
			}
		}
	}
}

// Findings about things of the control half lead to where these are shown;
// the link of every one holds, also where several gates are forgotten.
func TestFindingsLeadToTheControlSheets(t *testing.T) {
	text := strings.NewReplacer(`opens = ["Jointer gate", "East zone gate"]`, `opens = ["Jointer gate"]`, `  { device = "Drum eye", cable = "3 ft" },`, `  { device = "Drum eye", cable = "3 ft" },
  { device = "Drum eye", cable = "1 ft" },`).Replace(hallText(t))
	files := bookOf(t, []byte(text), 2)
	findings := string(files["findings.html"])
	for _, want := range []string{"triggers.html#trigger-jointer-runs", "register.html#device-s3"} {
		if !strings.Contains(findings, want) {
			t.Errorf("no finding leads to %s", want)
		}
	}
}
