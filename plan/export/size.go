// Package export knows the shapes in which the plan's numbers leave the
// program for other programs: the JSON of size, of its choice of sizes and of
// its sets of machines. Numbers are in SI base units, their names carry the
// unit, and each has the shortest form of six significant digits. For the
// choice it also looks at the sizes next to those chosen (Steps).
//
// A flow or a velocity that was solved again with uncertain figures stands
// with its band: eight of ten solves lie between low and high. Where there is
// no band, both are null: off the curve, in a stretch that carries no dust of
// the use, and where too many of the solves leave the curve. In a duct with a
// slower hose the band is that of the hose. No verdict of this document looks
// at a band.
package export

import (
	"bytes"
	"encoding/json"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Number is a number in its shortest form of six significant digits.
type Number float64

// MarshalJSON writes the number.
func (n Number) MarshalJSON() ([]byte, error) { return []byte(unit.Short(float64(n))), nil }

// Size is the document that size --json prints.
type Size struct {
	Format string    `json:"format"`
	Shop   string    `json:"shop"`
	AsOf   string    `json:"as_of"`
	Air    SizeAir   `json:"air"`
	Uses   []SizeUse `json:"uses"`
}

// SizeAir is the state of the air.
type SizeAir struct {
	Density   Number `json:"density_kg_m3"`
	Viscosity Number `json:"viscosity_pa_s"`
}

// SizeUse is one use on one collector with its filter in one state.
type SizeUse struct {
	Name      string     `json:"name"`
	Machines  []string   `json:"machines"`
	Collector string     `json:"collector"`
	Filter    string     `json:"filter"`
	Captured  bool       `json:"captured"`
	Carried   bool       `json:"carried"`
	Open      []string   `json:"open_gates"`
	Fan       SizeFan    `json:"fan"`
	Ports     []SizePort `json:"ports"`
	Ducts     []SizeDuct `json:"ducts"`
	Leaks     []SizeLeak `json:"leaks"`
}

// SizeFan is the fan's operating point and where its pressure goes.
type SizeFan struct {
	Flow      *Number `json:"flow_m3_s"`
	Static    *Number `json:"static_pa"`
	Power     *Number `json:"power_w"`
	OnCurve   bool    `json:"on_curve"`
	Claimed   bool    `json:"claimed"`
	Inlet     *Number `json:"inlet_suction_pa"`
	Separator *Number `json:"separator_pa"`
	Filter    *Number `json:"filter_pa"`
	Outlet    *Number `json:"outlet_pa"`
}

// SizePort is one port of the use's machines.
type SizePort struct {
	Port     string  `json:"port"`
	Need     Number  `json:"need_m3_s"`
	NeedFrom string  `json:"need_from"`
	Flow     *Number `json:"flow_m3_s"`
	Low      *Number `json:"low_m3_s"`
	High     *Number `json:"high_m3_s"`
	Captured bool    `json:"captured"`
}

// SizeDuct is one stretch of the collector's tree.
type SizeDuct struct {
	Duct      string  `json:"duct"`
	Stretch   int     `json:"stretch"`
	Flow      *Number `json:"flow_m3_s"`
	Velocity  *Number `json:"velocity_m_s"`
	Low       *Number `json:"low_m_s"`
	High      *Number `json:"high_m_s"`
	Transport *Number `json:"transport_m_s"`
	Loss      *Number `json:"loss_pa"`
	Hose      *Number `json:"hose_velocity_m_s,omitempty"`
}

// SizeLeak is what a hole in a duct draws.
type SizeLeak struct {
	On   string  `json:"on"`
	Flow *Number `json:"flow_m3_s"`
}

// MakeSize makes the document from a plan.
func MakeSize(p *plan.Plan) Size {
	doc := Size{
		Format: "dustbook-size/1", Shop: p.Shop.Name, AsOf: p.AsOf.String(),
		Air:  SizeAir{Number(p.Air.State.Density), Number(p.Air.State.Viscosity)},
		Uses: []SizeUse{},
	}
	Bands(p, everyResult(p))
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			doc.Uses = append(doc.Uses, sizeUse(p, r))
		}
	}
	return doc
}

// everyResult lists the results of every use, in the order of the document.
func everyResult(p *plan.Plan) []*duct.Result {
	var list []*duct.Result
	for _, u := range p.Air.Uses {
		list = append(list, u.Results...)
	}
	return list
}

func sizeUse(p *plan.Plan, r *duct.Result) SizeUse {
	v := SizeUse{
		Name: r.Use.Name, Machines: []string{}, Filter: r.Filter, Captured: r.Captured, Carried: r.Carried,
		Open: []string{}, Ports: []SizePort{}, Ducts: []SizeDuct{}, Leaks: []SizeLeak{},
	}
	for _, m := range r.Use.Machines {
		v.Machines = append(v.Machines, m.Name)
	}
	if r.Collector != nil {
		v.Collector = r.Collector.Name
		for _, g := range r.OpenGates(p.Shop) {
			v.Open = append(v.Open, g.Name)
		}
	}
	known := func(x float64) *Number { return number(x, r.OnCurve) }
	v.Fan = SizeFan{
		Flow: known(float64(r.Flow)), Static: known(float64(r.Static)), Power: number(float64(r.Power), r.PowerKnown), OnCurve: r.OnCurve, Claimed: r.Claimed,
		Inlet: known(float64(r.Inlet)), Separator: known(float64(r.Separator)), Filter: known(float64(r.FilterLoss)), Outlet: known(float64(r.Outlet)),
	}
	spread := p.Air.Spread(r)
	for _, at := range r.Ports {
		low, high := band(spread.Port(at.Port))
		v.Ports = append(v.Ports, SizePort{at.Port.Full(), Number(at.Port.Flow), needFrom(at.Port.Need), known(float64(at.Flow)), low, high, at.Captured})
	}
	for _, at := range r.Stretches {
		low, high := band(spread.Speed(at.Stretch))
		row := SizeDuct{
			Duct: at.Stretch.Duct.Name, Stretch: at.Stretch.Number, Flow: known(float64(at.Flow)), Velocity: known(float64(at.Velocity)), Low: low, High: high,
			Transport: number(float64(at.Transport), at.Judged), Loss: known(float64(at.Loss)),
		}
		if at.Hose {
			row.Hose = known(float64(at.HoseVelocity))
		}
		v.Ducts = append(v.Ducts, row)
	}
	for _, at := range r.Leaks {
		v.Leaks = append(v.Leaks, SizeLeak{at.Leak.On.Name, known(float64(at.Flow))})
	}
	return v
}

// band is a band's ends, or null twice where there is none.
func band(b duct.Range) (low, high *Number) {
	known := b != duct.Range{}
	return number(b.Low, known), number(b.High, known)
}

// number is a number, or null where it is not known.
func number(x float64, known bool) *Number {
	if !known {
		return nil
	}
	n := Number(x)
	return &n
}

// needFrom says where a need comes from, in a word and the source.
func needFrom(b source.Basis) string {
	if b.Mark == source.Given {
		return "given"
	}
	return b.Mark.String() + ": " + b.String()
}

// JSON writes a document with two spaces of indent and a final newline.
func JSON(doc any) ([]byte, error) {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(doc); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
