package templates

import "dustbook/checks"

// findingRow is one finding as a page shows it.
type findingRow struct {
	Weight     string
	State      Word
	About      string
	AboutPath  string
	Says, Do   string
	Asks, Whom string
	CheckPath  string
	CheckTitle string
	Line       int
	Cited      []citation
	Sizes      string // the path of the sheet of sizes, where it waits for those
	Accepted   string // until when and by whom; empty where nobody accepted it
}

func (b *Book) findingRow(f checks.Finding) findingRow {
	row := findingRow{
		Weight: string(f.Weight), State: stateWord(f.State), About: f.About, AboutPath: b.Path(f.Kind, f.About),
		Says: f.Says, Do: f.Do, Asks: f.Asks, Whom: b.words.Text("finding.whom"), CheckPath: b.Path("check", f.Check), Line: f.At.Line, Cited: b.cited(f.Basis),
	}
	if c := checks.Find(f.Check); c != nil {
		row.CheckTitle = c.Name
	}
	if f.Sizes {
		row.Sizes = sizesPath
	}
	if f.Accepted != nil {
		row.Accepted = f.Accepted.Says()
	}
	return row
}

// addFindings adds the sheet of findings, a sheet for each check, the
// assumptions and the sources.
func (b *Book) addFindings() error {
	b.addFindingList()
	if err := b.addChecks(); err != nil {
		return err
	}
	b.addAssumptions()
	b.addSources()
	b.addFields()
	return nil
}

// findingsView groups the findings by weight.
type findingsView struct {
	Stop, Mend, Know, Accepted, Met []findingRow
}

func (b *Book) addFindingList() {
	var v findingsView
	for _, f := range b.Findings {
		row := b.findingRow(f)
		switch {
		case f.State == checks.Met:
			v.Met = append(v.Met, row)
		case f.Accepted != nil:
			v.Accepted = append(v.Accepted, row)
		case f.Weight == checks.Stop:
			v.Stop = append(v.Stop, row)
		case f.Weight == checks.Mend:
			v.Mend = append(v.Mend, row)
		default:
			v.Know = append(v.Know, row)
		}
	}
	b.add(&Sheet{Part: partFindings, Path: "findings.html", Title: b.words.Text("findings.title"), Kind: "list", Lede: b.words.Text("findings.lede"),
		Verdict: b.overall(), name: "findings.html", view: func() any { return v }})
}
