package templates

import (
	"html/template"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// addPlans adds the neutral plan and a sheet for each use of machines.
func (b *Book) addPlans() {
	b.board.LinkUses(b.useSheet)
	b.add(&Sheet{Part: partPlan, Path: "plan.html", Title: b.words.Text("plan.title"), Kind: "plan", Lede: b.words.Text("plan.lede"),
		Verdict: b.planVerdict(), Uses: b.useTabs(nil), name: "plan.html", view: func() any { return b.planView() }})
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) > 0 {
			b.addUse(u)
		}
	}
}

// useSheet is the path of the sheet of a use; empty for one without machines,
// which has none.
func (b *Book) useSheet(u *duct.Use) string {
	if len(u.Machines) == 0 {
		return ""
	}
	return b.Path("use", u.Name)
}

func (b *Book) useTabs(here *duct.Use) []UseTab {
	var tabs []UseTab
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) > 0 {
			tabs = append(tabs, UseTab{u.Name, b.Path("use", u.Name), u == here})
		}
	}
	return tabs
}

// planView is the neutral plan with its lists.
type planView struct {
	Drawing template.HTML
	Rooms   []roomRow
	Walls   []wallRow
	Gates   []gateRow
}

type roomRow struct{ ID, Name, Floor, Height, Opening, OpenTo, Holds string }

type wallRow struct{ Rating, Divides, Ends string }

type gateRow struct{ ID, Name, Duct, DuctPath, Where, Leak, Assumed string }

func (b *Book) planView() planView {
	v := planView{Drawing: trusted(b.board.Plan(nil, "plan"))}
	for _, r := range b.Plan.Shop.Rooms {
		row := roomRow{ID: "room-" + shop.Slug(r.Name), Name: r.Name, Floor: unit.Floor.Print(b.units, r.Area()), Height: b.words.Text("plan.not-given"), Opening: b.words.Text("plan.not-given"), OpenTo: "—"}
		if r.Height.Known() {
			row.Height = unit.Run.Print(b.units, r.Height.V)
		}
		if r.Opening.Known() {
			row.Opening = unit.Floor.Print(b.units, r.Opening.V)
		}
		for i, other := range r.OpenTo {
			if i == 0 {
				row.OpenTo = ""
			} else {
				row.OpenTo += ", "
			}
			row.OpenTo += other.Name
		}
		for _, m := range b.Plan.Shop.Machines {
			if m.Room == r {
				if row.Holds != "" {
					row.Holds += ", "
				}
				row.Holds += m.Name
			}
		}
		v.Rooms = append(v.Rooms, row)
	}
	for _, w := range b.Plan.Shop.Walls {
		row := wallRow{Rating: b.words.Text("plan.not-given"), Divides: b.words.Text("plan.not-given"), Ends: b.words.Text("plan.from-to", b.point(w.From), b.point(w.To))}
		if w.Rating.Known() {
			row.Rating = w.Rating.V
		}
		if w.Divides.Known() {
			row.Divides = w.Divides.V
		}
		v.Walls = append(v.Walls, row)
	}
	return v
}

// point writes a place on the plan in the shop's units.
func (b *Book) point(p shop.Point) string {
	in := func(m float64) string { return unit.Run.Figure(b.units, unit.Length(m)) }
	return "(" + in(p.X) + ", " + in(p.Y) + ")"
}
