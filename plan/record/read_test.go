package record

import (
	"reflect"
	"testing"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// whole has every field of the contract.
const whole = `kind = "letter"
date = 2026-11-24
role = "steward"
note = "Measured after the letter came."
done = ["filter", "weekly look"]

[[reading]]
of = "hood pressure"
at = "Planer/hood"
value = "2.1 inwg"
expected = "500 Pa"
use = "Planer"
filter = "clean"
with = "U-tube"
calibrated = 2026-09-01

[[reading]]
of = "open stop"
at = "Saw gate"
value = "4 mm"

[[item]]
asks = "Show the air at the planer."
rule = "fire code, 2018"
state = "answered"
gap = "100 cfm less than needed"
answered = 2026-12-01
evidence = "reading 1"

[[item]]
asks = "Show the drum."
answered = "by telephone"
`

func day(year, month, d int) entry.Date { return entry.Date{Year: year, Month: month, Day: d} }

func inwg(x float64) float64 { return x * 249.08891 } // conventional inch of water, NIST SP 811 appendix B

func TestReadWhole(t *testing.T) {
	got, problems := Read("records/2026-11-24-letter-1.toml", []byte(whole))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	want := &Record{
		File: "2026-11-24-letter-1.toml", Kind: "letter", Date: day(2026, 11, 24), Role: "steward", Note: "Measured after the letter came.", Done: []string{"filter", "weekly look"},
		Readings: []Reading{
			{Of: "hood pressure", At: "Planer/hood", Value: Quantity{inwg(2.1), unit.KindPressure, "2.1 inwg"},
				Expected: Quantity{500, unit.KindPressure, "500 Pa"}, Use: "Planer", Filter: "clean", With: "U-tube", Calibrated: day(2026, 9, 1),
				Place: entry.Place{Line: 7, Column: 1}, AtPlace: entry.Place{Line: 9, Column: 6}, UsePlace: entry.Place{Line: 12, Column: 7}},
			{Of: "open stop", At: "Saw gate", Value: Quantity{Text: "4 mm"},
				Place: entry.Place{Line: 17, Column: 1}, AtPlace: entry.Place{Line: 19, Column: 6}},
		},
		Items: []Item{
			{Asks: "Show the air at the planer.", Rule: "fire code, 2018", State: "answered", Gap: "100 cfm less than needed", Evidence: "reading 1",
				Answered: Answer{Date: day(2026, 12, 1)}, Place: entry.Place{Line: 22, Column: 1}},
			{Asks: "Show the drum.", Answered: Answer{Text: "by telephone"}, Place: entry.Place{Line: 30, Column: 1}},
		},
	}
	if unit.Compare(got.Readings[0].Value.SI, want.Readings[0].Value.SI) != 0 {
		t.Errorf("2.1 inwg is %v Pa", got.Readings[0].Value.SI)
	}
	want.Readings[0].Value.SI = got.Readings[0].Value.SI // the same but for the last digit
	if !reflect.DeepEqual(got, want) {
		t.Errorf("read\n%+v\nwant\n%+v", got, want)
	}
	if text := string(got.TOML()); text != whole {
		t.Errorf("written again:\n%s", text)
	}
}

// What a record may look like.
func TestReadGood(t *testing.T) {
	for name, text := range map[string]string{
		"no more than must be":     "kind = \"service\"\ndate = 2026-11-24\n",
		"inline tables":            "kind = \"inspection\"\ndate = 2026-11-24\nreading = [{of = \"flow\", at = \"Saw drop\", value = \"350 cfm\"}]\n",
		"no tables in the list":    "kind = \"inspection\"\ndate = 2026-11-24\nreading = []\nitem = []\n",
		"fields in any order":      "date = 2026-11-24\nkind = \"change\"\n[[reading]]\nvalue = \"24 V\"\nat = \"Saw gate\"\nof = \"voltage\"\n",
		"empty texts":              "kind = \"service\"\ndate = 2026-11-24\nrole = \"\"\nnote = \"\"\n",
		"pressure above outdoors":  "kind = \"inspection\"\ndate = 2026-11-24\n[[reading]]\nof = \"room pressure\"\nat = \"Hall\"\nvalue = \"-3 Pa\"\n",
		"calibrated the same day":  "kind = \"inspection\"\ndate = 2026-11-24\n[[reading]]\nof = \"room pressure\"\nat = \"Hall\"\nvalue = \"3 Pa\"\ncalibrated = 2026-11-24\n",
		"no time at all":           "kind = \"inspection\"\ndate = 2026-11-24\n[[reading]]\nof = \"time\"\nat = \"Saw gate\"\nvalue = \"0 s\"\n",
		"a letter without points":  "kind = \"letter\"\ndate = 2026-11-24\nnote = \"All settled.\"\n",
		"readings beside a letter": "kind = \"letter\"\ndate = 2026-11-24\n[[reading]]\nof = \"speed\"\nat = \"Cyclone\"\nvalue = \"3450 rpm\"\n",
		"an answer with a day":     "kind = \"letter\"\ndate = 2026-11-24\n[[item]]\nasks = \"x\"\nanswered = \"2026-11-24 by letter\"\n",
		"Windows line ends":        "kind = \"service\"\r\ndate = 2026-11-24\r\n",
		"a leap day":               "kind = \"service\"\ndate = 2028-02-29\n",
	} {
		rec, problems := Read("r.toml", []byte(text))
		if len(problems) > 0 || rec == nil {
			t.Errorf("%s: %v", name, problems)
			continue
		}
		again, problems := Read("r.toml", rec.TOML())
		if len(problems) > 0 || !reflect.DeepEqual(plain(again), plain(rec)) {
			t.Errorf("%s: does not survive:\n%s\n%v", name, rec.TOML(), problems)
		}
	}
}

// plain is a record without places and file name.
func plain(r *Record) *Record {
	if r == nil {
		return nil
	}
	c := *r
	c.File = ""
	c.Readings, c.Items = nil, nil
	for _, reading := range r.Readings {
		reading.Place, reading.AtPlace, reading.UsePlace = entry.Place{}, entry.Place{}, entry.Place{}
		c.Readings = append(c.Readings, reading)
	}
	for _, item := range r.Items {
		item.Place = entry.Place{}
		c.Items = append(c.Items, item)
	}
	return &c
}

// What is written does not depend on what was handed out before.
func TestDataIsReadOnly(t *testing.T) {
	Rows()[0].Field, Words("record kind")[0].Word, Measures()[0].Word = "x", "x", "x"
	if Rows()[0].Field != "kind" || Words("record kind")[0].Word != "commissioning" || Measures()[0].Word != "hood pressure" {
		t.Error("what a caller changes is changed for all")
	}
}

func TestMeasureRead(t *testing.T) {
	flow, ok := FindMeasure("flow")
	if !ok {
		t.Fatal("no flow")
	}
	q, err := flow.Read("3600 m3/h")
	if err != nil || q != (Quantity{1, unit.KindFlow, "3600 m3/h"}) {
		t.Errorf("%+v, %v", q, err)
	}
	_, err = flow.Read("800 cfn")
	if want := `read "800 cfn"; expected an air flow with its unit, such as "350 cfm" or "820 m3/h"; do: write "800 cfm"`; err == nil || err.Error() != want {
		t.Errorf("%v", err)
	}
	if _, ok := FindMeasure("flaw"); ok {
		t.Error("found what is not there")
	}
	stop, _ := FindMeasure("stop")
	if q, err := stop.Read("third mark"); err != nil || q != (Quantity{Text: "third mark"}) {
		t.Errorf("%+v, %v", q, err)
	}
}

func TestAnswer(t *testing.T) {
	for _, c := range []struct {
		answer Answer
		given  bool
		text   string
	}{
		{Answer{}, false, ""},
		{Answer{Date: day(2026, 1, 2)}, true, "2026-01-02"},
		{Answer{Text: "by telephone"}, true, "by telephone"},
	} {
		if c.answer.Given() != c.given || c.answer.String() != c.text {
			t.Errorf("%+v", c.answer)
		}
	}
}
