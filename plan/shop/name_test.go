package shop

import (
	"fmt"
	"strings"
	"testing"
	"unicode"
)

func TestSlug(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"Table saw", "table-saw"},
		{"  Table -- saw!  ", "table-saw"},
		{"CNC 3'x4'", "cnc-3-x4"},
		{"Größe", "gr-xf6-xdf-e"},
		{"日本", "x65e5-x672c"},
		{"é", "xe9"},
		{"!!!", "x21-x21-x21"},
		{"-", "x2d"},
		{"Saw – east", "saw-east"},
		{"Saw—east", "saw-east"},
		{"–", "x2013"},
		{"Saw “x”", "saw-x201c-x-x201d"},
		{"", ""},
		{"A", "a"},
		{strings.Repeat("ab", 40), strings.Repeat("ab", 40)},
		{"../../etc", "etc"},
		{`C:\con`, "c-con"},
	} {
		if got := Slug(c.name); got != c.want {
			t.Errorf("Slug(%q) = %q, want %q", c.name, got, c.want)
		}
	}
}

// TestLongSlug: a file name is never too long for a disk, and long names that
// differ still differ.
func TestLongSlug(t *testing.T) {
	one, other := strings.Repeat("工", 80), strings.Repeat("工", 79)+"匠"
	a, b := Slug(one), Slug(other)
	if len(a) > longestSlug || len(b) > longestSlug {
		t.Errorf("%d and %d bytes, want at most %d", len(a), len(b), longestSlug)
	}
	if a == b || Slug(one) != a {
		t.Errorf("%q and %q", a, b)
	}
	for _, c := range a {
		if c >= 0x80 || unicode.IsUpper(c) {
			t.Errorf("%q holds %q", a, c)
		}
	}
}

// oneMachine is the smallest shop with one machine, of a name.
func oneMachine(name string) string {
	return fmt.Sprintf("[shop]\nname = \"Test\"\n[[machine]]\nname = %q\nkind = \"planer\"\n", name)
}

// TestNameLength: 1 to 80 characters, counted as characters, not as bytes.
func TestNameLength(t *testing.T) {
	for _, c := range []struct {
		name string
		ok   bool
	}{
		{"", false}, {"x", true}, {strings.Repeat("x", 80), true}, {strings.Repeat("x", 81), false},
		{strings.Repeat("ü", 80), true}, {strings.Repeat("ü", 81), false}, {strings.Repeat("木", 80), true},
	} {
		s, problems := Read("shop.toml", []byte(oneMachine(c.name)))
		if (s != nil) != c.ok {
			t.Errorf("%d characters: %v", len([]rune(c.name)), problems)
		}
	}
}

// TestNamesAreSharedOver: the eight kinds share one space of names; stops,
// taps and sensors have their own, the shop its own, ports their machine's.
func TestNamesAreSharedOver(t *testing.T) {
	tables := map[string]string{
		"machine":   "[[machine]]\nname = %q\nkind = \"planer\"\n",
		"collector": "[[collector]]\nname = %q\ninlet = \"8 in\"\nclaims = { flow = \"1600 cfm\", suction = \"11 inwg\" }\n",
		"duct":      "[[duct]]\nname = %q\nto = \"Fan\"\nsize = \"4 in\"\nlength = \"1 ft\"\n",
		"gate":      "[[gate]]\nname = %q\non = \"Pipe\"\n",
		"trigger":   "[[trigger]]\nname = %q\nsenses = \"contact\"\nopens = []\n",
		"chain":     "[[chain]]\nname = %q\ncable = \"18 AWG\"\nstops = []\n",
		"room":      "[[room]]\nname = %q\noutline = [[0, 0], [9, 0], [9, 9]]\n",
		"use":       "[[use]]\nname = %q\nmachines = [\"Saw\"]\n",
		"stop":      "[[stop]]\nname = %q\n",
		"tap":       "[[tap]]\nname = %q\n",
		"sensor":    "[[sensor]]\nname = %q\n",
	}
	base := "[shop]\nname = \"Test\"\n" + fmt.Sprintf(tables["machine"], "Saw") + fmt.Sprintf(tables["collector"], "Fan") + fmt.Sprintf(tables["duct"], "Pipe")
	for one := range tables {
		for other := range tables {
			text := base + fmt.Sprintf(tables[one], "Same name") + fmt.Sprintf(tables[other], "Same name")
			s, problems := Read("shop.toml", []byte(text))
			shared := one == other || sharedNames[one] && sharedNames[other]
			switch {
			case shared && (s != nil || len(problems) != 1 || !strings.Contains(problems[0].Error(), "a name of its own")):
				t.Errorf("%s and %s of one name: %v", one, other, problems)
			case !shared && s == nil:
				t.Errorf("%s and %s of one name: %v", one, other, problems)
			}
			// names that differ only in signs and letter case make one file name
			text = strings.Replace(text, `"Same name"`, `"SAME-name"`, 1)
			if s, problems := Read("shop.toml", []byte(text)); shared != (s == nil) {
				t.Errorf("%s and %s of one file name: %v", one, other, problems)
			}
			text = strings.Replace(text, `"SAME-name"`, `"Another name"`, 1)
			sound(t, text)
		}
	}
	sound(t, base+fmt.Sprintf(tables["room"], "Test")) // the shop's own name
	sound(t, strings.Replace(base, `"Test"`, `"Wood/metal shop"`, 1))
}

// TestPortNames: machines may have ports of the same names.
func TestPortNames(t *testing.T) {
	s := sound(t, oneMachine("One")+"port = { name = \"hood\" }\n[[machine]]\nname = \"Two\"\nkind = \"planer\"\nport = { name = \"hood\" }\n")
	if s.Machines[0].Ports[0].Full() != "One/hood" || s.Machines[1].Ports[0].Full() != "Two/hood" {
		t.Error(s.Machines[0].Ports[0].Full(), s.Machines[1].Ports[0].Full())
	}
}

// TestThreeFormsOfPorts: one table in braces, a list of them, and headers.
func TestThreeFormsOfPorts(t *testing.T) {
	for _, c := range []struct {
		text string
		want string
	}{
		{`port = { size = "5 in" }`, "hood"},
		{`port = { name = "top", size = "5 in" }`, "top"},
		{`port = [{ name = "top", size = "5 in" }]`, "top"},
		{`port = [{ name = "top", size = "5 in" }, { name = "low", size = "4 in" }]`, "top low"},
		{"[machine.port]\nname = \"top\"\nsize = \"5 in\"", "top"},
		{"[[machine.port]]\nsize = \"5 in\"", "hood"},
		{"[[machine.port]]\nname = \"top\"\nsize = \"5 in\"\n[[machine.port]]\nname = \"low\"\nsize = \"4 in\"", "top low"},
		{"", "hood"},
	} {
		m := sound(t, oneMachine("Planer")+c.text+"\n").Machines[0]
		var names []string
		for _, p := range m.Ports {
			names = append(names, p.Name)
		}
		if got := strings.Join(names, " "); got != c.want {
			t.Errorf("%s: ports %s, want %s", c.text, got, c.want)
		}
	}
}
