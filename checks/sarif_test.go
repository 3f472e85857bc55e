package checks_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
)

// schema is the JSON schema of the standard; testdata/sarif/README.md says
// where it is from.
func schema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	data, err := os.ReadFile("testdata/sarif/sarif-2.1.0-rtm.5.json")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("sarif.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("sarif.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// sarif is a log, held against the schema, as another program reads it.
func sarif(t *testing.T, p *plan.Plan, list []checks.Finding, path string) sarifLog {
	t.Helper()
	data, err := checks.SARIF(p, list, path)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatalf("%v in\n%.2000s", err, data)
	}
	if err := schema(t).Validate(doc); err != nil {
		t.Fatalf("not valid SARIF: %#v", err)
	}
	again, err := checks.SARIF(p, list, path)
	if err != nil || !bytes.Equal(data, again) {
		t.Fatalf("the same findings give other bytes the second time (%v)", err)
	}
	var log sarifLog
	if err := json.Unmarshal(data, &log); err != nil {
		t.Fatal(err)
	}
	return log
}

// sarifLog is what these tests look at.
type sarifLog struct {
	Version string
	Runs    []struct {
		Tool struct {
			Driver struct {
				Name, Version string
				Rules         []struct {
					ID, Name             string
					ShortDescription     struct{ Text string }
					Help                 struct{ Text, Markdown string }
					DefaultConfiguration struct{ Level string }
				}
			}
		}
		Results []sarifResult
	}
}

type sarifResult struct {
	RuleID, Kind, Level string
	RuleIndex           int
	Message             struct{ Text string }
	Locations           []struct {
		PhysicalLocation struct {
			ArtifactLocation struct{ URI string }
			Region           *struct{ StartLine, StartColumn int }
		}
		LogicalLocations []struct{ Name, Kind, FullyQualifiedName string }
	}
	PartialFingerprints map[string]string
	Suppressions        []struct {
		Kind, Status, Justification string
		Properties                  struct{ Role, Until string }
	}
}

// The schema itself turns away what is wrong; without that the other tests
// would prove nothing.
func TestSchemaTurnsAway(t *testing.T) {
	data, err := checks.SARIF(read(t, content.Small()), []checks.Finding{{Check: "open-flue", Says: "x", At: entry.Place{Line: 3, Column: 1}}}, "shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	s := schema(t)
	for _, c := range [][2]string{
		{`"version": "2.1.0"`, `"version": "2.0.0"`}, {`"kind": "informational"`, `"kind": "accepted"`},
		{`"level": "none"`, `"level": "stop"`}, {`"startLine": 3`, `"startLine": 0`}, {`"message"`, `"says"`},
		{`"uri": "shop.toml"`, `"uri": "a shop.toml%"`}, {`"columnKind": "unicodeCodePoints"`, `"columnKind": "runes"`},
		{`"name": "dustbook",`, ``}, {`"", ""`, `"", ""`},
	} {
		text := strings.Replace(string(data), c[0], c[1], 1)
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		if err != nil {
			t.Fatalf("%v: %v", c, err)
		}
		if err := s.Validate(doc); (err == nil) != (text == string(data)) {
			t.Errorf("%v: %v", c, err)
		}
	}
}

func TestSARIFOfTheExamples(t *testing.T) {
	for name, text := range map[string][]byte{"example": content.Example(), "small": content.Small(), "starter": content.Starter()} {
		p := read(t, text)
		list := checks.Run(p)
		log := sarif(t, p, list, "shop.toml")
		if log.Version != "2.1.0" || len(log.Runs) != 1 {
			t.Fatalf("%s: version %s, %d runs", name, log.Version, len(log.Runs))
		}
		run := log.Runs[0]
		driver := run.Tool.Driver
		if driver.Name != "dustbook" || driver.Version == "" || len(driver.Rules) != len(checks.All) {
			t.Fatalf("%s: %s %s, %d rules", name, driver.Name, driver.Version, len(driver.Rules))
		}
		for i, r := range driver.Rules {
			c := checks.All[i]
			if r.ID != c.ID || r.Name != c.Name || r.ShortDescription.Text != c.Title+"?" {
				t.Errorf("rule %d: %s %s %s", i, r.ID, r.Name, r.ShortDescription.Text)
			}
			if len(r.Help.Text) < 200 || len(r.Help.Markdown) < 200 || strings.ContainsAny(r.Help.Text, "*`#") || strings.Contains(r.Help.Text, "](") || strings.Contains(r.Help.Markdown, "](") || !strings.Contains(r.Help.Markdown, "## ") {
				t.Errorf("the help of %s: %q", r.ID, r.Help.Text)
			}
		}
		if len(run.Results) != len(list) || len(list) == 0 {
			t.Fatalf("%s: %d results of %d findings", name, len(run.Results), len(list))
		}
		prints := map[string]string{}
		for i, r := range run.Results {
			f := list[i]
			at := r.Locations[0]
			if r.RuleID != f.Check || driver.Rules[r.RuleIndex].ID != f.Check || !strings.HasSuffix(asShown(r.Message.Text), f.Do) || !strings.HasPrefix(asShown(r.Message.Text), f.Says) || f.Says == "" {
				t.Errorf("%s: result %d: %+v of %+v", name, i, r, f)
			}
			if g := at.PhysicalLocation.Region; (g != nil) != f.At.Known() || g != nil && (g.StartLine != f.At.Line || g.StartColumn != f.At.Column) {
				t.Errorf("%s: %s stands at %+v, want %+v", name, f.Check, g, f.At)
			}
			if l := at.LogicalLocations[0]; f.About != "" && (l.Name != f.About || l.Kind != f.Kind || l.FullyQualifiedName != f.Kind+"/"+f.About) || f.About == "" && l.Name != p.Shop.Name {
				t.Errorf("%s: %s is about %+v", name, f.Check, l)
			}
			mark := r.PartialFingerprints["checkThing/v1"]
			if other, twice := prints[mark]; twice || len(mark) != 64 {
				t.Errorf("%s: the fingerprint %s of %s %s is that of %s as well", name, mark, f.Check, f.About, other)
			}
			prints[mark] = f.Check + " " + f.About
			if f.Weight == checks.Stop && driver.Rules[r.RuleIndex].DefaultConfiguration.Level != "error" {
				t.Errorf("%s can say stop, and its default is %s", f.Check, driver.Rules[r.RuleIndex].DefaultConfiguration.Level)
			}
		}
	}
}

// Kinds and levels against the standard's words in sections 3.27.9 and 3.27.10
// of SARIF 2.1.0: a level other than none goes with the kind fail alone.
func TestKindsAndLevels(t *testing.T) {
	states := []checks.State{checks.Met, checks.NotMet, checks.Thin, checks.InPlay, checks.Ask, checks.NotGiven, checks.Advice}
	know := map[checks.State]string{
		checks.Met: "pass none", checks.NotMet: "fail note", checks.Thin: "open none", checks.NotGiven: "open none",
		checks.Ask: "review none", checks.InPlay: "informational none", checks.Advice: "informational none",
	}
	p := read(t, content.Small())
	for _, weight := range []checks.Weight{checks.Stop, checks.Mend, checks.Know} {
		for _, state := range states {
			want := know[state]
			switch {
			case weight == checks.Stop:
				want = "fail error"
			case weight == checks.Mend && state != checks.Met:
				want = "fail warning"
			}
			r := sarif(t, p, []checks.Finding{{Check: "open-flue", Weight: weight, State: state, Says: "x"}}, "shop.toml").Runs[0].Results[0]
			if got := r.Kind + " " + r.Level; got != want {
				t.Errorf("%s, %s: %s, want %s", weight, state, got, want)
			}
			if (r.Kind == "fail") != (r.Level != "none") {
				t.Errorf("%s, %s: the standard forbids %s with %s", weight, state, r.Kind, r.Level)
			}
		}
	}
}

// Each check that can say stop has error for its default, whatever the state
// of the finding; the others have the standard's own, warning.
func TestDefaultLevels(t *testing.T) {
	grinder := change{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"bench grinder\"\nat = [20, 5]"}
	stops := map[string]*plan.Plan{
		"metal-on-wood-main": planOf(t, grinder),
		"open-flue":          planOf(t, change{`kind = "electric"`, `kind = "open-flue gas"`}),
		"garage-separation":  readCase(t, "c38-garage-wall", change{`material = "plastic schedule 40"`, "material = \"spiral steel\"\ngauge = \"26 ga\""}),
		"trigger-path":       drivenPlan(t, change{sawOpens, `opens = ["Lathe gate"]`}),
		"supply-margin":      drivenPlan(t, volts("120 V")),
		"motor-circuit":      planOf(t, fanFed(fiveHorse, `breaker = "30 A", wire = "12 AWG", terminals = "75 C"`)...),
	}
	for check, p := range stops {
		found := 0
		for _, r := range sarif(t, p, checks.Run(p), "shop.toml").Runs[0].Results {
			if r.RuleID == check && r.Kind == "fail" && r.Level == "error" {
				found++
			}
		}
		if found == 0 {
			t.Errorf("%s says no stop here", check)
		}
	}
	for _, r := range sarif(t, read(t, content.Small()), nil, "shop.toml").Runs[0].Tool.Driver.Rules {
		want := "warning"
		if stops[r.ID] != nil {
			want = "error"
		}
		if got := r.DefaultConfiguration.Level; got != want {
			t.Errorf("%s: %s, want %s", r.ID, got, want)
		}
	}
}

// Accepted is suppressed; a stop never is, and the rest has an empty list.
func TestSuppressions(t *testing.T) {
	a := &checks.Acceptance{Reason: "replaced in spring", Role: "steward", Until: entry.Date{Year: 2027, Month: 4, Day: 1}}
	log := sarif(t, read(t, content.Small()), []checks.Finding{
		{Check: "power-cut", Weight: checks.Mend, State: checks.NotMet, Says: "x", Accepted: a},
		{Check: "power-cut", Weight: checks.Know, State: checks.Thin, Says: "x", Accepted: &checks.Acceptance{Reason: "for now"}},
		{Check: "open-flue", Weight: checks.Stop, State: checks.NotMet, Says: "x", Accepted: a},
		{Check: "power-cut", Weight: checks.Mend, State: checks.NotMet, Says: "x"},
	}, "shop.toml")
	var got []string
	for _, r := range log.Runs[0].Results {
		if r.Suppressions == nil {
			t.Error("a result without a list of suppressions: nobody knows whether it counts")
		}
		got = append(got, fmt.Sprint(r.Suppressions))
	}
	if want := "[{inSource accepted replaced in spring {steward 2027-04-01}}]|[{inSource accepted for now { }}]|[]|[]"; strings.Join(got, "|") != want {
		t.Errorf("suppressed: %s\nwant %s", strings.Join(got, "|"), want)
	}
}

// A finding is known again when the lines of the file move, and each of two
// about one thing has its own print.
func TestFingerprintsOutliveMoves(t *testing.T) {
	prints := func(text []byte) (list []string, lines []int) {
		p := read(t, text)
		for _, r := range sarif(t, p, checks.Run(p), "shop.toml").Runs[0].Results {
			list = append(list, r.PartialFingerprints["checkThing/v1"])
			if g := r.Locations[0].PhysicalLocation.Region; g != nil {
				lines = append(lines, g.StartLine)
			}
		}
		return list, lines
	}
	before, at := prints(content.Example())
	after, moved := prints(append([]byte("# one\n# two\n\n"), content.Example()...))
	if fmt.Sprint(before) != fmt.Sprint(after) {
		t.Error("three lines more change the fingerprints")
	}
	if len(at) == 0 || moved[0] != at[0]+3 {
		t.Errorf("the lines did not move: %v, %v", at, moved)
	}
	f := checks.Finding{Check: "open-flue", About: "Saw", Kind: "machine", Says: "x"}
	g, h := f, f
	g.Kind, h.About = "duct", "Saw 2"
	seen := map[string]bool{}
	for _, r := range sarif(t, read(t, content.Small()), []checks.Finding{f, g, h, f, f}, "shop.toml").Runs[0].Results {
		seen[r.PartialFingerprints["checkThing/v1"]] = true
	}
	if len(seen) != 5 {
		t.Errorf("5 findings have %d fingerprints", len(seen))
	}
}

// Names and paths that mean harm stay whole: another program reads back what
// was written.
func TestSARIFOfHostileNames(t *testing.T) {
	p := read(t, content.Small())
	for _, name := range []string{
		`the "big" 'saw' \ <b>&`, "\u202eנגר\u202c منشار", "🪚👩🏽‍🔧", strings.Repeat("ä", 10000), "{0} and {{1}}", "[here](1)", "a\u0000\u001b[31m\u2028b", "]]>", "bad \xff byte", " ",
	} {
		r := sarif(t, p, []checks.Finding{{Check: "open-flue", About: name, Kind: "machine", Says: name + " is slow.", At: entry.Place{Line: 1, Column: 1}}}, name+"/shop.toml").Runs[0].Results[0]
		valid := strings.ToValidUTF8(name, "\ufffd")
		if got := r.Locations[0].LogicalLocations[0].Name; got != valid {
			t.Errorf("%.40q is read back as %.40q", name, got)
		}
		if got := asShown(r.Message.Text); got != valid+" is slow." {
			t.Errorf("the message of %.40q is read as %.60q", name, got)
		}
		if strings.Contains(strings.ReplaceAll(r.Message.Text, `\]`, ""), "](") {
			t.Errorf("the message of %.40q opens a link: %s", name, r.Message.Text)
		}
		u, err := url.Parse(r.Locations[0].PhysicalLocation.ArtifactLocation.URI)
		if err != nil || u.Path != name+"/shop.toml" && u.Path != "./"+name+"/shop.toml" || u.IsAbs() || u.Host != "" {
			t.Errorf("the path of %.40q: %v %v", name, u, err)
		}
	}
	for path, want := range map[string]string{
		"shop.toml": "shop.toml", "my shop/été.toml": "my%20shop/%C3%A9t%C3%A9.toml", "a%20b.toml": "a%2520b.toml", "a#b?c.toml": "a%23b%3Fc.toml", "c:shop.toml": "./c:shop.toml", "../shop.toml": "../shop.toml",
	} {
		r := sarif(t, p, []checks.Finding{{Check: "open-flue", Says: "x"}}, path).Runs[0].Results[0]
		if got := r.Locations[0].PhysicalLocation.ArtifactLocation.URI; got != want {
			t.Errorf("%s is written %s, want %s", path, got, want)
		}
	}
}

// asShown is a message as a reader of the standard shows it: sections 3.11.5
// and 3.11.6.
func asShown(text string) string {
	return strings.NewReplacer("{{", "{", "}}", "}", `\[`, "[", `\]`, "]").Replace(text)
}

// Without findings the log still has its rules and an empty list.
func TestSARIFWithoutFindings(t *testing.T) {
	run := sarif(t, read(t, content.Small()), nil, "shop.toml").Runs[0]
	if run.Results == nil || len(run.Results) != 0 || len(run.Tool.Driver.Rules) != len(checks.All) {
		t.Errorf("%d results, %d rules", len(run.Results), len(run.Tool.Driver.Rules))
	}
}
