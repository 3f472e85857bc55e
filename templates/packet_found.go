package templates

import (
	"slices"

	"dustbook/checks"
	"dustbook/plan/source"
)

// packetWeight are the open findings of one weight, check by check.
type packetWeight struct {
	Weight string
	Head   string // its key
	Checks []packetCheck
	Brief  []packetCheck // for which there is no room: their things alone
}

// packetCheck is what one check found: what to do and the sources stand once
// where they are the same for all.
type packetCheck struct {
	Title, Path, Do string
	Rows            []packetFinding
	Cited           []citation
}

// packetFinding is what was found about one thing, or about several alike.
type packetFinding struct {
	State    Word
	About    []string
	Says, Do string
}

// How many letters of findings the packet holds: past it those to know, and
// those that wait for the file, are named and no more, so that the sheet can be
// loaded and printed. Those that say stop or mend always stand in full.
const (
	roomToKnow  = 20_000
	roomUnknown = 8_000
)

// packetFindings parts the findings: those that stand by weight, those that
// wait for the file, those that somebody has accepted, and how many are met.
func (b *Book) packetFindings(v *packetView) {
	standing := map[checks.Weight][]checks.Finding{}
	var unknown []checks.Finding
	for _, f := range b.Findings {
		switch {
		case f.State == checks.Met:
			v.Met++
		case f.Accepted != nil:
			v.Accepted = append(v.Accepted, b.findingRow(f))
		case f.State == checks.NotGiven && f.Weight == checks.Know:
			unknown = append(unknown, f)
		default:
			standing[f.Weight] = append(standing[f.Weight], f)
		}
	}
	room := roomToKnow
	for _, w := range []packetWeight{{Weight: string(checks.Stop), Head: "findings.stop-do-not-run-until"}, {Weight: string(checks.Mend), Head: "findings.to-mend"}, {Weight: string(checks.Know), Head: "findings.to-know"}} {
		for _, c := range b.packetChecks(standing[checks.Weight(w.Weight)]) {
			room -= c.size()
			if room < 0 && w.Weight == string(checks.Know) {
				w.Brief = append(w.Brief, c)
			} else {
				w.Checks = append(w.Checks, c)
			}
		}
		if len(w.Checks)+len(w.Brief) > 0 {
			v.Weights = append(v.Weights, w)
		}
	}
	room = roomUnknown
	for _, c := range b.packetChecks(unknown) {
		if room -= c.size(); room < 0 {
			v.Waiting = append(v.Waiting, c)
		} else {
			v.Unknown = append(v.Unknown, c)
		}
	}
}

// size is about how many letters a check's findings take on the page, with
// what stands around each.
func (c packetCheck) size() int {
	const around = 120
	size := len(c.Title) + len(c.Do) + around
	for _, r := range c.Rows {
		size += len(r.Says) + len(r.Do) + around
		for _, about := range r.About {
			size += len(about)
		}
	}
	for _, cited := range c.Cited {
		size += len(cited.Text) + len(cited.Path)
	}
	return size
}

// Abouts are the things that a check found something about.
func (c packetCheck) Abouts() []string {
	var list []string
	for _, r := range c.Rows {
		list = append(list, r.About...)
	}
	return list
}

// packetChecks groups findings by check, in the order of the book.
func (b *Book) packetChecks(findings []checks.Finding) []packetCheck {
	var list []packetCheck
	for _, c := range checks.All {
		of := slices.DeleteFunc(slices.Clone(findings), func(f checks.Finding) bool { return f.Check != c.ID })
		if len(of) == 0 {
			continue
		}
		group := packetCheck{Title: c.Name, Path: b.Path("check", c.ID), Do: of[0].Do}
		if slices.ContainsFunc(of, func(f checks.Finding) bool { return f.Do != group.Do }) {
			group.Do = ""
		}
		var bases []source.Basis
		for _, f := range of {
			bases = append(bases, f.Basis...)
			if group.Do != "" {
				f.Do = ""
			}
			group.put(f)
		}
		group.Cited = b.briefly(bases)
		list = append(list, group)
	}
	return list
}

// put adds a finding, to one that says the same of another thing if there is
// one.
func (c *packetCheck) put(f checks.Finding) {
	state := stateWord(f.State)
	i := slices.IndexFunc(c.Rows, func(r packetFinding) bool { return r.State == state && r.Says == f.Says && r.Do == f.Do })
	if i < 0 {
		i = len(c.Rows)
		c.Rows = append(c.Rows, packetFinding{State: state, Says: f.Says, Do: f.Do})
	}
	if f.About != "" && !slices.Contains(c.Rows[i].About, f.About) {
		c.Rows[i].About = append(c.Rows[i].About, f.About)
	}
}

// briefly are the texts behind findings by their short names, each once.
func (b *Book) briefly(list []source.Basis) []citation {
	var out []citation
	for _, basis := range list {
		if basis.Mark == source.Given || basis.Mark == 0 {
			continue
		}
		if c := (citation{basis.BriefIn(b.words.Mark), documentPath(basis.Document)}); !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	return out
}
