package shop

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"dustbook/plan/entry"
)

// oneWord is advice that gives the text to write, or the first of several.
var oneWord = regexp.MustCompile(`^write (?:the unit: )?("[^"…]*"|true|false|[0-9][0-9.-]*)(?:,? (?:or )?".*)?$`)

// written is a value, a key or the name in a header at the start of a text.
var written = regexp.MustCompile(`^(?:"(?:[^"\\]|\\.)*"|[^\s,\]}=]+)`)

// TestAdviceFollowed does what each message says and reads again: the fault
// is gone.
func TestAdviceFollowed(t *testing.T) {
	base, followed := file(t, "testdata/base.toml"), 0
	for _, folder := range []string{"testdata/wrong", "testdata/several"} {
		for _, path := range editFiles(t, folder) {
			for _, c := range edits(t, path, base) {
				_, problems := Read("shop.toml", []byte(c.text))
				for _, p := range problems {
					text, ok := follow(c.text, p)
					if !ok {
						continue
					}
					followed++
					_, left := Read("shop.toml", []byte(text))
					for _, q := range left {
						if q.Place == p.Place {
							t.Errorf("%s: %v\nand then: %v", c.name, p, q)
						}
					}
				}
			}
		}
	}
	if followed < 60 {
		t.Errorf("%d pieces of advice followed", followed)
	}
}

// follow writes what a problem's advice says, if it says a text to write.
func follow(text string, p entry.Problem) (string, bool) {
	m := oneWord.FindStringSubmatch(p.Do)
	if m == nil {
		return "", false
	}
	lines := strings.Split(text, "\n")
	line := []rune(lines[p.Line-1])
	before, rest := string(line[:p.Column-1]), string(line[p.Column-1:])
	old, instead := written.FindString(rest), m[1]
	if !strings.HasPrefix(old, `"`) && strings.HasPrefix(instead, `"`) && (strings.HasPrefix(p.Read, "the key ") || strings.HasPrefix(p.Read, "[")) {
		instead = strings.Trim(instead, `"`) // a key or a header
	}
	if _, port, both := strings.Cut(old, "/"); both && !strings.Contains(instead, "/") {
		instead = strings.TrimSuffix(instead, `"`) + "/" + port
	}
	lines[p.Line-1] = before + instead + strings.TrimPrefix(rest, old)
	return strings.Join(lines, "\n"), true
}

// TestLikelyUnits: a bare number is answered with a unit of the shop's own
// system, feet or metres for what runs through the shop.
func TestLikelyUnits(t *testing.T) {
	head := "[[collector]]\nname = \"Fan\"\ninlet = \"8 in\"\nclaims = { flow = \"1600 cfm\", suction = \"11 inwg\" }\n"
	for _, c := range []struct{ text, us, metric string }{
		{head + "bin = 55", "55 gal", "55 L"},
		{head + "return_opening = 2", "2 sq ft", "2 m2"},
		{head + "wheel_inertia = 4", "4 lb ft2", "4 kg m2"},
		{head + "curve_density = 1.2", "1.2 lb/ft3", "1.2 kg/m3"},
		{head + "separator = { loss = 2, at = \"1000 cfm\" }", "2 inwg", "2 Pa"},
		{head + "separator = { loss = \"2 inwg\", at = 1000 }", "1000 cfm", "1000 m3/h"},
		{head + "bonded = 3", "3 ohm", "3 ohm"},
		{head + "run_up = 3", "3 s", "3 s"},
		{"[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\ntransport = 20", "20 fpm", "20 m/s"},
		{"[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\nport = { size = 100 }", "100 in", "100 mm"},
		{"[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\nmotor = { power = 3 }", "3 hp", "3 kW"},
		{"[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\namps = 17", "17 A", "17 A"},
		{"[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\nnoise = 92", "92 dBA", "92 dBA"},
		{"[[room]]\nname = \"Hall\"\noutline = [[0, 0], [9, 0], [9, 9]]\nheight = 3", "3 ft", "3 m"},
		{"[[chain]]\nname = \"Chain\"\nstops = []\ncable = 18", "18 AWG", "18 mm2"},
		{"[control]\nsupply = 24", "24 V", "24 V"},
		{"[shop.air]\ndensity = 1.2", "1.2 lb/ft3", "1.2 kg/m3"},
	} {
		for system, want := range map[string]string{"us": c.us, "metric": c.metric} {
			for _, quoted := range []bool{false, true} {
				text := fmt.Sprintf("[shop]\nname = \"One\"\nunits = %q\n%s\n", system, c.text)
				if quoted {
					number := regexp.MustCompile(` = ([0-9.]+)`).FindStringSubmatch(text)
					text = strings.Replace(text, " = "+number[1], " = \""+number[1]+"\"", 1)
				}
				said := refused(t, text)
				if !strings.HasSuffix(said, `do: write the unit: "`+want+`"`) || strings.Contains(said, "\n") {
					t.Errorf("%s, %s: %s", c.text, system, said)
				}
			}
		}
	}
}
