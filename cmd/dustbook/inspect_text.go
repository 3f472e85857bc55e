package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"dustbook/checks"
)

// weightGroup is a group of findings, with what it asks of the reader.
type weightGroup struct {
	weight checks.Weight
	head   string
}

// weights are the groups of findings, the gravest first.
var weights = []weightGroup{
	{checks.Stop, "stop: do not run it until this is settled"},
	{checks.Mend, "mend: put this right"},
	{checks.Know, "know"},
}

// lineWidth is where the text of a finding is folded.
const lineWidth = 76

// isAccepted reports whether someone lives with a finding for now. A stop
// stands whatever the file says of it.
func isAccepted(f checks.Finding) bool { return f.Accepted != nil && f.Weight != checks.Stop }

// findings prints the findings by weight, then by check, and counts them.
func (p *program) findings(l *loaded, list []checks.Finding, chosen choice, all bool) {
	p.print("%s, as of %s", l.plan.Shop.Name, l.plan.AsOf)
	var counts []string
	for _, group := range weights {
		var shown []checks.Finding
		n := 0
		for _, f := range list {
			if f.Weight != group.weight || isAccepted(f) || f.State == checks.Met && !all {
				continue
			}
			shown = append(shown, f)
			if f.State != checks.Met {
				n++
			}
		}
		p.group(l, group.head, shown)
		if chosen.shows(group.weight) {
			counts = append(counts, fmt.Sprintf("%d %s", n, group.weight))
		}
	}
	var accepted []checks.Finding
	met := 0
	for _, f := range list {
		switch {
		case f.State == checks.Met:
			met++
		case isAccepted(f):
			accepted = append(accepted, f)
		}
	}
	p.group(l, "accepted for now", accepted)
	if len(accepted) > 0 {
		counts = append(counts, fmt.Sprintf("%d accepted", len(accepted)))
	}
	hint := " (--all lists them)"
	if all || met == 0 {
		hint = ""
	}
	p.print("")
	p.print("%s; %d met%s", strings.Join(counts, ", "), met, hint)
}

// group prints findings under a head, check by check.
func (p *program) group(l *loaded, head string, list []checks.Finding) {
	if len(list) == 0 {
		return
	}
	p.print("")
	p.print("%s", head)
	for i, f := range list {
		if i == 0 || list[i-1].Check != f.Check {
			p.print("")
			p.print("  %s", checkHead(f.Check))
		}
		p.finding(l.shown(), f)
		// what several of a check ask for in the same words is said once
		if i+1 == len(list) || !sameDo(f, list[i+1]) {
			p.paragraph("do: ", f.Do)
			p.paragraph("ask "+f.Whom.Says()+": ", f.Asks)
		}
	}
}

// checkHead is a check by its id and name.
func checkHead(id string) string {
	if c := checks.Find(id); c != nil {
		return id + ": " + c.Name
	}
	return id
}

func sameDo(a, b checks.Finding) bool {
	return a.Check == b.Check && a.Do == b.Do && a.Asks == b.Asks && a.Whom == b.Whom
}

// finding prints one finding: where it stands, and what it says.
func (p *program) finding(file string, f checks.Finding) {
	where := f.FileBeside(filepath.ToSlash(file))
	if f.At.Known() {
		where = fmt.Sprintf("%s:%d", where, f.At.Line)
	}
	about := f.About
	if about == "" {
		about = "the shop"
	}
	p.print("  %s: %s, %s", where, about, f.State)
	p.paragraph("", f.Says)
	if isAccepted(f) {
		p.paragraph("", f.Accepted.Says())
	}
}

// paragraph prints a text folded below a finding.
func (p *program) paragraph(label, text string) {
	for i, line := range folded(text, lineWidth-len(label)) {
		if i > 0 {
			label = strings.Repeat(" ", len(label))
		}
		p.print("      %s%s", label, line)
	}
}
