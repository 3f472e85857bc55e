package templates

import (
	"dustbook/checks"
	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// assumptionGroup is one default with everything it stands in for.
type assumptionGroup struct {
	Field, Value, Basis string
	FieldPath           string
	Weak                Word
	Things              []string
}

func (b *Book) addAssumptions() {
	var groups []*assumptionGroup
	byKey := map[[3]string]*assumptionGroup{}
	for _, a := range b.Plan.Shop.Assumed {
		key := [3]string{a.Field, a.Value, a.Basis.String()}
		g := byKey[key]
		if g == nil {
			g = &assumptionGroup{Field: a.Field, FieldPath: fieldPath(a.Field), Value: a.Value, Basis: a.Basis.String(), Weak: Word{"met", b.words.Text("sources.sourced")}}
			if a.Basis.Mark.Weak() {
				g.Weak = Word{"thin", b.words.Text("sources.weak")}
			}
			byKey[key] = g
			groups = append(groups, g)
		}
		g.Things = append(g.Things, a.Thing)
	}
	v := Verdict{Words: []Word{{"met", b.words.Text("sources.none")}}, Says: b.words.Text("sources.the-file-leaves-nothing-to")}
	if len(groups) > 0 {
		weak := 0
		for _, g := range groups {
			if g.Weak.Class == "thin" {
				weak++
			}
		}
		v = Verdict{Words: []Word{{"thin", b.words.Text("sources.assumed")}}, Says: count(len(groups), b.words.Text("sources.default-stands"), "defaults stand") + " in for what the file leaves out; " + count(weak, "rests", "rest") + " on memory or common practice.", Do: b.words.Text("sources.put-your-own-figure-into")}
	}
	b.add(&Sheet{Part: partFindings, Path: "assumptions.html", Title: b.words.Text("sources.assumptions"), Kind: "table", Lede: b.words.Text("sources.every-default-in-use-what"), Verdict: v, name: "assumptions.html", view: func() any { return groups }})
}

// sourcesView lists the documents and the data rows that name them.
type sourcesView struct {
	Documents []documentRow
	Tables    []sourceTable
}

type documentRow struct{ Title, Edition, Note string }

type sourceTable struct {
	About string
	Rows  []sourceRow
}

type sourceRow struct{ What, Value, Basis string }

func (b *Book) addSources() {
	var v sourcesView
	used := map[string]bool{}
	v.Tables = append(b.shopTables(used), reckoningTables(used)...)
	for _, d := range source.Documents() {
		if used[d.ID] {
			v.Documents = append(v.Documents, documentRow{d.Title, d.Edition, d.Note})
		}
	}
	b.add(&Sheet{Part: partFindings, Path: "sources.html", Title: b.words.Text("sources.sources"), Kind: "table", Lede: b.words.Text("sources.the-documents-behind-the-figures"), Verdict: b.lookUp("sources"), name: "sources.html", view: func() any { return v }})
}

// note keeps the documents a table names.
func note(used map[string]bool, basis source.Basis) string {
	if basis.Document != "" {
		used[basis.Document] = true
	}
	return basis.String()
}

// shopTables are the defaults of the shop file.
func (b *Book) shopTables(used map[string]bool) []sourceTable {
	ports := sourceTable{About: "Needs and hood losses by kind of machine"}
	for _, k := range shop.Kinds() {
		for _, p := range k.Ports {
			name := k.Name + ", " + p.Name
			if flow, ok := p.Flow[b.units]; ok {
				ports.Rows = append(ports.Rows, sourceRow{name, unit.Size.Print(b.units, p.Size[b.units]) + ", " + unit.Air.Print(b.units, flow), note(used, p.Need[b.units])})
			}
			ports.Rows = append(ports.Rows, sourceRow{name + ", hood loss", unit.Short(p.HoodLoss), note(used, p.Hood)})
		}
	}
	pipes := sourceTable{About: "Pipe, hose and elbows"}
	for _, m := range shop.Materials() {
		pipes.Rows = append(pipes.Rows, sourceRow{m.Name + ", roughness", unit.Thin.Print(b.units, m.Roughness), note(used, m.Basis)})
	}
	for _, h := range shop.Hoses() {
		pipes.Rows = append(pipes.Rows, sourceRow{h.Name + ", roughness", unit.Thin.Print(b.units, h.Roughness), note(used, h.Basis)})
	}
	for _, e := range shop.Elbows() {
		pipes.Rows = append(pipes.Rows, sourceRow{"elbow 90°, " + e.Name, unit.Short(e.K90), note(used, e.Basis)})
	}
	fields := sourceTable{About: "Defaults of the shop file’s fields"}
	for _, r := range shop.Rows() {
		if r.Default != "" && r.Basis.Mark != 0 {
			fields.Rows = append(fields.Rows, sourceRow{r.Table + "." + r.Field, r.Default, note(used, r.Basis)})
		}
	}
	return []sourceTable{ports, pipes, fields}
}

// reckoningTables are the figures of the method and of the checks.
func reckoningTables(used map[string]bool) []sourceTable {
	carry := sourceTable{About: "Speeds that carry dust, in standard air"}
	for _, r := range duct.TransportRows() {
		carry.Rows = append(carry.Rows, sourceRow{r.Text("case") + ": " + r.Text("about"), r.Text("speed"), note(used, r.Basis)})
	}
	tables := []sourceTable{carry}
	for _, t := range air.Tables() {
		group := sourceTable{About: t.About}
		for _, r := range t.Rows {
			what, value := r.Named()
			group.Rows = append(group.Rows, sourceRow{what, value, note(used, r.Basis)})
		}
		tables = append(tables, group)
	}
	compared := sourceTable{About: "Figures the checks compare with"}
	for _, r := range checks.FigureRows() {
		compared.Rows = append(compared.Rows, sourceRow{r.Text("figure") + ": " + r.Text("about"), r.Text("value"), note(used, r.Basis)})
	}
	return append(tables, compared, proofTable(used), gearTable(used))
}

// proofTable are the figures of commissioning.
func proofTable(used map[string]bool) sourceTable {
	group := sourceTable{About: "Figures of commissioning"}
	for _, r := range duct.ProofRows() {
		unit := " " + r.Text("unit")
		if unit == " D" {
			unit = " bores"
		}
		group.Rows = append(group.Rows, sourceRow{r.Text("figure") + ": " + r.Text("about"), r.Text("value") + unit, note(used, r.Basis)})
	}
	for _, r := range duct.TraverseRows() {
		group.Rows = append(group.Rows, sourceRow{"traverse, " + r.Text("family") + ", point " + r.Text("point"), r.Text("fraction") + " of the bore from the wall", note(used, r.Basis)})
	}
	return group
}
