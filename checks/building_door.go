package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var garageDoor = &Check{
	ID:       "garage-door",
	Name:     say("check.garage-door.name"),
	Title:    say("check.garage-door.title"),
	Whom:     Authority,
	Compares: []string{"garage-door-thickness", "garage-door-rating", "garage-door-closes", "garage-door-bedroom"},
	Needs:    "wall.divides, wall.door, wall.no_door, door.thick or door.rating, door.closes, door.into_bedroom, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, w := range p.Shop.Walls {
			if keepsDwelling(w) {
				report(inWall(p.Shop, w, doorOf(p, w)))
			}
		}
	},
}

// keepsDwelling reports whether a wall keeps a garage or the shop and living
// space apart.
func keepsDwelling(w *shop.Wall) bool {
	return w.Divides.V == "garage from dwelling" || w.Divides.V == "shop from dwelling"
}

// inWall says which wall a finding is about, where several keep a dwelling
// apart, and asks whether a shop counts as a garage where the file calls it none.
func inWall(s *shop.Shop, w *shop.Wall, f Finding) Finding {
	count := 0
	for _, other := range s.Walls {
		if keepsDwelling(other) {
			count++
		}
	}
	if count > 1 {
		at := func(metres float64) string { return unit.Run.Print(s.Units, unit.Length(metres)) }
		f.Says = join(say("finding-building.wall", at(w.From.X), at(w.From.Y), at(w.To.X), at(w.To.Y)), f.Says)
	}
	if w.Divides.V == "shop from dwelling" && f.By == ByRule {
		f.State, f.Weight = Ask, Mend
		f.Says = join(f.Says, say("finding-building.no-garage.says"))
		f.Asks = join(f.Asks, say("finding-building.no-garage.asks"))
	}
	return f
}

// doorOf judges the door in one wall.
func doorOf(p *plan.Plan, w *shop.Wall) Finding {
	leaf, leafKnown := leafOf(p.Shop, w.Door)
	f := Finding{At: w.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(leaf...)}
	d := w.Door
	switch {
	case w.NoDoor.V:
		f.State = Met
		f.Says, f.Do = say("finding-garage-door.none.says"), say("finding-garage-door.none.do")
		return f
	case d == nil:
		f.Says, f.Do = say("finding-garage-door.no-door.says"), say("finding-garage-door.no-door.do")
		return f
	}
	closes, bedroom := rulesOn(p.Shop, "garage-door-closes"), rulesOn(p.Shop, "garage-door-bedroom")
	var missing, faults []string
	parts := []part{}
	hold := func(rule ruled, known, kept bool, lacks, fault string) {
		switch {
		case !known:
			missing = append(missing, lacks)
			return
		case !kept:
			faults = append(faults, fault)
		}
		parts = append(parts, part{rule, kept})
	}
	hold(bedroom, d.IntoBedroom.Known(), !d.IntoBedroom.V, say("finding-garage-door.lacks.bedroom"), say("finding-garage-door.fault.bedroom"))
	hold(closes, d.Closes.Known(), d.Closes.V, say("finding-garage-door.lacks.closes"), say("finding-garage-door.fault.closes"))
	f.Basis = partsBasis(append(parts, leaf...)...)
	if !leafKnown {
		missing = append(missing, say("finding-garage-door.lacks.leaf"))
	} else {
		parts = append(parts, leaf...)
		if !leaf[0].kept {
			faults = append(faults, say("finding-garage-door.fault.leaf"))
		}
	}
	thick, rated := rulesOn(p.Shop, "garage-door-thickness"), rulesOn(p.Shop, "garage-door-rating")
	want := say("finding-garage-door.wants", thick.Value, rated.Value, briefly(thick, rated, closes))
	state := Ask
	if len(parts) > 0 {
		state = partsState(parts...)
	}
	switch {
	case state != NotMet && len(missing) > 0:
		f.Says, f.Do = say("finding-garage-door.missing.says", listed(missing)), say("finding-garage-door.missing.do")
	case len(faults) > 0:
		f.State, f.By, f.Weight = state, ByRule, Mend
		f.Says = join(say("finding-garage-door.fault.says", listed(faults)), want, partsRemark(parts...))
		f.Do = say("finding-garage-door.fault.do")
		if d.IntoBedroom.V {
			f.Do = say("finding-garage-door.bedroom.do")
		}
		f.Asks = say("finding-garage-door.fault.asks", listed(faults), leafWords(p.Shop, d))
	default:
		f.State, f.By = state, ByRule
		f.Says = join(say("finding-garage-door.kept.says"), want, partsRemark(parts...))
		f.Do = say("finding-garage-door.kept.do")
		if state == Ask {
			f.Asks = say("finding-garage-door.kept.asks")
		}
	}
	return f
}

// leafWords are what the file says of a door's leaf, or that it says nothing.
func leafWords(s *shop.Shop, d *shop.Door) string {
	var list []string
	if d.Thick.Known() {
		list = append(list, say("finding-garage-door.thick", unit.Depth.Print(s.Units, d.Thick.V)))
	}
	if d.Rating.Known() {
		list = append(list, say("finding-garage-door.rated", unit.Minutes.Print(s.Units, d.Rating.V)))
	}
	if len(list) == 0 {
		return say("finding-garage-door.no-leaf")
	}
	return join(list...)
}

// leafOf holds a door's leaf against the text: a solid leaf of some thickness or
// a rated one is enough. What speaks for the door comes first, and of two that
// do what decides.
func leafOf(s *shop.Shop, d *shop.Door) (list []part, known bool) {
	thick, rated := rulesOn(s, "garage-door-thickness"), rulesOn(s, "garage-door-rating")
	byThick, byRating := part{rule: thick}, part{rule: rated}
	if d == nil {
		return []part{byThick, byRating}, false
	}
	byThick.kept = d.Thick.Known() && unit.AtLeast(float64(d.Thick.V), float64(measureOf[unit.Length](thick)))
	byRating.kept = d.Rating.Known() && unit.AtLeast(float64(d.Rating.V), float64(measureOf[unit.Time](rated)))
	switch {
	case byRating.kept && (rated.Decides || !byThick.kept):
		return []part{byRating}, true
	case byThick.kept:
		return []part{byThick}, true
	case d.Rating.Known() && d.Thick.Known():
		return []part{byThick, byRating}, true
	case d.Thick.Known():
		return []part{byThick}, true
	case d.Rating.Known():
		return []part{byRating}, true
	}
	return []part{byThick, byRating}, false
}
