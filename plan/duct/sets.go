package duct

import (
	"slices"

	"dustbook/plan/shop"
)

// MostSets is the largest number of sets that are reckoned. Where sets of as
// many machines as people work at would be more, smaller sets are all.
const MostSets = 100_000

// Sets says which machines may run together: every set of one machine, of two,
// up to as many as the shop's people work at, by size and then in file order.
// Where the shop file does not say how many that are, sets of two are reckoned
// all the same.
type Sets struct {
	People  int  // how many machines are likely to run at once, by the shop file
	Assumed bool // the file does not say: People is a default
	Asked   int  // how large the sets should get, with as many machines as that
	Size    int  // of the largest sets reckoned; less than Asked where those would be more than MostSets
	All     []*Set

	Largest []*Set      // the sets that work, of the largest size of which one does
	Broken  []*Set      // the sets that fail although each smaller set of their machines works
	Gates   []GateRange // one for each collector that a set works on, in file order

	machines []*shop.Machine
}

// A Set is some machines that run at once.
type Set struct {
	Machines []*shop.Machine
	Apart    *shop.Duct // the movable end that two of them share, so that they cannot run together; nil where none do
	On       []Verdict  // of each collector the set needs, with the filter in each state; none where no duct serves it or Apart is there
	Works    bool       // captured and carried on every collector with the filter in each state
	Thin     Doubts     // why it is thin although it works, in the order of the doubts; none where nothing is in doubt, or it does not work
	Open     []int      // gates open, of each collector of the shop
	Relief   []Relief   // of each collector on which it is captured but not carried
}

// Relief is the smallest addition of open gates of a collector that makes a
// set, captured but not carried, both captured and carried with the filter in
// each state: fewest first, then the first in file order.
type Relief struct {
	Collector *shop.Collector
	Gates     []*shop.Gate // none: no addition that was tried does
	Through   int          // every addition of up to so many gates was tried, or is known to fail; -1: of any number
}

// GateRange is how few and how many gates of a collector are open over the
// sets that need it and work, as they are or with the gates of their relief
// open as well: those are counted. With it stands the first set each holds for.
type GateRange struct {
	Collector              *shop.Collector
	Least, Most            int
	Fewest, Widest         *Set
	FewestAlso, WidestAlso []*shop.Gate // opened as relief
}

// Of is the set of some machines, in any order; nil where it was not reckoned.
func (x *Sets) Of(machines ...*shop.Machine) *Set {
	var at []int
	for _, m := range machines {
		at = append(at, slices.Index(x.machines, m))
	}
	slices.Sort(at)
	at = slices.Compact(at)
	if len(at) == 0 || len(at) > x.Size || at[0] < 0 {
		return nil
	}
	return x.All[rank(len(x.machines), at)]
}

// Pair is the set of two machines of the shop by their places in the file, or
// of the one where both are the same: an entry of the table machine by machine.
// It is nil where sets of two were not reckoned.
func (x *Sets) Pair(i, j int) *Set { return x.Of(x.machines[i], x.machines[j]) }

// combinations is how many sets of k there are of n; more than MostSets is MostSets+1.
func combinations(n, k int) int {
	count := 1
	for i := range k {
		if count = count * (n - i) / (i + 1); count > MostSets*(k+1) {
			return MostSets + 1
		}
	}
	return count
}

// asked is how large the sets of a shop should get.
func asked(s *shop.Shop) int {
	people := s.PeopleAtMachines.V
	if !s.PeopleAtMachines.Stated() {
		people = max(people, 2)
	}
	return min(people, len(s.Machines))
}

// sizes is how large the sets of n machines get, and how many there are in all.
func sizes(n, people int) (size, count int) {
	for k := 1; k <= min(n, people); k++ {
		more := combinations(n, k)
		if count+more > MostSets {
			break
		}
		size, count = k, count+more
	}
	return size, count
}

// rank is the place of a set, by the rising places of its members, among the
// sets of n by size and then in order.
func rank(n int, at []int) int {
	place := 0
	for k := 1; k < len(at); k++ {
		place += combinations(n, k)
	}
	from := 0
	for i, member := range at {
		for ; from < member; from++ {
			place += combinations(n-from-1, len(at)-i-1)
		}
		from = member + 1
	}
	return place
}

// next moves to the following choice of rising places out of n, and reports
// whether there is one.
func next(at []int, n int) bool {
	for i := len(at) - 1; i >= 0; i-- {
		if at[i] < n-len(at)+i {
			at[i]++
			for j := i + 1; j < len(at); j++ {
				at[j] = at[j-1] + 1
			}
			return true
		}
	}
	return false
}

// first is the first choice of k places.
func first(k int) []int {
	at := make([]int, k)
	for i := range at {
		at[i] = i
	}
	return at
}

// summarise finds what stands out among the sets.
func (x *Sets) summarise(collectors []*shop.Collector) {
	for _, s := range x.All {
		if s.Works {
			if len(x.Largest) > 0 && len(x.Largest[0].Machines) < len(s.Machines) {
				x.Largest = nil
			}
			x.Largest = append(x.Largest, s)
		} else if x.innerWork(s) {
			x.Broken = append(x.Broken, s)
		}
	}
	for i, c := range collectors {
		x.gateRange(i, c)
	}
}

// innerWork reports whether every smaller set of a set's machines works.
func (x *Sets) innerWork(s *Set) bool {
	n := len(s.Machines)
	part := make([]*shop.Machine, 0, n)
	for pick := 1; pick < 1<<n-1; pick++ {
		part = part[:0]
		for i, m := range s.Machines {
			if pick>>i&1 == 1 {
				part = append(part, m)
			}
		}
		if !x.Of(part...).Works {
			return false
		}
	}
	return true
}

// reliefOn are the gates of a collector that a set's relief opens.
func (s *Set) reliefOn(c *shop.Collector) []*shop.Gate {
	for _, r := range s.Relief {
		if r.Collector == c {
			return r.Gates
		}
	}
	return nil
}

func (x *Sets) gateRange(i int, c *shop.Collector) {
	g := GateRange{Collector: c}
	for _, s := range x.All {
		if word := s.Stands(); word != "works" && word != "relief" || !slices.ContainsFunc(s.On, func(v Verdict) bool { return v.Collector == c }) {
			continue
		}
		also := s.reliefOn(c)
		open := s.Open[i] + len(also)
		if g.Fewest == nil || open < g.Least {
			g.Least, g.Fewest, g.FewestAlso = open, s, also
		}
		if g.Widest == nil || open > g.Most {
			g.Most, g.Widest, g.WidestAlso = open, s, also
		}
	}
	if g.Fewest != nil {
		x.Gates = append(x.Gates, g)
	}
}
