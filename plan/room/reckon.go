package room

import (
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Air is the state of the air that the fans draw, handed in.
type Air struct {
	Density   unit.Density
	Discharge float64 // discharge coefficient of an opening
}

// Use is one way the shop is used, handed in with what it draws.
type Use struct {
	Name     string
	Machines []*shop.Machine // that run
	Stated   *shop.Use       // of a use of the file; nil for every other
	Draws    []Draw          // one for each collector that runs
}

// Draw is the most that one collector draws in a use: with its filter clean.
type Draw struct {
	Collector *shop.Collector
	Flow      unit.Flow     // through the fan
	Ends      []End         // what the open ends let in, and what shut gates let by
	Why       source.Reason // why there is no flow; none where there is one
}

// End is what one end of a duct lets in, at the machine it stands at.
type End struct {
	Machine *shop.Machine
	Flow    unit.Flow
}

// Reckoning is everything this package finds out about a shop.
type Reckoning struct {
	Spaces   []*Space
	Balances []*Balance // by space, then by use; only where the use touches the space
	Returns  []*Return  // one for each collector that gives its air back, or does not say where it goes
	Doses    []*Dose    // one for each use of machines
	Day      *Dose      // of one person who runs every machine alone for its hours

	shop *shop.Shop
	air  Air
}

// Reckon reckons the rooms of a shop.
func Reckon(s *shop.Shop, air Air, uses []Use) *Reckoning {
	k := &Reckoning{shop: s, air: air, Spaces: Spaces(s)}
	for _, space := range k.Spaces {
		for _, u := range uses {
			if b := k.balance(space, u); b != nil {
				k.Balances = append(k.Balances, b)
			}
		}
	}
	for _, c := range s.Collectors {
		if !c.Exhaust.Known() || c.Exhaust.V == returns {
			k.Returns = append(k.Returns, k.wayBack(c, uses))
		}
	}
	for _, u := range uses {
		if len(u.Machines) > 0 {
			k.Doses = append(k.Doses, doseOf(u))
		}
	}
	k.Day = dayOf(s)
	return k
}

// returns is the word for a collector that gives its air back.
const returns = "returns to room"

// SpaceOf is the air that a room is of; nil for no room.
func (k *Reckoning) SpaceOf(r *shop.Room) *Space {
	for _, s := range k.Spaces {
		if s.Holds(r) {
			return s
		}
	}
	return nil
}

// Of lists the balances of a space, in the order of the uses.
func (k *Reckoning) Of(s *Space) []*Balance {
	var list []*Balance
	for _, b := range k.Balances {
		if b.Space == s {
			list = append(list, b)
		}
	}
	return list
}

// Worst is the use of machines that takes most air out of a space, among those
// whose balance is known; where every one blows air in, the one that blows in
// most. Nil where there is none.
func (k *Reckoning) Worst(s *Space) *Balance {
	var worst *Balance
	for _, b := range k.Of(s) {
		if b.Runs && b.Known() && (worst == nil || worse(b.Net, worst.Net)) {
			worst = b
		}
	}
	return worst
}

// worse reports whether one flow that has to come in weighs more than another:
// air drawn out before air blown in, and of either the greater.
func worse(a, b unit.Flow) bool {
	if a <= 0 && b <= 0 {
		return unit.Compare(float64(a), float64(b)) < 0
	}
	return unit.Compare(float64(a), float64(b)) > 0
}

// reach lists the machines whose ports a collector's ducts serve, in file
// order.
func (k *Reckoning) reach(c *shop.Collector) []*shop.Machine {
	var list []*shop.Machine
	for _, m := range k.shop.Machines {
		for _, p := range m.Ports {
			if p.Duct != nil && p.Duct.Collector == c {
				list = append(list, m)
				break
			}
		}
	}
	return list
}
