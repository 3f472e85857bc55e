package templates

import (
	"bytes"
	"slices"
	"strings"
)

// spreads are the sheets whose tables people take into a spreadsheet, by the
// start of their paths.
var spreads = []string{
	"assumptions.html", "circuits.html", "ducts.html", "enough.html", "fields.html", "first.html", "gauges.html", "register.html", "rooms.html",
	"setting.html", "sizes.html", "sources.html", "sources-control.html", "together.html", "triggers.html", "upkeep.html", "use-", "wiring-",
}

// Spread reports whether the tables of a sheet lie beside it as files for a
// spreadsheet.
func (s *Sheet) Spread() bool {
	return slices.ContainsFunc(spreads, func(start string) bool { return strings.HasPrefix(s.Path, start) })
}

// TableLinks are the links of a sheet to its tables as files.
func (b *Book) TableLinks(paths []string) []byte {
	var out bytes.Buffer
	if err := pages[b.words.Language()].ExecuteTemplate(&out, "tables.html", paths); err != nil {
		panic(err) // a template of the program's own
	}
	return out.Bytes()
}
