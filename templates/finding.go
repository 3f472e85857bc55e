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
	File       string // the file beside the shop file that it stands in; empty for the shop file
	Line       int
	Cited      []citation
	Sizes      string // the path of the sheet of sizes, where it waits for those
	Accepted   string // until when and by whom; empty where nobody accepted it
}

func (b *Book) findingRow(f checks.Finding) findingRow {
	row := findingRow{
		Weight: string(f.Weight), State: stateWord(f.State), About: f.About, AboutPath: b.Path(f.Kind, f.About),
		Says: f.Says, Do: f.Do, Asks: f.Asks, CheckPath: b.Path("check", f.Check), File: f.File, Line: f.At.Line, Cited: b.cited(f.Basis),
	}
	if f.Asks != "" {
		row.Whom = f.Whom.Says()
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
	b.addPacket()
	b.addLetters()
	if err := b.addChecks(); err != nil {
		return err
	}
	b.addRules()
	b.addAssumptions()
	b.addSources()
	b.addFields()
	return nil
}

// findingsView groups the findings by weight, and what is met by family.
type findingsView struct {
	Families         []familyRow
	Packet           string
	Stop, Mend, Know []findingRow
	Accepted         []findingRow
	Met              []familyMet
}

func (b *Book) addFindingList() {
	v := findingsView{Families: b.familyRows(), Packet: packetPath}
	var met []checks.Finding
	for _, f := range b.Findings {
		row := b.findingRow(f)
		switch {
		case f.State == checks.Met:
			met = append(met, f)
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
	v.Met = b.metByFamily(met)
	b.add(&Sheet{Part: partFindings, Path: findingsPath, Title: b.words.Text("findings.title"), Kind: "list", Lede: b.words.Text("findings.lede"),
		Verdict: b.overall(), name: "findings.html", view: func() any { return v }})
}
