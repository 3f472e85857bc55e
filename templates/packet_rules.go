package templates

import (
	"cmp"
	"slices"

	"dustbook/checks"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// packetRules are the texts that the shop was compared with.
type packetRules struct {
	Pack      string // the key of its name
	Texts     []textRow
	Confirmed []confirmedRow
	Path      string
}

// textRow is one text: which edition was read, and whether it is adopted here
// as far as the file says.
type textRow struct {
	Title, Path, Read, Adopted string
	Known                      bool
}

// confirmedRow is a figure that the owner has had confirmed.
type confirmedRow struct{ Figure, Value, By string }

// packNames are the keys of what the packs of rules are.
var packNames = map[string]string{"none": "rules-sheet.pack-none", "us": "rules-sheet.pack-us", "uk": "rules-sheet.pack-uk", "eu": "rules-sheet.pack-eu", "quebec": "rules-sheet.pack-quebec"}

func (b *Book) packetRules() packetRules {
	v := packetRules{Pack: packNames[b.Plan.Shop.Rules], Path: rulesPath}
	for _, id := range b.compared() {
		v.Texts = append(v.Texts, b.textRow(id))
	}
	for _, c := range b.Plan.Shop.Confirmed {
		v.Confirmed = append(v.Confirmed, confirmedRow{b.figureMeans(c.Figure), c.Value, c.By})
	}
	return v
}

// compared are the documents that the findings by rule and the questions rest
// on, in the order of the list of documents.
func (b *Book) compared() []string {
	used := map[string]bool{}
	for _, f := range b.Findings {
		if f.By != checks.ByRule && f.State != checks.Ask && f.State != checks.InPlay {
			continue
		}
		for _, basis := range f.Basis {
			used[basis.Document] = true
		}
	}
	var list []string
	for _, d := range source.Documents() {
		if used[d.ID] {
			list = append(list, d.ID)
		}
	}
	return list
}

func (b *Book) textRow(id string) textRow {
	d, _ := source.FindDocument(id)
	row := textRow{Title: d.Title, Path: "sources.html#" + documentID(id), Read: cmp.Or(d.Edition, b.notKnown()), Adopted: b.words.Text("packet.adopted-unknown")}
	i := slices.IndexFunc(b.Plan.Shop.Editions, func(e shop.Edition) bool { return e.Text == d.Short })
	if i >= 0 {
		row.Adopted, row.Known = b.words.Text("packet.adopted", b.Plan.Shop.Editions[i].Edition), true
	}
	return row
}
