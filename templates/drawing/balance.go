package drawing

import (
	"strings"

	airOf "dustbook/plan/room"
	"dustbook/plan/unit"
)

// Sizes of the drawing of what goes out of rooms and into them, in tenths.
const (
	barLong = 5600 // of the greatest flow
	barHigh = 260
	barGap  = 60
	barNext = 560 // between the bars of one air and the name of the next
)

// Balance draws, for each air that a use draws from, what fans take out of it
// and what makes that up, as two bars to one scale: given back by fans, and
// coming in from outdoors. Each is taken in the use that takes most.
func Balance(sys unit.System, list []*airOf.Balance, id string) SVG {
	b := &balance{sys: sys}
	for _, at := range list {
		b.most = max(b.most, at.Drawn, at.Returned)
	}
	var says []string
	for _, at := range list {
		b.draw(at)
		key := "rooms.balance.desc-one"
		if at.Net < 0 {
			key = "rooms.balance.desc-in"
		}
		says = append(says, wording.Text(key, drawable(at.Space.Name()), b.flow(at.Drawn), drawable(at.Use), b.flow(at.Returned), b.flow(max(at.Net, -at.Net))))
	}
	b.foot(balanceKey(), nil)
	return b.frame(id, wording.Text("rooms.balance.title"), wording.Text("rooms.balance.desc", strings.Join(says, "; ")), margin)
}

type balance struct {
	pen
	sys  unit.System
	most unit.Flow
	y    int
}

func (b *balance) flow(q unit.Flow) string { return unit.Air.Print(b.sys, q) }

// long is the length of a flow, in tenths.
func (b *balance) long(q unit.Flow) int {
	return tenths(unit.Six(float64(q/b.most)) * barLong / 10)
}

// draw draws one air.
func (b *balance) draw(at *airOf.Balance) {
	head := writing(wording.Text("rooms.balance.of", drawable(at.Space.Name()), drawable(at.Use)), true, plainText, 9000, 2)
	b.write(&head, box{0, b.y, head.width(), b.y + head.height()}, fromStart)
	b.y += head.height() + 80
	if at.Drawn > 0 {
		b.bar(drawnLook, 0, at.Drawn, wording.Text("rooms.balance.drawn", b.flow(at.Drawn)))
	}
	if at.Returned > 0 {
		b.bar(backLook, 0, at.Returned, wording.Text("rooms.balance.back", b.flow(at.Returned)))
	}
	switch {
	case at.Net > 0:
		b.bar(comesLook, b.long(at.Returned), at.Net, wording.Text("rooms.balance.in", b.flow(at.Net)))
	case at.Net < 0:
		b.bar(comesLook, b.long(at.Drawn), -at.Net, wording.Text("rooms.balance.pushed", b.flow(-at.Net)))
	}
	b.y += barNext - barGap
}

// bar draws one flow from a place on, with its figure behind it.
func (b *balance) bar(l look, from int, q unit.Flow, says string) {
	long := max(b.long(q), 20)
	b.rect(l, "", box{from, b.y, from + long, b.y + barHigh})
	b.note(says, spot{from + long + 90, b.y + barHigh/2}, fromStart)
	b.y += barHigh + barGap
}

var (
	drawnLook = look{fill: air, line: dark, weight: 12}
	backLook  = look{fill: tint, line: dark, weight: 12}
	comesLook = look{fill: paper, line: dark, weight: 16, dash: "8 6"}
)

// balanceKey says what the bars are.
func balanceKey() []sign {
	sample := func(l look) func(p *pen, at spot) {
		return func(p *pen, at spot) { p.rect(l, "", box{at.x, at.y - 70, at.x + sampleWide, at.y + 70}) }
	}
	return []sign{
		{wording.Text("rooms.key.drawn"), sample(drawnLook)},
		{wording.Text("rooms.key.back"), sample(backLook)},
		{wording.Text("rooms.key.way"), sample(comesLook)},
	}
}
