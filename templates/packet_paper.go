package templates

import (
	"slices"
	"strings"

	"dustbook/checks"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// paperGroup are the papers of one state.
type paperGroup struct {
	Head string // its key
	Note string // the key of what is said of them; empty where nothing
	Rows []paperRow
}

// paperRow is one paper that someone asks to see.
type paperRow struct {
	Name, Path string
	Told       string // what the file says of it
	From       string // who can give it
}

// paperGroups are the papers in hand, those that the book prints, those that
// are missing, and the documents that the file names beside them.
func (b *Book) paperGroups() []paperGroup {
	groups := []paperGroup{{Head: "packet.papers-held"}, {Head: "packet.papers-printed"}, {Head: "packet.papers-missing", Note: "packet.papers-missing-note"}, {Head: "packet.papers-other"}}
	var told []*shop.Document
	for _, paper := range checks.Papers(b.Plan) {
		if paper.Document != nil && paper.State != checks.NotAsked {
			told = append(told, paper.Document)
		}
		if i := slices.Index([]checks.PaperState{checks.Held, checks.InThisBook, checks.Missing}, paper.State); i >= 0 {
			groups[i].Rows = append(groups[i].Rows, b.paperRow(paper))
		}
	}
	for _, d := range b.Plan.Shop.Documents {
		if !slices.Contains(told, d) {
			groups[3].Rows = append(groups[3].Rows, paperRow{Name: d.Kind, Told: b.told(d)})
		}
	}
	return slices.DeleteFunc(groups, func(g paperGroup) bool { return len(g.Rows) == 0 })
}

func (b *Book) paperRow(paper checks.Paper) paperRow {
	row := paperRow{Name: capital(paper.Name)}
	if path := paper.Sheet + ".html"; paper.Sheet != "" && b.has(path) {
		row.Path = path
	}
	if paper.Document != nil {
		row.Told = b.words.Text("packet.paper-named", paper.Document.Kind, b.told(paper.Document))
	}
	if paper.From != "" {
		row.From = paper.From.Says()
	}
	return row
}

// told is what the file says of a document: whether it is in hand, of which
// day and by whom.
func (b *Book) told(d *shop.Document) string {
	text := b.words.Text("packet.paper-not-said")
	switch {
	case d.Held.Stated() && d.Held.V:
		text = b.words.Text("packet.paper-in-hand")
	case d.Held.Stated():
		text = b.words.Text("packet.paper-not-in-hand")
	}
	if d.Date != (entry.Date{}) {
		text = b.words.Text("packet.paper-of", text, d.Date.String())
	}
	if d.By.Stated() {
		text = b.words.Text("packet.paper-by", text, d.By.V)
	}
	return text
}

// has reports whether the book has the sheet of a path.
func (b *Book) has(path string) bool {
	file, _, _ := strings.Cut(path, "#")
	return slices.ContainsFunc(b.Sheets, func(s *Sheet) bool { return s.Path == file })
}
