package templates

import (
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/shop"
)

// narrative is the narrative of a shop file as a reader sees it, under its head.
func narrative(t *testing.T, text string) string {
	t.Helper()
	var out []string
	for _, p := range newBook(t, text).story() {
		out = append(out, string(p.Head)+":")
		for _, s := range p.Says {
			out = append(out, string(s))
		}
		out = append(out, "LACKS", string(p.LacksSay()))
	}
	return strings.Join(strings.Fields(markup.ReplaceAllString(strings.Join(out, " "), "")), " ")
}

// Each sentence of the narrative follows the file: it changes with its field,
// and without it the narrative says what is not given.
func TestStoryFollowsTheFile(t *testing.T) {
	school := string(content.Example())
	for _, c := range []struct{ line, to, says, said, lacks string }{
		{"setting = \"school\"\n", "setting = \"makerspace\"\n", "pupils are taught", "its members use", ""},
		{"setting = \"school\"\n", "", "is a shop in which pupils", "This is about Quillmark", "whether it is a home, a business, a school or a makerspace"},
		{"employees = 2\n", "employees = 1\n", "2 people are employed", "1 person is employed", ""},
		{"employees = 2\n", "", "2 people are employed", "", "how many people are employed"},
		{"pupils = 24\n", "", "24 pupils are taught", "", "how many pupils are taught"},
		{"people_at_machines = 3\n", "", "likely to run at once: 3", "", "how many machines are likely to run at once"},
		{"altitude = \"1250 ft\"\n", "", "lies 1250 ft above the sea", "", "its altitude"},
		{"kind = \"open-flue gas\"", "kind = \"wood stove\"", "Machine hall: open-flue gas", "Machine hall: wood stove", ""},
		{"height = \"11 ft\"\n", "", "1320 sq ft, 11 ft high", "Machine hall (1320 sq ft)", "how high Machine hall is"},
		{"rating = \"1 h\"\ndivides = \"fire area from fire area\"\n", "divides = \"fire area from fire area\"\n", "fire area from fire area and is rated 1 h", "fire area from fire area.", "how the wall from (44, 0) to (44, 30) is rated"},
		{"exhaust = \"outside\"", "exhaust = \"returns to room\"\nreturns_to = \"Bench room\"", "Its air leaves the building", "comes back into Bench room", ""},
		{"exhaust = \"outside\"", "", "Its air leaves the building", "", "where its air goes"},
		{"after_power_cut = \"waits for a person\"\n", "", "the control waits for a person", "", "what the control does after a power cut"},
	} {
		if strings.Count(school, c.line) == 0 {
			t.Errorf("the example has no line %q", c.line)
			continue
		}
		before, after := narrative(t, school), narrative(t, strings.Replace(school, c.line, c.to, 1))
		if !strings.Contains(before, c.says) {
			t.Errorf("%q: the example does not say %q", c.line, c.says)
		}
		if strings.Count(after, c.says) >= strings.Count(before, c.says) {
			t.Errorf("%q: still says %q", c.line, c.says)
		}
		if !strings.Contains(after, c.said) || !strings.Contains(after, c.lacks) {
			t.Errorf("%q: does not say %q, or that %q is missing", c.line, c.said, c.lacks)
		}
		if c.lacks != "" && strings.Count(after, c.lacks) <= strings.Count(before, c.lacks) {
			t.Errorf("%q: the example lacks %q already", c.line, c.lacks)
		}
	}
}

// A shop without gates, control, collectors' filters or records says so, and a
// default never stands for a fact.
func TestStoryOfASmallShop(t *testing.T) {
	text := narrative(t, string(content.Small()))
	for _, want := range []string{"Nothing has been measured yet", "any extinguisher", "any stop for the whole shop", "No commissioning, service or inspection is on record", "which heaters and stoves there are"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
	b := newBook(t, string(content.Small()))
	for _, m := range b.Plan.Shop.Machines {
		if !m.MakesStated && !strings.Contains(text, "what is worked on") {
			t.Errorf("what %s makes is a default, and the narrative does not say so", m.Name)
		}
	}
}

// Every word of the shop file that the narrative has a sentence for is one,
// and every such word has a sentence.
func TestStoryKnowsTheWords(t *testing.T) {
	for group, keys := range map[string]map[string]string{"setting": settings, "makes": worked, "rules": packNames} {
		words := map[string]bool{}
		for _, word := range shop.Words(group) {
			w := word.Word
			words[w] = true
			if keys[w] == "" {
				t.Errorf("%s: nothing is said of %q", group, w)
			}
		}
		for w := range keys {
			if !words[w] {
				t.Errorf("%s: %q is no word of the file", group, w)
			}
		}
	}
}

// What was measured counts, and names its sheet.
func TestStoryCountsReadings(t *testing.T) {
	b := proofBook(t, nil)
	_, words := b.sheet(t, packetPath)
	if strings.Contains(words, "Nothing has been measured yet") || !strings.Contains(words, "readings are on record") && !strings.Contains(words, "reading is on record") {
		t.Error("the readings of the records are not told")
	}
	inOrder(t, "the upkeep", words, "On record:", "commissioning ( 1 )", "service ( 1 )", "letter ( 1 )", "The last is of 2026-11-25")
}
