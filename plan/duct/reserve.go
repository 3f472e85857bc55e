package duct

// Reserve is what keeps a verdict on air at thin, though the model's figures
// meet every need.
type Reserve struct {
	Filter bool // the pressure of the filter is not given, and the fan was reckoned without it
	Claims bool // the fan is only known by its maker's two claims
	Needs  bool // a port's need is a default from memory or practice
	Speeds bool // a speed that carries dust is one from memory or practice
	Band   bool // a need lies inside the band, or there is none
}

// Any reports whether there is a reserve.
func (d Reserve) Any() bool { return d != Reserve{} }

// And is one reserve with another.
func (d Reserve) And(o Reserve) Reserve {
	return Reserve{d.Filter || o.Filter, d.Claims || o.Claims, d.Needs || o.Needs, d.Speeds || o.Speeds, d.Band || o.Band}
}

// AirReserve is what keeps a result's air at thin; s is its spread.
func (r *Result) AirReserve(s *Spread) Reserve {
	d := Reserve{Filter: r.Collector != nil && FilterOpen(r.Collector), Claims: r.Claimed}
	for i := range r.Ports {
		if p := &r.Ports[i]; p.Port.Flow > 0 {
			d.Needs = d.Needs || p.Weak
			d.Band = d.Band || s.Port(p.Port).Judge(float64(p.Port.Flow)) != Surely
		}
	}
	return d
}

// DustReserve is what keeps the carrying of a result's dust at thin.
func (r *Result) DustReserve(s *Spread) Reserve {
	d := Reserve{Filter: r.Collector != nil && FilterOpen(r.Collector), Claims: r.Claimed}
	for i := range r.Stretches {
		if v := &r.Stretches[i]; v.Judged {
			d.Speeds = d.Speeds || v.Basis.Mark.Weak()
			d.Band = d.Band || s.Speed(v.Stretch).Judge(float64(v.Transport)) != Surely
		}
	}
	return d
}
