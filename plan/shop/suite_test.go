package shop

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// file is a file that the tests read.
func file(t testing.TB, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// sound reads a text that must be a shop.
func sound(t testing.TB, text string) *Shop {
	t.Helper()
	s, problems := Read("shop.toml", []byte(text))
	if s == nil {
		t.Fatalf("not read:\n%v\n%s", problems, numbered(text))
	}
	return s
}

// refused reads a text that must not be a shop, and returns its problems, one
// a line.
func refused(t testing.TB, text string) string {
	t.Helper()
	s, problems := Read("shop.toml", []byte(text))
	if s != nil || len(problems) == 0 {
		t.Fatalf("read without a problem:\n%s", numbered(text))
	}
	return problems.Error()
}

// numbered is a text with its line numbers.
func numbered(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = strings.Repeat(" ", 3-min(3, len(number(i+1)))) + number(i+1) + " " + line
	}
	return strings.Join(lines, "\n")
}

func number(i int) string {
	if i < 10 {
		return string(rune('0' + i))
	}
	return number(i/10) + string(rune('0'+i%10))
}

// edit is a case of a file of edits: what is done to the base file, and the
// problems that follow.
type edit struct {
	name string
	text string   // the base file with the edits
	want []string // the problems, one a line
}

// edits reads a file of cases. A case is "== name", then edits, then the
// problems. An edit is lines that go, each with -, and lines that come in
// their place, each with +; without lines that go, the others come at the
// end of the file. A problem is a line with ?.
func edits(t *testing.T, path, base string) []edit {
	t.Helper()
	var list []edit
	var out, in []string
	apply := func() {
		if len(list) == 0 || out == nil && in == nil {
			return
		}
		c := &list[len(list)-1]
		if out == nil {
			c.text += strings.Join(in, "\n") + "\n"
		} else {
			old := "\n" + strings.Join(out, "\n") + "\n"
			if n := strings.Count(c.text, old); n != 1 {
				t.Fatalf("%s: %s: these lines stand %d times in the base file:%s", path, c.name, n, old)
			}
			c.text = strings.Replace(c.text, old, "\n"+strings.Join(append(in, ""), "\n"), 1)
		}
		out, in = nil, nil
	}
	for _, line := range strings.Split(file(t, path), "\n") {
		mark, rest := "", ""
		if line != "" {
			mark, rest = line[:1], strings.TrimPrefix(line[1:], " ")
		}
		switch mark {
		case "=":
			apply()
			list = append(list, edit{name: strings.TrimPrefix(rest, "= "), text: base})
		case "-":
			if in != nil {
				apply()
			}
			out = append(out, rest)
		case "+":
			in = append(in, rest)
		case "?":
			apply()
			list[len(list)-1].want = append(list[len(list)-1].want, rest)
		case "", "#":
			apply()
		default:
			t.Fatalf("%s: a line that means nothing: %s", path, line)
		}
	}
	return list
}

// editFiles are the files of cases in a folder.
func editFiles(t *testing.T, folder string) []string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(folder, "*.txt"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases in %s: %v", folder, err)
	}
	return paths
}
