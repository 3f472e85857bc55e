package templates

import (
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// readingsView is the sheet of readings: expected values with room for the
// measured ones.
type readingsView struct {
	Press, Speed, Size string // units
	Agree, AgreeBasis  string
	Tapered, Plain     string // where a hood's tap goes, in diameters
	TapBasis           string
	Straight, Behind   string // straight pipe about a traverse, in diameters
	FanStraight, Again string
	PlaceBasis         string
	Hoods              []hoodProof
	Sample             string   // a hood to write a reading of
	Missing            []string // hoods without a figure, each with why
	Taps               []tapProof
	Fans               []fanProof
	Mains              []mainProof
	Rooms              []roomProof
	Motors             []motorProof
	Fill               fillView
}

// proofRow is one expected value with the bounds within which a reading
// agrees.
type proofRow struct {
	What, Path       string
	Gates            []string
	Expected, Bounds string
	Extra            string
	Blank            blank  // of a reading that a record can hold
	Note             string // what the record's note calls another
}

type hoodProof struct {
	proofRow
	Size, Need string
}

type tapProof struct {
	Name, On, OnPath, Where string
	Rows                    []proofRow
}

type fanProof struct {
	Name, Path, Use string
	Rows            []proofRow
}

type mainProof struct {
	Name, Path, Size    string
	Place               string
	Before, Behind, End string
	Long, Guessed       bool
	Points              []string
	Notes               []string // what the record's note calls each hole
	Rows                []proofRow
}

type motorProof struct {
	Name, Motor string
	Blank       blank
}

type roomProof struct {
	Name  string
	Blank blank
}

func (b *Book) readingsView() readingsView {
	_, agree := duct.ProofFigure("agree")
	_, tap := duct.ProofFigure("tap at plain hood")
	_, place := duct.ProofFigure("straight before traverse")
	v := readingsView{
		Press: unit.Press.Unit(b.units), Speed: unit.Speed.Unit(b.units), Size: unit.Size.Unit(b.units),
		Agree: agreeShare(), AgreeBasis: agree.In(b.words.Mark), Tapered: figure("tap at tapered hood"), Plain: figure("tap at plain hood"), TapBasis: tap.In(b.words.Mark),
		Straight: figure("straight before traverse"), Behind: figure("straight behind traverse"), FanStraight: figure("straight after fan"), Again: figure("traverse agrees"),
		PlaceBasis: place.In(b.words.Mark),
	}
	b.hoodProofs(&v)
	for _, t := range b.Plan.Shop.Taps {
		if t.Name != "" && t.On != nil {
			v.Taps = append(v.Taps, b.tapProof(t))
		}
	}
	for _, r := range b.Plan.Air.FanReadings() {
		v.Fans = append(v.Fans, b.fanProof(r))
	}
	for _, t := range b.Plan.Air.Traverses() {
		if len(t.Results) > 0 {
			v.Mains = append(v.Mains, b.mainProof(t))
		}
	}
	for _, r := range b.Plan.Shop.Rooms {
		v.Rooms = append(v.Rooms, roomProof{r.Name, b.blankFor(record.Reading{Of: "room pressure", At: r.Name}, "")})
	}
	for _, c := range b.Plan.Shop.Collectors {
		v.Motors = append(v.Motors, motorProof{c.Name, b.motorWords(c.Motor), b.blankFor(record.Reading{Of: "current", At: c.Name}, "")})
	}
	v.Fill = b.fillView("commissioning-readings.html", v.instruments()...)
	return v
}

// instruments are the groups of instruments that the sheet has blanks for.
func (v readingsView) instruments() []string {
	list := []string{byGauge}
	if len(v.Mains) > 0 {
		list = append(list, byPitot)
	}
	if len(v.Motors) > 0 {
		list = append(list, byAmmeter)
	}
	return list
}

// hoodProofs lists the hoods in the uses of their machines alone, filter
// clean, and those the plan has no figure for.
func (b *Book) hoodProofs(v *readingsView) {
	for _, m := range b.Plan.Shop.Machines {
		for _, p := range m.Ports {
			r := record.Reading{Of: "hood pressure", At: p.Full(), Use: m.Name, Filter: duct.Clean}
			e := b.Plan.Expect(r)
			if !e.Known() && p.Duct != nil && b.unsized(p.Duct.Collector) {
				continue
			}
			if !e.Known() {
				v.Missing = append(v.Missing, b.words.Text("readings.no-figure-for", p.Full(), b.words.Because(e.Why)))
				continue
			}
			row := hoodProof{proofRow: b.blankRow(r, e), Size: unit.Size.Print(b.units, p.Size), Need: "—"}
			row.What, row.Path, row.Gates = p.Full(), b.Path("use", m.Name), b.openIn(b.Plan.Air.Alone(m), p.Duct.Collector)
			if e.Least > 0 {
				row.Need = unit.Press.Figure(b.units, unit.Pressure(e.Least))
			}
			v.Hoods = append(v.Hoods, row)
		}
	}
	if b.unsized(nil) {
		v.Missing = append(v.Missing, b.words.Text("sizes.open.hoods", b.list(b.unsizedNames(nil))))
	}
	v.Sample = b.words.Text("readings.any-hood")
	if len(v.Hoods) > 0 {
		v.Sample = v.Hoods[0].What
	}
}

// proofRow writes an expected value with its bounds.
func (b *Book) proofRow(of string, e plan.Expected) proofRow {
	m, _ := record.FindMeasure(of)
	within := e.Within()
	return proofRow{Expected: m.Figure(b.units, e.Low), Bounds: b.between(m.Figure(b.units, within.Low), m.Figure(b.units, within.High))}
}

// blankRow is that of a reading, with its blank.
func (b *Book) blankRow(r record.Reading, e plan.Expected) proofRow {
	row := b.proofRow(r.Of, e)
	row.Blank = b.blankFor(r, row.Expected)
	return row
}

// openIn are the gates open on a collector's ducts in a use.
func (b *Book) openIn(u *duct.Use, c *shop.Collector) []string {
	for _, r := range u.On(c) {
		return b.gateNames(r)
	}
	return nil
}

// tapProof lists a tap in every use whose dust passes it. Elsewhere it shows
// what leaks past shut gates, which nobody knows well.
func (b *Book) tapProof(t *shop.Tap) tapProof {
	v := tapProof{Name: t.Name, On: t.On.Name, OnPath: b.Path("duct", t.On.Name), Where: unit.Run.Print(b.units, t.Where)}
	for _, u := range b.Plan.Air.Uses {
		if !b.passes(u, t) {
			continue
		}
		r := record.Reading{Of: "tap pressure", At: t.Name, Use: u.Name, Filter: duct.Clean}
		e := b.Plan.Expect(r)
		if !e.Known() {
			continue
		}
		row := b.blankRow(r, e)
		row.What, row.Path, row.Gates = u.Name, b.Path("use", u.Name), b.openIn(u, t.On.Collector)
		v.Rows = append(v.Rows, row)
	}
	return v
}

// passes reports whether the dust of a use passes a tap.
func (b *Book) passes(u *duct.Use, t *shop.Tap) bool {
	for _, r := range u.On(t.On.Collector) {
		v := r.Stretch(duct.StretchAt(t.On, t.Where))
		return v != nil && v.Judged
	}
	return false
}

// fanProof lists the three readings at a fan, and those across filter and
// separator, in one use.
func (b *Book) fanProof(r duct.FanReading) fanProof {
	c := r.Collector
	v := fanProof{Name: c.Name, Path: b.Path("collector", c.Name), Use: r.Use.Name}
	at := func(of string) record.Reading {
		return record.Reading{Of: of, At: c.Name, Use: r.Use.Name, Filter: duct.Clean}
	}
	add := func(of, what, extra string, p unit.Pressure) {
		x := float64(p)
		row := b.blankRow(at("fan pressure"), plan.Expected{Band: duct.Band{Low: x, High: x}})
		row.What = b.words.Text(what)
		row.Blank.Of, row.Note = of, b.words.Text("fill.of", c.Name, row.What)
		if extra != "" {
			row.Extra = b.words.Text(extra)
		}
		v.Rows = append(v.Rows, row)
	}
	add("", "readings.suction-before", "readings.static", -r.Inlet)
	add("", "readings.velocity-pressure-before", "readings.pitot-tube", r.Dynamic)
	add("", "readings.pressure-behind", "readings.static-above", r.Outlet)
	add("fan pressure", "readings.fan-static", "readings.reckoned", r.Static)
	if e := b.Plan.Expect(at("separator pressure")); e.Known() {
		add("separator pressure", "readings.across-separator", "", unit.Pressure(e.Low))
	}
	if e := b.Plan.Expect(at("filter pressure")); e.Known() {
		add("filter pressure", "readings.across-filter", "", unit.Pressure(e.Low))
	}
	return v
}

// mainProof is a place for a traverse with the speeds to expect there.
func (b *Book) mainProof(t duct.Traverse) mainProof {
	d := t.Stretch.Duct
	v := mainProof{
		Name: t.Stretch.Name(), Path: b.Path("duct", d.Name), Size: unit.Size.Print(b.units, d.Bore), Long: t.Long, Guessed: t.Guessed,
		Place: unit.Run.Print(b.units, t.Place), Before: unit.Fixed(float64(t.Before/d.Bore), 1), Behind: unit.Fixed(float64(t.Behind/d.Bore), 1),
	}
	for _, hole := range []string{"readings.first-hole-velocity-pressure", "readings.second-hole-velocity-pressure"} {
		v.Notes = append(v.Notes, b.words.Text("fill.of", v.Name, b.words.Text(hole)))
	}
	for _, p := range t.Set.Points(d.Bore) {
		v.Points = append(v.Points, unit.Size.Figure(b.units, p))
	}
	for _, r := range t.Results {
		at := r.Stretch(t.Stretch)
		x := float64(at.Velocity)
		row := b.blankRow(record.Reading{Of: "velocity", At: v.Name, Use: r.Use.Name, Filter: r.Filter}, plan.Expected{Band: duct.Band{Low: x, High: x}})
		row.What, row.Path, row.Gates = r.Use.Name, b.Path("use", r.Use.Name), b.gateNames(r)
		row.Extra = unit.Speed.Figure(b.units, at.Transport)
		v.Rows = append(v.Rows, row)
	}
	return v
}

// motorWords are a motor's plate in a few words.
func (b *Book) motorWords(m *shop.Motor) string {
	if m == nil {
		return b.notGiven()
	}
	text := unit.Shaft.Print(b.units, m.Power)
	if m.Volts.Known() {
		text += ", " + unit.Volts.Print(b.units, m.Volts.V)
	}
	if m.Phase.Known() {
		text += ", " + b.words.Count("readings.phases", m.Phase.V)
	}
	return text
}
