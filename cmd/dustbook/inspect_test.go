package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"dustbook/content"
)

// The three ways to print list the same findings, whatever is chosen: the
// check, the line, the thing and the state of each.
func TestThreeWaysListTheSame(t *testing.T) {
	for name, text := range map[string]string{"school": string(content.Example()), "small": string(content.Small()), "starter": string(content.Starter()), "hostile": hostile()} {
		file := filepath.Join(t.TempDir(), "shop.toml")
		if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		total := 0
		for _, chosen := range [][]string{
			nil, {"--weight", "mend,stop"}, {"--only", "power-cut"},
			{"--only", "air-captured,fan-on-curve", "--only", "filter-load", "--weight", "know"},
		} {
			var lists [][]string
			statuses := map[int]bool{}
			for _, way := range []string{"--all", "--json", "--sarif"} {
				args := append([]string{"inspect", file, "--as-of", "2026-11-24", way}, chosen...)
				if way == "--sarif" {
					args = append(args, "--all")
				}
				data, status := inspected(t, args)
				if chosen == nil {
					if again, _ := inspected(t, args); !bytes.Equal(data, again) {
						t.Errorf("%s %v: the second run prints other bytes", name, args[2:])
					}
				}
				statuses[status] = true
				list := map[string]func(*testing.T, []byte) []string{"--all": ofText, "--json": ofJSON, "--sarif": ofSARIF}[way](t, data)
				slices.Sort(list)
				lists = append(lists, list)
			}
			if len(statuses) != 1 {
				t.Errorf("%s %v: ends with %v", name, chosen, statuses)
			}
			for i, other := range lists[1:] {
				if !slices.Equal(lists[0], other) {
					t.Errorf("%s %v: text lists\n%.3000s\nand way %d\n%.3000s", name, chosen, strings.Join(lists[0], "\n"), i+1, strings.Join(other, "\n"))
				}
			}
			if total += len(lists[0]); chosen == nil && len(lists[0]) < 5 {
				t.Errorf("%s: only %d findings", name, len(lists[0]))
			}
		}
		if total < 10 {
			t.Errorf("%s: %d findings in all", name, total)
		}
	}
}

// The choices by weight make up the whole, and none is in two.
func TestWeightsMakeUpTheWhole(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.toml")
	if err := os.WriteFile(file, content.Example(), 0o666); err != nil {
		t.Fatal(err)
	}
	args := []string{"inspect", file, "--as-of", "2026-11-24", "--json"}
	data, _ := inspected(t, args)
	whole := ofJSON(t, data)
	var parts []string
	for _, w := range weights {
		data, _ := inspected(t, append(slices.Clone(args), "--weight", string(w.weight)))
		parts = append(parts, ofJSON(t, data)...)
	}
	if !slices.Equal(whole, parts) || len(whole) == 0 {
		t.Errorf("%d findings, and %d by weight", len(whole), len(parts))
	}
}

// hostile is the small example with names that mean harm.
func hostile() string {
	names := []string{`a \"quoted\" <b>&amp; 'name'`, "\u0645\u0646\u0634\u0627\u0631 \u05e0\u05d2\u05e8", "\U0001fa9a {0} [x](1)", strings.Repeat("\u00e4", 70)}
	var b strings.Builder
	for i, name := range names {
		fmt.Fprintf(&b, "[[machine]]\nname = \"%s\"\nkind = \"planer\"\n[[duct]]\nname = \"%s pipe\"\nto = \"Fan\"\nsize = \"5 in\"\nlength = \"%d ft\"\nserves = [\"%s\"]\n", name, name, 10+i, name)
	}
	return b.String() + "[shop]\nname = \"\U0001f3ed \u202bshop\u202c\"\nsetting = \"home\"\n[[collector]]\nname = \"Fan\"\ninlet = \"6 in\"\nclaims = { flow = \"1500 cfm\", suction = \"11 inwg\" }\n"
}

// inspected is what a run prints and how it ends.
func inspected(t *testing.T, args []string) ([]byte, int) {
	t.Helper()
	var out bytes.Buffer
	p, said := quiet(&out)
	status := p.run(args)
	if status > statusDiffers {
		t.Fatalf("%v ends with %d: %s", args, status, said)
	}
	return bytes.Clone(out.Bytes()), status
}

var (
	headLine  = regexp.MustCompile(`^  ([a-z-]+): `)
	placeLine = regexp.MustCompile(`^  \S*shop\.toml(?::(\d+))?: (.*), ([a-z ]+)$`)
)

func ofText(t *testing.T, data []byte) (list []string) {
	check := ""
	for line := range strings.Lines(string(data)) {
		line = strings.TrimSuffix(line, "\n")
		if m := placeLine.FindStringSubmatch(line); m != nil {
			list = append(list, fmt.Sprint(check, "|", m[1], "|", m[2], "|", m[3]))
		} else if m := headLine.FindStringSubmatch(line); m != nil {
			check = m[1]
		}
	}
	return list
}

func ofJSON(t *testing.T, data []byte) (list []string) {
	var doc struct {
		Findings []struct {
			Check, About, State string
			Line                int
		}
	}
	if err := json.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	for _, f := range doc.Findings {
		list = append(list, asListed(f.Check, f.Line, f.About, f.State))
	}
	return list
}

func ofSARIF(t *testing.T, data []byte) (list []string) {
	var log struct {
		Runs []struct {
			Results []struct {
				RuleID    string
				Locations []struct {
					PhysicalLocation struct{ Region struct{ StartLine int } }
					LogicalLocations []struct{ Name, Kind string }
				}
				Properties struct{ State string }
			}
		}
	}
	if err := json.Unmarshal(data, &log); err != nil {
		t.Fatal(err)
	}
	for _, r := range log.Runs[0].Results {
		at := r.Locations[0]
		about := at.LogicalLocations[0].Name
		if at.LogicalLocations[0].Kind == "shop" {
			about = ""
		}
		list = append(list, asListed(r.RuleID, at.PhysicalLocation.Region.StartLine, about, r.Properties.State))
	}
	return list
}

// asListed is a finding as the terminal names it.
func asListed(check string, line int, about, state string) string {
	where := ""
	if line > 0 {
		where = fmt.Sprint(line)
	}
	if about == "" {
		about = "the shop"
	}
	return fmt.Sprint(check, "|", where, "|", clean(about), "|", state)
}
