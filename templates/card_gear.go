package templates

import (
	_ "embed"
	"strings"

	"dustbook/content"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

//go:embed gear.csv
var gearData []byte

//go:embed who.csv
var whoData []byte

// What to wear at a kind of machine, and who may use it in what setting:
// common practice, a row each. The machine's own manual rules.
var (
	gearRows = source.MustRows("gear.csv", gearData, "kind", "gear", "care", "cuts")
	whoRows  = source.MustRows("who.csv", whoData, "setting", "care", "says")
)

// gearRow is the row of a machine's kind; that of any other machine where the
// kind has none.
func gearRow(m *shop.Machine) source.Row {
	last := gearRows[len(gearRows)-1]
	for _, r := range gearRows {
		if r.Text("kind") == m.Kind {
			return r
		}
	}
	return last
}

// gearOf lists what to wear at a machine.
func (b *Book) gearOf(m *shop.Machine) []string { return gearWords(b.words, gearRow(m)) }

// gearWords are the texts of a row of gear.
func gearWords(words content.Words, r source.Row) []string {
	var list []string
	for _, key := range strings.Split(r.Text("gear"), ";") {
		list = append(list, words.Text("gear."+key))
	}
	return list
}

// cuts reports whether a cut can be too heavy for the machine's duct.
func cuts(m *shop.Machine) bool { return gearRow(m).Text("cuts") == "yes" }

// whoMayUse says who may use a machine in the shop's setting.
func (b *Book) whoMayUse(m *shop.Machine) string {
	setting := b.Plan.Shop.Setting
	for _, r := range whoRows {
		same := r.Text("setting") == setting.V
		if !setting.Known() {
			same = r.Text("setting") == "not given"
		}
		if same && r.Text("care") == gearRow(m).Text("care") {
			return b.words.Text(r.Text("says"))
		}
	}
	return ""
}

// gearTable lists the rows for the sheet of sources.
func (b *Book) gearTable(used map[string]bool) sourceTable {
	words := b.words
	group := sourceTable{About: words.Text("sources.gear")}
	for _, r := range gearRows {
		group.Rows = append(group.Rows, sourceRow{What: r.Text("kind"), Value: strings.Join(gearWords(words, r), "; "), Basis: b.note(used, r.Basis)})
	}
	for _, r := range whoRows {
		group.Rows = append(group.Rows, sourceRow{What: words.Text("sources.who", r.Text("setting"), r.Text("care")), Value: words.Text(r.Text("says")), Basis: b.note(used, r.Basis)})
	}
	return group
}
