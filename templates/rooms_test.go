package templates

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/unit"
)

// roomsBook is the school's book, with changes of its file.
func roomsBook(t *testing.T, changes ...string) *Book {
	t.Helper()
	return changedBook(t, "../content/example/school.toml", changes...)
}

// The sheet shows the plan's own figures for every use and every limit.
func TestRoomsSheet(t *testing.T) {
	b := roomsBook(t)
	body, words := b.sheet(t, "rooms.html")
	for _, s := range b.Plan.Rooms.Spaces {
		for _, at := range b.Plan.Rooms.Of(s) {
			if !strings.Contains(words, at.Use) || !strings.Contains(body, `<b>`+unit.Air.Figure(b.units, at.Net)+`</b>`) {
				t.Errorf("%s in %s is not shown", at.Use, s.Name())
			}
		}
	}
	inOrder(t, "the air of the rooms", words, "what each use does", "What burns in this air", "Carbon monoxide has no smell", "licensed heating technician", "An opening for make-up air", "2 Pa", "The way back of filtered air", "How loud a day is", "Wear hearing protection", "common practice, no source")
	if strings.Contains(words, "electric") {
		t.Error("an electric heater stands among what burns")
	}
}

// The verdict puts the flue first, then what is missing, then the estimate.
func TestRoomsVerdict(t *testing.T) {
	const flue, none = `kind = "open-flue gas"`, `kind = "sealed-combustion gas"`
	for _, c := range []struct {
		name    string
		changes []string
		word    string
		says    string
	}{
		{"a flue in the hall", nil, string(checks.NotMet), "open-flue"},
		{"no flue", []string{flue, none}, "Estimated", "have to come in from outdoors"},
		{"no flue, no opening", []string{flue, none, "opening = \"1.5 sq ft\"\n", ""}, "Not given", "no opening that lets air in"},
		{"all comes back", []string{flue, none, `exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"Machine hall\""}, "Level", "comes back"},
		{"nobody knows", []string{flue, none, "exhaust = \"outside\"\n", "", "exhaust = \"returns to room\"\nreturns_to = \"Bench room\"\n", ""}, "Not known", "does not say enough"},
	} {
		v := roomsBook(t, c.changes...).roomsVerdict()
		if v.Words[0].Text != c.word || !strings.Contains(v.Says, c.says) || v.Do == "" {
			t.Errorf("%s: %q, %q, do %q", c.name, v.Words[0].Text, v.Says, v.Do)
		}
	}
}

// What a figure waits for stands beside it.
func TestRoomsWait(t *testing.T) {
	_, words := roomsBook(t, "outdoor_design = \"5 F\"\n", "").sheet(t, "rooms.html")
	if !strings.Contains(words, "waits for shop.outdoor_design") {
		t.Error("the heat does not say what it waits for")
	}
	_, words = roomsBook(t).sheet(t, "rooms.html")
	if strings.Contains(words, "shop.outdoor_design") {
		t.Error("the heat waits for what is given")
	}
}

// A shop without rooms has no such sheet.
func TestNoRooms(t *testing.T) {
	b := newBook(t, "[shop]\nname = \"Bare\"\n")
	for _, s := range b.Sheets {
		if s.Path == "rooms.html" {
			t.Error("a sheet of rooms without a room")
		}
	}
}
