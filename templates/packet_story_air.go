package templates

import (
	"html/template"
	"strconv"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// tellCapture says how the dust is drawn off at the machines.
func (b *Book) tellCapture() *passage {
	p := b.passage("packet.capture")
	ports, served := 0, 0
	var bare []string
	for _, m := range b.Plan.Shop.Machines {
		for _, port := range m.Ports {
			ports++
			if port.Duct != nil {
				served++
			} else {
				bare = append(bare, port.Full())
			}
		}
	}
	p.count("packet.ports", ports)
	if served > 0 {
		p.count("packet.served", served)
	}
	p.sayOf("packet.no-duct", bare)
	p.sayOf("packet.no-port", machineNames(b.Plan.Shop.Machines, func(m *shop.Machine) bool { return len(m.Ports) == 0 }))
	b.tellHoses(p)
	if held, all := b.heldUses(); all > 0 {
		p.say(one("packet.uses", all), strconv.Itoa(all), strconv.Itoa(held), strconv.Itoa(all-held))
	}
	readings := 0
	for _, r := range b.Plan.Records {
		readings += len(r.Readings)
	}
	if readings > 0 {
		p.count("packet.measured", readings)
		p.see("records.records-b", recordsPath(0))
	} else {
		p.say("packet.not-measured")
	}
	return p
}

// tellHoses says what hose there is between machines and ducts.
func (b *Book) tellHoses(p *passage) {
	n, long := 0, unit.Length(0)
	var shared, loose []string
	for _, d := range b.Plan.Shop.Ducts {
		if d.Movable() {
			shared = append(shared, d.Name)
		}
		if d.Hose == nil {
			continue
		}
		n, long = n+1, long+d.Hose.Length
		if !d.Hose.Stretched.Stated() {
			loose = append(loose, d.Name)
		}
	}
	if n > 0 {
		p.count("packet.hoses", n, unit.Run.Print(b.units, long))
	}
	p.sayOf("packet.moved", shared)
	p.lackOf("packet.lack-stretched", loose)
}

// tellDucts says how the dust is carried.
func (b *Book) tellDucts() *passage {
	ducts := b.Plan.Shop.Ducts
	p := b.passage("packet.carrying")
	if len(ducts) == 0 {
		p.lack("packet.lack-ducts")
		return p
	}
	var made []template.HTML
	for _, m := range madeOf(ducts) {
		made = append(made, b.sentence("packet.made", unit.Run.Print(b.units, m.long), m.name))
	}
	p.count("packet.ducts", len(ducts), b.clausesOf(made))
	if low, high := bores(ducts); low > 0 && low == high {
		p.say("packet.size", unit.Size.Print(b.units, low))
	} else if low > 0 {
		p.say("packet.sizes", unit.Size.Figure(b.units, low), unit.Size.Print(b.units, high))
	}
	p.lackOf("packet.lack-sizes", ductsWhere(ducts, func(d *shop.Duct) bool { return d.Size == 0 }))
	p.sayOf("packet.insulating", ductsWhere(ducts, func(d *shop.Duct) bool { return !d.Conducts }))
	if earthed := ductsWhere(ducts, func(d *shop.Duct) bool { return d.Bonded.Stated() }); len(earthed) > 0 {
		p.say("packet.bonded", b.named(earthed))
	}
	if n := len(ductsWhere(ducts, func(d *shop.Duct) bool { return d.Conducts && !d.Bonded.Stated() })); n > 0 {
		p.lack(one("packet.lack-bonded", n), n)
	}
	if n := len(ductsWhere(ducts, func(d *shop.Duct) bool { return len(d.CleanOuts) > 0 })); n > 0 {
		p.count("packet.clean-outs", n)
	} else {
		p.lack("packet.lack-clean-outs")
	}
	p.lackOf("packet.lack-material", ductsWhere(ducts, func(d *shop.Duct) bool { return !d.MaterialStated }))
	if n := len(ductsWhere(ducts, func(d *shop.Duct) bool { return !d.Hangers.Stated() })); n > 0 {
		p.lack(one("packet.lack-hangers", n), n)
	}
	p.see("packet.duct-sheet", "ducts.html")
	return p
}

// madeDucts is how much duct there is of one material.
type madeDucts struct {
	name string
	long unit.Length
}

// madeOf adds up the ducts by material, in file order.
func madeOf(ducts []*shop.Duct) []madeDucts {
	var list []madeDucts
	at := map[string]int{}
	for _, d := range ducts {
		i, met := at[d.Material]
		if !met {
			i = len(list)
			at[d.Material], list = i, append(list, madeDucts{name: d.Material})
		}
		list[i].long += d.Length
	}
	return list
}

// bores are the least and the greatest size of ducts whose size is known.
func bores(ducts []*shop.Duct) (low, high unit.Length) {
	for _, d := range ducts {
		if d.Size == 0 {
			continue
		}
		if low == 0 || d.Size < low {
			low = d.Size
		}
		high = max(high, d.Size)
	}
	return low, high
}

// ductsWhere are the names of the ducts that something holds for.
func ductsWhere(ducts []*shop.Duct, holds func(*shop.Duct) bool) []string {
	var list []string
	for _, d := range ducts {
		if holds(d) {
			list = append(list, d.Name)
		}
	}
	return list
}
