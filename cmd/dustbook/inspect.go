package main

import (
	"fmt"

	"dustbook/checks"
	"dustbook/plan/entry"
)

// inspect prints the findings. A stop finding among those it shows ends it
// with status 1.
func (p *program) inspect(c *call) error {
	if err := together(c); err != nil {
		return err
	}
	chosen, err := readChoice(c)
	if err != nil {
		return err
	}
	if c.has("figures") {
		return p.figures(chosen)
	}
	asOf, err := c.asOf(p.today())
	if err != nil {
		return err
	}
	l, err := p.load(c, asOf)
	if err != nil {
		return err
	}
	p.progress.step("checking")
	list := checks.Run(l.plan)
	shown := chosen.from(list)
	if err := p.write(c, l, chosen, shown); err != nil {
		return err
	}
	p.leftOut(c, len(list)-len(shown), checks.Standing(list)-checks.Standing(shown))
	if checks.Standing(shown) > 0 {
		return errDiffers
	}
	return nil
}

// together says which flags cannot stand together.
func together(c *call) error {
	if c.has("sarif") && c.has("json") {
		return wrongUse{"--sarif and --json are two ways to print the same", "leave one out"}
	}
	if !c.has("figures") {
		return nil
	}
	for _, name := range []string{"all", "as-of", "sarif", "weight"} {
		if c.has(name) {
			return wrongUse{"--figures prints no findings, and --" + name + " is about findings", "leave one out"}
		}
	}
	if c.shop != "" {
		return wrongUse{"--figures is the same for every shop and was given " + entry.Quote(c.shop), "leave it out"}
	}
	return nil
}

// write prints the findings for people or for programs.
func (p *program) write(c *call, l *loaded, chosen choice, list []checks.Finding) error {
	var data []byte
	var err error
	switch {
	case c.has("sarif"):
		data, err = checks.SARIF(l.plan, toShow(list, c.has("all")), forgePath(l.shown()))
	case p.json:
		data, err = checks.JSON(l.plan, list)
	default:
		p.findings(l, list, chosen, c.has("all"))
	}
	p.result.Write(data)
	return err
}

// leftOut says how many findings a choice leaves out. A program's output has
// no room for it, so there only a stop is told, beside it.
func (p *program) leftOut(c *call, findings, stops int) {
	if findings == 0 {
		return
	}
	says := "left out by --only or --weight: " + count(findings, "finding")
	switch {
	case stops > 0:
		says += fmt.Sprintf(" (%d stop: do not run it until that is settled)", stops)
	case p.json || c.has("sarif"):
		return
	}
	if p.json || c.has("sarif") {
		p.say(says + "; to see all, leave them out")
		return
	}
	p.print("%s", says)
}

// toShow are the findings without those that are met, unless all are asked
// for.
func toShow(list []checks.Finding, all bool) []checks.Finding {
	var shown []checks.Finding
	for _, f := range list {
		if all || f.State != checks.Met {
			shown = append(shown, f)
		}
	}
	return shown
}
