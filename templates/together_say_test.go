package templates

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/duct"
)

// Every pair that fails stands in one list of the sheet, with what is wrong:
// a port, a stretch or the shared end.
func TestPairsThatFallShortSayWhy(t *testing.T) {
	b := roomsBook(t)
	x := b.Plan.Together()
	v := b.togetherView(x)
	rows := map[string][]string{}
	for _, list := range [][]togetherBroken{v.Relief, v.Short, v.Broken} {
		for _, row := range list {
			if rows[row.Set] != nil {
				t.Errorf("%s stands twice", row.Set)
			}
			rows[row.Set] = append(rows[row.Set], row.Why...)
		}
	}
	if v.Unsaid != "" || v.Unshown != "" {
		t.Fatalf("the school has too many pairs: %q, %q", v.Unsaid, v.Unshown)
	}
	failing, starved := 0, 0
	for _, s := range x.All {
		if len(s.Machines) != 2 {
			continue
		}
		why, is := rows[setName(s)]
		if is == s.Works {
			t.Errorf("%s works: %v; stands among those that fail: %v", setName(s), s.Works, is)
		}
		if s.Works {
			continue
		}
		failing++
		said := strings.Join(why, "; ")
		for _, on := range s.On {
			if on.Port != nil && on.Filter == duct.ChangeOut {
				starved++
				if !strings.Contains(said, on.Port.Full()) {
					t.Errorf("%s: %s lacks air, and the sheet says %q", setName(s), on.Port.Full(), said)
				}
			}
			if on.Slowest != nil && on.Filter == duct.ChangeOut && !strings.Contains(said, on.Slowest.Name()) && !on.Hose {
				t.Errorf("%s: dust settles in %s, and the sheet says %q", setName(s), on.Slowest.Name(), said)
			}
		}
		if said == "" {
			t.Errorf("%s: nothing said", setName(s))
		}
	}
	if failing < 50 || starved < 10 {
		t.Errorf("%d pairs fail, %d lack air: too few to say anything", failing, starved)
	}
	if why := strings.Join(rows["Planer, Mitre saw"], "; "); !strings.Contains(why, "% of its need") {
		t.Errorf("planer and mitre saw: %q", why)
	}
}

// More pairs than the sheet holds are counted.
func TestPairsThatFallShortAreCapped(t *testing.T) {
	b := roomsBook(t)
	x := *b.Plan.Together()
	all := x.All
	for _, s := range all {
		if len(s.Machines) == 2 && !s.Works {
			for range 3 {
				x.All = append(slices.Clip(x.All), s)
			}
		}
	}
	var v togetherView
	b.shorts(&x, &v)
	if len(v.Short) != mostShort || !regexp.MustCompile(`^and [0-9]+ more: `).MatchString(v.Unsaid) {
		t.Errorf("%d pairs, and %q", len(v.Short), v.Unsaid)
	}
}

// A fan known by two claims: every set that works is thin, in the table, in its
// key and in the verdict; with its curve, and all else given, none is.
func TestTogetherThin(t *testing.T) {
	small := newBook(t, string(content.Small()))
	x := small.Plan.Together()
	v := small.togetherView(x)
	for i := range v.Rows {
		if cell := v.Rows[i].Cells[i]; cell.Sign != "≈" {
			t.Errorf("%s alone: %+v", v.Rows[i].Name, cell)
		}
	}
	verdict := small.togetherVerdict(x)
	if last := verdict.Words[len(verdict.Words)-1]; last != (Word{"thin", "thin"}) || !strings.Contains(verdict.Says, "two claims") {
		t.Errorf("%+v", verdict)
	}
	if len(v.Thin) == 0 || !strings.Contains(v.Thin[0], "two claims: 3 of 3 that work") || v.Key[0].Sign != "≈" {
		t.Errorf("why thin: %v, key %v", v.Thin, v.Key)
	}
	given := string(content.Small())
	for _, c := range [][2]string{
		{`claims = { flow = "1500 cfm", suction = "11 inwg" }`, `fan_curve = [["0 cfm", "14 inwg"], ["900 cfm", "12 inwg"], ["1500 cfm", "4 inwg"]]`},
		{`at = [14, 16] }`, `at = [14, 16], port = { size = "4 in", flow = "100 cfm" } }`},
		{`, at = [`, `, transport = "20 ft/s", at = [`},
		{`flow = "350 cfm"`, `flow = "100 cfm"`},
		{`flow = "500 cfm"`, `flow = "150 cfm"`},
	} {
		if !strings.Contains(given, c[0]) {
			t.Fatalf("the small shop has no %q", c[0])
		}
		given = strings.ReplaceAll(given, c[0], c[1])
	}
	sure := newBook(t, given)
	x = sure.Plan.Together()
	v, verdict = sure.togetherView(x), sure.togetherVerdict(x)
	if len(verdict.Words) != 1 || strings.Contains(verdict.Says, "thin") || len(v.Thin) > 0 || v.Rows[0].Cells[0].Sign != "✓" {
		t.Errorf("all given: %+v, %v, %+v", verdict, v.Thin, v.Rows[0].Cells[0])
	}
	some := *x
	doubted := *x.Largest[0]
	doubted.Thin = []duct.Doubt{duct.ByBand}
	some.Largest = append([]*duct.Set{x.Largest[0]}, &doubted)
	if verdict = sure.togetherVerdict(&some); len(verdict.Words) != 1 || !strings.Contains(verdict.Says, "1 of these are thin") {
		t.Errorf("one of two: %+v", verdict)
	}
}

// Whether pairs were tried, and who says how many run at once.
func TestTogetherSaysWhatWasTried(t *testing.T) {
	left := strings.Replace(string(content.Small()), "[shop]\n", "[shop]\n# nobody says\n", 1)
	one := strings.Replace(left, "# nobody says", "people_at_machines = 1", 1)
	two := strings.Replace(left, "# nobody says", "people_at_machines = 2", 1)
	for text, want := range map[string][3]string{
		left: {"does not say how many machines run at once", "no two work together", "Pairs were not tried"},
		one:  {"Pairs were not tried: the file says people_at_machines = 1", "Whether two work together was not tried", "no two work together"},
		two:  {"Reckoned with the filter clean and due for change", "no two work together", "people_at_machines"},
	} {
		b := newBook(t, text)
		_, words := b.sheet(t, "together.html")
		for _, say := range want[:2] {
			if !strings.Contains(words, say) {
				t.Errorf("%q is not on the sheet: %.1500s", say, words)
			}
		}
		if strings.Contains(words, want[2]) {
			t.Errorf("%q is on the sheet", want[2])
		}
	}
}

// A shop of one machine has no pairs, and no word of them.
func TestTogetherOfOneMachine(t *testing.T) {
	b := newBook(t, string(content.Small()))
	b.Plan.Shop.Machines = b.Plan.Shop.Machines[:1]
	x, err := b.Plan.Air.RunTogether(t.Context(), b.Plan.Shop, nil)
	if err != nil {
		t.Fatal(err)
	}
	verdict, notes := b.togetherVerdict(x), strings.Join(b.togetherNotes(x), " ")
	if verdict.Words[0].Text != "works alone" || strings.Contains(verdict.Says+verdict.Do+notes, "two work") || strings.Contains(notes, "people") {
		t.Errorf("%+v; %s", verdict, notes)
	}
}

// A filter of which nothing is known is said so, never clean or due for change.
func TestTogetherFilterNotGiven(t *testing.T) {
	filter := "filter = { clean = \"0.4 inwg\", change = \"2 inwg\", at = \"800 cfm\" }\n"
	text := strings.Replace(string(content.Small()), filter, "", 1)
	for text, open := range map[string]bool{text: true, strings.Replace(text, "exhaust = \"returns to room\"\nreturns_to = \"Garage\"", "exhaust = \"outside\"", 1): false} {
		b := newBook(t, text)
		_, words := b.sheet(t, "together.html")
		if strings.Contains(words, "filter clean") || strings.Contains(words, "due for change") {
			t.Errorf("a filter's state is on the sheet: %s", words)
		}
		for _, say := range []string{"The pressure of the filter of Collector is not given", "the filter's pressure not given"} {
			if strings.Contains(words, say) != open {
				t.Errorf("filter open %v; %q on the sheet: %v", open, say, !open)
			}
		}
		for _, s := range b.Plan.Together().All {
			if s.Works && slices.Contains(s.Thin, duct.ByFilter) != open {
				t.Errorf("%s: thin by %v", setName(s), s.Thin)
			}
		}
	}
}

// A set over two collectors names the one that each gate helps on; a set on one
// does not.
func TestHelpsNamesTheCollector(t *testing.T) {
	b := roomsBook(t)
	several, single := 0, 0
	for _, s := range b.Plan.Together().All {
		helps := b.helps(s)
		for i, r := range s.Relief {
			if i >= len(helps) {
				break
			}
			named := strings.HasPrefix(helps[i], r.Collector.Name+": ")
			if s.Stands() != "dust" && s.Stands() != "relief" {
				continue
			}
			if named != s.Several() {
				t.Errorf("%s: %q", setName(s), helps[i])
			}
			if s.Several() {
				several++
			} else {
				single++
			}
		}
	}
	if several == 0 || single == 0 {
		t.Errorf("%d and %d", several, single)
	}
}

// A machine without a duct is said so, in its pairs too; no port of it gets a
// share of its need.
func TestTogetherNamesBarePorts(t *testing.T) {
	b := newBook(t, strings.Replace(string(content.Small()), `serves = ["Bandsaw"],`, "", 1))
	x := b.Plan.Together()
	for _, s := range x.All {
		why, bare := strings.Join(b.whyBroken(s), "; "), strings.Contains(setName(s), "Bandsaw")
		if strings.Contains(why, "no duct serves Bandsaw") != bare || strings.Contains(why, "0 % of its need") || bare && s.Sign() != "unserved" {
			t.Errorf("%s: %s", setName(s), why)
		}
	}
	var v cardView
	if b.cardWith(&v, b.Plan.Shop.Machines[0]); strings.Contains(v.With, "Bandsaw") {
		t.Errorf("a machine that no duct serves takes no air: %q", v.With)
	}
}
