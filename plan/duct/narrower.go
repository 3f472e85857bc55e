package duct

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Narrowed is a duct at a port in its own size and in the next smaller stock
// size, all else as it stands.
type Narrowed struct {
	Use      *Use
	Port     *shop.Port
	Size     unit.Length // nominal, the smaller
	Flow     unit.Flow   // of the port, as the duct stands
	Less     unit.Flow   // and in the smaller size
	Velocity unit.Velocity
	Faster   unit.Velocity // in the smaller size
}

// Narrower puts the duct behind the first port of a result into the next
// smaller stock size. It is false where none is stocked, where the result is
// off the curve, and where it then would be.
func (k *Reckoning) Narrower(r *Result) (v Narrowed, known bool) {
	t := k.TreeOf(r.Collector)
	if t == nil || !r.OnCurve || len(r.Ports) == 0 || r.Ports[0].Port.Duct == nil || r.Ports[0].Port.Duct.Collector != r.Collector {
		return v, false
	}
	port := r.Ports[0].Port
	size, stocked := lastSize(t.shop, port.Duct)
	if !stocked {
		return v, false
	}
	bore, _ := shop.Bore(port.Duct.Material, size)
	as := alteration{bore: map[*shop.Stretch]unit.Length{}, hose: map[*shop.Duct]*shop.Hose{}}
	as.size(port.Duct, bore)
	less := growAs(t.shop, t.Collector, t.State, as).Solve(r.Use, r.Filter)
	own, other := r.Stretch(port.Duct.Stretches[0]), less.Stretch(port.Duct.Stretches[0])
	if !less.OnCurve || own == nil || other == nil {
		return v, false
	}
	return Narrowed{Use: r.Use, Port: port, Size: size, Flow: r.Ports[0].Flow, Less: less.Port(port).Flow, Velocity: own.Velocity, Faster: other.Velocity}, true
}
