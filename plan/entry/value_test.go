package entry

import (
	"reflect"
	"strings"
	"testing"
	"time"
)

// read reads a text that must have no problems.
func read(t *testing.T, body string) *Table {
	t.Helper()
	table, problems := Read("f", []byte(body))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return table
}

func TestValuesAndTheirSource(t *testing.T) {
	table := read(t, `
text = "a \"b\" \u00e9\tc"   # not part of it
raw = 'C:\shop'
long = """
one \
  two"""
whole = -1_200
hex = 0xFF
share = 5e-2
sure = true
day = 2026-11-24
clock = 07:32
moment = 2026-11-24 07:32:10.5
stamp = 2026-11-24T07:32:00-05:00
list = [ 1,
   "x" ]   # not part of it
inner = { a  =  1 }
marks = "a`+"\u202e"+`b"
`)
	for _, c := range []struct {
		name   string
		value  any
		source string
	}{
		{"text", "a \"b\" é\tc", `"a \"b\" \u00e9\tc"`},
		{"raw", `C:\shop`, `'C:\shop'`},
		{"long", "one two", `""" one \ two"""`},
		{"whole", int64(-1200), "-1_200"},
		{"hex", int64(255), "0xFF"},
		{"share", 0.05, "5e-2"},
		{"sure", true, "true"},
		{"day", Date{2026, 11, 24}, "2026-11-24"},
		{"clock", Clock("07:32:00"), "07:32"},
		{"moment", Moment("2026-11-24T07:32:10.5"), "2026-11-24 07:32:10.5"},
		{"list", nil, `[ 1, "x" ]`},
		{"inner", nil, "{ a  =  1 }"},
		{"marks", "a\u202eb", `"a\u202eb"`},
	} {
		n := table.Get(c.name)
		if c.value != nil && !reflect.DeepEqual(n.Value, c.value) {
			t.Errorf("%s: value %#v, want %#v", c.name, n.Value, c.value)
		}
		if n.Source != c.source {
			t.Errorf("%s: source %s, want %s", c.name, n.Source, c.source)
		}
	}
	stamp, isTime := table.Get("stamp").Value.(time.Time)
	if !isTime || stamp.Format(time.RFC3339) != "2026-11-24T07:32:00-05:00" || stamp.Location().String() != "" {
		t.Errorf("stamp: %v in %q", stamp, stamp.Location())
	}
	if items := table.Get("list").Value.([]*Node); len(items) != 2 || items[0].Value != int64(1) || items[1].Value != "x" || items[1].Name != "list" {
		t.Errorf("list: %v", items)
	}
}

// TestStampsDoNotNameTheZoneOfTheMachine reads an offset that is the machine's own.
func TestStampsDoNotNameTheZoneOfTheMachine(t *testing.T) {
	written := time.Date(2026, 11, 24, 7, 32, 0, 0, time.Local).Format("2006-01-02T15:04:05-07:00")
	stamp := read(t, "a = "+written).Get("a").Value.(time.Time)
	if name, _ := stamp.Zone(); stamp.Location().String() != "" || name != "" || stamp.Format("2006-01-02T15:04:05-07:00") != written {
		t.Errorf("%v in %q", stamp, stamp.Location())
	}
}

func TestNamesThatDifferInCaseAreApart(t *testing.T) {
	table := read(t, "air = 1\nAIR = 2\n")
	if table.Get("air").Value != int64(1) || table.Get("AIR").Value != int64(2) || table.Get("Air") != nil {
		t.Error("case variants were mixed up")
	}
	var none *Table
	if none.Get("air") != nil {
		t.Error("a table that is not there has a node")
	}
}

func TestNothingInAFileIsATable(t *testing.T) {
	for _, body := range []string{"", "\n", "# only a remark", "\ufeff", " \t"} {
		if table := read(t, body); len(table.Nodes) != 0 || table.At != (Place{1, 1}) {
			t.Errorf("%q: %v at %v", body, table.Nodes, table.At)
		}
	}
	if items := read(t, "a = []").Get("a").Value.([]*Node); items == nil || len(items) != 0 {
		t.Error("an empty array is no array")
	}
}

func TestSourceIsCutAtEightyCharacters(t *testing.T) {
	if got := read(t, `a = "`+strings.Repeat("🔧", 300)+`"`).Get("a").Source; got != `"`+strings.Repeat("🔧", 78)+"…" {
		t.Errorf("wide characters: %s", got)
	}
	for count, want := range map[int]string{
		78:  `"` + strings.Repeat("é", 78) + `"`,
		79:  `"` + strings.Repeat("é", 78) + "…",
		900: `"` + strings.Repeat("é", 78) + "…",
	} {
		if got := read(t, `a = "`+strings.Repeat("é", count)+`"`).Get("a").Source; got != want {
			t.Errorf("%d letters: %s", count, got)
		}
	}
}

func TestHeadersAndTablesCarryTheirSource(t *testing.T) {
	table := read(t, "[[ machine ]]\n[machine.\"a b\"]\nc.d = 1\n")
	machine := table.Get("machine")
	item := machine.Value.([]*Node)[0]
	inner := item.Value.(*Table).Get("a b")
	dotted := inner.Value.(*Table).Get("c")
	for _, c := range []struct{ got, want string }{
		{machine.Source, "[[ machine ]]"}, {item.Source, "[[ machine ]]"},
		{inner.Source, `[machine."a b"]`}, {dotted.Source, "c"},
		{item.Value.(*Table).Path, "machine[0]"}, {inner.Value.(*Table).Path, `machine[0]."a b"`},
		{inner.Words(), `machine 1, "a b"`},
	} {
		if c.got != c.want {
			t.Errorf("got %s, want %s", c.got, c.want)
		}
	}
	if at := item.Value.(*Table).At; at != (Place{1, 1}) {
		t.Errorf("element at %v", at)
	}
	if at := dotted.Value.(*Table).At; at != (Place{3, 1}) {
		t.Errorf("dotted table at %v", at)
	}
}
