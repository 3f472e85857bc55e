package drawing

import (
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/control"
	"dustbook/plan/control/chain"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Sizes of a chain's drawing, in tenths.
const (
	deviceWide = 1560
	deviceText = 1180 // room between the terminals
	runLong    = 940  // between two devices
	chainRow   = 4    // devices in a row, the supply counted
	poleApart  = 170  // each conductor from the middle
	laneDrop   = 330  // from a row down to the way back to the next
	laneApart  = 130
)

// Chain draws a low-voltage chain as it is wired, to no scale: the supply,
// then each device in order with its tag, both conductors with their
// polarity, and on every run its number and one-way length. A chain longer
// than a row goes on in the next.
func Chain(p *plan.Plan, c *shop.Chain, id string) SVG {
	d := &chainPen{p: p, chain: c}
	d.gather()
	for i := range d.devices {
		d.drawRun(i)
	}
	for i := range d.devices {
		d.drawDevice(i)
	}
	d.foot(chainKey(), []string{
		wording.Text("chain.drawn", drawable(d.chain.CableText)),
	})
	return d.frame(id, wording.Text("chain.title", drawable(c.Name)), d.desc(), margin)
}

// chainPen is a chain while it is drawn.
type chainPen struct {
	pen
	p       *plan.Plan
	chain   *shop.Chain
	devices []chainDevice
	tall    int
}

// chainDevice is the supply or a device: what is written in its box.
type chainDevice struct {
	says block
	name string
	run  unit.Length // that leads to it; nought for the supply
}

// gather writes the boxes and finds how tall they have to be.
func (d *chainPen) gather() {
	supply := wording.Text("chain.supply")
	if v := d.p.Shop.Control.Supply; v.Known() {
		supply = wording.Text("chain.supply-of", unit.Volts.Print(d.p.Shop.Units, v.V))
	}
	d.add(d.p.Control.SupplyTag(), supply, "", "", 0)
	for i, s := range d.chain.Stops {
		tag, kind := "", wording.Text("chain.device")
		if v := d.p.Control.OnStop(s); v != nil {
			tag, kind = v.Tag, wording.Text("device."+v.Kind.Key())
			if v.Gate != nil && d.p.Control.Drive(v.Gate) == control.ByHand {
				kind = wording.Text("chain.by-hand", kind)
			}
		}
		d.add(tag, kind, s.Device(), d.volts(i), s.Cable)
	}
	for _, v := range d.devices {
		d.tall = max(d.tall, v.says.height()+200)
	}
}

// volts says what a stop's device gets at the worst, and whether that lies below
// what it works with; nothing where it is not known or the device needs none.
func (d *chainPen) volts(stop int) string {
	n := d.p.Chains.Of(d.chain).Nodes[stop]
	switch {
	case !n.Solved || !n.Judged:
		return ""
	case n.Verdict == chain.Short, n.Need > 0 && !unit.AtLeast(float64(n.Volts), float64(n.Need)):
		return wording.Text("chain.too-little", unit.Volts.Print(d.p.Shop.Units, n.Volts))
	}
	return wording.Text("chain.at-least", unit.Volts.Print(d.p.Shop.Units, n.Volts))
}

func (d *chainPen) add(tag, kind, name, volts string, run unit.Length) {
	b := writing(tag, true, plainText, deviceText, 1)
	says := writing(kind, false, plainText, deviceText, 2)
	b.lines = append(b.lines, says.lines...)
	full := drawable(tag + " " + name)
	if name != "" {
		own := writing(name, true, plainText, deviceText, 3)
		b.lines = append(b.lines, own.lines...)
		if own.full != "" {
			b.full = full
		}
	} else {
		full = drawable(tag + " " + kind)
	}
	if volts != "" {
		gets := writing(volts, false, plainText, deviceText, 2)
		b.lines = append(b.lines, gets.lines...)
		full += ", " + volts
	}
	d.devices = append(d.devices, chainDevice{b, full, run})
}

// pitch is how far one row stands below another.
func (d *chainPen) pitch() int { return d.tall + 2*laneDrop + laneApart + 120 }

// at is the middle of a device.
func (d *chainPen) at(i int) spot {
	return spot{i % chainRow * (deviceWide + runLong), i / chainRow * d.pitch()}
}

// The two conductors: the positive one is the heavier.
var (
	plusLook  = look{line: dark, weight: 30}
	minusLook = look{line: dark, weight: 12}
)

// drawRun draws the two conductors that lead to a device, with the run's
// number and length.
func (d *chainPen) drawRun(i int) {
	if i == 0 {
		return
	}
	from, to := d.at(i-1).moved(deviceWide/2, 0), d.at(i).moved(-deviceWide/2, 0)
	says := writing(strconv.Itoa(i)+" · "+unit.Run.Print(d.p.Shop.Units, d.devices[i].run), false, smallText, 3000, 1)
	middle := spot{(from.x + to.x) / 2, from.y - poleApart - 110}
	if i%chainRow != 0 {
		d.line(plusLook, "", from.moved(0, -poleApart), to.moved(0, -poleApart))
		d.line(minusLook, "", from.moved(0, poleApart), to.moved(0, poleApart))
	} else {
		lane := from.y + d.tall/2 + laneDrop
		d.line(plusLook, "", from.moved(0, -poleApart), spot{from.x + 320, from.y - poleApart}, spot{from.x + 320, lane + laneApart},
			spot{to.x - 180, lane + laneApart}, spot{to.x - 180, to.y - poleApart}, to.moved(0, -poleApart))
		d.line(minusLook, "", from.moved(0, poleApart), spot{from.x + 180, from.y + poleApart}, spot{from.x + 180, lane},
			spot{to.x - 320, lane}, spot{to.x - 320, to.y + poleApart}, to.moved(0, poleApart))
		middle.y = lane - 110
	}
	d.write(&says, around(middle, says.width()/2, says.height()/2), centred)
}

// drawDevice draws a device's box with its terminals.
func (d *chainPen) drawDevice(i int) {
	at, v := d.at(i), d.devices[i]
	l := look{fill: paper, line: dark, weight: 16}
	if i == 0 {
		l = look{fill: tint, line: dark, weight: 30}
	}
	in := around(at, deviceWide/2, d.tall/2)
	d.rect(l, v.name, in)
	d.write(&v.says, around(at, v.says.width()/2, v.says.height()/2), centred)
	if i > 0 {
		d.poles(spot{in.left + 90, at.y})
	}
	if i+1 < len(d.devices) {
		d.poles(spot{in.right - 90, at.y})
	}
}

// poles marks the two terminals at a side of a box.
func (d *chainPen) poles(at spot) {
	for _, pole := range [2]struct {
		sign string
		y    int
	}{{"+", -poleApart}, {"−", poleApart}} {
		b := writing(pole.sign, true, plainText, 300, 1)
		d.write(&b, around(at.moved(0, pole.y), b.width()/2, b.height()/2), centred)
	}
}

// chainKey is what the two lines mean.
func chainKey() []sign {
	return []sign{signOf("plus"), signOf("minus")}
}

// desc says in words what the drawing shows.
func (d *chainPen) desc() string {
	way := []string{wording.Text("chain.from", d.devices[0].name)}
	for i, v := range d.devices[1:] {
		way = append(way, wording.Text("chain.run", strconv.Itoa(i+1), unit.Run.Print(d.p.Shop.Units, v.run), v.name))
	}
	return wording.Text("chain.desc", drawable(d.chain.CableText), strings.Join(way, "; "))
}
