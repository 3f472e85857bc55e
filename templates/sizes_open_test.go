package templates

import (
	"regexp"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// schoolText is the school's shop with the size of some ducts left to be
// chosen; with none it is the school as it stands.
func schoolText(t *testing.T, open ...string) string {
	t.Helper()
	text := string(content.Example())
	for _, name := range open {
		size := regexp.MustCompile(`(?s)(name = "` + name + `".*?\nsize = )"[^"]*"`)
		if !size.MatchString(text) {
			t.Fatalf("no duct %s", name)
		}
		at := size.FindStringSubmatchIndex(text)
		text = text[:at[3]] + `"choose"` + text[at[1]:]
	}
	return text
}

const chooseThem = "Run dustbook size --choose and write the sizes into the shop file."

var noSize = regexp.MustCompile(`(^|[^0-9.,/])0 (mm|in)\b`)

// Every sheet that waits for sizes says so and leads to their sheet; none shows
// a size of nought or blames the curve.
func TestSheetsWaitForSizes(t *testing.T) {
	b := sizesBook(t)
	for _, path := range []string{"index.html", "use-saw.html", "enough.html", "first.html", "together.html", "working-saw.html", "ducts.html", "collector-fan.html", "findings.html"} {
		body, words := b.sheet(t, path)
		if !strings.Contains(words, chooseThem) || !strings.Contains(body, `<a href="sizes.html">Sizes to choose</a>`) {
			t.Errorf("%s does not say what to do, or where", path)
		}
	}
	done := sizesBook(t, `"choose"`, `"100 mm"`)
	for _, s := range done.Sheets {
		if body, words := done.sheet(t, s.Path); strings.Contains(words, chooseThem) && s.Path != "check-fan-on-curve.html" || strings.Contains(body, `href="sizes.html"`) {
			t.Errorf("%s speaks of sizes to choose, and none is", s.Path)
		}
	}
}

func TestNoSizeOfNought(t *testing.T) {
	shown := map[bool]int{}
	for _, open := range []bool{true, false} {
		var names []string
		if open {
			names = []string{"Saw drop", "Guard pipe", "Planer drop"}
		}
		b := newBook(t, schoolText(t, names...))
		for _, s := range b.Sheets {
			if s.Path == "fields.html" || s.Path == "sources.html" || s.Path == "sources-control.html" || strings.HasPrefix(s.Path, "note-") {
				continue // they tell of bounds and of data
			}
			_, words := b.sheet(t, s.Path)
			if at := noSize.FindStringIndex(words); at != nil && open && !strings.Contains(words[at[0]:at[1]+3], "in wg") {
				t.Errorf("%s shows a size of nought: …%s…", s.Path, words[max(0, at[0]-60):min(len(words), at[1]+20)])
			}
			for _, blame := range []string{"off its curve", "off the fan's curve", "leaves its curve", "more of the curve"} {
				if open && strings.Contains(words, blame) && s.Path != "collector-bench-collector.html" {
					t.Errorf("%s blames the curve: %q", s.Path, blame)
				}
			}
			if strings.Contains(words, " to choose") {
				shown[open]++
			}
		}
	}
	if shown[true] < 10 || shown[false] != 0 {
		t.Errorf("sizes to choose stand on %d sheets, and on %d where every size is given", shown[true], shown[false])
	}
}

// The schedule says of duct and hose that the size is to be chosen; with a size
// it shows that.
func TestDuctsWithoutSize(t *testing.T) {
	for _, open := range []bool{true, false} {
		var names []string
		if open {
			names = []string{"Planer drop"}
		}
		b := newBook(t, schoolText(t, names...))
		for _, row := range b.ductsView().Ducts {
			if row.Name != "Planer drop" {
				continue
			}
			hose := row.Hose[0].Text
			if open && (row.Size != "to choose" || hose != "2 ft, to choose") || !open && (row.Size != "6 in" || hose != "2 ft of 6 in") {
				t.Errorf("open %v: %q, hose %q", open, row.Size, hose)
			}
		}
		if v := b.ductVerdict(); (v.Sizes != "") != open {
			t.Errorf("open %v: %+v", open, v)
		}
	}
}

// One collector waits, the other does not: each use, row and sheet goes by its
// own, and nothing is called enough while some air is not known.
func TestOneCollectorWaits(t *testing.T) {
	const more = `
[[collector]]
name = "Small fan"
inlet = "125 mm"
fan_curve = [["0 m3/s", "2800 Pa"], ["0.4 m3/s", "2400 Pa"], ["0.9 m3/s", "600 Pa"], ["1.1 m3/s", "0 Pa"]]
exhaust = "outside"
[[machine]]
name = "Lathe"
kind = "other"
transport = "5 m/s"
port = { size = "100 mm", flow = "NEED" }
[[duct]]
name = "Lathe pipe"
to = "Small fan"
size = "125 mm"
length = "2 m"
serves = ["Lathe"]
`
	book := func(need, size string) *Book {
		s, problems := shop.Read("shop.toml", []byte(strings.Replace(sizesText, `"choose"`, size, 1)+strings.Replace(more, "NEED", need, 1)))
		if s == nil {
			t.Fatal(problems)
		}
		p := plan.Make(s, nil, entry.Date{})
		b, err := New(p, checks.Run(p))
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	for _, c := range []struct{ need, size, enough, first, use string }{
		{"100 m3/h", `"choose"`, "not known yet", "not known yet", "captured"},
		{"9000 m3/h", `"choose"`, "not enough", "change first", "not captured"},
		{"100 m3/h", `"110 mm"`, "big enough", "dust settles", "captured"},
	} {
		b := book(c.need, c.size)
		for path, want := range map[string]string{"enough.html": c.enough, "first.html": c.first, "use-lathe.html": c.use} {
			for _, s := range b.Sheets {
				if s.Path == path && s.Verdict.Words[0].Text != want {
					t.Errorf("need %s, size %s: %s says %q, want %q", c.need, c.size, path, s.Verdict.Words[0].Text, want)
				}
			}
		}
		if _, words := b.sheet(t, "use-lathe.html"); strings.Contains(words, "chosen") {
			t.Errorf("need %s, size %s: the use of the other collector waits for sizes", c.need, c.size)
		}
		if _, words := b.sheet(t, "enough.html"); strings.Contains(words, "no size yet") != (c.size == `"choose"`) {
			t.Errorf("size %s: rows without a size", c.size)
		}
	}
}

// Two layouts side by side: while one waits for sizes nobody can tell which
// serves more, and the sheet says whose they are.
func TestLayoutsWaitForSizes(t *testing.T) {
	done := strings.Replace(sizesText, `"choose"`, `"110 mm"`, 1)
	for _, c := range []struct {
		this, other string
		says        []string
		path        string
	}{
		{sizesText, done, []string{"In this layout sizes are still to be chosen: Saw drop."}, "sizes.html"},
		{done, sizesText, []string{"In the other layout sizes are still to be chosen: Saw drop."}, ""},
		{sizesText, sizesText, []string{"In this layout", "In the other layout"}, "sizes.html"},
	} {
		v, _ := besideOf(t, c.this, c.other)
		if v.Words[0].Text != "not known yet" || v.Sizes != c.path || !strings.Contains(v.Do, "size --choose") || strings.Count(v.Says, "still to be chosen") != len(c.says) {
			t.Errorf("%+v", v)
		}
		for _, says := range c.says {
			if !strings.Contains(v.Says, says) {
				t.Errorf("%q, want %q", v.Says, says)
			}
		}
	}
	if v, _ := besideOf(t, done, done); v.Words[0].Text == "not known yet" || v.Sizes != "" || strings.Contains(v.Says, "chosen") {
		t.Errorf("with every size: %+v", v)
	}
}
