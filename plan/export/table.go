package export

import (
	"bytes"
	"encoding/csv"
	"strings"
)

// Table writes rows of text as comma-separated values after RFC 4180: lines
// end in CR LF, and a field with a comma, a quote or a line end stands in
// quotes. A field that a spreadsheet would run as a formula gets an apostrophe
// before it, so that it stays text; a plain number stays a number.
func Table(rows [][]string) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	for _, row := range rows {
		fields := make([]string, len(row))
		for i, text := range row {
			fields[i] = asText(text)
		}
		_ = w.Write(fields) // a buffer takes whatever is written
	}
	w.Flush()
	return out.Bytes()
}

// asText keeps a field from being run.
func asText(text string) string {
	if text == "" || !strings.ContainsRune("=+-@\t\r", rune(text[0])) || signed(text) {
		return text
	}
	return "'" + text
}

// signed reports whether a text is a number with a sign and nothing else.
func signed(text string) bool {
	rest := strings.TrimLeft(text, "+-")
	return rest != "" && len(text)-len(rest) == 1 && strings.Trim(rest, "0123456789.") == ""
}
