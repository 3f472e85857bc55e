package checks_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// paperIn finds a paper of the whole shop with changes.
func paperIn(t *testing.T, p *plan.Plan, id string) checks.Paper {
	t.Helper()
	list := checks.Papers(p)
	i := slices.IndexFunc(list, func(paper checks.Paper) bool { return paper.ID == id })
	if i < 0 {
		t.Fatalf("no paper is called %s", id)
	}
	return list[i]
}

// document adds a document to the whole shop.
func document(text string) change {
	return change{"[[stop]]", "[[document]]\n" + text + "\n[[stop]]"}
}

// without takes a paper of the whole shop away.
func without(kind string) change {
	return change{"[[document]]\nkind = \"" + kind + "\"\nheld = true\n", ""}
}

// instead puts another document in its place.
func instead(kind, text string) change {
	return change{without(kind).old, "[[document]]\n" + text + "\n"}
}

// recorded is the whole shop with changes and records.
func recorded(t *testing.T, records []*record.Record, changes ...change) *plan.Plan {
	t.Helper()
	return plan.Make(planOf(t, changes...).Shop, records, entry.Date{})
}

func TestPapers(t *testing.T) {
	home := change{`setting = "school"`, `setting = "home"`}
	for _, c := range []struct {
		name    string
		changes []change
		paper   string
		state   checks.PaperState
		sheet   string
		from    checks.Person
	}{
		{"the book prints the drawing", nil, "drawing", checks.InThisBook, "plan", ""},
		{"not without every route", []change{{`route = [[20, 5, 2], [20, 5, 8], [20, 10, 8]]`, `length = "12 ft"`}}, "drawing", checks.Missing, "", ""},
		{"not without every place", []change{{"kind = \"lathe\"\nat = [20, 5]\n", "kind = \"lathe\"\nroom = \"Hall\"\n"}}, "drawing", checks.Missing, "", ""},
		{"held before printed", []change{document("kind = \"as-built drawing\"\nheld = true")}, "drawing", checks.Held, "plan", ""},
		{"missing", []change{without("collector's manual")}, "manual", checks.Missing, "", checks.Maker},
		{"held, in capitals", []change{instead("collector's manual", "kind = \"Collector MANUAL\"\nheld = true")}, "manual", checks.Held, "", checks.Maker},
		{"told of and not in hand", []change{instead("collector's manual", "kind = \"manual\"\nheld = false")}, "manual", checks.Missing, "", checks.Maker},
		{"told of, and not whether it is in hand", []change{instead("collector's manual", `kind = "manual"`)}, "manual", checks.Missing, "", checks.Maker},
		{"the longer word counts", []change{instead("collector's manual", "kind = \"training manual, signed lesson\"\nheld = true")}, "manual", checks.Missing, "", checks.Maker},
		{"one of two in hand", []change{document("kind = \"new manual\"\nheld = false")}, "manual", checks.Held, "", checks.Maker},
		{"a school is asked for training", []change{without("training list")}, "training", checks.Missing, "", ""},
		{"a home is not", []change{home}, "training", checks.NotAsked, "", ""},
		{"a home with somebody employed is", []change{home, without("training list"), {`name = "Whole"`, "name = \"Whole\"\nemployees = 1"}}, "training", checks.Missing, "", ""},
		{"nor is a shop let off that gives no setting", []change{without("training list"), {"setting = \"school\"\n", ""}}, "training", checks.Missing, "", ""},
		{"a home is asked for the manual", []change{home, without("collector's manual")}, "manual", checks.Missing, "", checks.Maker},
		{"the filter's papers where the air comes back", append(filterOf("400 sq ft"), without("filter certificate")), "filter-papers", checks.Missing, "", checks.Maker},
		{"not where it goes outside", nil, "filter-papers", checks.NotAsked, "", checks.Maker},
		{"no lockout where nothing starts by itself", nil, "lockout", checks.NotAsked, "", ""},
		{"no change yet", []change{{"[[revision]]\nmark = \"A\"\ndate = 2026-09-07\nnote = \"First issue\"\n", ""}}, "changes", checks.Missing, "", ""},
		{"a revision is a change", nil, "changes", checks.InThisBook, "records", ""},
		{"extinguishers without a date", []change{without("extinguisher tags"), {"[[stop]]", "[[extinguisher]]\nat = [1, 2]\n[[stop]]"}}, "extinguishers", checks.Missing, "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			if p := paperIn(t, planOf(t, c.changes...), c.paper); p.State != c.state || p.Sheet != c.sheet || p.From != c.from {
				t.Errorf("%+v, want %s, sheet %q, from %q", p, c.state, c.sheet, c.from)
			}
		})
	}
	for serviced, want := range map[string]checks.PaperState{"serviced = 2026-03-02": checks.InThisBook, "": checks.Missing} {
		hung := change{"[[collector]]", "[[extinguisher]]\nat = [1, 2]\n" + serviced + "\n[[collector]]"}
		if p := paperIn(t, bare(t, hung), "extinguishers"); p.State != want {
			t.Errorf("an extinguisher, %q: %+v", serviced, p)
		}
	}
	if p := paperIn(t, drivenPlan(t, without("lockout procedure")), "lockout"); p.State != checks.Missing {
		t.Errorf("gates that move by themselves: %+v", p)
	}
	if p := paperIn(t, drivenPlan(t, change{`rules = "us"`, `rules = "uk"`}), "lockout"); p.State != checks.NotAsked {
		t.Errorf("a text of other rules: %+v", p)
	}
	p := paperIn(t, planOf(t, instead("collector's manual", "kind = \"manual\"\nheld = true\ndate = 2026-10-02\nby = \"the maker\"")), "manual")
	if p.Document == nil || p.Document.Date.String() != "2026-10-02" || p.Document.By.V != "the maker" {
		t.Errorf("the document is not told of: %+v", p.Document)
	}
}

// A paper that records make is in the book once there is such a record.
func TestPapersOfRecords(t *testing.T) {
	day := entry.Date{Year: 2026, Month: 11, Day: 24}
	bare := []change{without("commissioning report"), without("log book"), without("bonding record"), without("pitot readings"),
		{"[[document]]\nkind = \"thorough examination\"\nheld = true\ndate = 2026-08-20\n", ""}, {"[[revision]]\nmark = \"A\"\ndate = 2026-09-07\nnote = \"First issue\"\n", ""}}
	for kind, paper := range map[string]string{"commissioning": "commissioning-report", "service": "log-book", "inspection": "examination", "change": "changes"} {
		if p := paperIn(t, recorded(t, []*record.Record{{Kind: kind, Date: day}}, bare...), paper); p.State != checks.InThisBook || p.Sheet != "records" {
			t.Errorf("%s: %+v", kind, p)
		}
		if p := paperIn(t, recorded(t, []*record.Record{{Kind: "incident", Date: day}}, bare...), paper); p.State != checks.Missing {
			t.Errorf("%s without a record of it: %+v", kind, p)
		}
	}
	for of, want := range map[string]checks.PaperState{"resistance": checks.InThisBook, "flow": checks.Missing} {
		read := []*record.Record{{Kind: "inspection", Date: day, Readings: []record.Reading{{Of: of}}}}
		if p := paperIn(t, recorded(t, read, bare...), "bonding-record"); p.State != want {
			t.Errorf("a reading of %s: %+v", of, p)
		}
		if p := paperIn(t, recorded(t, read, bare...), "readings"); p.State != checks.InThisBook {
			t.Errorf("a reading of %s: %+v", of, p)
		}
	}
}

// Every row can be asked for somewhere, names sheets that the book has, words in
// lower case, persons, and texts that are known.
func TestPaperRows(t *testing.T) {
	sheets := textOfSheets(t)
	settings := shop.Words("setting")
	ids := map[string]bool{}
	for _, paper := range checks.Papers(planOf(t)) {
		if ids[paper.ID] {
			t.Errorf("%s stands twice", paper.ID)
		}
		ids[paper.ID] = true
		if paper.From != "" && !slices.Contains(checks.Persons, paper.From) {
			t.Errorf("%s comes from %q", paper.ID, paper.From)
		}
		if paper.Check != "" && checks.Find(paper.Check) == nil {
			t.Errorf("%s is left to %s, which is no check", paper.ID, paper.Check)
		}
		if paper.Sheet != "" && !strings.Contains(sheets, `"`+paper.Sheet+`.html"`) {
			t.Errorf("%s is on %s, which is no sheet", paper.ID, paper.Sheet)
		}
	}
	data, err := os.ReadFile(filepath.Join("papers.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range regexp.MustCompile(`(?m)^([a-z-]+),"?([^"\n]*?)"?,"([a-z, ]+)",`).FindAllStringSubmatch(string(data), -1) {
		delete(ids, m[1])
		if m[2] != strings.ToLower(m[2]) {
			t.Errorf("%s: words are held against lower case", m[1])
		}
		for _, setting := range strings.Split(m[3], ", ") {
			if !slices.ContainsFunc(settings, func(w shop.Word) bool { return w.Word == setting }) {
				t.Errorf("%s is asked for in %q, which is no setting", m[1], setting)
			}
		}
	}
	if len(ids) > 0 {
		t.Errorf("rows that were not read: %v", ids)
	}
	for _, word := range []string{"commissioning", "inspection", "service", "change", "letter"} {
		if !slices.ContainsFunc(record.Words("record kind"), func(w record.Word) bool { return w.Word == word }) {
			t.Errorf("%s is no kind of record", word)
		}
	}
}
