package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var garageBoard = &Check{
	ID:       "garage-board",
	Name:     say("check.garage-board.name"),
	Title:    say("check.garage-board.title"),
	Whom:     Authority,
	Compares: []string{"garage-board", "garage-board-below"},
	Needs:    "wall.divides, wall.board, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, w := range p.Shop.Walls {
			if keepsDwelling(w) {
				report(inWall(p.Shop, w, boardOf(p.Shop, w)))
			}
		}
	},
}

// boardOf judges the gypsum board on one wall. The wall has its own figure; what
// a ceiling below living space wants is more, and whether there is one is asked.
func boardOf(s *shop.Shop, w *shop.Wall) Finding {
	wall, below := rulesOn(s, "garage-board"), rulesOn(s, "garage-board-below")
	least, above := measureOf[unit.Length](wall), measureOf[unit.Length](below)
	f := Finding{At: w.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(part{rule: wall}, part{rule: below})}
	want := unit.Depth.Print(s.Units, least)
	ceiling := unit.Depth.Print(s.Units, above)
	if !w.Board.Known() {
		f.Says, f.Do = say("finding-garage-board.missing.says", want, briefly(wall)), say("finding-garage-board.missing.do")
		return f
	}
	has := unit.Depth.Print(s.Units, w.Board.V)
	limit := float64(least)
	f.By = ByRule
	f.Figures = []Figure{{Name: say("finding-garage-board.thickness"), Value: float64(w.Board.V), Unit: "m", Limit: &limit, Basis: wall.Basis}}
	kept := unit.AtLeast(float64(w.Board.V), limit)
	f.State = wall.holds(kept)
	switch {
	case !kept:
		f.Weight = Mend
		f.Says, f.Do = say("finding-garage-board.thin.says", has, want, briefly(wall)), say("finding-garage-board.thin.do")
		f.Asks = say("finding-garage-board.thin.asks", has)
	case !unit.AtLeast(float64(w.Board.V), float64(above)):
		f.State = Ask
		f.Says, f.Do = say("finding-garage-board.below.says", has, want, ceiling, briefly(wall)), say("finding-garage-board.below.do", ceiling)
		f.Asks = say("finding-garage-board.below.asks", has, ceiling)
	default:
		f.Says, f.Do = say("finding-garage-board.kept.says", has, want, briefly(wall)), say("finding-garage-board.kept.do", ceiling)
		if f.State == Ask {
			f.Asks = say("finding-garage-board.thin.asks", has)
		}
	}
	f.Says = join(f.Says, wall.remark())
	return f
}
