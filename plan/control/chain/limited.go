package chain

import (
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Listed says what is known about a supply whose power is said to be limited.
type Listed uint8

// What is known of a listing.
const (
	ListingAsked     Listed = iota // nobody says, or it is not known
	NotListed                      // the label has none
	ListedWithin                   // class 2, and its figures are those of one
	ListedDoubted                  // class 2, but a limit known from memory is lower than its power
	ListedBeyond                   // class 2, but its power is more than the class allows
	ListedHalfWay                  // class 2, but of volts of which no cited text says so
	ListedOutOfReach               // class 2, but its volts are above every row of the class
)

// Limit is a limit of the class for the volts of a supply; of its power or of
// its current.
type Limit struct {
	Power unit.Power   // 0 where the row is of a current
	Amps  unit.Current // 0 where the row is of a power
	Basis source.Basis
}

// Limited is what the words "power limited" rest on.
type Limited struct {
	Listed Listed
	Limits []Limit // those that hold at the supply's volts
	Tight  Limit   // the lowest in power; zero where there is none
	// OneServes reports whether one supply of the class can give what is
	// asked; true where there is no limit to compare with.
	OneServes bool
}

// LimitsAt are the limits of a class 2 supply of some volts.
func LimitsAt(volts unit.Voltage) []Limit {
	var list []Limit
	for _, r := range class2Table.Rows {
		above, upTo := unit.Must[unit.Voltage](r.Text("above")), unit.Must[unit.Voltage](r.Text("up_to"))
		if unit.Compare(float64(volts), float64(above)) <= 0 || unit.Compare(float64(volts), float64(upTo)) > 0 {
			continue
		}
		l := Limit{Basis: r.Basis}
		switch value := r.Number("value"); r.Text("name") {
		case "power":
			l.Power = unit.Power(value)
		case "power each volt":
			l.Power = unit.Power(value * float64(volts))
		case "current":
			l.Amps = unit.Current(value)
		case "current by volts":
			l.Amps = unit.Current(value / float64(volts))
		}
		list = append(list, l)
	}
	return list
}

// limited compares a supply with the limits of the class.
func limited(c shop.Control, asked unit.Current) Limited {
	l := Limited{OneServes: true}
	if c.Supply.Known() {
		l.Limits = LimitsAt(c.Supply.V)
	}
	for _, limit := range l.Limits {
		if limit.Power == 0 {
			continue
		}
		if l.Tight.Power == 0 || limit.Power < l.Tight.Power {
			l.Tight = limit
		}
		l.OneServes = l.OneServes && unit.AtLeast(float64(limit.Power), float64(asked)*float64(c.Supply.V))
	}
	switch {
	case c.SupplyListed.V == "none":
		l.Listed = NotListed
	case c.SupplyListed.V == "class 2":
		l.Listed = ListedWithin
		if c.SupplyPower.Known() {
			l.Listed = l.compare(c.SupplyPower.V)
		}
		reach, _ := ReachOf(c.Supply.V)
		switch {
		case !c.Supply.Known():
		case reach == OutOfReach:
			l.Listed = ListedOutOfReach
		case reach == HalfWay && l.Listed == ListedWithin:
			l.Listed = ListedHalfWay
		}
	}
	return l
}

// compare holds the power of a listed supply against the limits.
func (l Limited) compare(power unit.Power) Listed {
	listed := ListedWithin
	for _, limit := range l.Limits {
		switch {
		case limit.Power == 0 || unit.AtLeast(float64(limit.Power), float64(power)):
		case limit.Basis.Mark.Decides():
			return ListedBeyond
		default:
			listed = ListedDoubted
		}
	}
	return listed
}
