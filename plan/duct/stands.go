package duct

import "dustbook/plan/shop"

// Stands is the one word for how a set stands: works; relief, where gates opened
// as well mend it; dust, where air suffices and dust settles; air, where a port
// lacks air; apart, where two machines share an end; curve, off the fan's curve;
// unserved, where no duct serves a port of it.
func (s *Set) Stands() string {
	switch {
	case s.Works:
		return "works"
	case s.Apart != nil:
		return "apart"
	case len(s.On) == 0 || len(s.Bare()) > 0:
		return "unserved"
	}
	air := false
	for _, v := range s.On {
		if !v.OnCurve {
			return "curve"
		}
		air = air || !v.Captured
	}
	if air {
		return "air"
	}
	for _, r := range s.Relief {
		if len(r.Gates) == 0 {
			return "dust"
		}
	}
	return "relief"
}

// Sign is how a set stands, with two words more: thin, of what works with a
// doubt; tried, of dust that settles where only some additions of gates were
// tried.
func (s *Set) Sign() string {
	switch word := s.Stands(); {
	case word == "works" && len(s.Thin) > 0:
		return "thin"
	case word == "dust" && s.Tried() >= 0:
		return "tried"
	default:
		return word
	}
}

// Signs lists the signs, in the order of a key.
var Signs = []string{"works", "thin", "relief", "dust", "tried", "air", "apart", "curve", "unserved"}

// Tried is how many gates at once were tried where dust settles and no addition
// was found; -1 where none helps, of any number, or one was found.
func (s *Set) Tried() int {
	most := -1
	for _, r := range s.Relief {
		switch {
		case len(r.Gates) > 0:
		case r.Through < 0:
			return -1
		case most < 0 || r.Through < most:
			most = r.Through
		}
	}
	return most
}

// Several reports whether a set needs more than one collector.
func (s *Set) Several() bool {
	for _, v := range s.On {
		if v.Collector != s.On[0].Collector {
			return true
		}
	}
	return false
}

// Bare are the ports of a set that no duct serves.
func (s *Set) Bare() (list []*shop.Port) {
	for _, m := range s.Machines {
		for _, p := range m.Ports {
			if p.Duct == nil {
				list = append(list, p)
			}
		}
	}
	return list
}
