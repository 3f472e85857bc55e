package drawing

import (
	"strings"
	"unicode"
)

// piece is a part of a text that is not broken, with the space that follows it
// or none, and the advances of both, measured once.
type piece struct {
	text, space    string
	advance, after int
}

func newPiece(text string, bold bool) piece { return piece{text: text, advance: advance(text, bold)} }

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
			whole := newPiece(part, bold)
			if room(whole.advance, size) <= most {
				list = append(list, whole)
				continue
			}
			for _, sign := range signs(part) {
				list = append(list, newPiece(sign, bold))
			}
		}
		last := &list[len(list)-1]
		last.space, last.after = " ", advance(" ", bold)
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

// filled is a run of pieces set on one line.
type filled struct {
	pieces  []piece
	advance int // without the space after the last
}

// fill sets pieces into lines no wider than a width.
func fill(list []piece, size, width int) []filled {
	var lines []filled
	start, wide, gap := 0, 0, 0
	for i, p := range list {
		if i > start && room(wide+gap+p.advance, size) > width {
			lines = append(lines, filled{list[start:i], wide})
			start, wide, gap = i, 0, 0
		}
		wide += gap + p.advance
		gap = p.after
	}
	return append(lines, filled{list[start:], wide})
}

// texts are what lines say.
func texts(lines []filled) []string {
	set := make([]string, len(lines))
	for i, l := range lines {
		for _, p := range l.pieces {
			set[i] += p.text + p.space
		}
		set[i] = strings.TrimSuffix(set[i], " ")
	}
	return set
}

// simple reports whether a text is plain words with single spaces between.
func simple(text string) bool {
	before := byte(' ')
	for i := range len(text) {
		c := text[i]
		if c < ' ' || c >= 0x7f || c == ' ' && before == ' ' {
			return false
		}
		before = c
	}
	return before != ' '
}

// wrap sets a text into at most so many lines no wider than most, as even as
// they can be. What does not fit is cut short with an ellipsis, and short
// says so.
func wrap(text string, bold bool, size, most, lines int) (set []string, short bool) {
	if simple(text) && textWidth(text, bold, size) <= most {
		return []string{text}, false
	}
	list := pieces(text, bold, size, most)
	if len(list) == 0 {
		return []string{""}, false
	}
	widest := fill(list, size, most)
	if len(widest) <= lines {
		return texts(fill(list, size, evenWidth(list, size, most, len(widest)))), false
	}
	set = texts(widest)
	rest := signs(strings.Join(set[lines-1:], " "))
	for len(rest) > 0 && textWidth(strings.TrimSpace(strings.Join(rest, ""))+"…", bold, size) > most {
		rest = rest[:len(rest)-1]
	}
	return append(set[:lines-1:lines-1], strings.TrimSpace(strings.Join(rest, ""))+"…"), true
}

// evenWidth is the least width up to most at which pieces still take no more
// than so many lines.
func evenWidth(list []piece, size, most, count int) int {
	low, high := 0, most
	for low < high {
		middle := (low + high) / 2
		if set := fill(list, size, middle); len(set) <= count && fits(set, size, middle) {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return high
}

// fits reports whether no line is wider than a width, as one of a single
// piece can be.
func fits(lines []filled, size, width int) bool {
	for _, l := range lines {
		if room(l.advance, size) > width {
			return false
		}
	}
	return true
}

// whole reports whether no word of a text has to be cut to stay within most.
func whole(text string, bold bool, size, most int) bool {
	for _, word := range strings.Fields(drawable(text)) {
		for _, part := range parts(word) {
			if room(advance(part, bold), size) > most {
				return false
			}
		}
	}
	return true
}
