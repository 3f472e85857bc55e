package checks

import (
	"strconv"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var settledDust = &Check{
	ID:       "settled-dust",
	Name:     say("check.settled-dust.name"),
	Title:    say("check.settled-dust.title"),
	Needs:    "room.layer, layer.depth, layer.area, layer.density, room.outline, shop.rules",
	Whom:     Authority,
	Compares: []string{"layer-depth", "layer-density", "layer-share", "layer-patch"},
	Run: func(p *plan.Plan, report func(Finding)) {
		var without []string
		for _, r := range dustyRooms(p.Shop) {
			if r.Layer == nil {
				without = append(without, r.Name)
			}
		}
		if len(without) > 0 {
			report(Finding{State: NotGiven, By: ByGiven, Weight: Know, Basis: layerOf(p.Shop).basis(),
				Says: say("finding-settled-dust.no-layer.says", listed(without)), Do: say("finding-settled-dust.no-layer.do")})
		}
		for _, r := range p.Shop.Rooms {
			if r.Layer != nil {
				report(settled(p.Shop, r))
			}
		}
	},
}

// layerRules are the figures that a layer is held against.
type layerRules struct{ depth, density, share, patch ruled }

func layerOf(s *shop.Shop) layerRules {
	return layerRules{rulesOn(s, "layer-depth"), rulesOn(s, "layer-density"), rulesOn(s, "layer-share"), rulesOn(s, "layer-patch")}
}

func (l layerRules) basis() []source.Basis {
	return []source.Basis{l.depth.Basis, l.density.Basis, l.share.Basis, l.patch.Basis}
}

// weakest is the first of the figures that does not decide; the depth where all
// do. The density and the share of the floor go with the depth: they are no
// figures that anybody gives alone.
func (l layerRules) weakest() ruled {
	if l.depth.Decides && !l.patch.Decides {
		return l.patch
	}
	return l.depth
}

// forDust is the depth for dust of some bulk density. A depth that the owner has
// had confirmed is held as it is: what density it is meant for is not known.
func (l layerRules) forDust(dust unit.Density) unit.Length {
	depth := measureOf[unit.Length](l.depth)
	if l.depth.Confirmed {
		return depth
	}
	return depth * unit.Length(measureOf[unit.Density](l.density)) / unit.Length(dust)
}

// settled judges the layer of one room. The text gives its depth for dense dust
// and speaks of a greater one for light dust; the sum that gives it is known from
// memory only, so what lies between the two is told and not decided.
func settled(s *shop.Shop, r *shop.Room) Finding {
	f := Finding{About: r.Name, Kind: "room", At: r.Layer.At, State: NotGiven, By: ByGiven, Weight: Know}
	rules := layerOf(s)
	f.Basis = rules.basis()
	layer := r.Layer
	switch {
	case !layer.Area.Known():
		f.Says, f.Do = say("finding-settled-dust.no-area.says"), say("finding-settled-dust.no-area.do")
		return f
	case !layer.Density.Known():
		f.Says, f.Do = say("finding-settled-dust.no-density.says"), say("finding-settled-dust.no-density.do")
		return f
	}
	dense, light := measureOf[unit.Length](rules.depth), rules.forDust(layer.Density.V)
	deep, shallow := rules.reached(r, max(dense, light)), !rules.reached(r, min(dense, light))
	f.By = ByRule
	f.Figures = []Figure{{Name: say("finding-settled-dust.depth"), Value: float64(layer.Depth), Unit: "m", Limit: limitOf(light), Basis: rules.depth.Basis}}
	got, want := unit.Depth.Pair(s.Units, layer.Depth, light)
	f.Says = say("finding-settled-dust.is.says", got, unit.Depth.Unit(s.Units), unit.Floor.Print(s.Units, layer.Area.V), want, unit.Floor.Print(s.Units, rules.part(r)))
	f.Asks = say("finding-settled-dust.is.asks", r.Name, got+" "+unit.Depth.Unit(s.Units), unit.Floor.Print(s.Units, layer.Area.V))
	deciding := rules.weakest()
	switch {
	case shallow:
		f.State, f.Do = deciding.holds(true), say("finding-settled-dust.shallow.do")
		f.Says = join(f.Says, say("finding-settled-dust.shallow.says"))
	case deep:
		f.State, f.Do = deciding.holds(false), say("finding-settled-dust.deep.do")
		f.Says = join(f.Says, say("finding-settled-dust.deep.says"))
		f.Weight = Mend
	default:
		f.State, f.Do = Thin, say("finding-settled-dust.deep.do")
		f.Says = join(f.Says, say("finding-settled-dust.between.says", unit.Depth.Print(s.Units, dense)))
		f.Weight = Mend
	}
	if !deciding.Decides && f.State == Thin {
		f.State = Ask
	}
	f.Asks = unlessMet(f.State, f.Asks)
	f.Says = join(f.Says, deciding.remark())
	weigh(s, &f, rules.depth, rules.patch)
	return f
}

// part is the least part of a room's floor that counts.
func (l layerRules) part(r *shop.Room) unit.Area {
	return min(unit.SixOf(r.Area()*unit.Area(l.shareOf())), measureOf[unit.Area](l.patch))
}

func (l layerRules) shareOf() float64 {
	share, err := strconv.ParseFloat(l.share.Value, 64)
	if err != nil {
		panic("checks: " + err.Error())
	}
	return share
}

// reached reports whether a room's layer comes to what the text goes by at a
// depth: deeper over so much floor, or as much dust as that would be.
func (l layerRules) reached(r *shop.Room, depth unit.Length) bool {
	part := unit.Area(l.shareOf()) * r.Area()
	wide := exceeds(r.Layer.Area.V, part) || exceeds(r.Layer.Area.V, measureOf[unit.Area](l.patch))
	heap := unit.Volume(r.Layer.Depth) * unit.Volume(r.Layer.Area.V)
	return exceeds(r.Layer.Depth, depth) && wide || exceeds(heap, unit.Volume(depth)*unit.Volume(part))
}
