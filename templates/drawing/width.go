package drawing

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"strconv"
	"unicode"
)

//go:embed widths.csv
var widthData []byte

// widths are the advance widths of the signs in the table, in thousandths of
// the font size: regular and bold.
var widths = readWidths(widthData)

// common are the widths of the signs most texts are made of, nought for one
// outside the table.
var common = func() (list [0x180][2]int) {
	for i := range list {
		list[i] = widths[rune(i)]
	}
	return list
}()

// readWidths reads the table. A malformed row is a fault of the program,
// found by its first test, so it panics.
func readWidths(data []byte) map[rune][2]int {
	in := csv.NewReader(bytes.NewReader(data))
	in.Comment = '#'
	rows, err := in.ReadAll()
	if err != nil {
		panic("drawing: widths.csv: " + err.Error())
	}
	table := map[rune][2]int{}
	for _, row := range rows[1:] {
		code, err := strconv.ParseUint(row[0], 16, 32)
		regular, err2 := strconv.Atoi(row[1])
		bold, err3 := strconv.Atoi(row[2])
		if err != nil || err2 != nil || err3 != nil {
			panic("drawing: widths.csv: " + row[0])
		}
		table[rune(code)] = [2]int{regular, bold}
	}
	return table
}

// Widths of signs outside the table, in thousandths. Common practice, no
// source: on the safe side of what fonts have.
const (
	otherWidth = 720  // letters of other scripts
	wideWidth  = 1050 // signs that fill a square: Chinese, Japanese, Korean
	emojiWidth = 1400
)

// signWidth is the advance width of one sign.
func signWidth(r rune, bold bool) int {
	if weight := 0; r >= 0 && int(r) < len(common) {
		if bold {
			weight = 1
		}
		if w := common[r][weight]; w > 0 {
			return w
		}
	}
	if w, ok := widths[r]; ok {
		if bold {
			return w[1]
		}
		return w[0]
	}
	switch {
	case silent(r):
		return 0
	case wide(r):
		return wideWidth
	case r >= 0x2190 && r < 0x2c00 || r >= 0x1f000:
		return emojiWidth
	}
	return otherWidth
}

// silent reports whether a sign takes no room of its own.
func silent(r rune) bool { return unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) }

// wide reports whether a sign fills a square.
func wide(r rune) bool {
	return unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul) || r >= 0x3000 && r < 0x3400 || r >= 0xff00 && r < 0xff61 || r >= 0x20000 && r < 0x40000
}

// slack is added to every width, in hundredths, for fonts that stand in.
const slack = 3

// textWidth is the room a text takes at a size, in tenths.
func textWidth(text string, bold bool, size int) int { return room(advance(text, bold), size) }

// advance is the sum of the widths of a text's signs, in thousandths of the
// font size. Texts set behind each other add up.
func advance(text string, bold bool) int {
	sum := 0
	for _, r := range text {
		sum += signWidth(r, bold)
	}
	return sum
}

// room is what an advance takes at a size, in tenths.
func room(advance, size int) int { return (advance*size*(100+slack) + 99999) / 100000 }
