package templates

import (
	"strconv"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// unshared counts the uses of machines that stand in one layout alone.
func (v *beside) unshared() (here, there int) {
	return runningUses(v.Plan.Air.Uses) - len(v.uses), runningUses(v.other.Plan.Air.Uses) - len(v.uses)
}

func runningUses(uses []*duct.Use) (n int) {
	for _, u := range uses {
		if len(u.Machines) > 0 {
			n++
		}
	}
	return n
}

// hedges are what the verdict says of what it does not compare, or not by the
// same measure: uses of one layout alone, needs that differ, filters whose
// pressure is not given.
func (v *beside) hedges() string {
	var list []string
	if here, there := v.unshared(); here > 0 || there > 0 {
		list = append(list, v.words.Text("beside.verdict.unshared", strconv.Itoa(here), strconv.Itoa(there)))
	}
	var differ []string
	for _, pair := range v.uses {
		if v.needsDiffer(pair) != "" {
			differ = append(differ, pair.this.Name)
		}
	}
	if len(differ) > 0 {
		list = append(list, v.words.Text("beside.verdict.needs", v.list(differ)))
	}
	for _, s := range []struct {
		side *side
		key  string
	}{{v.this, "beside.no-filter-this"}, {v.other, "beside.no-filter-other"}} {
		if names := s.side.openFilters(); len(names) > 0 {
			list = append(list, v.words.Text(s.key, v.list(names)))
		}
	}
	return strings.Join(list, " ")
}

// openFilters names the collectors of a layout that were reckoned without the
// filter's pressure.
func (b *side) openFilters() []string {
	var names []string
	for _, c := range b.Plan.Shop.Collectors {
		if duct.FilterOpen(c) {
			names = append(names, c.Name)
		}
	}
	return names
}

// needsDiffer says that the ports of a use need other air in the other layout;
// empty where they need the same.
func (v *beside) needsDiffer(pair usePair) string {
	here, there := neededIn(pair.this), neededIn(pair.other)
	if unit.Compare(float64(here), float64(there)) == 0 {
		return ""
	}
	a, b := unit.Air.Pair(v.units, here, there)
	return v.words.Text("beside.needs-differ", a, b, unit.Air.Unit(v.units))
}

// neededIn is the air that the ports of a use's machines need in all.
func neededIn(u *duct.Use) unit.Flow {
	sum := unit.Flow(0)
	for _, m := range u.Machines {
		for _, p := range m.Ports {
			sum += p.Flow
		}
	}
	return sum
}

// besideRemark is what the findings of one layout say of a use.
type besideRemark struct{ Of, Says string }

// remarks are what is to know of a use's figures: needs that differ, and, of a
// layout that does not serve it for sure, why.
func (v *beside) remarks(pair usePair) []besideRemark {
	var list []besideRemark
	if says := v.needsDiffer(pair); says != "" {
		list = append(list, besideRemark{Says: says})
	}
	for _, s := range []struct {
		side *side
		use  *duct.Use
		key  string
	}{{v.this, pair.this, "beside.this"}, {v.other, pair.other, "beside.other"}} {
		if _, sure := s.side.serves(s.use); !sure {
			list = append(list, besideRemark{v.words.Text(s.key), s.side.useVerdict(s.use).Says})
		}
	}
	return list
}
