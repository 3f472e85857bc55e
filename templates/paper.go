package templates

import (
	"slices"

	"dustbook/checks"
	"dustbook/plan/air"
	"dustbook/plan/control"
	"dustbook/plan/control/chain"
	"dustbook/plan/control/circuit"
	"dustbook/plan/control/sequence"
	"dustbook/plan/control/timing"
	"dustbook/plan/duct"
	"dustbook/plan/room"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/takeoff"
	"dustbook/plan/unit"
)

// addAssumptions adds the sheet of the defaults in use.
func (b *Book) addAssumptions() {
	groups := b.taken.groups
	v := Verdict{Words: []Word{{"met", b.words.Text("sources.none")}}, Says: b.words.Text("sources.the-file-leaves-nothing-to")}
	if len(groups) > 0 {
		weak := 0
		for _, g := range groups {
			if g.Weak.Class == "thin" {
				weak++
			}
		}
		v = Verdict{Words: []Word{{"thin", b.words.Text("sources.assumed")}}, Says: b.words.Count("sources.defaults", len(groups)) + " " + b.words.Count("sources.weak-of-them", weak), Do: b.words.Text("sources.put-your-own-figure-into")}
	}
	b.add(&Sheet{Part: partFindings, Path: "assumptions.html", Title: b.words.Text("sources.assumptions"), Kind: "table", Lede: b.words.Text("sources.every-default-in-use-what"), Verdict: v, name: "assumptions.html", view: func() any { return groups }})
}

// sourcesView lists the documents and the data rows that name them.
type sourcesView struct {
	Documents []documentRow
	Tables    []sourceTable
}

type documentRow struct{ ID, Title, Edition, Note string }

type sourceTable struct {
	About string
	Rows  []sourceRow
}

type sourceRow struct{ What, Value, Basis string }

func (b *Book) addSources() {
	var v sourcesView
	used := map[string]bool{}
	v.Tables = append(b.shopTables(used), b.reckoningTables(used)...)
	driven := sourcesView{Tables: b.dataTables(used, slices.Concat([]source.Table{shop.MotorTable()}, control.Tables(), sequence.Tables(), timing.Tables(), chain.Tables(), circuit.Tables()))}
	for _, a := range b.Plan.Shop.Assumed {
		b.note(used, a.Basis)
	}
	for _, f := range b.Findings {
		for _, basis := range f.Basis {
			b.note(used, basis)
		}
	}
	for _, r := range checks.Rules() {
		b.note(used, r.Basis)
	}
	for _, d := range source.Documents() {
		if used[d.ID] {
			v.Documents = append(v.Documents, documentRow{documentID(d.ID), d.Title, d.Edition, d.Note})
		}
	}
	b.add(&Sheet{Part: partFindings, Path: "sources.html", Title: b.words.Text("sources.sources"), Kind: "table", Lede: b.words.Text("sources.the-documents-behind-the-figures"), Verdict: b.lookUp("sources"), name: "sources.html", view: func() any { return v }})
	b.add(&Sheet{Part: partFindings, Path: "sources-control.html", Title: b.words.Text("sources.control"), Kind: "table", Lede: b.words.Text("sources.control-lede"), Verdict: b.lookUp("sources"), name: "sources.html", view: func() any { return driven }})
}

// note keeps the documents a table names.
func (b *Book) note(used map[string]bool, basis source.Basis) string {
	if basis.Document != "" {
		used[basis.Document] = true
	}
	return basis.In(b.words.Mark)
}

// shopTables are the defaults of the shop file.
func (b *Book) shopTables(used map[string]bool) []sourceTable {
	ports := sourceTable{About: b.words.Text("sources.ports")}
	for _, k := range shop.Kinds() {
		for _, p := range k.Ports {
			name := b.words.Text("sources.port-of", k.Name, p.Name)
			if flow, ok := p.Flow[b.units]; ok {
				ports.Rows = append(ports.Rows, sourceRow{name, b.words.Text("sources.size-and-flow", unit.Size.Print(b.units, p.Size[b.units]), unit.Air.Print(b.units, flow)), b.note(used, p.Need[b.units])})
			}
			ports.Rows = append(ports.Rows, sourceRow{b.words.Text("sources.hood-loss", name), unit.Short(p.HoodLoss), b.note(used, p.Hood)})
		}
	}
	pipes := sourceTable{About: b.words.Text("sources.pipes")}
	for _, m := range shop.Materials() {
		pipes.Rows = append(pipes.Rows, sourceRow{b.words.Text("sources.roughness", m.Name), unit.Thin.Print(b.units, m.Roughness), b.note(used, m.Basis)})
	}
	for _, h := range shop.Hoses() {
		pipes.Rows = append(pipes.Rows, sourceRow{b.words.Text("sources.roughness", h.Name), unit.Thin.Print(b.units, h.Roughness), b.note(used, h.Basis)})
	}
	for _, e := range shop.Elbows() {
		pipes.Rows = append(pipes.Rows, sourceRow{b.words.Text("sources.elbow", e.Name), unit.Short(e.K90), b.note(used, e.Basis)})
	}
	fields := sourceTable{About: b.words.Text("sources.fields")}
	for _, r := range shop.Rows() {
		if r.Default != "" && r.Basis.Mark != 0 {
			fields.Rows = append(fields.Rows, sourceRow{r.Table + "." + r.Field, r.Default, b.note(used, r.Basis)})
		}
	}
	return []sourceTable{ports, pipes, fields}
}

// reckoningTables are the figures of the method and of the checks.
func (b *Book) reckoningTables(used map[string]bool) []sourceTable {
	carry := sourceTable{About: b.words.Text("sources.carry")}
	for _, r := range duct.TransportRows() {
		carry.Rows = append(carry.Rows, sourceRow{b.words.Text("sources.about", r.Text("case"), r.Text("about")), r.Text("speed"), b.note(used, r.Basis)})
	}
	tables := []sourceTable{carry}
	tables = append(tables, b.dataTables(used, slices.Concat(air.Tables(), duct.Tables(), room.Tables(), takeoff.Tables()))...)
	compared := sourceTable{About: b.words.Text("sources.compared")}
	for _, r := range checks.FigureRows() {
		compared.Rows = append(compared.Rows, sourceRow{b.words.Text("sources.about", r.Text("figure"), r.Text("about")), r.Text("value"), b.note(used, r.Basis)})
	}
	return append(tables, compared, b.proofTable(used), b.gearTable(used))
}

// dataTables are the rows of tables beside the packages that reckon with them.
func (b *Book) dataTables(used map[string]bool, list []source.Table) []sourceTable {
	var tables []sourceTable
	for _, t := range list {
		group := sourceTable{About: b.words.Text("source-table." + t.Key())}
		for _, r := range t.Rows {
			what, value := r.Named()
			group.Rows = append(group.Rows, sourceRow{what, value, b.note(used, r.Basis)})
		}
		tables = append(tables, group)
	}
	return tables
}

// proofTable are the figures of commissioning.
func (b *Book) proofTable(used map[string]bool) sourceTable {
	group := sourceTable{About: b.words.Text("sources.proof")}
	for _, r := range duct.ProofRows() {
		of := "sources.of-unit"
		if r.Text("unit") == "D" {
			of = "sources.bores"
		}
		group.Rows = append(group.Rows, sourceRow{b.words.Text("sources.about", r.Text("figure"), r.Text("about")), b.words.Text(of, r.Text("value"), r.Text("unit")), b.note(used, r.Basis)})
	}
	for _, r := range duct.TraverseRows() {
		group.Rows = append(group.Rows, sourceRow{b.words.Text("sources.traverse", r.Text("family"), r.Text("point")), b.words.Text("sources.from-wall", r.Text("fraction")), b.note(used, r.Basis)})
	}
	return group
}
