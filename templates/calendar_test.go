package templates

import (
	"bytes"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/emersion/go-ical"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// upkeepBook is the book of a shop with some records, as of a day.
func upkeepBook(t *testing.T, text []byte, asOf entry.Date, records ...*record.Record) *Book {
	t.Helper()
	s, problems := shop.Read("shop.toml", text)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	b, err := New(plan.Make(s, records, asOf), nil)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func day(year, month, of int) entry.Date { return entry.Date{Year: year, Month: month, Day: of} }

// events are those of a calendar, read by a library of others.
func events(t *testing.T, data []byte) []ical.Event {
	t.Helper()
	c, err := ical.NewDecoder(bytes.NewReader(data)).Decode()
	if err != nil {
		t.Fatalf("%v in\n%s", err, data)
	}
	return c.Events()
}

// The calendar reads back as what falls due, and each event comes again as often
// as its job.
func TestCalendarReadsBack(t *testing.T) {
	b := upkeepBook(t, content.Example(), day(2026, 11, 24))
	due, found := b.Plan.Due(), events(t, b.Tables[calendarFile])
	if len(found) != len(due) || len(due) < 10 {
		t.Fatalf("%d events for %d jobs", len(found), len(due))
	}
	for i, e := range found {
		d := due[i]
		summary, err := e.Props.Text(ical.PropSummary)
		if err != nil || summary != b.words.Text("upkeep.event", b.jobName(d.Service), b.Plan.Shop.Name) {
			t.Errorf("%q, %v", summary, err)
		}
		if says, err := e.Props.Text(ical.PropDescription); err != nil || !strings.HasPrefix(says, b.jobDo(d.Service)+"\n") {
			t.Errorf("%s: %q, %v", summary, says, err)
		}
		start, err := e.DateTimeStart(time.UTC)
		first := firstDay(d)
		if err != nil || start != time.Date(first.Year, time.Month(first.Month), first.Day, 0, 0, 0, 0, time.UTC) {
			t.Errorf("%s: starts %v, %v; want %s", summary, start, err, first)
		}
		rules, err := e.RecurrenceSet(time.UTC)
		if err != nil {
			t.Fatalf("%s: %v", summary, err)
		}
		next, day := rules.Iterator(), first
		for range 4 {
			at, more := next()
			if want := time.Date(day.Year, time.Month(day.Month), day.Day, 0, 0, 0, 0, time.UTC); !more || !at.Equal(want) {
				t.Fatalf("%s: comes on %v, want %v", summary, at, want)
			}
			day = d.Every.After(day)
		}
	}
}

// The form of the lines: CR and LF, at most 75 octets, whole characters.
func TestCalendarLines(t *testing.T) {
	name := strings.Repeat("Ärger; mit, Staub\\", 8)
	text := strings.Replace(string(content.Example()), `name = "Quillmark Joinery School"`, "name = '"+name[:len(name)/2]+"'", 1)
	data := upkeepBook(t, []byte(text), day(2026, 11, 24)).Tables[calendarFile]
	lines := strings.Split(string(data), "\r\n")
	if lines[len(lines)-1] != "" || strings.Contains(strings.ReplaceAll(string(data), "\r\n", ""), "\n") {
		t.Error("a line does not end with CR and LF")
	}
	folded := 0
	for _, line := range lines {
		if len(line) > 75 || !utf8.ValidString(line) {
			t.Errorf("%d octets: %q", len(line), line)
		}
		if strings.HasPrefix(line, " ") {
			folded++
		}
	}
	if folded < 20 {
		t.Errorf("%d lines are folded", folded)
	}
	if summary, err := events(t, data)[0].Props.Text(ical.PropSummary); err != nil || !strings.HasSuffix(summary, name[:len(name)/2]) {
		t.Errorf("%q, %v", summary, err)
	}
}

// After a revision, another day and a record every event keeps its id; another
// shop has others. No id stands twice.
func TestCalendarIDsStay(t *testing.T) {
	ids := func(b *Book) map[string]string {
		list := map[string]string{}
		for _, e := range events(t, b.Tables[calendarFile]) {
			id, err := e.Props.Text(ical.PropUID)
			summary, _ := e.Props.Text(ical.PropSummary)
			if err != nil || list[id] != "" {
				t.Errorf("id %q, %v, of %q and %q", id, err, list[id], summary)
			}
			list[id] = summary
		}
		return list
	}
	first := ids(upkeepBook(t, content.Example(), day(2026, 11, 24)))
	text := strings.Replace(string(content.Example()), `size = "4 in"`, `size = "5 in"`, 1)
	later := ids(upkeepBook(t, []byte(text), day(2027, 2, 1), &record.Record{Kind: "service", Date: day(2027, 1, 5), Done: []string{"gates"}}))
	for id, summary := range first {
		if later[id] != summary {
			t.Errorf("%s: id %s is of %q later", summary, id, later[id])
		}
	}
	other := ids(upkeepBook(t, []byte(strings.ReplaceAll(string(content.Example()), "Quillmark Joinery School", "Another")), day(2026, 11, 24)))
	for id := range other {
		if first[id] != "" {
			t.Errorf("two shops share the id %s", id)
		}
	}
}
