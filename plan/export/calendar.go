package export

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"dustbook/plan/entry"
	"dustbook/plan/takeoff"
)

// Event is something that comes again on whole days.
type Event struct {
	ID             string // the same in every calendar that holds it
	First          entry.Date
	Every          takeoff.Interval
	Summary, About string
}

// Calendar is a calendar of events in the form of RFC 5545, made on a day. An
// event that comes by the month has to begin no later than the 28th, which
// every month has.
func Calendar(name string, made entry.Date, events []Event) []byte {
	var c calendarText
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//dustbook//upkeep//EN")
	c.line("CALSCALE", "GREGORIAN")
	c.line("METHOD", "PUBLISH")
	c.text("NAME", name)
	for _, e := range events {
		c.line("BEGIN", "VEVENT")
		c.line("UID", e.ID)
		c.line("DTSTAMP", compact(made)+"T000000Z")
		c.line("DTSTART;VALUE=DATE", compact(e.First))
		c.line("RRULE", rule(e.Every))
		c.text("SUMMARY", e.Summary)
		c.text("DESCRIPTION", e.About)
		c.line("TRANSP", "TRANSPARENT")
		c.line("END", "VEVENT")
	}
	c.line("END", "VCALENDAR")
	return []byte(c.String())
}

// rule is how an interval comes again, as a rule of RFC 5545.
func rule(i takeoff.Interval) string {
	switch {
	case i.Months && i.Count%12 == 0:
		return fmt.Sprintf("FREQ=YEARLY;INTERVAL=%d", i.Count/12)
	case i.Months:
		return fmt.Sprintf("FREQ=MONTHLY;INTERVAL=%d", i.Count)
	case i.Count%7 == 0:
		return fmt.Sprintf("FREQ=WEEKLY;INTERVAL=%d", i.Count/7)
	}
	return fmt.Sprintf("FREQ=DAILY;INTERVAL=%d", i.Count)
}

func compact(d entry.Date) string { return strings.ReplaceAll(d.String(), "-", "") }

// calendarText puts lines into the form of RFC 5545: each ends with CR and LF,
// and one of more than 75 octets goes on in the next behind a blank, never
// within a character.
type calendarText struct{ strings.Builder }

const longestLine = 75

func (c *calendarText) line(name, value string) {
	line := name + ":" + value
	room := longestLine
	for len(line) > room {
		at := room
		for !utf8.RuneStart(line[at]) {
			at--
		}
		c.WriteString(line[:at] + "\r\n ")
		line, room = line[at:], longestLine-1
	}
	c.WriteString(line + "\r\n")
}

// text is a line whose value is a text.
func (c *calendarText) text(name, value string) { c.line(name, calendarEscapes.Replace(value)) }

// calendarEscapes writes what a text cannot hold as it is. Other control
// characters fall out.
var calendarEscapes = func() *strings.Replacer {
	pairs := []string{`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`}
	for r := range rune(0x20) {
		if r != '\n' {
			pairs = append(pairs, string(r), "")
		}
	}
	return strings.NewReplacer(append(pairs, "\x7f", "")...)
}()
