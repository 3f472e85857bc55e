package export_test

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/export"
)

// Nothing in a table can run in a spreadsheet, and what is a number stays one.
// The guard is common practice, no source; the form is RFC 4180's.
func TestTable(t *testing.T) {
	for text, want := range map[string]string{
		"=1+1": "'=1+1", "+A1": "'+A1", "-A1": "'-A1", "@now": "'@now", "\t=1": "'\t=1", "-=1": "'-=1", "--1": "'--1", "-": "'-",
		"-1.5": "-1.5", "+3": "+3", "Saw": "Saw", "": "", "a=1": "a=1", "!": "!",
	} {
		rows, err := csv.NewReader(strings.NewReader(string(export.Table([][]string{{text, "x"}})))).ReadAll()
		if err != nil || len(rows) != 1 || !slices.Equal(rows[0], []string{want, "x"}) {
			t.Errorf("%q comes back as %q (%v), want %q", text, rows, err, want)
		}
	}
	if got := string(export.Table([][]string{{"a,b", `say "so"`}, {"two\nlines", ""}})); got != "\"a,b\",\"say \"\"so\"\"\"\r\n\"two\r\nlines\",\r\n" {
		t.Errorf("%q", got)
	}
}
