package templates

import (
	"slices"
	"strconv"

	"dustbook/checks"
)

// findingsPath is the sheet of findings.
const findingsPath = "findings.html"

// familyRow counts what the checks of one family found. Where there is none of
// a kind the cell is empty.
type familyRow struct {
	Name             string
	Checks           int
	Stop, Mend, Know string
	Accepted, Met    string
}

// familyRows counts the findings by family, in the order of the book.
func (b *Book) familyRows() []familyRow {
	var rows []familyRow
	for _, family := range checks.Families {
		if len(family.Checks) == 0 {
			continue
		}
		stop, mend, know, accepted, met := 0, 0, 0, 0, 0
		for _, f := range b.Findings {
			if c := checks.Find(f.Check); c == nil || c.Family() != family {
				continue
			}
			switch {
			case f.State == checks.Met:
				met++
			case f.Accepted != nil:
				accepted++
			case f.Weight == checks.Stop:
				stop++
			case f.Weight == checks.Mend:
				mend++
			default:
				know++
			}
		}
		rows = append(rows, familyRow{family.Name, len(family.Checks), counted(stop), counted(mend), counted(know), counted(accepted), counted(met)})
	}
	return rows
}

// counted is a number of things; empty for none.
func counted(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// familyMet is what is met in the checks of one family.
type familyMet struct {
	Name   string
	Checks []packetCheck
}

// metByFamily groups what is met by family and check, in the order of the
// book; families without any are left out.
func (b *Book) metByFamily(met []checks.Finding) []familyMet {
	var groups []familyMet
	for _, family := range checks.Families {
		of := slices.DeleteFunc(slices.Clone(met), func(f checks.Finding) bool { return !slices.Contains(family.Checks, checks.Find(f.Check)) })
		if len(of) > 0 {
			groups = append(groups, familyMet{family.Name, b.packetChecks(of)})
		}
	}
	return groups
}
