package templates

import (
	"fmt"
	"html/template"
	"strings"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/source"
)

// checkView is the sheet of one check: its prose and what it found here.
type checkView struct {
	Prose    template.HTML
	Findings []alikeRows
	Needs    string
	ID       string
	Confirms []checks.Confirm
	Sources  []citation
}

// addChecks adds a sheet for each check.
func (b *Book) addChecks() error {
	for _, c := range checks.All {
		v := checkView{Needs: c.Needs, ID: c.ID, Confirms: c.Confirms()}
		prose, err := content.HTML(content.CheckProse(c.ID), b.resolve)
		if err != nil {
			return fmt.Errorf("the prose of %s: %w", c.ID, err)
		}
		v.Prose = template.HTML(prose)
		var bases []source.Basis
		var verdict Verdict
		var rows []findingRow
		counts := map[checks.State]int{}
		for _, f := range b.Findings {
			if f.Check != c.ID {
				continue
			}
			row := b.findingRow(f)
			row.CheckPath = "" // this is the sheet
			rows = append(rows, row)
			counts[f.State]++
			bases = append(bases, f.Basis...)
		}
		v.Sources = b.cited(bases)
		v.Findings = b.alike(rows)
		verdict.Words, verdict.Says = b.tally(counts, rows)
		b.add(&Sheet{Part: partFindings, Path: b.Path("check", c.ID), Title: c.Name, Group: c.Family().Name, Kind: "check", Lede: b.words.Text("check.asks", c.Title), Verdict: verdict, name: "check.html", view: func() any { return v }})
	}
	return nil
}

// alikeRows are findings that ask for the same: where there are several, what
// to do is said once, before them.
type alikeRows struct {
	Head, Do string
	Rows     []findingRow
}

// alike groups findings by what they say to do, each group where its first
// finding stands.
func (b *Book) alike(rows []findingRow) []alikeRows {
	var groups []alikeRows
	at := map[string]int{}
	for _, row := range rows {
		i, known := at[row.Do]
		if !known {
			i = len(groups)
			at[row.Do], groups = i, append(groups, alikeRows{Do: row.Do})
		}
		groups[i].Rows = append(groups[i].Rows, row)
	}
	for i := range groups {
		g := &groups[i]
		if len(g.Rows) == 1 {
			g.Do = "" // it stands with the finding
			continue
		}
		g.Head = b.words.Count("check.do-at", len(g.Rows))
		for k := range g.Rows {
			g.Rows[k].Do = ""
		}
	}
	return groups
}

// tally says how often each state was found, the worst first.
func (b *Book) tally(counts map[checks.State]int, rows []findingRow) ([]Word, string) {
	if len(rows) == 0 {
		return []Word{{"blank", b.words.Text("check.nothing-to-look-at")}}, b.words.Text("check.nothing")
	}
	var words []Word
	var parts []string
	for _, s := range []checks.State{checks.NotMet, checks.Ask, checks.Thin, checks.InPlay, checks.NotGiven, checks.Advice, checks.Met} {
		if n := counts[s]; n > 0 {
			if len(words) == 0 {
				words = append(words, stateWord(s))
			}
			parts = append(parts, fmt.Sprintf("%d %s", n, s))
		}
	}
	return words, b.countWith("check.looked-at", len(rows), strings.Join(parts, ", "))
}

// resolve turns a link of a prose text into a sheet of the book.
func (b *Book) resolve(link string) (string, bool) {
	switch link {
	case "assumptions", "sources", "findings", "plan", "ducts", "contents", "reading":
		return link + ".html", true
	}
	if id, ok := strings.CutPrefix(link, "check:"); ok && checks.Find(id) != nil {
		return b.Path("check", id), true
	}
	return "", false
}
