package templates

import (
	"crypto/sha256"
	"encoding/hex"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/export"
	"dustbook/plan/takeoff"
)

// calendarFile is the calendar of upkeep, for any program that reads RFC 5545.
const calendarFile = "upkeep.ics"

// calendar is every job of upkeep as an event that comes again.
func (b *Book) calendar() []byte {
	var events []export.Event
	for _, d := range b.Plan.Due() {
		events = append(events, export.Event{
			ID: eventID(b.Plan.Shop.Name, d.Service), First: firstDay(d), Every: d.Every,
			Summary: b.words.Text("upkeep.event", b.jobName(d.Service), b.Plan.Shop.Name),
			About:   b.jobDo(d.Service) + "\n" + b.words.Text("upkeep.event-source", d.Basis.In(b.words.Mark)),
		})
	}
	return export.Calendar(b.words.Text("upkeep.calendar-name", b.Plan.Shop.Name), b.Plan.AsOf, events)
}

// firstDay is the day of a job's first event: the day it falls due. One that
// comes by the month comes on no later day than the 28th, which every month has.
func firstDay(d plan.Due) entry.Date {
	day := d.Next
	if d.Every.Months {
		day.Day = min(day.Day, 28)
	}
	return day
}

// eventID is the id of a job's event. It depends on the shop's name, the job and
// the collector alone, so that a later calendar takes the place of an earlier
// one.
func eventID(shop string, s takeoff.Service) string {
	collector := ""
	if s.Collector != nil {
		collector = s.Collector.Name
	}
	sum := sha256.Sum256([]byte(shop + "\n" + s.Job + "\n" + collector))
	return hex.EncodeToString(sum[:16]) + "@upkeep.invalid"
}
