package entry

import (
	"slices"
	"strings"
	"testing"
)

func TestQuote(t *testing.T) {
	for in, want := range map[string]string{
		"800 cfn":                  `"800 cfn"`,
		"":                         `""`,
		`4"`:                       `"4\""`,
		"a\nb\x1b\x00":             `"a\nb\x1b\x00"`,
		"a\u202eb\u2066":           `"a\u202eb\u2066"`,
		"1\u00a0200\u2009mm":       `"1\u00a0200\u2009mm"`,
		"größe":                    `"größe"`,
		"\xff":                     `"\xff"`,
		strings.Repeat("é", 60):    `"` + strings.Repeat("é", 60) + `"`,
		strings.Repeat("é", 61):    `"` + strings.Repeat("é", 59) + `…"`,
		strings.Repeat("a", 9_000): `"` + strings.Repeat("a", 59) + `…"`,
	} {
		if got := Quote(in); got != want {
			t.Errorf("%q: got %s, want %s", in, got, want)
		}
	}
}

func TestWords(t *testing.T) {
	for path, want := range map[string]string{
		"":                             "",
		"shop":                         "shop",
		"shop.name":                    "shop, name",
		"machine[3].port[0].flow":      "machine 4, port 1, flow",
		"room[0].outline[2][1]":        "room 1, outline 3, item 2",
		`shop.editions."NFPA 664.1"`:   `shop, editions, "NFPA 664.1"`,
		`"a[0].b\"".c[11]`:             `"a[0].b\"", c 12`,
		`""`:                           `""`,
		"broken[":                      "broken",
		"broken[x].y":                  "broken",
		"duct[999].route[0][0].far[0]": "duct 1000, route 1, item 1, far 1",
	} {
		if got := Words(path); got != want {
			t.Errorf("%s: got %s, want %s", path, got, want)
		}
	}
}

func TestPlainPutsTextOnOneLine(t *testing.T) {
	for in, want := range map[string]string{
		"a  b":                "a  b",
		" a \r\n\t b ":        "a b",
		"a\tb":                "a b",
		"a\x1b[31m\u202e\x7f": `a\x1b[31m\u202e\x7f`,
		"'\"":                 `'"`,
		"\xffa":               "\ufffda",
	} {
		if got := plain(in); got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
}

func TestNearest(t *testing.T) {
	fields := []string{"name", "kind", "air_temperature", "also_open", "amps", "at", "altitude", "address", "noise", "hours"}
	names := []string{"Table saw", "Bandsaw", "Planer", "Planer gate", "Drum sander", "East main", "East zone gate", "Jointer"}
	for _, c := range []struct {
		word  string
		among []string
		most  int
		want  []string
	}{
		{"nmae", fields, 3, []string{"name"}},
		{"Name", fields, 3, []string{"name"}},
		{"air-temperature", fields, 3, []string{"air_temperature"}},
		{"airtemperature", fields, 3, []string{"air_temperature"}},
		{"alos_open", fields, 3, []string{"also_open"}},
		{"noisy", fields, 3, []string{"noise"}},
		{"colour", fields, 3, nil},
		{"x", fields, 3, nil},
		{"table-saw", names, 3, []string{"Table saw"}},
		{"Tabel saw", names, 3, []string{"Table saw"}},
		{"planner", names, 3, []string{"Planer"}},
		{"Planer", names, 3, []string{"Planer", "Planer gate"}},
		{"Planer", names, 1, []string{"Planer"}},
		{"Planer", names, 0, nil},
		{"band", names, 3, []string{"Bandsaw"}},
		{"gate", names, 3, []string{"Planer gate", "East zone gate"}},
		{"saw", names, 3, []string{"Table saw"}},
		{"east mian", names, 3, []string{"East main"}},
		{"", names, 3, nil},
		{"  ", names, 3, nil},
		{"Planer", nil, 3, nil},
		{"ab", []string{"ba", "ab", "ab", "abc"}, 5, []string{"ab", "abc", "ba"}},
		{"cat", []string{"cut", "cot", "car"}, 3, []string{"car", "cut", "cot"}},
		{strings.Repeat("a", 81), []string{strings.Repeat("a", 80)}, 3, nil},
		{strings.Repeat("a", 80), []string{strings.Repeat("a", 79)}, 3, []string{strings.Repeat("a", 79)}},
	} {
		if got := Nearest(c.word, c.among, c.most); !slices.Equal(got, c.want) {
			t.Errorf("%q: got %q, want %q", c.word, got, c.want)
		}
	}
}

// TestEdits checks the count of changed letters by words counted by hand.
func TestEdits(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"a", "", 1}, {"saw", "saw", 0}, {"saw", "was", 2}, {"kitten", "sitting", 3},
		{"ab", "ba", 1}, {"abcd", "acbd", 1}, {"planer", "planner", 1}, {"gate", "agte", 1}, {"drum", "murd", 3},
	} {
		for _, order := range [][2]string{{c.a, c.b}, {c.b, c.a}} {
			if got := edits([]rune(order[0]), []rune(order[1]), 9); got != c.want {
				t.Errorf("%s to %s: %d, want %d", order[0], order[1], got, c.want)
			}
		}
		if got := edits([]rune(c.a), []rune(c.b), c.want-1); c.want > 0 && got != c.want {
			t.Errorf("%s to %s within %d: %d", c.a, c.b, c.want-1, got)
		}
	}
}
