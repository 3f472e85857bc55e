package drawing

import (
	"strings"
	"unicode"
)

// piece is a part of a text that is not broken, with whether a space follows.
type piece struct {
	text  string
	space bool
}

// drawable leaves out signs that draw nothing and change the order of others:
// the marks that embed and override directions.
func drawable(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069, r == 0xfeff:
			return -1
		case r == 0x2028 || r == 0x2029 || unicode.IsControl(r):
			return ' '
		}
		return r
	}, text)
}

// pieces cuts a text at spaces, after dashes and between square signs; what
// is still wider than most is cut between signs.
func pieces(text string, bold bool, size, most int) []piece {
	var list []piece
	for _, word := range strings.Fields(drawable(text)) {
		for _, part := range parts(word) {
			if textWidth(part, bold, size) <= most {
				list = append(list, piece{text: part})
				continue
			}
			for _, sign := range signs(part) {
				list = append(list, piece{text: sign})
			}
		}
		list[len(list)-1].space = true
	}
	return list
}

// parts cuts a word after dashes and around square signs.
func parts(word string) []string {
	var list []string
	start := 0
	runes := []rune(word)
	for i := 1; i < len(runes); i++ {
		if runes[i-1] == '-' && i > 1 || (wide(runes[i-1]) || wide(runes[i])) && !silent(runes[i]) {
			list = append(list, string(runes[start:i]))
			start = i
		}
	}
	return append(list, string(runes[start:]))
}

// signs cuts a word into signs, each with what belongs to it.
func signs(word string) []string {
	var list []string
	joined := false
	for _, r := range word {
		modifies := silent(r) || r >= 0x1f3fb && r <= 0x1f3ff
		if (modifies || joined) && len(list) > 0 {
			list[len(list)-1] += string(r)
		} else {
			list = append(list, string(r))
		}
		joined = r == 0x200d
	}
	return list
}

// fill sets pieces into lines no wider than a width.
func fill(list []piece, bold bool, size, width int) []string {
	var lines []string
	line, gap := "", ""
	for _, p := range list {
		if line != "" && textWidth(line+gap+p.text, bold, size) > width {
			lines = append(lines, line)
			line, gap = "", ""
		}
		line += gap + p.text
		gap = ""
		if p.space {
			gap = " "
		}
	}
	return append(lines, line)
}

// wrap sets a text into at most so many lines no wider than most, as even as
// they can be. What does not fit is cut short with an ellipsis, and short
// says so.
func wrap(text string, bold bool, size, most, lines int) (set []string, short bool) {
	list := pieces(text, bold, size, most)
	if len(list) == 0 {
		return []string{""}, false
	}
	for n := 1; n <= lines; n++ {
		if len(fill(list, bold, size, most)) > n {
			continue
		}
		low, high := 0, most // the least width that still takes n lines
		for low < high {
			middle := (low + high) / 2
			if set := fill(list, bold, size, middle); len(set) <= n && widest(set, bold, size) <= middle {
				high = middle
			} else {
				low = middle + 1
			}
		}
		return fill(list, bold, size, high), false
	}
	set = fill(list, bold, size, most)
	rest := signs(strings.Join(set[lines-1:], " "))
	for len(rest) > 0 && textWidth(strings.TrimSpace(strings.Join(rest, ""))+"…", bold, size) > most {
		rest = rest[:len(rest)-1]
	}
	return append(set[:lines-1:lines-1], strings.TrimSpace(strings.Join(rest, ""))+"…"), true
}

func widest(lines []string, bold bool, size int) int {
	w := 0
	for _, line := range lines {
		w = max(w, textWidth(line, bold, size))
	}
	return w
}
