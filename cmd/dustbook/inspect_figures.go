package main

import (
	"strings"

	"dustbook/checks"
	"dustbook/plan/source"
)

// figures prints the ids that [[confirmed]] may name, those of the chosen
// checks.
func (p *program) figures(chosen choice) error {
	var list []checks.Confirmable
	for _, f := range checks.Confirmables() {
		if chosen.asks(f.Check.ID) {
			list = append(list, f)
		}
	}
	if p.json {
		data, err := checks.ConfirmablesJSON(list)
		p.result.Write(data)
		return err
	}
	p.print("what [[confirmed]] may name: figure = the id, value = the answer, by = who said so")
	for i, f := range list {
		if i == 0 || list[i-1].Check != f.Check {
			p.print("")
			p.print("  %s", checkHead(f.Check.ID))
		}
		p.figure(f)
	}
	if len(list) == 0 {
		p.print("")
		p.print("  none: no check that was named can be given a figure")
	}
	return nil
}

// figure prints one id.
func (p *program) figure(f checks.Confirmable) {
	p.print("    figure = %q", f.ID)
	p.paragraph("confirms: ", f.Means)
	p.paragraph("value: ", f.Wants())
	if f.Settles {
		p.paragraph("", "settles the stop of this check")
	}
	if len(f.Source) > 0 {
		p.paragraph("source: ", strings.Join(lines(f.Source), "; "))
	}
}

// lines are texts, each on one line.
func lines(list []source.Basis) []string {
	var out []string
	for _, b := range list {
		out = append(out, b.String())
	}
	return out
}
