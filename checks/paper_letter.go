package checks

import (
	"path"
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
)

var lettersAnswered = &Check{
	ID:    "letters-answered",
	Name:  say("check.letters-answered.name"),
	Title: say("check.letters-answered.title"),
	Needs: "record.kind, item.asks, item.state, item.gap, item.answered",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, r := range p.Records {
			if r.Kind != letterKind {
				continue
			}
			if len(r.Items) == 0 {
				report(unlisted(r))
			}
			for i, item := range r.Items {
				f := answered(r, item)
				f.About = say("finding-letters-answered.point", f.About, strconv.Itoa(i+1))
				report(f)
			}
		}
	},
}

// Words of how far a point of a letter is.
const (
	itemAnswered string = "answered"
	itemClosed   string = "closed"
)

// letterFinding is a finding about a letter, in the letter's own file.
func letterFinding(r *record.Record) Finding {
	return Finding{About: strings.TrimSuffix(r.File, path.Ext(r.File)), Kind: "letter", By: ByGiven, Weight: Know, File: path.Join(record.Folder, r.File), Basis: ownFile(say("finding-letters-answered.basis", r.Date.String()))}
}

// unlisted is what is found of a letter whose points are not in the record.
func unlisted(r *record.Record) Finding {
	f := letterFinding(r)
	f.State, f.Weight, f.At = NotGiven, Mend, entry.Place{Line: 1, Column: 1}
	f.Says, f.Do = say("finding-letters-answered.no-items.says", r.Date.String()), say("finding-letters-answered.no-items.do")
	return f
}

// answered judges one point of a letter: it is answered or settled and has no
// gap, or something is still to do.
func answered(r *record.Record, item record.Item) Finding {
	f := letterFinding(r)
	f.At = item.Place
	f.Says = say("finding-letters-answered.asks.says", r.Date.String(), shortened(item.Asks))
	switch {
	case item.Gap != "" && item.State != itemClosed:
		f.State, f.Weight = NotMet, Mend
		f.Says = join(f.Says, say("finding-letters-answered.gap.says", shortened(item.Gap)))
		f.Do = say("finding-letters-answered.gap.do")
	case item.State == itemClosed:
		f.State = Met
		f.Says, f.Do = join(f.Says, say("finding-letters-answered.closed.says")), say("finding-letters-answered.closed.do")
	case item.State == itemAnswered || item.State == "" && item.Answered.Given():
		f.State = Met
		f.Says, f.Do = join(f.Says, say("finding-letters-answered.answered.says")), say("finding-letters-answered.answered.do")
	default:
		f.State, f.Weight = NotMet, Mend
		f.Says, f.Do = join(f.Says, say("finding-letters-answered.open.says")), say("finding-letters-answered.open.do")
	}
	return f
}

// mostShown is up to how many letters of a text a sentence quotes.
const mostShown = 200

// shortened is a text as a sentence quotes it: in one line without a point at its
// end, cut where it is long.
func shortened(text string) string {
	line := []rune(strings.TrimSuffix(oneLine(text), "."))
	if len(line) > mostShown {
		return string(line[:mostShown]) + "…"
	}
	return string(line)
}

// oneLine is a text with every run of blanks and ends of lines made one blank.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
