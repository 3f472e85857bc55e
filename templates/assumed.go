package templates

import (
	"slices"
	"strings"

	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// sourced is a value as a sheet prints it, with the row of the assumptions that
// it comes from; empty where the shop file gives the value.
type sourced struct{ Text, Assumed string }

// assumptionGroup is one default with everything it stands in for.
type assumptionGroup struct {
	ID           string
	Field, Value string
	FieldPath    string
	Weak         Word
	Things       []string
	Sources      []citation
}

// path is where a group stands.
func (g *assumptionGroup) path() string { return "assumptions.html#" + g.ID }

// assumptions are the defaults in use, with the group of each by thing and
// field.
type assumptions struct {
	groups []*assumptionGroup
	at     map[[2]string]*assumptionGroup
}

// assumptionsOf groups the defaults that a shop leaves standing: one group for
// a field with a value from a source. The name of a group is made of these
// alone, so that it stays when other things come and go.
func (b *Book) assumptionsOf(s *shop.Shop) assumptions {
	v := assumptions{at: map[[2]string]*assumptionGroup{}}
	byID := map[string]*assumptionGroup{}
	for _, a := range slices.Concat(s.Assumed, b.fallbacks()) {
		id := "assumed-" + shop.Slug(a.Field+" "+a.Value+" "+a.Basis.Document+" "+a.Basis.Clause)
		g := byID[id]
		if g == nil {
			g = &assumptionGroup{ID: id, Field: a.Field, FieldPath: fieldPath(a.Field), Value: a.Value, Sources: b.cited([]source.Basis{a.Basis}), Weak: Word{"met", b.words.Text("sources.sourced")}}
			if a.Basis.Mark.Weak() {
				g.Weak = Word{"thin", b.words.Text("sources.weak")}
			}
			byID[id] = g
			v.groups = append(v.groups, g)
		}
		g.Things = append(g.Things, a.Thing)
		v.at[[2]string{a.Thing, a.Field}] = g
	}
	return v
}

// fallbacks are the junctions that the flow split does not cover: they are
// charged by angle.
func (b *Book) fallbacks() []shop.Assumption {
	var list []shop.Assumption
	for _, t := range b.Plan.Air.Trees {
		for _, d := range t.Fallbacks {
			list = append(list, shop.Assumption{Thing: d.Name, Field: "method.junctions", Value: b.words.Text("assumed.by-angle"), Basis: air.EntryBasis()})
		}
	}
	return list
}

// assumed is where the assumption stands that gives a thing the value of a
// field; empty where the shop file gives it. The kind is the table of the
// field: ("hose", "Saw pipe", "size"), ("port", "Planer/hood", "flow"),
// ("shop", "", "altitude").
func (b *Book) assumed(kind, thing, field string) string {
	if thing == "" {
		thing = shop.Whole
	}
	if g := b.taken.at[[2]string{thing, kind + "." + field}]; g != nil {
		return g.path()
	}
	return ""
}

// sourced is a text of a field's value, with its assumption.
func (b *Book) sourced(text, kind, thing, field string) sourced {
	return sourced{text, b.assumed(kind, thing, field)}
}

// restsOn lists the defaults that the figures of some things and of the whole
// shop's air rest on.
func (b *Book) restsOn(things map[string]bool) []sourced {
	var list []sourced
	for _, g := range b.taken.groups {
		table, _, _ := strings.Cut(g.Field, ".")
		switch table {
		case "motor", "control", "chain", "appliance":
			continue // no air
		case "shop":
			if g.Field == "shop.people_at_machines" {
				continue
			}
		}
		for _, thing := range g.Things {
			if things[thing] || thing == shop.Whole {
				list = append(list, sourced{b.words.Text("assumed.field-value", g.Field, g.Value), g.path()})
				break
			}
		}
	}
	return list
}

// thingsOf are what the figures of a use rest on: its machines and their
// ports, the ducts on their way, and every gate and collector that it draws
// through.
func (b *Book) thingsOf(u *duct.Use) map[string]bool {
	things := map[string]bool{}
	for _, m := range u.Machines {
		things[m.Name] = true
		for _, p := range m.Ports {
			things[p.Full()] = true
			for _, s := range p.Path() {
				things[s.Duct.Name] = true
			}
		}
	}
	for _, c := range u.Collectors(b.Plan.Shop) {
		things[c.Name] = true
		for _, g := range b.gatesOf(c) {
			things[g.Name] = true
		}
	}
	return things
}

// thingsAt are what the figures of a collector rest on: everything that leads
// to it.
func (b *Book) thingsAt(c *shop.Collector) map[string]bool {
	things := map[string]bool{c.Name: true}
	for _, d := range b.Plan.Shop.Ducts {
		if d.Collector == c {
			things[d.Name] = true
			for _, p := range d.Serves {
				things[p.Full()], things[p.Machine.Name] = true, true
			}
		}
	}
	for _, g := range b.gatesOf(c) {
		things[g.Name] = true
	}
	return things
}
