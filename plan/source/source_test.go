package source

import (
	"strings"
	"testing"
)

// What a mark allows: a figure that was read, is as reported or is the
// owner's own may decide; one from memory is asked, practice advises.
func TestMarksDecide(t *testing.T) {
	for _, c := range []struct {
		text    string
		mark    Mark
		decides bool
		weak    bool
		says    string
	}{
		{"V", Verified, true, false, ""},
		{"V2", Reported, true, false, "as reported"},
		{"M", Memory, false, true, "from memory, confirm"},
		{"P", Practice, false, true, "common practice"},
		{"C", Computed, false, false, "computed"},
		{"G", Given, true, false, ""},
	} {
		mark, err := ReadMark(c.text)
		if err != nil || mark != c.mark || mark.Decides() != c.decides || mark.Weak() != c.weak || mark.in(english, saysText) != c.says {
			t.Errorf("%s: %v %v, decides %v, weak %v, says %q", c.text, mark, err, mark.Decides(), mark.Weak(), mark.in(english, saysText))
		}
		if mark.String() == "unmarked" {
			t.Errorf("%s has no word", c.text)
		}
	}
	for _, wrong := range []string{"", "v", "V3", "VERIFIED"} {
		if _, err := ReadMark(wrong); err == nil {
			t.Errorf("%q was read as a mark", wrong)
		}
	}
}

func TestBasisInWords(t *testing.T) {
	for _, c := range []struct {
		basis       Basis
		long, brief string
	}{
		{Basis{Document: "trgs-553", Clause: "Annex 2", Mark: Verified}, "TRGS 553 Wood dust, current, Annex 2", "TRGS 553"},
		{Basis{Document: "irc", Clause: "R302.5.2", Mark: Reported}, "International Residential Code, 2018, R302.5.2, as reported", "IRC, as reported"},
		{Basis{Document: "", Clause: "", Mark: Practice}, "common practice, no source", "practice"},
		{Basis{Document: "", Clause: "maker's manual, p. 12", Mark: Given}, "the shop file, maker's manual, p. 12", "given"},
		{Basis{Document: "vent-manual", Clause: "round elbows", Mark: Memory}, "Industrial ventilation manual of recommended practice, ACGIH, edition not seen, round elbows, from memory, confirm", "ventilation manual, from memory, confirm"},
	} {
		if got := c.basis.String(); got != c.long {
			t.Errorf("got %q, want %q", got, c.long)
		}
		if got := c.basis.BriefIn(english); got != c.brief {
			t.Errorf("got %q, want %q", got, c.brief)
		}
	}
}

func TestRowsThatAreRefused(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"no mark column", "a,document,clause\nx,,\n", `no column "mark"`},
		{"column missing", "a,document,clause,mark\nx,,,P\n", `no column "b"`},
		{"unknown mark", "b,document,clause,mark\nx,,,Z\n", `"Z" is no mark`},
		{"unknown document", "b,document,clause,mark\nx,nowhere,,V\n", `unknown document "nowhere"`},
		{"a reading of no document", "b,document,clause,mark\nx,,,V\n", "names no document"},
		{"ragged", "b,document,clause,mark\nx,,P\n", "wrong number of fields"},
		{"empty", "", "EOF"},
	} {
		_, err := readRows(c.name, []byte(c.text), []string{"b"})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

func TestRow(t *testing.T) {
	rows := MustRows("t.csv", []byte("# a note\nname,value,unit,document,clause,mark,about\nspeed inch,4005,fpm,vent-notes,velocity,V,the rounded constant\nangle,,,,,P,none\n"), "name", "value")
	if len(rows) != 2 || rows[0].Number("value") != 4005 || rows[0].Text("unit") != "fpm" || rows[0].Basis.Mark != Verified || rows[1].Has("value") {
		t.Fatalf("%+v", rows)
	}
	if what, value := rows[0].Named(); what != "speed inch: the rounded constant" || value != "4005 fpm" {
		t.Errorf("named %q, %q", what, value)
	}
	for _, f := range []func(){
		func() { rows[1].Number("value") },
		func() { rows[0].Text("nothing") },
		func() { MustRows("t.csv", []byte("a\n1\n")) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Error("a fault of the data did not panic")
				}
			}()
			f()
		}()
	}
}

// Every document has what its row on the sheet of sources needs, and names
// nobody's firm by an address.
func TestDocuments(t *testing.T) {
	if len(Documents()) < 20 {
		t.Fatalf("%d documents", len(Documents()))
	}
	for _, d := range Documents() {
		if found, ok := FindDocument(d.ID); !ok || found != d {
			t.Errorf("%s is not found", d.ID)
		}
		if strings.Contains(d.Title+d.Note, "http") || strings.Contains(d.Title+d.Note, "www.") {
			t.Errorf("%s gives an address", d.ID)
		}
	}
}
