// Package record knows the record file: one TOML file for each event in the
// life of a shop, such as a commissioning, a service or a letter. It reads a
// file or a folder of them with every problem at once, writes a record once
// under a name of its own, and never changes a file.
//
// The fields stand in fields.csv, the words they may hold in words.csv, and
// what can be measured, in which kind of quantity and at which kinds of thing,
// in of.csv.
//
// It knows no shop: what the shop has is handed to Check as lists of names.
// It draws no conclusion from what was measured.
package record

import "dustbook/plan/entry"

// Folder is the name of the folder of records beside the shop file.
const Folder = "records"

// Record is one event: what was done on a day, by whom in which role, and
// what was measured or asked for.
type Record struct {
	File       string // base name; empty before it is written
	Kind       string // a word of the group "record kind"
	Date       entry.Date
	Role, Note string
	Done       []string // words of the group "service"
	Readings   []Reading
	Items      []Item // of a letter
}

// Reading is one measured value.
type Reading struct {
	Of              string   // the word of a Measure
	At              string   // name of the thing it was taken at: "Planer/hood"
	Value, Expected Quantity // Expected where the record says it
	Use             string   // the use that ran meanwhile
	Filter          string   // a word of the group "filter state"
	With            string   // the instrument
	Calibrated      entry.Date

	Place             entry.Place // of its table
	AtPlace, UsePlace entry.Place // of the values of at and use
}

// Item is one point of a letter.
type Item struct {
	Asks, Rule    string
	State         string // a word of the group "item state"; empty: open
	Gap, Evidence string
	Answered      Answer

	Place entry.Place // of its table
}

// Answer is the day on which a point was answered, or a text that says how.
// The zero Answer is none.
type Answer struct {
	Date entry.Date
	Text string
}

// Given reports whether there is an answer.
func (a Answer) Given() bool { return a != Answer{} }

// String is the answer as people read it.
func (a Answer) String() string {
	if a.Date != (entry.Date{}) {
		return a.Date.String()
	}
	return a.Text
}
