package plan_test

import (
	"slices"
	"testing"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/takeoff"
)

func day(year, month, of int) entry.Date { return entry.Date{Year: year, Month: month, Day: of} }

// school is the example's plan with some records.
func school(t *testing.T, records ...*record.Record) *plan.Plan {
	t.Helper()
	s, problems := shop.Read("school.toml", content.Example())
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	return plan.Make(s, records, day(2026, 11, 24))
}

func due(t *testing.T, p *plan.Plan, job string) plan.Due {
	t.Helper()
	list := p.Due()
	i := slices.IndexFunc(list, func(d plan.Due) bool { return d.Job == job })
	if i < 0 {
		t.Fatalf("no job %s", job)
	}
	return list[i]
}

// A job counts on from the latest record that says it was done, or shows it; one
// that was never done is due now.
func TestDueByTheRecords(t *testing.T) {
	service := func(date entry.Date, done ...string) *record.Record {
		return &record.Record{Kind: "service", Date: date, Done: done}
	}
	measured := func(kind, of, at string, date entry.Date) *record.Record {
		return &record.Record{Kind: kind, Date: date, Readings: []record.Reading{{Of: of, At: at}}}
	}
	for _, c := range []struct {
		job        string
		records    []*record.Record
		last, next entry.Date
	}{
		{"gates", nil, entry.Date{}, day(2026, 11, 24)},
		{"gates", []*record.Record{service(day(2026, 11, 2), "gates")}, day(2026, 11, 2), day(2026, 12, 2)},
		{"gates", []*record.Record{service(day(2026, 11, 2), "gates"), service(day(2026, 10, 2), "gates", "hoses")}, day(2026, 11, 2), day(2026, 12, 2)},
		{"hoses", []*record.Record{service(day(2026, 11, 2), "gates"), service(day(2026, 10, 31), "gates", "hoses")}, day(2026, 10, 31), day(2026, 11, 30)},
		{"weekly look", []*record.Record{service(day(2026, 11, 20), "weekly look")}, day(2026, 11, 20), day(2026, 11, 27)},
		{"test", []*record.Record{measured("service", "hood pressure", "Planer/hood", day(2026, 3, 1))}, entry.Date{}, day(2026, 11, 24)},
		{"test", []*record.Record{measured("inspection", "current", "Planer", day(2026, 3, 1))}, entry.Date{}, day(2026, 11, 24)},
		{"test", []*record.Record{measured("inspection", "hood pressure", "Drum sander/hood", day(2026, 3, 1))}, entry.Date{}, day(2026, 11, 24)}, // of the other collector
		{"test", []*record.Record{measured("inspection", "hood pressure", "Planer/hood", day(2026, 3, 1))}, day(2026, 3, 1), day(2027, 3, 1)},
		{"test", []*record.Record{measured("commissioning", "velocity", "Trunk", day(2026, 3, 1))}, day(2026, 3, 1), day(2027, 3, 1)},
		{"bonds", []*record.Record{measured("service", "resistance", "Trunk", day(2026, 3, 1))}, entry.Date{}, day(2026, 11, 24)},
		{"gates", []*record.Record{service(day(2026, 12, 2), "gates")}, entry.Date{}, day(2026, 11, 24)}, // after the plan's day
	} {
		if d := due(t, school(t, c.records...), c.job); d.Last != c.last || d.Next != c.next {
			t.Errorf("%s: last %s, next %s; want %s, %s", c.job, d.Last, d.Next, c.last, c.next)
		}
	}
}

// A word that a record may hold is a job, and every job is a word.
func TestJobsAreWordsOfRecords(t *testing.T) {
	var words, jobs []string
	for _, w := range record.Words("service") {
		words = append(words, w.Word)
	}
	jobs = takeoff.JobNames()
	slices.Sort(words)
	slices.Sort(jobs)
	if !slices.Equal(words, jobs) {
		t.Errorf("records may hold %q, the jobs are %q", words, jobs)
	}
}
