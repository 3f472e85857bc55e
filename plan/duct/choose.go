package duct

import (
	"context"
	"embed"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed choose.csv
var chooseData embed.FS

var chooseTable = source.MustTable(chooseData, "duct", "choose", "name", "value", "unit", "about")

// ChooseTable is the data of the choice of sizes, for a page of sources.
func ChooseTable() source.Table { return chooseTable }

// ReliefPrice is what one gate opened as well in one use costs, as sheet.
func ReliefPrice() unit.Area { return reliefPrice }

var reliefPrice = unit.Must[unit.Area](chooseTable.Measure("relief gate"))

// Choice is the stock sizes for the ducts of one collector whose size is to be
// chosen: those with which every use is captured and carried, with the filter
// in each state. Of such sizes it is the cheapest, by sheet and relief gates;
// then the one with the least fan energy; then the smallest in file order. No
// duct is wider than what it empties into.
//
// Where no sizes do, it is the nearest miss: the sizes whose worst share of a
// need is the greatest, and of those again the cheapest.
type Choice struct {
	Collector *shop.Collector
	Sizes     []Sized // of every duct to be chosen, in file order; none where no stock size fits between its neighbours
	Met       bool    // every use is captured and carried, those Beyond apart
	Score     float64 // the worst share of a need; one where all are met
	Miss      *Miss   // where it is not met: the demand that breaks it
	Beyond    []*Use  // uses that no size meets: two machines share an end, or no duct serves a port
	Block     *Block  // where no stock size fits a duct: why; nil else
	Relief    []Opened
	Area      unit.Area // sheet of the chosen ducts, π times inside diameter times length
	Cost      unit.Area // that, and the price of the relief gates
	Energy    float64   // W h a day of the fan, in all uses with the filter clean: of its shaft where that is known, else of the air

	Proven bool // the search is complete: there is nothing better
	Tried  int  // choices solved in full
}

// Sized is a duct with the size chosen for it.
type Sized struct {
	Duct *shop.Duct
	Size unit.Length // nominal
	Bore unit.Length
}

// Opened are gates that a use opens as relief.
type Opened struct {
	Use   *Use
	Gates []*shop.Gate
}

// Write is the table of the shop file that takes the gates, "machine" or "use",
// and all that stand in its also_open then: its own and these.
func (o Opened) Write() (table string, gates []*shop.Gate) {
	switch {
	case o.Use.Kind == Together:
		return "use", slices.Concat(o.Use.Stated.AlsoOpen, o.Gates)
	case len(o.Use.Machines) > 0:
		return "machine", slices.Concat(o.Use.Machines[0].AlsoOpen, o.Gates)
	}
	return "machine", o.Gates
}

// Opens is how many gates a choice opens as well, over all its uses.
func (c *Choice) Opens() (count int) {
	for _, o := range c.Relief {
		count += len(o.Gates)
	}
	return count
}

// Miss is the demand that a choice misses by most: a port that lacks air, or
// a stretch or its hose where the air is too slow. Why is there where the use
// is off the fan's curve.
type Miss struct {
	Use     *Use
	Filter  string
	Port    *shop.Port
	Stretch *shop.Stretch
	Hose    bool
	Share   float64 // of the need
	Why     source.Reason
}

// Choose finds the sizes for every collector that has ducts to be chosen, in
// file order. It stops and returns the context's error when that is done.
//
// Where the fan falls and no loss hangs on how flows split, parts of the search
// that cannot hold the answer are left out, which is exact. Otherwise every
// choice is tried, up to a bound; Proven says whether that was enough.
func (k *Reckoning) Choose(ctx context.Context, s *shop.Shop) ([]*Choice, error) {
	var list []*Choice
	for _, t := range k.Trees {
		if t.unsized() == nil {
			continue
		}
		c := newChooser(ctx, s, t, k.Uses)
		list = append(list, c.choice())
		if err := ctx.Err(); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// choice runs the search and tells its answer.
func (c *chooser) choice() *Choice {
	v := &Choice{Collector: c.tree.Collector, Beyond: c.beyond}
	c.search()
	v.Proven, v.Tried = c.proven, c.tried
	best := c.best
	if best == nil {
		v.Block = c.block()
		return v
	}
	for _, d := range c.inFile {
		size := c.sizes[d][best.at[d]]
		v.Sizes = append(v.Sizes, Sized{c.ducts[d], size.nominal, size.bore})
	}
	v.Met, v.Score, v.Miss, v.Relief = best.score == 1, best.score, best.miss, best.relief
	v.Area, v.Cost, v.Energy = unit.Area(best.area), unit.Area(best.cost), best.energy
	return v
}
