package checks_test

import (
	"go/ast"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// rowsOfChecks are the keys of the rows that the checks read, and of those
// beside them that the sheets of the checks read.
func rowsOfChecks() []string {
	var list []string
	for _, key := range content.Keys() {
		if strings.HasPrefix(key, "finding-") || strings.HasPrefix(key, "check.") {
			list = append(list, key)
		}
	}
	return list
}

// Every row is asked for: by the checks, or by the sheets that show them.
func TestEveryRowIsUsed(t *testing.T) {
	asked := map[string]bool{}
	for _, file := range sourceFiles(t) {
		for _, l := range literalsOf(file) {
			asked[l.text] = true
		}
	}
	for _, m := range quotedKey.FindAllStringSubmatch(textOfSheets(t), -1) {
		asked[m[1]] = true
	}
	for _, r := range checks.Rules() {
		if r.Kind != 0 {
			asked["finding-figure."+r.Figure] = true
		}
	}
	for _, paper := range checks.Papers(planOf(t)) {
		asked["finding-paper."+paper.ID] = true
	}
	for _, p := range checks.Persons {
		asked["finding-person."+string(p)] = true
	}
	rows := rowsOfChecks()
	for _, key := range rows {
		if !isAsked(key, asked) {
			t.Errorf("nothing asks for the row %s", key)
		}
	}
	if len(rows) < 300 {
		t.Errorf("only %d rows", len(rows))
	}
	few := map[string]bool{"finding-a.met": true, "finding-a.short": true}
	for key, want := range map[string]bool{"finding-a.met": true, "finding-a.short.one": true, "finding-a.short.many": true, "finding-a.short.few": false, "finding-a.me": false, "finding-a": false} {
		if isAsked(key, few) != want {
			t.Errorf("%s: asked for is %v, want %v", key, !want, want)
		}
	}
}

// quotedKey is a key in the source of a sheet.
var quotedKey = regexp.MustCompile(`"(check\.[a-z.-]+)"`)

// isAsked reports whether a row is asked for by its key, or as one of two for
// one and many.
func isAsked(key string, asked map[string]bool) bool {
	for _, end := range []string{"", ".one", ".many"} {
		if start, ends := strings.CutSuffix(key, end); ends && asked[start] {
			return true
		}
	}
	return false
}

// textOfSheets is the source of the sheets.
func textOfSheets(t *testing.T) string {
	t.Helper()
	var all strings.Builder
	for _, pattern := range []string{"../templates/*.go", "../templates/*.html"} {
		names, err := filepath.Glob(pattern)
		if err != nil || len(names) == 0 {
			t.Fatalf("no file %s: %v", pattern, err)
		}
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			all.Write(text)
		}
	}
	return all.String()
}

var place = regexp.MustCompile(`\{(\d)\}`)

// placesOf are the places of a row, each once, in order.
func placesOf(key string) []string {
	set := map[string]bool{}
	for _, m := range place.FindAllStringSubmatch(content.WordsIn(content.English).Text(key), -1) {
		set[m[1]] = true
	}
	return slices.Sorted(maps.Keys(set))
}

// A row that is asked for by its name has a place for each thing it is given,
// and no other.
func TestPlacesAreFilled(t *testing.T) {
	calls := 0
	for name, file := range sourceFiles(t) {
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			fun, ok := call.Fun.(*ast.Ident)
			if !ok || fun.Name != "say" && fun.Name != "sayOf" || call.Ellipsis.IsValid() {
				return true
			}
			at := map[string]int{"say": 0, "sayOf": 1}[fun.Name]
			lit, ok := call.Args[at].(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true // one of several keys, chosen before
			}
			key, _ := strconv.Unquote(lit.Value)
			keys := []string{key}
			if fun.Name == "sayOf" {
				keys = []string{key + ".one", key + ".many"}
			}
			var want []string
			for i := range call.Args[at+1:] {
				want = append(want, strconv.Itoa(i+1))
			}
			for _, key := range keys {
				calls++
				if got := placesOf(key); !slices.Equal(got, want) {
					t.Errorf("%s: %s has places %v and is given %v", name, key, got, want)
				}
			}
			return true
		})
	}
	if calls < 200 {
		t.Errorf("only %d calls were seen", calls)
	}
}

// forbidden are the words that no text of a check holds: whether a shop is
// within the law is not for the book to say.
var forbidden = regexp.MustCompile(`(?i)\b(compl(y|ies|iant|iance)|exempt(ed|ion)?|safe(ly|r|ty)?)\b`)

// Each row is a whole sentence, or names something in one; none claims what
// no check can know.
func TestRowsAreSentences(t *testing.T) {
	for _, key := range rowsOfChecks() {
		text := content.WordsIn(content.English).Text(key)
		if forbidden.MatchString(text) {
			t.Errorf("%s claims: %s", key, text)
		}
		if fault := faultOf(key, text); fault != "" {
			t.Errorf("%s %s: %q", key, fault, text)
		}
	}
	for text, want := range map[string]bool{"This is Compliant.": true, "Your shop is exempt": true, "It is safe to run.": true, "Stand safely aside": true, "It complies.": true,
		"Follow the safeguard's maker.": false, "A complete list.": false, "Give an example.": false} {
		if forbidden.MatchString(text) != want {
			t.Errorf("%q: claims is %v, want %v", text, !want, want)
		}
	}
	for _, c := range []struct{ key, text, fault string }{
		{"finding-x.met.says", "Every use crosses the curve.", ""},
		{"finding-x.met.says", "{1} runs.", ""},
		{"finding-x.met.says.many", "{1} run", "is no whole sentence"},
		{"finding-x.met.do", "open it.", "is no whole sentence"},
		{"finding-x.met.asks", "May it.", "is no question"},
		{"finding-x.met.asks", "May it?", ""},
		{"finding-x.use", "{1} ({2})", ""},
		{"finding-x.use", " of {1}", "has a blank at an end"},
		{"finding-problem.x.do", "take it out", ""},
	} {
		if got := faultOf(c.key, c.text); got != c.fault {
			t.Errorf("%s %q: fault %q, want %q", c.key, c.text, got, c.fault)
		}
	}
}

var wholeSentence = regexp.MustCompile(`(?s)^(\p{Lu}|\{\d\}).*[.?]$`)

// faultOf is what is wrong with the form of a row.
func faultOf(key, text string) string {
	form := strings.TrimSuffix(strings.TrimSuffix(key, ".one"), ".many")
	switch {
	case text != strings.TrimSpace(text):
		return "has a blank at an end"
	case strings.HasPrefix(key, "finding-problem."):
		return "" // parts of an error, not sentences
	case strings.HasSuffix(form, ".says") || strings.HasSuffix(form, ".do"):
		if !wholeSentence.MatchString(text) {
			return "is no whole sentence"
		}
	case strings.HasSuffix(form, ".asks") && !strings.HasSuffix(text, "?"):
		return "is no question"
	}
	return ""
}

// Figures reach a sentence through the scales of the units or as a count:
// no row holds one, but in an example of what to write, and no code of the
// checks prints one by itself.
func TestFiguresComeFromOutside(t *testing.T) {
	for _, key := range rowsOfChecks() {
		if bare := bareFigure(content.WordsIn(content.English).Text(key)); bare != "" {
			t.Errorf("%s holds the figure %s", key, bare)
		}
	}
	for text, want := range map[string]string{"within 3 m of it": "3", "{1} of {2} cfm": "", `size = "30 gal"`: "", "at least 26 gauge": "26", `write "4 in" or 5`: "5"} {
		if got := bareFigure(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	prints := regexp.MustCompile(`^(Sprint|Sprintf|Sprintln|Append|Appendf|FormatFloat|FormatInt|AppendFloat)$`)
	for name, file := range sourceFiles(t) {
		ast.Inspect(file, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok && prints.MatchString(s.Sel.Name) {
				t.Errorf("%s prints by %s", name, s.Sel.Name)
			}
			return true
		})
	}
}

var notBare = regexp.MustCompile(`"[^"]*"|\{\d\}`)

// bareFigure is the first figure of a text that is neither a place nor part of
// an example in quotation marks.
func bareFigure(text string) string {
	return regexp.MustCompile(`\d+`).FindString(notBare.ReplaceAllString(text, ""))
}

// What a check says it reads are fields of the shop file or of a record.
func TestNeedsAreFields(t *testing.T) {
	for _, c := range checks.All {
		if fault := faultOfNeeds(c.Needs); fault != "" {
			t.Errorf("%s needs %s, which is no field", c.ID, fault)
		}
	}
	for needs, want := range map[string]string{"duct.gauge or duct.wall, shop.rules": "", "duct.gage": "duct.gage", "appliance": "appliance", "shop.rules and duct.wall": "shop.rules and duct.wall"} {
		if got := faultOfNeeds(needs); got != want {
			t.Errorf("%q: fault %q, want %q", needs, got, want)
		}
	}
}

// faultOfNeeds is the first of the fields that does not exist.
func faultOfNeeds(needs string) string {
	for _, either := range strings.Split(needs, ", ") {
		for _, field := range strings.Split(either, " or ") {
			table, name, _ := strings.Cut(field, ".")
			if shop.FindRow(table, name) == nil && !ofRecord(table, name) {
				return field
			}
		}
	}
	return ""
}

// ofRecord reports whether a record file has a field.
func ofRecord(table, field string) bool {
	return slices.ContainsFunc(record.Rows(), func(r record.Row) bool { return r.Table == table && r.Field == field })
}

// Every text that a check asks by is a row of bases.csv whose document is
// known, and every row belongs to a check.
func TestBasesBelongToChecks(t *testing.T) {
	data, err := os.ReadFile("bases.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n")[1:] {
		if id, _, _ := strings.Cut(line, ","); checks.Find(id) == nil {
			t.Errorf("bases.csv names %q, which is no check", id)
		}
	}
}
