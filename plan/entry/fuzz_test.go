package entry

import (
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// FuzzRead reads any bytes. Nothing panics; what the decoder accepts has the
// decoder's keys and true places; what it refuses is refused; and problems can
// be shown and stand in the text.
func FuzzRead(f *testing.F) {
	for _, data := range tomlFiles(f, "testdata") {
		f.Add(data)
	}
	for _, c := range slices.Concat(wrongValues, wrongTexts, wrongKeys, wrongHeaders, wrongBrackets, wrongBytes) {
		f.Add([]byte(c.text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 1<<14 {
			return
		}
		table, problems := Read("f", data)
		if (table == nil) == (len(problems) == 0) {
			t.Fatalf("table %v beside %v", table != nil, problems)
		}
		text, unfit := look("f", data)
		checkProblems(t, data, problems)
		if len(unfit) > 0 || strings.HasPrefix(text.body, "\ufeff") || scan(text).limited {
			return // the decoder is not asked, or drops a second mark by itself
		}
		var values map[string]any
		if _, err := toml.Decode(text.body, &values); err != nil {
			if table != nil {
				t.Fatalf("read what the decoder refuses: %v", err)
			}
			return
		}
		checkAgainstDecoder(t, "fuzz", data)
	})
}

// checkProblems checks that every problem is whole and stands in the text.
func checkProblems(t *testing.T, data []byte, problems Problems) {
	t.Helper()
	lines := strings.Split(string(data), "\n")
	if len(problems) > mostProblems+1 {
		t.Fatalf("%d problems", len(problems))
	}
	for i, p := range problems {
		line := p.Error()
		if p.Read == "" || p.Expected == "" || p.Do == "" || strings.ContainsAny(line, "\n\r\t\x00") || len(line) > 4000 {
			t.Fatalf("problem %q", line)
		}
		if p.Line < 1 || p.Line > len(lines) || p.Column < 1 || p.Column > len([]rune(lines[p.Line-1]))+1 {
			t.Fatalf("%q stands outside the text", line)
		}
		if i > 0 && (p.Line < problems[i-1].Line || p.Line == problems[i-1].Line && p.Column < problems[i-1].Column) {
			t.Fatalf("%q comes after %q", line, problems[i-1].Error())
		}
	}
}
