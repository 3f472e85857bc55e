package checks_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/shop"
)

// Whatever a reader can see stands in a row of content. In the code of the
// checks a literal with a letter in it is only for the program to read.
func TestNoTextInCode(t *testing.T) {
	seen := 0
	for name, file := range sourceFiles(t) {
		for _, l := range literalsOf(file) {
			seen++
			if !l.forProgram() {
				t.Errorf("%s: %q could be read by someone; make it a row of content/words/finding-….csv", name, l.text)
			}
		}
	}
	if seen < 300 {
		t.Errorf("only %d literals were seen", seen)
	}
}

// The rule itself: what it has to catch, and what it has to let pass.
func TestRuleOfLiterals(t *testing.T) {
	for _, c := range []struct {
		code   string
		caught string // empty where all may stand
	}{
		{`f.Says = "No duct serves it."`, "No duct serves it."},
		{`f.Says = name + " is not given."`, " is not given."},
		{`f.Says += " Nothing."`, " Nothing."},
		{`word := "stable"`, "stable"},
		{`list = append(list, "the duct's material")`, "the duct's material"},
		{`f := Finding{Do: "Nothing"}`, "Nothing"},
		{`f := Figure{Name: "shaft power", Unit: "W"}`, "shaft power"},
		{`b := source.Basis{Document: id, Clause: "duct clauses"}`, "duct clauses"},
		{`return "Add at.", true`, "Add at."},
		{`text := fmt.Sprintf("%s and %s", a, b)`, "%s and %s"},
		{`text := strings.Join(list, " and ")`, " and "},
		{"f.Do = `Add drive = \"hand\".`", `Add drive = "hand".`},
		{`settle := settledBy("open-flue", "that it was tested")`, "that it was tested"},
		{`text := say("finding-common.more", "many")`, "many"},
		{`key := "finding-common.no-such-row"`, "finding-common.no-such-row"},
		{`switch { case ok: f.Says = "Met." }`, "Met."},
		{`if a == b { f.Says = "Met." }`, "Met."},
		{`const most = "no more than four"`, "no more than four"},
		{`c := Check{ID: "open-flue", Name: "Open flue"}`, "Open flue"},

		{`f.Says = say("finding-common.more", number)`, ""},
		{`f.Says = sayOf(len(list), "finding-power-cut.comes-back", names)`, ""},
		{`key := "finding-common.accepted"`, ""},
		{`if c.Exhaust.V == "returns to room" || kind != "wood stove" { f.State = Met }`, ""},
		{`switch kind { case "open-flue gas", "wood stove": return true }`, ""},
		{`const Met State = "not met"`, ""},
		{`panic("checks: there is no row " + name)`, ""},
		{`err := fmt.Errorf("no such row: %w", fault)`, ""},
		{`c := Check{ID: "open-flue", Needs: "duct.gauge or duct.wall, shop.rules"}`, ""},
		{`f := Finding{Kind: "collector"}`, ""},
		{`f.Kind, f.State = "machine", Met`, ""},
		{`row := figure("open bag flow, US").Text("value")`, ""},
		{`steel := strings.Contains(d.Material, "steel")`, ""},
		{`value, basis, known := confirmed[unit.Flow](s, "open-bag-flow")`, ""},
		{"type row struct { Line int `json:\"line\"` }", ""},
		{`text := strings.Join(list, "; ") + " " + "(5.2)"`, ""},
	} {
		file, err := parser.ParseFile(token.NewFileSet(), "sample.go", "package sample\nfunc f() {\n"+c.code+"\n}", 0)
		if err != nil {
			t.Fatalf("%s: %v", c.code, err)
		}
		var caught []string
		for _, l := range literalsOf(file) {
			if !l.forProgram() {
				caught = append(caught, l.text)
			}
		}
		if c.caught == "" && len(caught) > 0 {
			t.Errorf("%s: caught %q", c.code, caught)
		}
		if c.caught != "" && !slices.Equal(caught, []string{c.caught}) {
			t.Errorf("%s: caught %q, want %q", c.code, caught, c.caught)
		}
	}
}

// What the code compares with is a word that the shop file can hold, or a field
// of it: a word
// that is misspelt would put a check out of work and nobody would see it.
func TestComparedWordsAreKnown(t *testing.T) {
	known := map[string]bool{}
	for _, group := range shop.WordGroups() {
		for _, w := range shop.Words(group) {
			known[w.Word] = true
		}
	}
	for _, k := range shop.Kinds() {
		known[k.Name], known[k.Waste] = true, true
	}
	seen := 0
	for name, file := range sourceFiles(t) {
		for _, l := range literalsOf(file) {
			if !letter.MatchString(l.text) || !l.compared() {
				continue
			}
			seen++
			if !known[l.text] && faultOfNeeds(l.text) != "" {
				t.Errorf("%s compares with %q, which no field of the shop file can hold", name, l.text)
			}
		}
	}
	if seen < 20 || known["returns to the room"] || !known["returns to room"] {
		t.Errorf("%d words were seen", seen)
	}
}

// compared reports whether a literal is held against a value.
func (l literal) compared() bool {
	switch n := l.around[len(l.around)-1].(type) {
	case *ast.BinaryExpr:
		return n.Op == token.EQL || n.Op == token.NEQ
	case *ast.CaseClause:
		return slices.ContainsFunc(n.List, func(e ast.Expr) bool { return e == l.node })
	}
	return false
}

// literal is one literal of a file with what stands around it, the outermost
// first.
type literal struct {
	text   string
	node   ast.Node
	around []ast.Node
}

// forProgram reports whether only the program reads a literal: it is compared
// with a word of the shop file, names a row, a field or a table, or stops the
// program.
func (l literal) forProgram() bool {
	if !letter.MatchString(l.text) || tableOfShop(l.text) || isRow(l.text) {
		return true
	}
	inner := l.node
	for _, outer := range slices.Backward(l.around) {
		switch n := outer.(type) {
		case *ast.CallExpr:
			return readByProgram(n, inner)
		case *ast.KeyValueExpr:
			field, ok := n.Key.(*ast.Ident)
			return ok && slices.Contains([]string{"ID", "Needs", "Compares", "Kind", "Unit", "Format"}, field.Name)
		case *ast.BinaryExpr:
			if n.Op == token.EQL || n.Op == token.NEQ {
				return true
			}
		case *ast.CaseClause:
			return slices.ContainsFunc(n.List, func(e ast.Expr) bool { return e == inner })
		case *ast.ValueSpec:
			return n.Type != nil // a word of a type of its own, such as a State
		case *ast.ImportSpec, *ast.Field:
			return true // a path, or the names of a field in JSON
		case ast.Stmt:
			return false
		}
		inner = outer
	}
	return false
}

var letter = regexp.MustCompile(`\pL`)

// readByProgram reports whether an argument of a call is a key.
func readByProgram(call *ast.CallExpr, argument ast.Node) bool {
	fun := call.Fun
	if generic, ok := fun.(*ast.IndexExpr); ok {
		fun = generic.X
	}
	name := ""
	switch f := fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
	}
	if slices.Contains([]string{"panic", "Errorf", "MustRows"}, name) {
		return true
	}
	place, keyed := map[string]int{"say": 0, "sayOf": 1, "Count": 0, "figure": 0, "words": 0, "basesOf": 0, "settledBy": 0, "confirmed": 1, "Contains": 1, "Text": 0, "Number": 0, "BasisOf": 0, "rulesOn": 1, "Glob": 1}[name]
	return keyed && place < len(call.Args) && call.Args[place] == argument
}

// tableOfShop reports whether a word is the name of a table of the shop file,
// which is what a finding's kind is.
func tableOfShop(word string) bool {
	return slices.ContainsFunc(shop.Tables(), func(t shop.Table) bool { return t.Name == word })
}

// isRow reports whether a word is the key of a row of the findings, or of two
// rows for one and many.
func isRow(word string) bool {
	if !strings.HasPrefix(word, "finding-") && !strings.HasPrefix(word, "check.") {
		return false
	}
	known, _ := content.Has(word, content.English)
	one, _ := content.Has(word+".one", content.English)
	many, _ := content.Has(word+".many", content.English)
	return known || one && many
}

// literalsOf lists the string literals of a file.
func literalsOf(file *ast.File) []literal {
	var list []literal
	var around []ast.Node
	ast.Inspect(file, func(n ast.Node) bool {
		if n == nil {
			around = around[:len(around)-1]
			return true
		}
		if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			text, err := strconv.Unquote(lit.Value)
			if err != nil {
				panic(err)
			}
			list = append(list, literal{text, n, slices.Clone(around)})
		}
		around = append(around, n)
		return true
	})
	return list
}

// sourceFiles are the files of this package that are no tests.
func sourceFiles(t *testing.T) map[string]*ast.File {
	t.Helper()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]*ast.File{}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, text, 0)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = file
	}
	if len(files) < 20 {
		t.Fatalf("only %d files were read", len(files))
	}
	return files
}
