package templates

import (
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/record"
)

// What falls due stands with its dates; a job that nobody recorded says so and
// counts as due, and a record takes it out of the count.
func TestUpkeepByTheRecords(t *testing.T) {
	first := upkeepBook(t, content.Example(), day(2026, 11, 24))
	later := upkeepBook(t, content.Example(), day(2026, 11, 24), &record.Record{Kind: "service", Date: day(2026, 11, 10), Done: []string{"gates", "weekly look"}})
	before, after := first.upkeepView(), later.upkeepView()
	if after.Never != before.Never-2 || before.Never == 0 {
		t.Errorf("not on record: %d, then %d", before.Never, after.Never)
	}
	want := map[string][2]string{"gates": {"2026-11-10", "2026-12-10"}, "weekly look": {"2026-11-10", "2026-11-17"}, "hoses": {"", "2026-11-24"}}
	for _, row := range after.Jobs {
		if dates, known := want[row.Record]; known && dates != [2]string{row.Last, row.Next} {
			t.Errorf("%s: %s, %s", row.Name, row.Last, row.Next)
		}
		if row.Name == "" || row.Do == "" || row.Every == "" || row.Source.Text == "" {
			t.Errorf("%+v", row)
		}
	}
	page, err := later.Render(sheetAt(t, later, "upkeep.html"))
	if err != nil || !strings.Contains(string(page), "2026-12-10") || !strings.Contains(string(page), `href="upkeep.ics"`) {
		t.Errorf("%v\n%s", err, page)
	}
}

func sheetAt(t *testing.T, b *Book, path string) *Sheet {
	t.Helper()
	for _, s := range b.Sheets {
		if s.Path == path {
			return s
		}
	}
	t.Fatalf("no sheet %s", path)
	return nil
}

// A shop without a collector has nothing to keep up.
func TestNoUpkeepWithoutACollector(t *testing.T) {
	b := upkeepBook(t, []byte("[shop]\nname = \"Empty\"\n[[room]]\nname = \"Hall\"\noutline = [[0,0],[9,0],[9,9]]\n"), day(2026, 11, 24))
	for _, s := range b.Sheets {
		if s.Part == partUpkeep {
			t.Errorf("%s", s.Path)
		}
	}
	if b.Tables[calendarFile] != nil {
		t.Error("it has a calendar")
	}
}
