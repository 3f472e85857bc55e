package templates

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// notYet are files that still hold texts of their own.
var notYet = []string{}

// codeFolders are the packages that make pages.
var codeFolders = []string{".", "drawing"}

// What a page shows stands as a row of content/words: no text literal of the
// code of the sheets and drawings reads as a text.
func TestNoSentenceInCode(t *testing.T) {
	var looked []string
	for _, folder := range codeFolders {
		files, err := filepath.Glob(filepath.Join(folder, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			looked = append(looked, name)
			found, err := spoken(name, nil)
			if err != nil {
				t.Fatal(err)
			}
			judge(t, name, found)
		}
	}
	if len(looked) < 60 {
		t.Errorf("only %d files were looked at", len(looked))
	}
	allThere(t, ".go", looked)
}

// allThere reports files of a kind that are on the list notYet and no longer
// there.
func allThere(t *testing.T, kind string, looked []string) {
	t.Helper()
	for _, name := range notYet {
		if strings.HasSuffix(name, kind) && !slices.Contains(looked, name) {
			t.Errorf("%s is gone: take it off the list notYet", name)
		}
	}
}

// judge holds what was found in a file against the list of those that are not
// done.
func judge(t *testing.T, name string, found []string) {
	t.Helper()
	waits := slices.Contains(notYet, name)
	if waits && len(found) == 0 {
		t.Errorf("%s holds no text any more: take it off the list notYet", name)
	}
	if waits {
		return
	}
	for _, f := range found {
		t.Errorf("%s; make it a row of content/words", f)
	}
}

// spoken lists the text literals of a Go file that a reader could see; where
// no source is given the file is read.
func spoken(name string, source any) ([]string, error) {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, name, source, 0)
	if err != nil {
		return nil, err
	}
	var found []string
	var above []ast.Node
	ast.Inspect(file, func(n ast.Node) bool {
		if n == nil {
			above = above[:len(above)-1]
			return true
		}
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
			text, err := strconv.Unquote(l.Value)
			if err == nil && (reads(text) || lower.MatchString(text) && shownAt(l, above)) && !hidden(l, text, above) {
				found = append(found, fmt.Sprintf("%s: %q", set.Position(l.Pos()), text))
			}
		}
		above = append(above, n)
		return true
	})
	return found, nil
}

var (
	inTags   = regexp.MustCompile(`<[^>]*>?|[\w:-]+="[^"]*"?|^["']? */?>`)
	forEyes  = regexp.MustCompile(`\b(aria-label|title|alt|placeholder)="[^"]*\pL\pL`)
	sentence = regexp.MustCompile(`\pL[,;:.!?]? +\pL|^\p{Lu}\p{L}+|^[,;:.!?]? +\pL\pL|\pL\pL[,;:.!?]* $|\pL\pL[.!?:]$`)
	lower    = regexp.MustCompile(`^\p{Ll}{2,}$`)
	fileName = regexp.MustCompile(`^[\w*-]*\.(html|csv|css|svg|md|toml|ics|js|json)$`)
	address  = regexp.MustCompile(`^(https?|data|check|mailto):`)
)

// reads reports whether a text reads as one for people: words with a space
// between them, a word with a capital, a word with a space or the end of a
// sentence beside it. Markup is left out.
func reads(text string) bool {
	if fileName.MatchString(text) || address.MatchString(text) {
		return false
	}
	return forEyes.MatchString(text) || sentence.MatchString(inTags.ReplaceAllString(text, ""))
}

// shownFields are fields of the sheets that a page shows.
var shownFields = []string{"Title", "Lede", "Says", "Do", "Means", "Text", "Why", "Whom", "Extra", "Worst", "Comes", "About", "Name"}

// shownAt reports whether a literal is where a single word is shown: the text
// of a state, or a field that a page shows.
func shownAt(l *ast.BasicLit, above []ast.Node) bool {
	switch up := above[len(above)-1].(type) {
	case *ast.CompositeLit:
		return named(up.Type) == "Word" && len(up.Elts) == 2 && up.Elts[1] == l || up.Type == nil && slices.ContainsFunc(above, wordList) && len(up.Elts) == 2 && up.Elts[1] == l
	case *ast.KeyValueExpr:
		return up.Value == l && slices.Contains(shownFields, named(up.Key))
	case *ast.AssignStmt:
		at := slices.Index(up.Rhs, ast.Expr(l))
		return at >= 0 && at < len(up.Lhs) && slices.Contains(shownFields, named(up.Lhs[at]))
	}
	return false
}

// wordList reports whether a node is a list of states.
func wordList(n ast.Node) bool {
	list, ok := n.(*ast.CompositeLit)
	if !ok {
		return false
	}
	of, ok := list.Type.(*ast.ArrayType)
	return ok && named(of.Elt) == "Word"
}

// named is the last name of an expression.
func named(n ast.Node) string {
	switch n := n.(type) {
	case *ast.Ident:
		return n.Name
	case *ast.SelectorExpr:
		return n.Sel.Name
	}
	return ""
}

// Functions whose literals no reader sees, by their names.
var (
	// faults of the program and of its own data, which the command line tells
	faults = []string{"panic", "Errorf", "New"}
	// what looks into a text
	looks = []string{"Cut", "CutPrefix", "CutSuffix", "Contains", "ContainsAny", "HasPrefix", "HasSuffix", "Split", "SplitN", "TrimPrefix", "TrimSuffix", "Index", "MustCompile"}
	// what takes the name of a thing, a row or a kind of thing
	namesOf = []string{"Text", "HTML", "Count", "countWith", "Markup", "Path", "controlPath", "Words", "MustRows", "Glob", "ReadFile"}
	// what writes markup
	writers = []string{"begin", "end", "attr", "leaf"}
)

// hidden reports whether a literal is one that no page shows.
func hidden(l *ast.BasicLit, text string, above []ast.Node) bool {
	if vocabulary()[text] || isKey(text) {
		return true
	}
	at := ast.Expr(l)
	for i := len(above) - 1; i >= 0; i-- {
		switch up := above[i].(type) {
		case *ast.ImportSpec, *ast.Field, *ast.IndexExpr, *ast.CaseClause:
			return !inBody(up, at)
		case *ast.BinaryExpr:
			if up.Op == token.EQL || up.Op == token.NEQ {
				return true
			}
		case *ast.CallExpr:
			return hiddenIn(up, at)
		case *ast.ParenExpr:
		default:
			return false
		}
		if e, ok := above[i].(ast.Expr); ok {
			at = e
		}
	}
	return false
}

// inBody reports whether an expression stands among the statements of a case.
func inBody(n ast.Node, e ast.Expr) bool {
	c, ok := n.(*ast.CaseClause)
	return ok && !slices.Contains(c.List, e)
}

// hiddenIn reports whether an argument of a call is one that no page shows.
func hiddenIn(call *ast.CallExpr, at ast.Expr) bool {
	name := named(call.Fun)
	place := slices.Index(call.Args, at)
	switch {
	case slices.Contains(faults, name), slices.Contains(looks, name):
		return true
	case slices.Contains(namesOf, name):
		return place == 0
	case slices.Contains(writers, name):
		if place == 0 {
			return true // the name of an element
		}
		before, ok := call.Args[place-1].(*ast.BasicLit)
		return ok && slices.Contains(silentAttributes, before.Value)
	}
	return false
}

// silentAttributes are those of elements whose values nobody reads.
var silentAttributes = []string{`"class"`, `"id"`, `"font-family"`, `"viewBox"`, `"d"`, `"points"`, `"aria-labelledby"`, `"transform"`}

// isKey reports whether a text is the key of a row, or the start of keys.
func isKey(text string) bool {
	for _, end := range []string{"", ".one", ".many"} {
		if known, _ := content.Has(text+end, content.English); known {
			return true
		}
	}
	return false
}

// vocabulary are the words of shop files and records, which code goes by.
func vocabulary() map[string]bool {
	all := map[string]bool{}
	for _, group := range shop.WordGroups() {
		for _, w := range shop.Words(group) {
			all[w.Word] = true
		}
	}
	for _, m := range record.Measures() {
		all[m.Word] = true
	}
	for _, r := range duct.ProofRows() {
		all[r.Text("figure")] = true
	}
	return all
}
