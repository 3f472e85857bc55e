package plan_test

import (
	"encoding/csv"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The house as data: which package may import which of ours. Data walks one
// way; testdata/house.csv says it, and every import is held against it.
func TestHouse(t *testing.T) {
	allowed := readHouse(t)
	seen := map[string]bool{}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() && strings.HasPrefix(d.Name(), ".") && path != ".." {
			if err == nil {
				return filepath.SkipDir
			}
			return err
		}
		if d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "testdata") {
			return nil
		}
		pkg := filepath.ToSlash(filepath.Dir(strings.TrimPrefix(path, "../")))
		may, known := allowed[pkg]
		if !known {
			t.Errorf("%s is no room of the house", pkg)
			return nil
		}
		seen[pkg] = true
		for _, name := range importsOf(t, path) {
			if ours, is := strings.CutPrefix(name, "dustbook/"); is && !slices.Contains(may, ours) && !slices.Contains(may, "*") {
				t.Errorf("%s imports %s, which the house does not allow", path, ours)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for pkg := range allowed {
		if !seen[pkg] {
			t.Errorf("%s is a room of the house, and is not there", pkg)
		}
	}
	if len(seen) < 12 {
		t.Errorf("only %d packages were seen: %v", len(seen), seen)
	}
}

func readHouse(t *testing.T) map[string][]string {
	f, err := os.Open("testdata/house.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	house := map[string][]string{}
	for _, r := range rows[1:] {
		house[r[0]] = strings.Fields(r[1])
	}
	return house
}

func importsOf(t *testing.T, path string) []string {
	f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, i := range f.Imports {
		name, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, name)
	}
	return names
}

// The top level holds what the house names and nothing else.
func TestTopLevel(t *testing.T) {
	allowed := []string{"cmd", "plan", "checks", "templates", "content", "public", "README.md", "DEVELOPERS.md", "go.mod", "go.sum", "LICENSE"}
	entries, err := os.ReadDir("..")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !slices.Contains(allowed, e.Name()) && !strings.HasPrefix(e.Name(), ".") {
			t.Errorf("the top level holds %s", e.Name())
		}
	}
}

// Every package says in its doc comment what it knows.
func TestDocComments(t *testing.T) {
	for pkg := range readHouse(t) {
		files, _ := filepath.Glob("../" + pkg + "/*.go")
		if len(files) == 0 {
			continue // a room not built yet
		}
		said := false
		for _, file := range files {
			f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.PackageClauseOnly|parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			said = said || f.Doc != nil && (strings.Contains(f.Doc.Text(), "knows") || f.Name.Name == "main")
		}
		if !said {
			t.Errorf("no file of %s says what the package knows", pkg)
		}
	}
}
