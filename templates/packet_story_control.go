package templates

import (
	"html/template"
	"slices"
	"strconv"

	"dustbook/plan/control"
	"dustbook/plan/control/timing"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// tellGates says what gates there are and what moves them.
func (b *Book) tellGates() *passage {
	s := b.Plan.Shop
	p := b.passage("packet.gates")
	if len(s.Gates) == 0 {
		p.say("packet.no-gates")
		return p
	}
	p.count("packet.gate-count", len(s.Gates))
	driven := func(is control.Drive) []string {
		var list []string
		for _, g := range s.Gates {
			if b.Plan.Control.Drive(g) == is {
				list = append(list, g.Name)
			}
		}
		return list
	}
	if n := len(driven(control.Powered)); n > 0 {
		p.count("packet.powered", n)
		b.tellArrival(p)
	}
	p.sayOf("packet.by-hand", driven(control.ByHand))
	p.lackOf("packet.lack-drive", driven(control.DriveNotGiven))
	return p
}

// tellArrival says how it is known that a gate has arrived.
func (b *Book) tellArrival(p *passage) {
	shown, blind := 0, 0
	for _, g := range b.Plan.Control.Powered() {
		if timing.ByTimeAlone(g) {
			blind++
		} else {
			shown++
		}
	}
	if shown > 0 {
		p.count("packet.shown", shown)
	}
	if blind > 0 {
		p.count("packet.blind", blind)
	}
}

// tellFollowing says how gates and collectors follow the machines.
func (b *Book) tellFollowing() *passage {
	s := b.Plan.Shop
	p := b.passage("packet.following")
	if !b.Plan.Control.Given {
		p.say("packet.no-control")
		return p
	}
	watched := map[*shop.Machine]bool{}
	switches := 0
	for _, t := range s.Triggers {
		if control.Pressed(t) {
			switches++
		}
		if t.Machine != nil {
			watched[t.Machine] = true
		}
	}
	if n := len(s.Triggers) - switches; n > 0 {
		p.count("packet.watched", n)
		p.say("packet.order")
	}
	if switches > 0 {
		p.count("packet.switches", switches)
	}
	p.sayOf("packet.not-watched", machineNames(s.Machines, func(m *shop.Machine) bool { return !watched[m] }))
	b.tellTimes(p)
	if s.Control.MovesTogether.Stated() {
		p.count("packet.moves", s.Control.MovesTogether.V)
	} else if len(b.Plan.Control.Powered()) > 1 {
		p.lack("packet.lack-moves")
	}
	known(p, s.Control.Supply, "packet.supply", "packet.lack-supply", func(v unit.Voltage) string { return unit.Volts.Print(b.units, v) })
	known(p, s.Control.SupplyListed, "packet.listed", "packet.lack-listed", func(v string) string { return v })
	known(p, s.Control.Lockout, "packet.lockout", "packet.lack-lockout", func(v string) string { return v })
	p.see("packet.matrix-sheet", "matrix.html")
	if len(s.Triggers) > 0 {
		p.see("lanes.sheet", "sequence.html")
	}
	return p
}

// tellTimes says what the file gives of start delays and run-ons.
func (b *Book) tellTimes(p *passage) {
	var delays, runOns []unit.Time
	var waits, stays []string
	for _, t := range b.Plan.Shop.Triggers {
		switch {
		case len(t.Starts) == 0:
		case t.StartDelay.Stated():
			delays = append(delays, t.StartDelay.V)
		default:
			waits = append(waits, t.Name)
		}
		switch {
		case len(t.Starts) == 0:
		case t.RunOn.Stated():
			runOns = append(runOns, t.RunOn.V)
		default:
			stays = append(stays, t.Name)
		}
	}
	b.tellSpan(p, "packet.delay", delays)
	b.tellSpan(p, "packet.run-on", runOns)
	p.lackOf("packet.lack-delay", waits)
	p.lackOf("packet.lack-run-on", stays)
}

// tellSpan says a time, or the least and the most of several.
func (b *Book) tellSpan(p *passage, key string, times []unit.Time) {
	if len(times) == 0 {
		return
	}
	low, high := slices.Min(times), slices.Max(times)
	span := unit.Seconds.Print(b.units, high)
	if unit.Compare(float64(low), float64(high)) != 0 {
		span = b.between(unit.Seconds.Figure(b.units, low), span)
	}
	p.say(key, span)
}

// tellStops says what stops everything, and what a power cut does.
func (b *Book) tellStops() *passage {
	s := b.Plan.Shop
	p := b.passage("packet.stops")
	for _, stop := range s.Stops {
		what := names(stop.Machines)
		for _, c := range stop.Collectors {
			what = append(what, c.Name)
		}
		if len(what) > 0 {
			p.say("packet.stop", stop.Name, b.named(what))
		}
		if !stop.Place.Stated() {
			p.lack("packet.lack-stop-place", stop.Name)
		}
	}
	if len(s.Stops) == 0 {
		p.lack("packet.lack-stop")
	}
	known(p, s.Control.AfterPowerCut, "packet.power-cut", "packet.lack-power-cut", func(v string) string { return v })
	p.sayOf("packet.restarts", machineNames(s.Machines, func(m *shop.Machine) bool { return m.Restarts.Stated() && m.Restarts.V }))
	p.lackOf("packet.lack-restarts", machineNames(s.Machines, func(m *shop.Machine) bool { return !m.Restarts.Stated() }))
	for _, c := range s.Collectors {
		if c.Starter.Stated() {
			p.say("packet.starter", c.Name, c.Starter.V)
		} else {
			p.lack("packet.lack-starter", c.Name)
		}
	}
	b.tellExtinguishers(p)
	return p
}

// tellExtinguishers says what hangs in the shop against a fire.
func (b *Book) tellExtinguishers(p *passage) {
	list := b.Plan.Shop.Extinguishers
	if len(list) == 0 {
		p.lack("packet.lack-extinguishers")
		return
	}
	rated := map[string]int{}
	var order []string
	unrated := 0
	for _, e := range list {
		switch {
		case !e.Rating.Stated():
			unrated++
		case rated[e.Rating.V] == 0:
			order = append(order, e.Rating.V)
			fallthrough
		default:
			rated[e.Rating.V]++
		}
	}
	var clauses []template.HTML
	for _, rating := range order {
		clauses = append(clauses, b.sentence("packet.rated", strconv.Itoa(rated[rating]), rating))
	}
	if len(clauses) > 0 {
		p.say("packet.extinguishers", b.clausesOf(clauses))
	}
	if unrated > 0 {
		p.lack(one("packet.lack-rating", unrated), unrated)
	}
}
