package book_test

import (
	"os"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/templates/book"
)

const proofFolder = "../../cmd/dustbook/testdata/proof"

func proofPlan(t testing.TB, records []*record.Record) *plan.Plan {
	t.Helper()
	data, err := os.ReadFile(proofFolder + "/shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems := shop.Read("shop.toml", data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return plan.Make(s, records, entry.Date{})
}

func makeBook(t testing.TB, p *plan.Plan, workers int) map[string][]byte {
	t.Helper()
	files, err := book.Make(p, checks.Run(p), nil, workers)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// A book with records holds together, and is the same bytes however many
// workers make it.
func TestBookWithRecords(t *testing.T) {
	records, problems := record.ReadFolder(os.DirFS(proofFolder + "/records"))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := proofPlan(t, records)
	files := makeBook(t, p, 1)
	for path, data := range files {
		if strings.HasSuffix(path, ".html") {
			checkPage(t, path, data)
		}
	}
	for _, path := range []string{"commissioning.html", "commissioning-readings.html", "commissioning-controls.html", "records.html"} {
		if files[path] == nil {
			t.Errorf("no %s", path)
		}
	}
	if sums(files) != sums(makeBook(t, p, 3)) {
		t.Error("with more workers the book differs")
	}
}

// Whatever a record says appears as text and does nothing.
func TestHostileRecords(t *testing.T) {
	for _, text := range []string{`<script>alert(1)</script>`, `"onload="x`, `{{.}}`, "a\u202eevil", `<img src=x>`, `&amp;`} {
		m, _ := record.FindMeasure("open stop")
		q, err := m.Read(text)
		if err != nil {
			t.Fatal(err)
		}
		day := entry.Date{Year: 2026, Month: 11, Day: 24}
		records := []*record.Record{
			{File: "2026-11-24-service-1.toml", Kind: "service", Date: day, Role: text, Note: text,
				Readings: []record.Reading{{Of: "open stop", At: "Saw gate", Value: q, Expected: q, With: text, Use: text}, {Of: "open stop", At: text, Value: q}}},
			{File: "2026-11-24-letter-1.toml", Kind: "letter", Date: day,
				Items: []record.Item{{Asks: text, Rule: text, Gap: text, Evidence: text, Answered: record.Answer{Text: text}}}},
		}
		files := makeBook(t, proofPlan(t, records), 2)
		checkHostile(t, text, "records.html", files["records.html"])
		if n := strings.Count(html.UnescapeString(string(files["records.html"])), text); n < 10 {
			t.Errorf("%q stands %d times", text, n)
		}
	}
}
