package main

import (
	"fmt"
	"strings"

	"dustbook/checks"
)

// weights are the groups of findings, the gravest first, with what each asks
// of the reader.
var weights = []struct {
	weight checks.Weight
	head   string
}{
	{checks.Stop, "stop: do not run it until this is settled"},
	{checks.Mend, "mend: put this right"},
	{checks.Know, "know"},
}

// lineWidth is where the text of a finding is folded.
const lineWidth = 76

// inspect prints the findings. A stop finding that stands ends it with
// status 1.
func (p *program) inspect(c *call) error {
	asOf, err := c.asOf(p.today())
	if err != nil {
		return err
	}
	l, err := p.load(c, asOf)
	if err != nil {
		return err
	}
	list := checks.Run(l.plan)
	if p.json {
		data, err := checks.JSON(l.plan, list)
		if err != nil {
			return err
		}
		p.result.Write(data)
	} else {
		p.findings(l, list, c.has("all"))
	}
	if checks.Standing(list) > 0 {
		return errDiffers
	}
	return nil
}

// findings prints the findings by weight and counts them.
func (p *program) findings(l *loaded, list []checks.Finding, all bool) {
	p.print("%s, as of %s", l.plan.Shop.Name, l.plan.AsOf)
	met := 0
	for _, f := range list {
		if f.State == checks.Met {
			met++
		}
	}
	var counts []string
	for _, group := range weights {
		n, headed := 0, false
		for _, f := range list {
			if f.Weight != group.weight || f.State == checks.Met && !all {
				continue
			}
			if !headed {
				p.print("")
				p.print("%s", group.head)
				headed = true
			}
			p.finding(l.shown(), f)
			if f.State != checks.Met {
				n++
			}
		}
		counts = append(counts, fmt.Sprintf("%d %s", n, group.weight))
	}
	hint := " (--all lists them)"
	if all || met == 0 {
		hint = ""
	}
	p.print("")
	p.print("%s; %d met%s", strings.Join(counts, ", "), met, hint)
}

// finding prints one finding: where it stands, what it says, what to do and
// what to ask.
func (p *program) finding(file string, f checks.Finding) {
	where := file
	if f.At.Known() {
		where = fmt.Sprintf("%s:%d", file, f.At.Line)
	}
	about := f.About
	if about == "" {
		about = "the shop"
	}
	p.print("  %s: %s: %s, %s", where, about, f.Check, f.State)
	p.paragraph("", f.Says)
	p.paragraph("do: ", f.Do)
	p.paragraph("ask: ", f.Asks)
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
