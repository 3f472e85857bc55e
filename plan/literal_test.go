package plan_test

import (
	"encoding/csv"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// What the plan tells people stands in rows: the pages word it from a typed
// reason or the name of a row, and the plain English of the terminal stands in
// the data file of its package. In the code of the plan a literal of three
// words or more is a fault's, or testdata/literals.csv says what it is for.
func TestNoSentenceInThePlan(t *testing.T) {
	may, names := readLiterals(t), rowNames(t)
	used := make([]bool, len(may))
	files := planFiles(t)
	seen := 0
	for _, path := range files {
		found, literals, err := sentences(path, nil)
		if err != nil {
			t.Fatal(err)
		}
		seen += literals
		for _, f := range found {
			if slices.ContainsFunc(names, namesLike(f.text).MatchString) {
				continue
			}
			row := slices.IndexFunc(may, func(m allowedLiteral) bool { return m.allows(path, f.text) })
			if row < 0 {
				t.Errorf("%s: %q; put it into a row, and let the pages word it", f.at, f.text)
				continue
			}
			used[row] = true
		}
	}
	for i, m := range may {
		if !used[i] {
			t.Errorf("testdata/literals.csv: nothing is left of %s, %q", m.files, m.text)
		}
	}
	if len(files) < 150 || seen < 1500 {
		t.Errorf("only %d files with %d literals were looked at", len(files), seen)
	}
}

// The rule itself: what it has to catch, and what it has to let pass.
func TestRuleOfSentences(t *testing.T) {
	for code, want := range map[string]string{
		`r.Why = "no duct serves it"`:                                             "no duct serves it",
		`r.Why = "the size of " + name + " is open"`:                              "the size of … is open",
		`r.Why = "no " + name + " serves it"`:                                     "no … serves it",
		`return Expected{Why: "say which use ran"}`:                               "say which use ran",
		`table := MustTable(data, "air", "wye", "converging junction, by angle")`: "converging junction, by angle",
		`text := fmt.Sprintf("%s has air", name)`:                                 "",
		`text := fmt.Sprintf("%s has no air left", name)`:                         "%s has no air left",
		`const most = "no more than four"`:                                        "no more than four",
		"text := `it stands there`":                                               "it stands there",

		`w := "returns to"`:                                       "",
		`w := name + ": " + why`:                                  "",
		`panic("source: " + file + " has no row " + name)`:        "",
		`err := fmt.Errorf("%s: no column of that name", file)`:   "",
		`s.wrong(node, "a name in quotes", "write it in quotes")`: "",
		`p := entry.Problem{Do: "take it out here"}`:              "",
		`switch senses { case "a very long word": }`:              "",
		`ok := senses == "a very long word"`:                      "",
		`p.Do += "; or add a revision"`:                           "",
	} {
		found, _, err := sentences("sample.go", "package sample\nfunc f() {\n"+code+"\n}")
		if err != nil {
			t.Fatalf("%s: %v", code, err)
		}
		got := ""
		for _, f := range found {
			got += f.text
		}
		if got != want {
			t.Errorf("%s: caught %q, want %q", code, got, want)
		}
	}
	if names := rowNames(t); !slices.ContainsFunc(names, namesLike("sea level pressure").MatchString) || !slices.Contains(names, "returns to room") || slices.ContainsFunc(names, namesLike("no duct serves it").MatchString) {
		t.Error("the names of rows are not as they were")
	}
	m := allowedLiteral{files: "shop/read*.go", text: "any room of the file"}
	if !m.allows("shop/read_room.go", "any room of the file") || m.allows("shop/tables.go", "any room of the file") || m.allows("shop/read_room.go", "any room") {
		t.Error("a row of the list allows what it should not, or not what it should")
	}
}

// Every reason is given by some code of the plan.
func TestReasonsAreGiven(t *testing.T) {
	code := ""
	for _, path := range planFiles(t) {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		code += string(text)
	}
	for _, name := range source.Reasons() {
		if !given(code, name) {
			t.Errorf("nothing gives the reason %s: take it out of plan/source/reasons.csv", name)
		}
	}
	if given(code, "no-weather") {
		t.Error("everything is found in the code")
	}
}

// given reports whether code gives a reason of a name.
func given(code, name string) bool {
	return strings.Contains(code, "Because("+strconv.Quote(name)) || strings.Contains(code, "Causing("+strconv.Quote(name)) || strings.Contains(code, "because("+strconv.Quote(name))
}

// found is a text in the code, with its place.
type found struct{ at, text string }

// sentences lists the texts of three words or more in a Go file that are no
// fault's, and counts its literals; where no source is given the file is read.
func sentences(path string, text any) (list []found, literals int, err error) {
	set := token.NewFileSet()
	if text == nil {
		if text, err = os.ReadFile(path); err != nil {
			return nil, 0, err
		}
	}
	file, err := parser.ParseFile(set, path, text, 0)
	if err != nil {
		return nil, 0, err
	}
	var walk func(ast.Node) bool
	walk = func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			return !slices.Contains(faultCalls, lastName(n.Fun))
		case *ast.KeyValueExpr:
			return !slices.Contains(faultNames, lastName(n.Key))
		case *ast.AssignStmt:
			for i, right := range n.Rhs {
				if len(n.Lhs) != len(n.Rhs) || !slices.Contains(faultNames, lastName(n.Lhs[i])) {
					ast.Inspect(right, walk)
				}
			}
			return false
		case *ast.ImportSpec, *ast.Field:
			return false
		case *ast.CaseClause: // what is compared with is no text
			for _, s := range n.Body {
				ast.Inspect(s, walk)
			}
			return false
		case ast.Expr:
			if said, count := saidBy(n); count > 0 {
				literals += count
				if len(word.FindAllString(verb.ReplaceAllString(said, "…"), -1)) >= 3 {
					list = append(list, found{set.Position(n.Pos()).String(), said})
				}
				return false
			}
			b, is := n.(*ast.BinaryExpr)
			return !is || b.Op != token.EQL && b.Op != token.NEQ
		}
		return true
	}
	ast.Inspect(file, walk)
	return list, literals, nil
}

// What tells of a fault, by the names of functions and of what holds it: of the
// program and its own data, and in the files that people write.
var (
	faultCalls = []string{"panic", "Errorf", "New", "wrong", "problem", "nearest", "str", "strOr", "items", "pointItems", "tables"}
	faultNames = []string{"Read", "Expected", "Do", "do", "what"}
)

// word is something with a letter in it between spaces.
var word = regexp.MustCompile(`(?:^| )[^\pL ]*\pL[^ ]*`)

// verb is a place of a format.
var verb = regexp.MustCompile(`%[a-z]`)

// saidBy is the text that an expression puts together from literals, with … for
// what it does not know, and how many literals there are.
func saidBy(e ast.Expr) (text string, literals int) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			if text, err := strconv.Unquote(e.Value); err == nil {
				return text, 1
			}
		}
	case *ast.BinaryExpr:
		if e.Op == token.ADD {
			left, some := saidBy(e.X)
			right, more := saidBy(e.Y)
			if some+more > 0 {
				return left + right, some + more
			}
		}
	case *ast.ParenExpr:
		return saidBy(e.X)
	}
	return "…", 0
}

// lastName is the last name of an expression.
func lastName(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	case *ast.IndexExpr:
		return lastName(e.X)
	}
	return ""
}

// planFiles are the files of the plan and its packages that are no tests.
func planFiles(t *testing.T) []string {
	t.Helper()
	var list []string
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == "testdata":
			return filepath.SkipDir
		case strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go"):
			list = append(list, filepath.ToSlash(path))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// rowNames are the names by which code asks for rows of the plan's data, the
// first cell of each, and the words of the shop file.
func rowNames(t *testing.T) []string {
	t.Helper()
	var list []string
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() && d.Name() == "testdata" || !strings.HasSuffix(path, ".csv") {
			if err == nil && d.IsDir() && d.Name() == "testdata" {
				return filepath.SkipDir
			}
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		reader := csv.NewReader(strings.NewReader(string(text)))
		reader.Comment, reader.FieldsPerRecord = '#', -1
		rows, err := reader.ReadAll()
		for _, r := range rows {
			list = append(list, r[0])
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, group := range shop.WordGroups() {
		for _, w := range shop.Words(group) {
			list = append(list, w.Word)
		}
	}
	return list
}

// namesLike matches the names that a text from the code can be.
func namesLike(text string) *regexp.Regexp {
	return regexp.MustCompile("^" + strings.ReplaceAll(regexp.QuoteMeta(text), "…", ".+") + "$")
}

// allowedLiteral is a row of the list: the files it is for and the text, or *
// for every text in them.
type allowedLiteral struct{ files, text string }

func (m allowedLiteral) allows(path, text string) bool {
	in, err := filepath.Match(m.files, path)
	return err == nil && in && (m.text == "*" || m.text == text)
}

func readLiterals(t *testing.T) []allowedLiteral {
	t.Helper()
	f, err := os.Open("testdata/literals.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []allowedLiteral
	for _, r := range rows[1:] {
		if r[2] == "" {
			t.Errorf("testdata/literals.csv does not say why %s, %q may stand", r[0], r[1])
		}
		list = append(list, allowedLiteral{r[0], r[1]})
	}
	return list
}
