package main

import (
	"errors"

	"dustbook/checks"
	"dustbook/plan/entry"
	"dustbook/templates"
)

// loadOther reads and reckons the shop that --beside names, as of the day of
// the first, and adds its problems to those of the first, so that all are said
// at once. It is nil where none is named.
func (p *program) loadOther(c *call, first *loaded, asOf entry.Date, err error) (*loaded, error) {
	at, given := c.flags["beside"]
	if !given {
		return nil, err
	}
	path, wrong := find(at)
	if wrong != nil {
		return nil, wrong
	}
	p.progress.step("other")
	if first != nil && first.plan != nil {
		asOf = first.plan.AsOf
	}
	other, wrong := p.loadFile(path, asOf)
	return other, both(err, wrong)
}

// both joins the problems of two files; any other error stands for both.
func both(a, b error) error {
	var first, second entry.Problems
	switch {
	case a == nil:
		return b
	case b == nil, !errors.As(a, &first):
		return a
	case !errors.As(b, &second):
		return b
	}
	return append(first, second...).Err()
}

// layouts are the layouts to set beside the book's own.
func layouts(other *loaded) []templates.Layout {
	if other == nil {
		return nil
	}
	return []templates.Layout{{Plan: other.plan, Findings: checks.Run(other.plan)}}
}
