package entry

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io/fs"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
)

// The files of toml-test (the language's own test suite, MIT licence), in the
// version that ships inside the module github.com/BurntSushi/toml v1.6.0, are
// read from the module's folder. They check keys, places, values and refusals
// against the language, not against ourselves.

// skipUnlessCI skips a test for want of something; CI has it, and there it is a
// failure.
func skipUnlessCI(t *testing.T, why string) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatal(why)
	}
	t.Skip(why)
}

// suiteFolder returns the folder of one half of the suite.
func suiteFolder(t *testing.T, half string) string {
	t.Helper()
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/BurntSushi/toml").Output()
	if err != nil {
		skipUnlessCI(t, "the folder of the module is not known: "+err.Error())
	}
	root := filepath.Join(strings.TrimSpace(string(out)), "internal", "toml-test", "tests", half)
	if _, err := os.Stat(root); err != nil {
		skipUnlessCI(t, "the module does not ship the suite here")
	}
	return root
}

// tomlFiles returns the TOML files below a folder by their path in it.
func tomlFiles(t testing.TB, root string) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".toml" {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(root, path)
		files[filepath.ToSlash(name)] = data
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// checkAgainstDecoder compares the outline of a text that the decoder accepts
// with what the decoder found, and every place with what stands there.
func checkAgainstDecoder(t *testing.T, name string, data []byte) {
	t.Helper()
	text, problems := look("f", data)
	if len(problems) > 0 {
		t.Fatalf("%s: %v", name, problems)
	}
	var values map[string]any
	found, err := toml.Decode(text.body, &values)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	out := scan(text)
	if out.broken {
		t.Fatalf("%s: the decoder accepts what we refuse: %v\n%s", name, out.problems, data)
	}
	if !sameKeys(out.keys, found.Keys()) {
		t.Fatalf("%s: keys differ\nours    %q\ndecoder %q\n%s", name, out.keys, found.Keys(), data)
	}
	if len(out.problems) > 0 {
		return // names given twice, which the decoder lets pass
	}
	if !fill(out.root, values) {
		t.Fatalf("%s: outline and values differ in shape\n%s", name, data)
	}
	checkPlaces(t, name, text.body, out.root)
}

// checkPlaces looks up what stands at every place of a table.
func checkPlaces(t *testing.T, name, body string, table *Table) {
	t.Helper()
	at := offsets(body)
	var visit func(n *Node, element bool)
	visit = func(n *Node, element bool) {
		key, value := body[at[n.Key]:], body[at[n.At]:]
		if _, known := at[n.Key]; !known || !element && key[0] != '"' && key[0] != '\'' && !strings.HasPrefix(key, n.Name) {
			t.Fatalf("%s: %s is not at %v\n%s", name, n.Path, n.Key, body)
		}
		first := ""
		switch v := n.Value.(type) {
		case string:
			first = `"'`
		case bool:
			first = "tf"
		case int64, float64:
			first = "+-.0123456789ni"
		case Date, Clock, Moment, time.Time:
			first = "0123456789"
		case []*Node:
			first = "["
			for _, item := range v {
				visit(item, true)
			}
		case *Table:
			first = "[{"
			if v.origin == dotted || v.origin == implied {
				first = value[:1] // it begins at its name
			}
			for _, inner := range v.Nodes {
				visit(inner, false)
			}
		}
		if _, known := at[n.At]; !known || !strings.Contains(first, value[:1]) {
			t.Fatalf("%s: the value of %s is not at %v\n%s", name, n.Path, n.At, body)
		}
	}
	for _, n := range table.Nodes {
		visit(n, false)
	}
}

// offsets lists the byte at which each place of a text stands.
func offsets(body string) map[Place]int {
	found := map[Place]int{}
	at := Place{1, 1}
	for i, r := range body {
		found[at] = i
		at.Column++
		if r == '\n' {
			at = Place{at.Line + 1, 1}
		}
	}
	return found
}

// TestOutlineEqualsDecoder reads every valid file of the suite and of testdata.
func TestOutlineEqualsDecoder(t *testing.T) {
	own := tomlFiles(t, "testdata")
	if len(own) < 5 {
		t.Fatalf("%d files in testdata", len(own))
	}
	for name, data := range own {
		checkAgainstDecoder(t, name, data)
		checkAgainstDecoder(t, name+" with carriage returns", bytes.ReplaceAll(data, []byte("\n"), []byte("\r\n")))
	}
	suite := tomlFiles(t, suiteFolder(t, "valid"))
	checked := 0
	for name, data := range suite {
		var values map[string]any
		if _, err := toml.Decode(string(data), &values); err != nil {
			t.Errorf("%s: the decoder refuses it: %v", name, err)
			continue
		}
		checkAgainstDecoder(t, name, data)
		checked++
	}
	if checked < 200 {
		t.Errorf("only %d files of the suite were read", checked)
	}
}

// TestValuesOfTheSuite compares every value with the one the suite gives.
func TestValuesOfTheSuite(t *testing.T) {
	root := suiteFolder(t, "valid")
	endless := 0
	for name, data := range tomlFiles(t, root) {
		table, problems := Read(name, data)
		if len(problems) > 0 {
			endless++
			for _, p := range problems {
				if p.Expected != "a finite number" {
					t.Errorf("refused: %v", p)
				}
			}
			continue
		}
		wanted, err := os.ReadFile(filepath.Join(root, strings.TrimSuffix(filepath.FromSlash(name), ".toml")+".json"))
		if err != nil {
			t.Fatal(err)
		}
		var want any
		if err := json.Unmarshal(wanted, &want); err != nil {
			t.Fatal(err)
		}
		if got := differs(table, want); got != "" {
			t.Errorf("%s: %s", name, got)
		}
	}
	if endless == 0 || endless > 5 {
		t.Errorf("%d files with nan or inf", endless)
	}
}

// differs compares a value with one in the tagged JSON of the suite.
func differs(got, want any) string {
	switch want := want.(type) {
	case []any:
		items, _ := got.([]*Node)
		if len(items) != len(want) {
			return fmt.Sprintf("%d elements, want %d", len(items), len(want))
		}
		for i := range want {
			if d := differs(items[i].Value, want[i]); d != "" {
				return items[i].Path + ": " + d
			}
		}
		return ""
	case map[string]any:
		kind, tagged := want["type"].(string)
		written, _ := want["value"].(string)
		if tagged && len(want) == 2 {
			return scalarDiffers(got, kind, written)
		}
		table, isTable := got.(*Table)
		if !isTable || len(table.Nodes) != len(want) {
			return fmt.Sprintf("%v, want %d names", got, len(want))
		}
		for name, inner := range want {
			n := table.Get(name)
			if n == nil {
				return name + " is missing"
			}
			if d := differs(n.Value, inner); d != "" {
				return n.Path + ": " + d
			}
		}
		return ""
	}
	return fmt.Sprintf("unknown kind of value in the suite: %v", want)
}

// scalarDiffers compares one value with the suite's.
func scalarDiffers(got any, kind, want string) string {
	same := false
	switch v := got.(type) {
	case string:
		same = kind == "string" && v == want
	case bool:
		same = kind == "bool" && strconv.FormatBool(v) == want
	case int64:
		same = kind == "integer" && strconv.FormatInt(v, 10) == want
	case float64:
		number, err := strconv.ParseFloat(want, 64)
		same = kind == "float" && err == nil && number == v && math.Signbit(number) == math.Signbit(v)
	case Date:
		same = kind == "date-local" && v.String() == want
	case Clock:
		same = kind == "time-local" && sameTime("15:04:05", string(v), want)
	case Moment:
		same = kind == "datetime-local" && sameTime("2006-01-02T15:04:05", string(v), want)
	case time.Time:
		moment, err := time.Parse(time.RFC3339Nano, want)
		same = kind == "datetime" && err == nil && moment.Equal(v)
	}
	if same {
		return ""
	}
	return fmt.Sprintf("%#v, want the %s %s", got, kind, want)
}

// sameTime compares two ways to write one time.
func sameTime(layout, a, b string) bool {
	first, errA := time.Parse(layout, a)
	second, errB := time.Parse(layout, b)
	return errA == nil && errB == nil && first.Equal(second)
}

// accepted are the files that the suite calls invalid and that are read all the
// same, with the reason.
var accepted = map[string]string{
	"datetime/no-secs.toml":                "TOML 1.1",
	"local-datetime/no-secs.toml":          "TOML 1.1",
	"local-time/no-secs.toml":              "TOML 1.1",
	"inline-table/linebreak-01.toml":       "TOML 1.1",
	"inline-table/linebreak-02.toml":       "TOML 1.1",
	"inline-table/linebreak-03.toml":       "TOML 1.1",
	"inline-table/linebreak-04.toml":       "TOML 1.1",
	"inline-table/trailing-comma.toml":     "TOML 1.1",
	"string/basic-byte-escapes.toml":       "TOML 1.1",
	"datetime/offset-overflow-minute.toml": "an offset of 60 minutes is taken as the next hour",
}

// TestRefusalsOfTheSuite reads every invalid file of the suite: none but those
// named is accepted, and each problem stands on a line of the file.
func TestRefusalsOfTheSuite(t *testing.T) {
	for name, data := range tomlFiles(t, suiteFolder(t, "invalid")) {
		table, problems := Read(name, data)
		if reason := accepted[name]; (table != nil) != (reason != "") {
			t.Errorf("%s: accepted %v, expected by reason of %q", name, table != nil, reason)
		}
		lines := strings.Count(string(data), "\n") + 1
		for _, p := range problems {
			if p.Line < 1 || p.Line > lines || p.Column < 1 || p.Read == "" || p.Expected == "" || p.Do == "" || strings.Contains(p.Error(), "\n") {
				t.Errorf("%s: %q", name, p.Error())
			}
		}
		checkFirst(t, name, data, problems)
	}
}

// later are the files whose first problem stands further on than the decoder
// says, with the reason.
var later = map[string]string{
	"string/multiline-escape-space-01.toml": "the decoder names the start of the text, not the backslash in it",
	"string/multiline-escape-space-02.toml": "the decoder names the start of the text, not the backslash in it",
	"control/bare-cr.toml":                  "the decoder names the byte before the character",
}

// checkFirst compares the first problem with the decoder's: ours may stand
// earlier, where a quote or bracket was opened or a name begins, never later.
func checkFirst(t *testing.T, name string, data []byte, problems Problems) {
	t.Helper()
	var refused toml.ParseError
	var values map[string]any
	_, err := toml.Decode(string(data), &values)
	if parse, isParse := err.(toml.ParseError); isParse {
		refused = parse
	}
	if refused.Position.Line == 0 || len(problems) == 0 {
		return
	}
	line := strings.Count(string(data[:min(len(data), max(0, refused.Position.Start))]), "\n") + 1
	if (problems[0].Line > line) != (later[name] != "") {
		t.Errorf("%s: first problem on line %d, the decoder stops on line %d", name, problems[0].Line, line)
	}
}
