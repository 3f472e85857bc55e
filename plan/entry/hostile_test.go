package entry

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// repeated writes a text that many times, with a count in the place of %d.
func repeated(form string, count int) string {
	var b strings.Builder
	for i := range count {
		if strings.Contains(form, "%d") {
			fmt.Fprintf(&b, form, i)
			continue
		}
		b.WriteString(form)
	}
	return b.String()
}

// TestHostileTextsAreRefused feeds texts made to exhaust a reader. Each must
// come back with its problem; the bounds that give it are on either side of it.
func TestHostileTextsAreRefused(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"ten million brackets", strings.Repeat("[", 10_000_000), "f: read 10000000 bytes; expected at most 1 MiB"},
		{"a million brackets", "a = " + strings.Repeat("[", 1_000_000), "f:1:37: read bracket number 33 within"},
		{"a million brackets as a header", strings.Repeat("[", 1_000_000), "f:1:1: read [[["},
		{"brackets with line ends", "a = " + strings.Repeat("[\n", 500_000), "f:33:1: read bracket number 33 within"},
		{"braces within braces", "a" + strings.Repeat(" = { a", 4_000), "f:1:73: read 13 names of 13 bytes one inside the other"},
		{"braces in brackets", "a = " + strings.Repeat("[{a=", 20_000), "f:1:51: read 13 names"},
		{"a key of 8,000 parts", strings.Repeat("a.", 8_000) + "a = 1", "f:1:1: read a name of more than 8 parts"},
		{"a header of 8,000 parts", "[" + strings.Repeat("a.", 8_000) + "a]", "f:1:2: read a name of more than 8 parts"},
		{"long parts in braces", "a = { " + strings.Repeat("a.", 8_000) + "a = 1 }", "f:1:7: read a name of more than 8 parts"},
		{"quoted parts", strings.Repeat(`"a".`, 8_000) + "a = 1", "f:1:1: read a name of more than 8 parts"},
		{"a long name", strings.Repeat("a", 300) + " = 1", "f:1:1: read 1 names of 300 bytes"},
		{"a long header", "[" + strings.Repeat("a", 500_000) + "]\n" + repeated("k%d = 1\n", 20_000), "f:1:1: read 1 names of 500000 bytes"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems := Read("f", []byte(c.text))
			if len(problems) != 1 || !strings.HasPrefix(problems[0].Error(), c.want) {
				t.Errorf("%s", shorten(problems.Error(), 400))
			}
		})
	}
}

// TestBoundsFromBothSides reads what is just allowed and what is just not.
func TestBoundsFromBothSides(t *testing.T) {
	for _, c := range []struct {
		name string
		make func(n int) string
		most int
	}{
		{"depth", func(n int) string { return "a = " + strings.Repeat("[", n) + strings.Repeat("]", n) }, MaxDepth},
		{"parts", func(n int) string { return strings.Repeat("a.", n-1) + "a = 1" }, MaxParts},
		{"names of a path", func(n int) string {
			return "[a.a.a.a]\n" + strings.Repeat("a = { ", n-5) + "a = 1" + strings.Repeat(" }", n-5)
		}, MaxPathNames},
		{"bytes of a path", func(n int) string { return "[aaaaaaaaaa]\n" + strings.Repeat("b", n-10) + " = 1" }, MaxPathBytes},
		{"bytes of a file", func(n int) string { return "a = 1 #" + strings.Repeat("é", (n-7)/2) + strings.Repeat("x", (n-7)%2) }, MaxBytes},
	} {
		if _, problems := Read("f", []byte(c.make(c.most))); len(problems) > 0 {
			t.Errorf("%s: %d is refused: %v", c.name, c.most, problems)
		}
		if table, problems := Read("f", []byte(c.make(c.most+1))); table != nil || len(problems) != 1 {
			t.Errorf("%s: %d gives %d problems", c.name, c.most+1, len(problems))
		}
	}
}

// costly are texts of a megabyte that are TOML, or nearly: they must come back
// with every node, or with a list of problems that ends.
var costly = map[string]string{
	"headers":                  strings.Repeat("[[a]]\n", 170_000),
	"many names":               repeated("k%d=1\n", 95_000),
	"names in braces":          "a={" + repeated("k%d=1,", 95_000) + "}",
	"one line of numbers":      "a=[" + strings.Repeat("1,", 500_000) + "]",
	"one line of texts":        "a=[" + strings.Repeat("\"\",", 340_000) + "]",
	"one line of quoted names": "a={" + repeated("\"k%d\"='',", 70_000) + "}",
	"one line of long texts":   "a=[" + strings.Repeat("'''''',", 140_000) + "]",
	"remarks":                  "a=[" + strings.Repeat("#\n", 500_000) + "]",
	"one line of dates":        "a=[" + strings.Repeat("2026-11-24,", 90_000) + "]",
	"empty arrays":             "a=[" + strings.Repeat("[],", 340_000) + "]",
	"deep values":              "a=[" + strings.Repeat(strings.Repeat("{a=", 10)+"1"+strings.Repeat("}", 10)+",", 6_000) + "]",
	"one line of words":        "a=[" + strings.Repeat("x,", 500_000) + "]",
	"the same name":            "a={" + strings.Repeat("b=1,", 250_000) + "}",
	"the same line":            strings.Repeat("b=1\n", 250_000),
	"no values":                strings.Repeat("b\n", 500_000),
	"open brackets":            strings.Repeat("b=[x\n", 200_000),
	"open quotes":              strings.Repeat("b=\"\n", 250_000),
	"controls":                 strings.Repeat("\x01", 1_000_000),
	"curled quotes":            "a=[" + strings.Repeat("“", 300_000),
	"spaces":                   "a=[" + strings.Repeat(strings.Repeat(" ", 30_000)+"[x y],", 30) + "]",
	"backslashes":              `a="` + strings.Repeat(`\q`, 500_000) + `"`,
	"quotes":                   `a="""` + strings.Repeat(`""a`, 300_000) + `"""`,
}

func TestCostlyTextsComeBack(t *testing.T) {
	for name, text := range costly {
		table, problems := Read("f", []byte(text))
		if (table == nil) == (len(problems) == 0) || len(problems) > mostProblems {
			t.Errorf("%s: table %v, %d problems", name, table != nil, len(problems))
		}
	}
}

// TestWorkGrowsWithTheText counts what a reading keeps, which must grow with
// the text and not with its square.
func TestWorkGrowsWithTheText(t *testing.T) {
	for _, form := range []string{"[[a]]\n", "k%d=1\n", "[t%d]\na=[[1],{b=2}]\n"} {
		few := testing.AllocsPerRun(1, func() { Read("f", []byte(repeated(form, 2_000))) })
		many := testing.AllocsPerRun(1, func() { Read("f", []byte(repeated(form, 20_000))) })
		if many > 12*few {
			t.Errorf("%q: %.0f allocations for 2,000, %.0f for 20,000", form, few, many)
		}
	}
}

// TestProblemsEndAtFifty stops the list where nobody reads on.
func TestProblemsEndAtFifty(t *testing.T) {
	for _, count := range []int{mostProblems - 1, mostProblems, mostProblems + 1, 500} {
		for _, form := range []string{"k%d = x\n", "k%d\n", "a = 1 #%d\n"} {
			_, problems := Read("f", []byte("a = 0\n"+repeated(form, count)))
			if len(problems) != min(count, mostProblems) {
				t.Errorf("%d times %q: %d problems", count, form, len(problems))
			}
		}
	}
}

// TestSameBytesSameProblems reads texts with many problems again and again.
func TestSameBytesSameProblems(t *testing.T) {
	all := ""
	for _, c := range slices.Concat(wrongValues, wrongKeys, wrongHeaders, wrongBrackets)[:60] {
		all += c.text + "\n"
	}
	valid := "[[a]]\nb = [nan, inf]\n[c]\nd = { e = nan, f = -inf }\n"
	for _, text := range []string{all, valid, "a.b = 1\nb = nan\na = 2\n[b]\n[[a]]\n"} {
		_, first := Read("f", []byte(text))
		if len(first) < 3 {
			t.Fatalf("only %d problems", len(first))
		}
		for range 50 {
			if _, again := Read("f", []byte(text)); !slices.Equal(first, again) {
				t.Fatalf("problems changed:\n%v\n\n%v", first, again)
			}
		}
	}
}
