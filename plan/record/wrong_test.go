package record

import (
	"fmt"
	"strings"
	"testing"

	"dustbook/plan/entry"
)

const head = "kind = \"inspection\"\ndate = 2026-11-24\n"
const letterHead = "kind = \"letter\"\ndate = 2026-11-24\n"

// reading is a record of one reading with these lines.
func reading(lines ...string) string {
	return head + "[[reading]]\n" + strings.Join(lines, "\n") + "\n"
}

// item is a letter of one point with these lines.
func item(lines ...string) string {
	return letterHead + "[[item]]\n" + strings.Join(lines, "\n") + "\n"
}

const (
	ofFlow  = `of = "flow"`
	atDrop  = `at = "Saw drop"`
	cfm     = `value = "350 cfm"`
	anyOf   = `"hood pressure", "tap pressure", "duct pressure", "fan pressure", "separator pressure", "filter pressure", "room pressure", "flow", "velocity", "voltage", "current", "threshold", "power", "speed", "time", "start delay", "run-on", "resistance", "temperature", "smoke", "sound level", "stop", "open stop", "wording", "shut stop"`
	fields  = `"of", "at", "value", "expected", "use", "filter", "with", "calibrated"`
	kinds   = `"commissioning", "inspection", "service", "change", "incident" or "letter"`
	anyDate = "a date such as 2026-11-24, without quotes"
)

// wrong are files with what is wrong in them, problem by problem.
var wrong = []struct {
	name, text string
	problems   []string
}{
	{"an empty file", "", []string{
		`1:1: read a record without "kind"; expected what happened; do: add kind = "commissioning"`,
		`1:1: read a record without "date"; expected the day it happened; do: add date = 2026-11-24`,
	}},
	{"a job that is none", head + "done = [\"bin\", \"binn\", 3, \"bin\"]\n", []string{
		`3:16: read "binn"; expected a word for jobs of upkeep that were done, one word or a list; do: write "bin"`,
		`3:24: read 3; expected a word for jobs of upkeep that were done, one word or a list; do: use one of "bin", "bin look", "weekly look", "filter", "gates", "hoses", "ducts", "settled dust", "stops", "bonds", "fan", "extinguisher look", "extinguishers", "test", "lockout"`,
		`3:27: read "bin"; expected each word once; do: take one out`,
	}},
	{"no TOML", "kind = \n", []string{
		`1:8: read nothing after kind =; expected a value; do: write a value after the =, or take the line away`,
	}},
	{"a kind that is not one", "kind = \"inspecton\"\ndate = 2026-11-24\n", []string{
		`1:8: read kind = "inspecton"; expected ` + kinds + `; do: write "inspection"`,
	}},
	{"a kind near no other", "kind = \"party\"\ndate = 2026-11-24\n", []string{
		`1:8: read kind = "party"; expected ` + kinds + `; do: use one of "commissioning", "inspection", "service", "change", "incident", "letter"`,
	}},
	{"a kind in capitals", "kind = \"Service\"\ndate = 2026-11-24\n", []string{
		`1:8: read kind = "Service"; expected ` + kinds + `; do: write "service"`,
	}},
	{"a kind that is a number", "kind = 3\ndate = 2026-11-24\n", []string{
		`1:8: read kind = 3; expected ` + kinds + `; do: use one of "commissioning", "inspection", "service", "change", "incident", "letter"`,
	}},
	{"a date in quotes", "kind = \"service\"\ndate = \"2026-11-24\"\n", []string{
		`2:8: read date = "2026-11-24"; expected ` + anyDate + `; do: write date = 2026-11-24`,
	}},
	{"a date in quotes that does not exist", "kind = \"service\"\ndate = \"2026-02-29\"\n", []string{
		`2:8: read date = "2026-02-29"; expected ` + anyDate + `; do: write year-month-day, with two digits for month and day`,
	}},
	{"a date in words", "kind = \"service\"\ndate = \"24 Nov 2026\"\n", []string{
		`2:8: read date = "24 Nov 2026"; expected ` + anyDate + `; do: write year-month-day, with two digits for month and day`,
	}},
	{"a date that does not exist", "kind = \"service\"\ndate = 2026-02-29\n", []string{
		`2:8: read 2026-02-29; expected a date or time that exists, such as 2026-11-24; do: check the month, the day and the time`,
	}},
	{"a date with a time", "kind = \"service\"\ndate = 2026-11-24T07:30:00\n", []string{
		`2:8: read date = 2026-11-24T07:30:00; expected ` + anyDate + `; do: write date = 2026-11-24`,
	}},
	{"a date with a time and an offset", "kind = \"service\"\ndate = 2026-11-24T07:30:00-05:00\n", []string{
		`2:8: read date = 2026-11-24T07:30:00-05:00; expected ` + anyDate + `; do: write date = 2026-11-24`,
	}},
	{"unknown keys", "kind = \"service\"\ndate = 2026-11-24\nroll = \"steward\"\nweather = \"wet\"\n", []string{
		`3:1: read the key "roll"; expected a field of a record; do: write "role"`,
		`4:1: read the key "weather"; expected a field of a record; do: use one of "kind", "date", "role", "note", "done", "reading", "item"`,
	}},
	{"a required key misspelt", "kinds = \"service\"\ndate = 2026-11-24\n", []string{
		`1:1: read the key "kinds"; expected a field of a record; do: write "kind"`,
	}},
	{"one bracket", head + "[reading]\n" + ofFlow + "\n", []string{
		`3:1: read [reading]; expected [[reading]], because there may be several; do: write [[reading]] with two brackets`,
	}},
	{"a reading that is no table", head + "reading = \"350 cfm\"\n", []string{
		`3:11: read reading = "350 cfm"; expected [[reading]], because there may be several; do: write [[reading]] on a line of its own`,
	}},
	{"a list of no tables", head + "reading = [1]\n", []string{
		`3:12: read 1; expected a table [[reading]]; do: write [[reading]] on a line of its own`,
	}},
	{"an empty reading", head + "[[reading]]\n", []string{
		`3:1: read a [[reading]] without "of"; expected what was measured; do: add of = "hood pressure"`,
		`3:1: read a [[reading]] without "at"; expected where: the name of a port, duct, gate or another thing of the shop; do: add at = "…"`,
		`3:1: read a [[reading]] without "value"; expected what was read, with its unit; do: add value = "2.1 inwg"`,
	}},
	{"a note behind a reading", reading(ofFlow, atDrop, cfm, `note = "late"`), []string{
		`7:1: read the key "note"; expected a field of a [[reading]]; do: move it above the first [[reading]] or [[item]]`,
	}},
	{"an unknown key of a reading", reading(ofFlow, atDrop, cfm, `gate = "open"`), []string{
		`7:1: read the key "gate"; expected a field of a [[reading]]; do: use one of ` + fields,
	}},
	{"a thing measured that is not one", reading(`of = "velocty"`, atDrop, cfm), []string{
		`4:6: read of = "velocty"; expected a word for what was measured; do: write "velocity"`,
	}},
	{"a thing measured near no other", reading(`of = "love"`, atDrop, `value = 3`), []string{
		`4:6: read of = "love"; expected a word for what was measured; do: use one of ` + anyOf,
	}},
	{"a bare number", reading(ofFlow, atDrop, `value = 350`), []string{
		`6:9: read value = 350; expected an air flow with its unit, such as "350 cfm" or "820 m3/h"; do: write the unit: "350 cfm"`,
	}},
	{"a bare fraction", reading(`of = "time"`, atDrop, `value = 0.8`), []string{
		`6:9: read value = 0.8; expected a time with its unit, such as "4 s" or "14 min"; do: write the unit: "0.8 s"`,
	}},
	{"a unit of the wrong kind", reading(`of = "tap pressure"`, `at = "Main tap"`, cfm, `expected = "20 m/s"`), []string{
		`6:9: read value = "350 cfm"; expected a pressure with its unit, such as "2.5 inwg" or "600 Pa", not an air flow; do: write a pressure, such as "2.5 inwg"`,
		`7:12: read expected = "20 m/s"; expected a pressure with its unit, such as "2.5 inwg" or "600 Pa", not a velocity; do: write a pressure, such as "2.5 inwg"`,
	}},
	{"a value that is no text", reading(ofFlow, atDrop, `value = ["350 cfm"]`), []string{
		`6:9: read value = ["350 cfm"]; expected a value of the kind air flow in quotes, such as "350 cfm" or "820 m3/h"; do: write it in quotes`,
	}},
	{"an empty value", reading(ofFlow, atDrop, `value = ""`), []string{
		`6:9: read value = ""; expected an air flow with its unit, such as "350 cfm" or "820 m3/h"; do: write a number and a unit, such as "350 cfm"`,
	}},
	{"a time below nought", reading(`of = "time"`, atDrop, `value = "-1 s"`), []string{
		`6:9: read value = "-1 s"; expected at least 0 s; do: check the sign`,
	}},
	{"a stop without quotes", reading(`of = "stop"`, `at = "Saw gate"`, `value = 4`), []string{
		`6:9: read value = 4; expected a text in quotes, such as "4 mm"; do: write it in quotes, with its unit`,
	}},
	{"a stop that says nothing", reading(`of = "stop"`, `at = "Saw gate"`, `value = " "`), []string{
		`6:9: read value = " "; expected a text in quotes, such as "4 mm"; do: write what was read`,
	}},
	{"a stop that is too long", reading(`of = "stop"`, `at = "Saw gate"`, `value = "`+strings.Repeat("x", 101)+`"`), []string{
		`6:9: read value = "` + strings.Repeat("x", 78) + `…; expected at most 100 characters, not 101; do: shorten it`,
	}},
	{"nowhere", reading(ofFlow, `at = " "`, cfm), []string{
		`5:6: read at = " "; expected where: the name of a port, duct, gate or another thing of the shop; do: write it, or take the whole [[reading]] out`,
	}},
	{"a place that is no text", reading(ofFlow, `at = [12, 9]`, cfm), []string{
		`5:6: read at = [12, 9]; expected text in quotes; do: write one text in quotes`,
	}},
	{"a state of the filter that is not one", reading(ofFlow, atDrop, cfm, `filter = "cleen"`), []string{
		`7:10: read filter = "cleen"; expected "clean", "used", "change-out" or "none"; do: write "clean"`,
	}},
	{"calibrated in quotes", reading(ofFlow, atDrop, cfm, `calibrated = "2026-09-01"`), []string{
		`7:14: read calibrated = "2026-09-01"; expected ` + anyDate + `; do: write calibrated = 2026-09-01`,
	}},
	{"calibrated after the day", reading(ofFlow, atDrop, cfm, `calibrated = 2026-11-25`), []string{
		`7:14: read calibrated = 2026-11-25; expected a day not after that of the record, 2026-11-24; do: check both dates`,
	}},
	{"points outside a letter", head + "[[item]]\nasks = \"x\"\n[[item]]\nasks = \"y\"\n", []string{
		`3:1: read [[item]] in a record of the kind "inspection"; expected [[item]] in a letter only; do: write kind = "letter", or put what it says into the note`,
	}},
	{"a point that asks nothing", letterHead + "[[item]]\nrule = \"fire code\"\n[[item]]\nasks = \"\"\n", []string{
		`3:1: read a [[item]] without "asks"; expected what is asked for, in the letter's words; do: add asks = "…"`,
		`6:8: read asks = ""; expected what is asked for, in the letter's words; do: write it, or take the whole [[item]] out`,
	}},
	{"a state that is not one", item(`asks = "x"`, `state = "done"`), []string{
		`5:9: read state = "done"; expected "open", "answered" or "closed"; do: use one of "open", "answered", "closed"`,
	}},
	{"answered on a date in quotes", item(`asks = "x"`, `answered = "2026-12-01"`), []string{
		`5:12: read answered = "2026-12-01"; expected a date without quotes, or a text that says more; do: write answered = 2026-12-01`,
	}},
	{"answered with yes", item(`asks = "x"`, `answered = true`), []string{
		`5:12: read answered = true; expected a date such as 2026-11-24, or a text in quotes; do: write year-month-day, with two digits for month and day`,
	}},
	{"a text that is too long", "kind = \"service\"\ndate = 2026-11-24\nrole = \"" + strings.Repeat("é", 201) + "\"\n", []string{
		`3:8: read role = "` + strings.Repeat("é", 78) + `…; expected at most 200 characters, not 201; do: shorten it`,
	}},
	{"everything at once", "kind = \"servis\"\ndate = \"2026-11-24\"\n[[reading]]\nof = \"flow\"\nat = 3\nvalue = 350\nwiht = \"U-tube\"\n[[item]]\nanswered = \"2026-11-24\"\n", []string{
		`1:8: read kind = "servis"; expected ` + kinds + `; do: write "service"`,
		`2:8: read date = "2026-11-24"; expected ` + anyDate + `; do: write date = 2026-11-24`,
		`5:6: read at = 3; expected text in quotes; do: write one text in quotes`,
		`6:9: read value = 350; expected an air flow with its unit, such as "350 cfm" or "820 m3/h"; do: write the unit: "350 cfm"`,
		`7:1: read the key "wiht"; expected a field of a [[reading]]; do: write "with"`,
		`8:1: read a [[item]] without "asks"; expected what is asked for, in the letter's words; do: add asks = "…"`,
		`9:12: read answered = "2026-11-24"; expected a date without quotes, or a text that says more; do: write answered = 2026-11-24`,
	}},
}

func TestReadWrong(t *testing.T) {
	for _, c := range wrong {
		rec, problems := Read("r.toml", []byte(c.text))
		if rec != nil {
			t.Errorf("%s: read all the same", c.name)
		}
		compareLines(t, c.name, problems, "r.toml:", c.problems)
	}
}

// compareLines holds problems against the lines they should be.
func compareLines(t *testing.T, name string, problems entry.Problems, before string, want []string) {
	t.Helper()
	for i := range max(len(problems), len(want)) {
		got, wanted := "nothing", "nothing"
		if i < len(problems) {
			got = problems[i].Error()
		}
		if i < len(want) {
			wanted = before + want[i]
		}
		if got != wanted {
			t.Errorf("%s: problem %d\n got %s\nwant %s", name, i+1, got, wanted)
		}
	}
}

// A text may be as long as its row says, and no longer.
func TestLongest(t *testing.T) {
	for _, row := range Rows() {
		if row.Longest == 0 || row.Kind == "quantity" {
			continue
		}
		for extra, fine := range []bool{true, false} {
			v := fmt.Sprintf("%s = %q", row.Field, strings.Repeat("x", row.Longest+extra))
			text := map[string]string{"record": head + v, "reading": reading(ofFlow, cfm, atDrop, v), "item": item(`asks = "x"`, v)}[row.Table]
			if row.Need == "must" {
				text = map[string]string{"at": reading(ofFlow, cfm, v), "asks": item(v)}[row.Field]
			}
			if rec, problems := Read("r.toml", []byte(text)); (rec != nil) != fine {
				t.Errorf("%s.%s of %d characters: %v", row.Table, row.Field, row.Longest+extra, problems)
			}
		}
	}
}

// A file full of mistakes ends in a list that a person can read.
func TestManyProblems(t *testing.T) {
	text := head + strings.Repeat("[[reading]]\nof = \"flwo\"\nat = \"\"\nvaule = 3\n", 10000)
	rec, problems := Read("r.toml", []byte(text))
	if rec != nil || len(problems) != mostProblems {
		t.Errorf("%d problems", len(problems))
	}
	if problems[0].Line != 4 {
		t.Errorf("the first is %v", problems[0])
	}
}
