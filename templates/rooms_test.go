package templates

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
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
		{"no flue", []string{flue, none}, "estimated", "have to come in from outdoors"},
		{"no flue, no opening", []string{flue, none, "opening = \"1.5 sq ft\"\n", ""}, "not given", "no opening that lets air in"},
		{"all comes back", []string{flue, none, `exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"Machine hall\""}, "in balance", "comes back"},
		{"nobody knows", []string{flue, none, "exhaust = \"outside\"\n", "", "exhaust = \"returns to room\"\nreturns_to = \"Bench room\"\n", ""}, "not known", "does not say enough"},
	} {
		v := roomsBook(t, c.changes...).roomsVerdict()
		if v.Words[0].Text != c.word || !strings.Contains(v.Says, c.says) || v.Do == "" {
			t.Errorf("%s: %q, %q, do %q", c.name, v.Words[0].Text, v.Says, v.Do)
		}
	}
}

// Where no dose is known the missing fields stand once, in place of a table of
// nothing; one level is enough for the table.
func TestRoomsWithoutNoise(t *testing.T) {
	text := string(content.Small())
	if strings.Contains(text, "noise") || strings.Contains(text, "hours") {
		t.Fatal("the smallest shop gives a level")
	}
	b := newBook(t, text)
	page := pageOf(t, b, "rooms.html")
	if strings.Contains(page, b.words.Text("rooms.noise-table")) || !strings.Contains(page, b.words.Text("rooms.noise-none")) {
		t.Error("a table of doses without a level")
	}
	for _, m := range b.Plan.Shop.Machines {
		if n := strings.Count(page, "<li><bdi>machine.noise of "+m.Name+"</bdi></li>"); n != 1 {
			t.Errorf("the level of %s is asked for %d times", m.Name, n)
		}
	}
	const kind = `kind = "table saw", `
	if strings.Count(text, kind) != 1 {
		t.Fatal("the smallest shop has no one table saw")
	}
	b = newBook(t, strings.Replace(text, kind, kind+`noise = "92 dBA", hours = 2, `, 1))
	if page := pageOf(t, b, "rooms.html"); !strings.Contains(page, b.words.Text("rooms.noise-table")) || strings.Contains(page, b.words.Text("rooms.noise-none")) {
		t.Error("one level is known, and there is no table")
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
