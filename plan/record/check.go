package record

import (
	"slices"
	"strings"

	"dustbook/plan/entry"
)

// Names are the names of what a shop has, by kind of thing. Whoever knows the
// shop fills them in.
type Names struct {
	Ports      []string // as machine/port
	Ducts      []string
	Gates      []string
	Taps       []string
	Devices    []string // what hangs on a chain: gates, triggers, sensors
	Chains     []string
	Machines   []string
	Collectors []string
	Filters    []string // a filter goes by the name of its collector
	Rooms      []string
	Uses       []string // every machine alone and those that every shop has among them
	Sheets     []string // of the book, that are printed in two languages
}

// kindOfThing is a kind of thing that a reading can be taken at.
type kindOfThing struct {
	word, phrase string
	of           func(Names) []string
}

// things are the kinds of thing that of.csv may name.
var things = []kindOfThing{
	{"port", "a port", func(n Names) []string { return n.Ports }},
	{"duct", "a duct", func(n Names) []string { return n.Ducts }},
	{"gate", "a gate", func(n Names) []string { return n.Gates }},
	{"tap", "a tap", func(n Names) []string { return n.Taps }},
	{"device", "a device", func(n Names) []string { return n.Devices }},
	{"chain", "a chain", func(n Names) []string { return n.Chains }},
	{"machine", "a machine", func(n Names) []string { return n.Machines }},
	{"collector", "a collector", func(n Names) []string { return n.Collectors }},
	{"filter", "the filter of a collector", func(n Names) []string { return n.Filters }},
	{"room", "a room", func(n Names) []string { return n.Rooms }},
	{"use", "a use", func(n Names) []string { return n.Uses }},
	{"sheet", "a sheet", func(n Names) []string { return n.Sheets }},
}

// fewNames is up to how many names a message lists them all.
const fewNames = 12

// Check lists the readings that are for a thing or a use that the shop does
// not have. A record stays what it is when the shop is changed, so what a
// problem of an old one weighs is for the caller to say.
func (r *Record) Check(n Names) entry.Problems {
	var problems entry.Problems
	look := func(field, name string, at entry.Place, kinds []string) {
		if len(problems) >= mostProblems {
			return
		}
		if p := n.missing(field, name, kinds); p != nil {
			p.File, p.Place = shown(r.File), at
			problems = append(problems, *p)
		}
	}
	for _, reading := range r.Readings {
		if m, ok := FindMeasure(reading.Of); ok {
			look("at", reading.At, reading.AtPlace, m.At)
		}
		if reading.Use != "" {
			look("use", reading.Use, reading.UsePlace, []string{"use"})
		}
	}
	problems.Sort()
	return problems
}

// Has reports whether something of these kinds has the name.
func (n Names) Has(name string, kinds []string) bool {
	return slices.ContainsFunc(things, func(k kindOfThing) bool { return slices.Contains(kinds, k.word) && slices.Contains(k.of(n), name) })
}

// missing is the problem of a name that nothing of these kinds has; nil where
// something has it.
func (n Names) missing(field, name string, kinds []string) *entry.Problem {
	var known, phrases []string
	other := ""
	for _, thing := range things {
		switch has := slices.Contains(thing.of(n), name); {
		case !slices.Contains(kinds, thing.word):
			if has && other == "" {
				other = ", not " + thing.phrase
			}
		case has:
			return nil
		default:
			known = append(known, thing.of(n)...)
			phrases = append(phrases, thing.phrase)
		}
	}
	none := "take a name that the shop file has"
	if len(known) == 0 {
		none = "the shop file has none: add it there first"
	}
	return &entry.Problem{Read: field + " = " + entry.Quote(name), Expected: orList(phrases) + " of the shop" + other,
		Do: nearest(strings.TrimSpace(name), known, fewNames, none)}
}
