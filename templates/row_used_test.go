package templates

import (
	"encoding/csv"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"dustbook/content"
)

// Every row of content/words is asked for by some code, template or data row:
// by its key, by the key that a count adds its end to, or by the parts
// of its key.
func TestEveryTextIsUsed(t *testing.T) {
	said := saidAnywhere(t)
	for _, key := range content.Keys() {
		if !asked(key, said) {
			t.Errorf("nothing asks for %s: take its row out of content/words", key)
		}
	}
	if len(said) < 1000 {
		t.Errorf("only %d literals were found", len(said))
	}
}

// Every literal of the sheets and drawings that looks like the key of a row is
// one, or what all keys of some rows start with.
func TestEveryKeyHasAText(t *testing.T) {
	looked := 0
	for text := range saidIn(t, ".") {
		if !looksLikeKey(text) {
			continue
		}
		looked++
		if !isKey(text) && !startsKeys(text) {
			t.Errorf("%q has no row in content/words", text)
		}
	}
	if looked < 500 {
		t.Errorf("only %d keys were found", looked)
	}
}

// The far side of both.
func TestKeysAreAskedFor(t *testing.T) {
	said := map[string]bool{"plan.title": true, "gate.opens": true, "drawing.mark.": true, "floor": true, "use.": true, "verdict.": true, "fields": true, "-do": true, "corner.": true, "upper": true, "-left": true}
	for key, want := range map[string]bool{
		"plan.title": true, "gate.opens.one": true, "gate.opens.many": true, "drawing.mark.floor": true, "verdict.fields-do": true, "corner.upper-left": true,
		"plan.lede": false, "gate.opens": true, "drawing.mark.wall": false, "use.air": false, "verdict.fields-say": false, "verdict.-say": false, "floor.one": true,
	} {
		if asked(key, said) != want {
			t.Errorf("%s: asked for %v, want %v", key, !want, want)
		}
	}
	for text, want := range map[string]bool{
		"plan.title": true, "plan.tittle": true, "plan.": true, "plan.html": false, "hose.material": false, "Plan.title": false, "plan": false, "plan.html#room": false,
	} {
		if looksLikeKey(text) != want {
			t.Errorf("%q looks like a key: %v, want %v", text, !want, want)
		}
	}
	if isKey("plan.tittle") || startsKeys("plan.tittle") || startsKeys("plan.t") || !startsKeys("plan.") {
		t.Error("what starts keys is not as it was")
	}
}

// asked reports whether literals ask for a key.
func asked(key string, said map[string]bool) bool {
	for _, end := range []string{"", ".one", ".many"} {
		base, has := strings.CutSuffix(key, end)
		if !has {
			continue
		}
		if composed(base, said) {
			return true
		}
	}
	return false
}

// composed reports whether a key is a literal, or several one behind the
// other: cut behind a point, or before a stroke.
func composed(key string, said map[string]bool) bool {
	if said[key] {
		return true
	}
	for i, sign := range key {
		switch {
		case sign == '.' && said[key[:i+1]] && composed(key[i+1:], said), sign == '-' && i > 0 && said[key[:i]] && composed(key[i:], said):
			return true
		}
	}
	return false
}

var keyForm = regexp.MustCompile(`^[a-z][a-z-]*\.([a-z0-9-]+(\.[a-z0-9-]+)*\.?)?$`)

// looksLikeKey reports whether a text is formed like a key or the start of
// keys, in an area that has rows and is no table of the shop file.
func looksLikeKey(text string) bool {
	area, _, _ := strings.Cut(text, ".")
	return keyForm.MatchString(text) && !fileName.MatchString(text) && startsKeys(area+".") && fieldPath(text) == ""
}

// startsKeys reports whether the keys of some rows start with a text.
func startsKeys(text string) bool {
	for _, key := range content.Keys() {
		if strings.HasPrefix(key, text) && strings.HasSuffix(text, ".") {
			return true
		}
	}
	return false
}

// saidAnywhere are the literals of the whole program.
func saidAnywhere(t *testing.T) map[string]bool { return saidIn(t, "..") }

// saidIn are the literals of the code, the templates and the data rows in a
// folder, tests left out.
func saidIn(t *testing.T, folder string) map[string]bool {
	t.Helper()
	said := map[string]bool{}
	quoted := regexp.MustCompile(`"([^"{}]+)"`)
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		switch {
		case d.IsDir() && (d.Name() == "testdata" || d.Name() == "words" || d.Name() == "public"):
			return filepath.SkipDir
		case strings.HasSuffix(path, "_test.go"):
		case strings.HasSuffix(path, ".go"):
			return goLiterals(path, said)
		case strings.HasSuffix(path, ".html"):
			data, err := os.ReadFile(path)
			for _, m := range quoted.FindAllStringSubmatch(string(data), -1) {
				said[m[1]] = true
			}
			return err
		case strings.HasSuffix(path, ".csv"):
			return cells(path, said)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return said
}

// goLiterals adds the text literals of a Go file.
func goLiterals(path string, said map[string]bool) error {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
	if err != nil {
		return err
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
			if text, err := strconv.Unquote(l.Value); err == nil {
				said[text] = true
			}
		}
		if call, ok := n.(*ast.CallExpr); ok && named(call.Fun) == "MustTable" && len(call.Args) > 2 {
			said["source-table."+tableKey(call)] = true
		}
		return true
	})
	return nil
}

// tableKey is the key of a table that a call reads: its folder and its name.
func tableKey(call *ast.CallExpr) string {
	key := ""
	for _, arg := range call.Args[1:3] {
		if l, ok := arg.(*ast.BasicLit); ok {
			key += "." + strings.Trim(strings.ReplaceAll(l.Value, "/", "."), `"`)
		}
	}
	return strings.TrimPrefix(key, ".")
}

// cells adds the cells of a data file, and the parts between semicolons.
func cells(path string, said map[string]bool) error {
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	reader := csv.NewReader(strings.NewReader(string(data)))
	reader.FieldsPerRecord = -1
	rows, err := reader.ReadAll()
	if err != nil {
		return err
	}
	for _, row := range rows {
		for _, cell := range row {
			said[cell] = true
			for _, part := range strings.Split(cell, ";") {
				said[strings.TrimSpace(part)] = true
			}
		}
	}
	return nil
}
