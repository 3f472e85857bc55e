package export

import (
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// Sets is the document that size --sets --json prints: which machines may run
// together.
type Sets struct {
	Format   string     `json:"format"`
	Shop     string     `json:"shop"`
	AsOf     string     `json:"as_of"`
	People   int        `json:"people_at_machines"`
	Assumed  bool       `json:"people_assumed"` // the file does not say how many: sets of two were reckoned all the same
	Size     int        `json:"largest_size"`   // of the sets reckoned
	Machines []string   `json:"machines"`       // in the order of the rows and columns of pairs
	Pairs    [][]string `json:"pairs"`          // how two machines stand, on the diagonal one alone; empty where sets of two were not reckoned
	Sets     []Set      `json:"sets"`           // by size, then in file order
	Gates    []SetGates `json:"gates"`
}

// Set is one set of machines. How it stands is one word: works; relief, where
// gates opened as well mend it; dust, where air suffices and dust settles; air,
// where a port lacks air; apart, where two machines share an end; curve, off
// the fan's curve; unserved, where no duct serves a port of it. Of a set that
// works, thin lists what it rests on that is not sure: filter, its pressure is
// not given; claims, the fan is known by two claims; need, a port's need is from
// memory or practice; speed, the speed that carries its dust is; band, a need
// lies inside the band of what is got; band-not-in, the bands were not reckoned.
type Set struct {
	Machines []string    `json:"machines"`
	Stands   string      `json:"stands"`
	Works    bool        `json:"works"`
	Thin     []string    `json:"thin"`
	Apart    string      `json:"apart"` // the duct whose end two of them share
	On       []SetOn     `json:"on"`
	Relief   []SetRelief `json:"relief"`
}

// SetOn is what a set means on one collector with its filter in one state. A
// port and a stretch are named where they fall short, with the share of what
// they need.
type SetOn struct {
	Collector string  `json:"collector"`
	Filter    string  `json:"filter"`
	Open      bool    `json:"filter_not_given"` // reckoned without a filter, of which nothing is known
	OnCurve   bool    `json:"on_curve"`
	Captured  bool    `json:"captured"`
	Carried   bool    `json:"carried"`
	Why       string  `json:"why"`
	Port      string  `json:"port"`
	PortShare *Number `json:"port_share"`
	Duct      string  `json:"duct"`
	Stretch   int     `json:"stretch"`
	Hose      bool    `json:"hose"`
	Speed     *Number `json:"speed_share"`
}

// SetRelief is the smallest addition of open gates that mends a set on a
// collector. Without gates there is none of up to so many gates; of any number
// where that is null.
type SetRelief struct {
	Collector string   `json:"collector"`
	Gates     []string `json:"gates"`
	Through   *int     `json:"tried_through"`
}

// SetGates is how few and how many gates are open over the sets that work, as
// they are or with the gates of their relief, which are counted and named.
type SetGates struct {
	Collector string   `json:"collector"`
	Least     int      `json:"least"`
	Fewest    []string `json:"least_with"`
	LeastAlso []string `json:"least_also_open"`
	Most      int      `json:"most"`
	Widest    []string `json:"most_with"`
	MostAlso  []string `json:"most_also_open"`
}

// MakeSets makes the document from the sets of a plan.
func MakeSets(p *plan.Plan, x *duct.Sets) Sets {
	doc := Sets{Format: "dustbook-sets/1", Shop: p.Shop.Name, AsOf: p.AsOf.String(), People: x.People, Assumed: x.Assumed, Size: x.Size, Machines: machineNames(p.Shop.Machines), Pairs: [][]string{}, Sets: []Set{}, Gates: []SetGates{}}
	for i := range p.Shop.Machines {
		row := []string{}
		for j := range p.Shop.Machines {
			word := ""
			if s := x.Pair(i, j); s != nil {
				word = s.Stands()
			}
			row = append(row, word)
		}
		doc.Pairs = append(doc.Pairs, row)
	}
	for _, s := range x.All {
		doc.Sets = append(doc.Sets, setOf(s))
	}
	for _, g := range x.Gates {
		doc.Gates = append(doc.Gates, SetGates{g.Collector.Name, g.Least, machineNames(g.Fewest.Machines), gateNames(g.FewestAlso), g.Most, machineNames(g.Widest.Machines), gateNames(g.WidestAlso)})
	}
	return doc
}

func setOf(s *duct.Set) Set {
	v := Set{Machines: machineNames(s.Machines), Stands: s.Stands(), Works: s.Works, Thin: []string{}, On: []SetOn{}, Relief: []SetRelief{}}
	for _, d := range s.Thin {
		v.Thin = append(v.Thin, string(d))
	}
	if s.Apart != nil {
		v.Apart = s.Apart.Name
	}
	for _, on := range s.On {
		v.On = append(v.On, setOn(on))
	}
	for _, r := range s.Relief {
		row := SetRelief{Collector: r.Collector.Name, Gates: gateNames(r.Gates)}
		if r.Through >= 0 {
			row.Through = &r.Through
		}
		v.Relief = append(v.Relief, row)
	}
	return v
}

func setOn(on duct.Verdict) SetOn {
	v := SetOn{
		Collector: on.Collector.Name, Filter: on.Filter, Open: duct.FilterOpen(on.Collector), OnCurve: on.OnCurve, Captured: on.Captured, Carried: on.Carried, Why: on.Why.String(),
		PortShare: number(on.PortShare, on.Port != nil), Hose: on.Hose, Speed: number(on.Speed, on.Slowest != nil),
	}
	if on.Port != nil {
		v.Port = on.Port.Full()
	}
	if on.Slowest != nil {
		v.Duct, v.Stretch = on.Slowest.Duct.Name, on.Slowest.Number
	}
	return v
}

func gateNames(list []*shop.Gate) []string {
	names := []string{}
	for _, g := range list {
		names = append(names, g.Name)
	}
	return names
}

func machineNames(list []*shop.Machine) []string {
	names := []string{}
	for _, m := range list {
		names = append(names, m.Name)
	}
	return names
}
