package templates

import (
	"bytes"
	"strings"
)

// Spread reports whether the tables of a sheet lie beside it as a file for a
// spreadsheet: of every sheet but cards and signs, which are there to be hung.
func (s *Sheet) Spread() bool { return s.Card == nil && s.Path != "cards.html" }

// TablePath is the path of the file with the tables of a sheet.
func (s *Sheet) TablePath() string { return strings.TrimSuffix(s.Path, ".html") + ".csv" }

// TableLink is the link of a sheet to its tables as a file.
func (b *Book) TableLink(s *Sheet) []byte {
	var out bytes.Buffer
	if err := pages[s.language()].ExecuteTemplate(&out, "tables.html", s.TablePath()); err != nil {
		panic(err) // a template of the program's own
	}
	return out.Bytes()
}
