package record

import (
	"strings"
	"testing"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// The data files are whole, and every row of them is used.
func TestData(t *testing.T) {
	root, problems := entry.Read("whole.toml", []byte(whole))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	tables := map[string]*entry.Table{"record": root}
	for _, name := range []string{"reading", "item"} {
		tables[name] = root.Get(name).Value.([]*entry.Node)[0].Value.(*entry.Table)
	}
	for _, row := range Rows() {
		if row.Means == "" || !strings.HasSuffix(row.Means, ".") {
			t.Errorf("%s.%s has no sentence", row.Table, row.Field)
		}
		if tables[row.Table].Get(row.Field) == nil {
			t.Errorf("%s.%s does not stand in the whole record", row.Table, row.Field)
		}
		if (row.Kind == "word" || row.Kind == "words") && len(Words(row.Of)) == 0 {
			t.Errorf("%s.%s has no words", row.Table, row.Field)
		}
		if textual := row.Kind == "text" || row.Kind == "thing" || row.Kind == "quantity"; textual && row.Longest == 0 {
			t.Errorf("%s.%s has no length", row.Table, row.Field)
		}
	}
}

func TestWords(t *testing.T) {
	seen := map[string]bool{}
	for _, group := range []string{"record kind", "filter state", "item state", "of", "service"} {
		for _, w := range Words(group) {
			if key := group + "/" + w.Word; seen[key] || w.Means == "" {
				t.Errorf("%s stands twice or means nothing", key)
			} else {
				seen[key] = true
			}
		}
	}
	// the words that the contract names
	for group, list := range map[string]string{
		"record kind": "commissioning inspection service change incident letter",
		"item state":  "open answered closed",
	} {
		if got := strings.Join(wordsOf(group), " "); got != list {
			t.Errorf("%s: %s", group, got)
		}
	}
	for _, word := range []string{"hood pressure", "flow", "velocity", "tap pressure", "voltage", "current", "time", "resistance", "stop"} {
		if !seen["of/"+word] {
			t.Errorf("no %s", word)
		}
	}
}

func TestMeasures(t *testing.T) {
	for _, m := range Measures() {
		if (m.Kind == 0) != (m.Example != "") {
			t.Errorf("%s: an example belongs to a text", m.Word)
		}
		for _, word := range m.At {
			known := false
			for _, thing := range things {
				known = known || thing.word == word && word != "use"
			}
			if !known {
				t.Errorf("%s: no kind of thing: %s", m.Word, word)
			}
		}
		if m.Least != "" {
			if _, err := unit.ReadKind(m.Kind, m.Least); err != nil {
				t.Errorf("%s: %v", m.Word, err)
			}
		}
	}
}
