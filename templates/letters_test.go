package templates

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/entry"
	"dustbook/plan/record"
)

const letterSheet = "letters-2026-11-20-letter-1.html"

// The points of a letter stand with the open ones first, each with the number
// it has in the letter.
func TestLetterSheet(t *testing.T) {
	b := proofBook(t, nil)
	_, words := b.sheet(t, letterSheet)
	inOrder(t, "the letter", words, "Letter of 2026-11-20, insurer's surveyor", "2. State how the duct passes the wall", "open", "the penetration is not sealed", "1. Show how often the drum is emptied", "answered", "bulletin 7, point 3", "2026-11-24", "service sheet, page 2", "3. Name the person", "closed", "by telephone")
	record, _ := b.sheet(t, "records.html")
	packet, inPacket := b.sheet(t, packetPath)
	for name, page := range map[string]string{"records": record, "packet": packet} {
		if !strings.Contains(page, `href="`+letterSheet+`"`) {
			t.Errorf("%s do not lead to the letter", name)
		}
	}
	inOrder(t, "the packet", inPacket, "Letters", "Letter of 2026-11-20", "3 1 1 1", "Signatures")
}

// Points keep their order within a state, whatever it is; without a state they
// are open.
func TestLetterOrder(t *testing.T) {
	b := proofBook(t, nil)
	r := &record.Record{File: "2026-11-20-letter-1.toml", Kind: "letter", Items: []record.Item{{Asks: "a", State: "closed"}, {Asks: "b"}, {Asks: "c", State: "answered"}, {Asks: "d", State: "open"}, {Asks: "e", State: "closed"}}}
	var order string
	for _, p := range b.letterView(r).Points {
		order += p.Asks
	}
	if order != "bdcae" {
		t.Errorf("%s", order)
	}
}

// A shop without letters has no such sheet, and the packet says so; other
// records are no letters.
func TestNoLetters(t *testing.T) {
	b := proofBook(t, []*record.Record{{File: "2026-11-24-service-1.toml", Kind: "service", Date: entry.Date{Year: 2026, Month: 11, Day: 24}}})
	for _, s := range b.Sheets {
		if strings.HasPrefix(s.Path, "letters-") {
			t.Errorf("%s", s.Path)
		}
	}
	if _, words := b.sheet(t, packetPath); !strings.Contains(words, "No letter of an inspector") {
		t.Error("the packet does not say that there is no letter")
	}
}

// The verdict of a letter follows its points.
func TestLetterVerdict(t *testing.T) {
	b := proofBook(t, nil)
	for want, states := range map[string][]string{"blank": nil, "ask": {"closed", "", "answered"}, "advice": {"closed", "answered"}, "met": {"closed", "closed"}} {
		r := &record.Record{Kind: "letter"}
		for _, s := range states {
			r.Items = append(r.Items, record.Item{State: s})
		}
		if got := b.letterVerdict(r).Words[0].Class; got != want {
			t.Errorf("%v: %s, want %s", states, got, want)
		}
	}
}

// A point concerns the open findings about a thing that it names.
func TestLetterConcerns(t *testing.T) {
	b := proofBook(t, nil)
	b.Findings = []checks.Finding{
		{Check: "motor-power", State: checks.NotMet, About: "Cyclone"},
		{Check: "filter-load", State: checks.Met, About: "Cyclone"},
		{Check: "bonded-duct", State: checks.Ask, About: "Trunk"},
		{Check: "power-cut", State: checks.Ask},
	}
	list, more := b.concerns(record.Item{Asks: "What of the cyclone's motor?"})
	if len(list) != 1 || more != 0 || list[0].About != "Cyclone" || list[0].Check.Path != "check-motor-power.html" {
		t.Errorf("%+v, %d more", list, more)
	}
	if list, _ := b.concerns(record.Item{Asks: "What?", Gap: "the trunk is bare"}); len(list) != 1 {
		t.Errorf("what is missing is not read: %+v", list)
	}
	for range mostConcerns {
		b.Findings = append(b.Findings, checks.Finding{Check: "motor-power", State: checks.Thin, About: "Cyclone"})
	}
	if list, more := b.concerns(record.Item{Asks: "the Cyclone"}); len(list) != mostConcerns || more != 1 {
		t.Errorf("%d, %d more", len(list), more)
	}
}

// Before them stand the findings of a check whose name the point holds. A point
// that is settled lists none.
func TestLetterConcernsByCheck(t *testing.T) {
	b := proofBook(t, nil)
	b.Findings = []checks.Finding{
		{Check: "motor-power", State: checks.NotMet, About: "Cyclone"},
		{Check: "extinguisher-service", State: checks.NotMet, About: "another"},
		{Check: "dust-hazard-analysis", State: checks.Ask},
	}
	for asks, want := range map[string]string{
		"Have the extinguisher by the Cyclone serviced.": "extinguisher-service motor-power",
		"Send the dust hazard analysis.":                 "dust-hazard-analysis",
		"Send the analysis of the dust.":                 "",
		"The power of the motors?":                       "motor-power",
	} {
		list, _ := b.concerns(record.Item{Asks: asks})
		var got []string
		for _, c := range list {
			got = append(got, strings.TrimSuffix(strings.TrimPrefix(c.Check.Path, "check-"), ".html"))
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q: %q, want %q", asks, got, want)
		}
	}
	for state, want := range map[string]int{"open": 1, "answered": 1, "closed": 0} {
		v := b.letterView(&record.Record{Kind: "letter", Items: []record.Item{{Asks: "Send the dust hazard analysis.", State: state}}})
		if n := len(v.Points[0].Concerns); n != want {
			t.Errorf("a point that is %s lists %d", state, n)
		}
	}
}

func TestSpeaksOf(t *testing.T) {
	for _, c := range []struct {
		text, name string
		want       bool
	}{
		{"an extinguisher was serviced", "Service of the extinguishers", true}, {"the extinguisher hangs there", "Service of the extinguishers", false},
		{"MAKE-UP air", "Make-up air", true}, {"make air", "Make-up air", false}, {"the maker", "Make-up air", false},
		{"the air in a bin", "Air in a bin", false}, {"", "Sprinklers", false}, {"no sprinkler", "Sprinklers", true}, {"anything", "", false},
	} {
		if got := speaksOf(c.text, c.name); got != c.want {
			t.Errorf("%q in %q: %v", c.name, c.text, got)
		}
	}
}

func TestMentions(t *testing.T) {
	for _, c := range []struct {
		text, name string
		want       bool
	}{
		{"the Table saw is loud", "Table saw", true}, {"the table SAW.", "Table saw", true}, {"Saw drop", "Saw", true},
		{"a sawdust heap, one saw", "Saw", true}, {"a sawdust heap", "Saw", false}, {"a seesaw", "Saw", false}, {"saw2", "Saw", false},
		{"die Säge", "Säge", true}, {"Kreissäge", "Säge", false}, {"anything", "", false}, {"anything", " ", false}, {"", "Saw", false},
	} {
		if got := mentions(c.text, c.name); got != c.want {
			t.Errorf("%q in %q: %v", c.name, c.text, got)
		}
	}
}
