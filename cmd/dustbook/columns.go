package main

import (
	"strings"
	"unicode/utf8"
)

// columns is a table for the terminal: the cells of a column stand under one
// another, by characters.
type columns struct {
	right map[int]bool // columns whose cells end under one another
	rows  [][]string
}

func (t *columns) add(cells ...string) { t.rows = append(t.rows, cells) }

// lines writes the rows, each behind an indent and without spaces at its end.
func (t *columns) lines(indent string) []string {
	var widths []int
	for _, row := range t.rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	var list []string
	for _, row := range t.rows {
		var line strings.Builder
		line.WriteString(indent)
		for i, cell := range row {
			if i > 0 {
				line.WriteString("  ")
			}
			gap := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			if t.right[i] {
				line.WriteString(gap + cell)
			} else {
				line.WriteString(cell + gap)
			}
		}
		list = append(list, strings.TrimRight(line.String(), " "))
	}
	return list
}
