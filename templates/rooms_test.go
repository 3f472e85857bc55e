package templates

import (
	"fmt"
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

// loudShop is one machine, with rooms or without, at a level for so long.
func loudShop(rooms, level, hours string) string {
	return "[shop]\nname = \"Loud\"\n" + rooms + "[[machine]]\nname = \"Planer\"\nkind = \"planer\"\nnoise = \"" + level + "\"\nhours = " + hours + "\n"
}

// A dose is marked by the figure of its own column: at 88 dBA for a day the
// action level is reached and a full dose is not; for an hour neither is.
func TestDoseIsMarked(t *testing.T) {
	for _, c := range []struct {
		level, hours string
		marks        [3]string
		average      string
	}{
		{"88 dBA", "8", [3]string{"action level reached", "", "over a full dose"}, "88 dBA"},
		{"88 dBA", "1", [3]string{"", "", ""}, "73 dBA"},
		{"85 dBA", "8", [3]string{"action level reached", "", "recommended limit reached"}, "85 dBA"},
		{"84 dBA", "8", [3]string{"", "", ""}, "84 dBA"},
		{"120 dBA", "8", [3]string{"over a full dose", "over a full dose", "over a full dose"}, "120 dBA"},
	} {
		b := newBook(t, loudShop("", c.level, c.hours))
		row := b.noiseView().Rows[0]
		for i, want := range c.marks {
			if row.Doses[i].Mark != want {
				t.Errorf("%s for %s h, %s: marked %q, want %q", c.level, c.hours, b.noiseView().Rates[i].Name, row.Doses[i].Mark, want)
			}
		}
		if got := row.Doses[0].Average; got != c.average {
			t.Errorf("%s for %s h is %s over the day, want %s", c.level, c.hours, got, c.average)
		}
		page := pageOf(t, b, "rooms.html")
		if n := strings.Count(page, "<b>▲ "); (n > 0) != (c.marks != [3]string{}) {
			t.Errorf("%s for %s h: %d marks on the sheet", c.level, c.hours, n)
		}
	}
}

// The head of a column says what dose its figure stands for, the key what the
// mark means, and nothing says that a level is harmless.
func TestNoiseHeads(t *testing.T) {
	_, words := newBook(t, loudShop("", "88 dBA", "8")).sheet(t, "rooms.html")
	inOrder(t, "noise", words, "action level 85 dBA over 8 h", "that is a dose of 50 %", "limit 90 dBA over 8 h", "that is a dose of 100 %", "▲ 76 %", "88 dBA", "▲ marks a dose", "the standard decides", "1910.95, from memory")
}

// A dose that only rounds to the figure it is held against shows a digit more.
func TestCloseDose(t *testing.T) {
	for _, c := range []struct {
		share float64
		want  string
	}{{.5, "50 %"}, {.499, "49.9 %"}, {.504, "50.4 %"}, {.48, "48 %"}, {1, "100 %"}, {1.004, "100.4 %"}} {
		if got := closePercent(c.share, .5, 1); got != c.want {
			t.Errorf("%g is %s, want %s", c.share, got, c.want)
		}
	}
}

// Without rooms the noise stands on the sheet, which says that rooms are not
// given; with a room it does not say so.
func TestNoiseWithoutRooms(t *testing.T) {
	const room = "[[room]]\nname = \"Hall\"\noutline = [[0,0],[20,0],[20,20],[0,20]]\nheight = \"9 ft\"\n"
	for rooms, without := range map[string]bool{"": true, room: false} {
		b := newBook(t, loudShop(rooms, "95 dBA", "6")+"[[collector]]\nname = \"Fan\"\ninlet = \"6 in\"\nclaims = { flow = \"900 cfm\", suction = \"9 inwg\" }\n")
		_, words := b.sheet(t, "rooms.html")
		if strings.Contains(words, b.words.Text("rooms.none-note")) != without || !strings.Contains(words, "▲ 150 %") {
			t.Errorf("rooms %v: %s", !without, words)
		}
		if strings.Contains(words, "none: the same air") {
			t.Errorf("rooms %v: a way back that nobody knows is called not needed", !without)
		}
		if strings.Contains(b.roomsVerdict().Says, "gives no rooms") != without {
			t.Errorf("rooms %v: the verdict says %q", !without, b.roomsVerdict().Says)
		}
	}
}

// The opening for what the file chooses stands on the sheet, and that it is
// over the limit of what burns; left out, the strictest limit is taken.
func TestChosenDepressurisation(t *testing.T) {
	const opening = "opening = \"1.5 sq ft\"\n"
	for _, c := range []struct {
		chosen, says string
		over         bool
	}{
		{"depressurisation = \"5 Pa\"\n", "For the 5 Pa that the file chooses", true},
		{"depressurisation = \"2 Pa\"\n", "For the 2 Pa that the file chooses", false},
		{"", "The file chooses no depressurisation. For 2 Pa", false},
	} {
		_, words := roomsBook(t, opening, opening+c.chosen).sheet(t, "rooms.html")
		if !strings.Contains(words, c.says) || strings.Contains(words, "What the file chooses is over") != c.over {
			t.Errorf("with %q the sheet does not say %q, or of the limit %v", c.chosen, c.says, c.over)
		}
	}
}

// Air that is blown into a room reads as that: in its row, in the drawing and
// in its changes of air.
func TestAirBlownIn(t *testing.T) {
	const room = "[[room]]\nname = \"%s\"\noutline = [[%s,0],[%s,0],[%s,9],[%s,9]]\nheight = \"9 ft\"\n"
	text := benchOf(`exhaust = "outside"`, `exhaust = "returns to room"`+"\nreturns_to = \"Lean-to\"\nroom = \"Lean-to\"", `kind = "planer"`, `kind = "planer"`+"\nroom = \"Hall\"")
	b := newBook(t, text+fmt.Sprintf(room, "Hall", "0", "9", "9", "0")+fmt.Sprintf(room, "Lean-to", "9", "18", "18", "9"))
	seen := map[bool]int{}
	for _, s := range b.Plan.Rooms.Spaces {
		for _, at := range b.Plan.Rooms.Of(s) {
			row := b.balanceRow(at)
			seen[at.Net < 0]++
			if (row.Out != "") != (at.Net < 0) || strings.ContainsAny(row.Net+row.Pressure, "-−") || row.Changes == "0.0" {
				t.Errorf("%s in %s: %+v", at.Use, s.Name(), row)
			}
		}
	}
	if seen[true] == 0 || seen[false] == 0 {
		t.Fatalf("air is blown in %d times, drawn out %d times", seen[true], seen[false])
	}
	_, words := b.sheet(t, "rooms.html")
	inOrder(t, "air blown in", words, "are blown in and have to go out by openings and leaks", "blown in: pushed out", "blown in, to go out")
	if strings.Contains(words, "-7") || strings.Contains(words, "−7") {
		t.Error("a flow under nought stands on the sheet")
	}
}
