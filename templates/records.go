package templates

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// recordRow is one record as a sheet shows it.
type recordRow struct {
	ID, File, Date, Head, Means string
	Role, Note                  string
	Letter                      string // the sheet that answers it, where it is a letter
	Readings                    []measuredRow
	Items                       []itemRow
}

// measuredRow is one reading beside what the plan expects.
type measuredRow struct {
	Date, RecordPath              string
	Of, At, AtPath                string
	Use, UsePath, Filter          string
	Value, Here                   string // as written, and in the shop's own unit where that is another
	Expected, Then, Off           string // Then is what the record says was expected that day
	State                         Word
	With, Calibrated, Role, Least string
}

// itemRow is one point of a letter.
type itemRow struct {
	Asks, Rule, Gap, Answered, Evidence string
	State                               Word
}

// newest lists the records, the newest first.
func (b *Book) newest() []*record.Record {
	list := slices.Clone(b.Plan.Records)
	slices.Reverse(list)
	slices.SortStableFunc(list, func(a, b *record.Record) int { return cmp.Compare(b.Date.String(), a.Date.String()) })
	return list
}

// perSheet is how many records and readings a sheet of records holds.
const perSheet = 150

// recordSheets parts the records among sheets, the newest first. Without any
// there is one sheet all the same.
func (b *Book) recordSheets() [][]*record.Record {
	sheets := [][]*record.Record{nil}
	room := perSheet
	for _, r := range b.newest() {
		size := 1 + len(r.Readings) + len(r.Items)
		if last := len(sheets) - 1; size > room && len(sheets[last]) > 0 {
			sheets, room = append(sheets, nil), perSheet
		}
		last := len(sheets) - 1
		sheets[last], room = append(sheets[last], r), room-size
	}
	return sheets
}

// recordsPath is the path of a sheet of records.
func recordsPath(sheet int) string {
	if sheet == 0 {
		return "records.html"
	}
	return fmt.Sprintf("records-%d.html", sheet+1)
}

// recordID is the id of a record on its sheet.
func recordID(r *record.Record) string { return "record-" + shop.Slug(r.File) }

// recordsView is a sheet of records.
type recordsView struct {
	Records      []recordRow
	First        bool
	Agree        string
	Newer, Older string
}

// addRecords adds the sheets of records.
func (b *Book) addRecords() {
	sheets := b.recordSheets()
	for i, list := range sheets {
		for _, r := range list {
			b.recordAt[r] = recordsPath(i) + "#" + recordID(r)
		}
	}
	for i, list := range sheets {
		s := &Sheet{Part: partProof, Path: recordsPath(i), Title: b.words.Text("records.records-b"), Kind: "proof", Lede: b.words.Text("records.what-was-measured-done-and"), Verdict: b.recordsVerdict(), name: "proof-records.html"}
		v := recordsView{First: i == 0, Agree: agreeShare()}
		if i > 0 {
			s.Title, s.Verdict = b.words.Text("records.older", strconv.Itoa(i+1)), Verdict{}
			v.Newer = recordsPath(i - 1)
		}
		if i+1 < len(sheets) {
			v.Older = recordsPath(i + 1)
		}
		s.view = func() any {
			shown := v
			for _, r := range list {
				shown.Records = append(shown.Records, b.recordRow(r))
			}
			return shown
		}
		b.add(s)
	}
}

// agreeShare is the share within which measured and expected agree, in words.
func agreeShare() string {
	share, _ := duct.ProofFigure("agree")
	return unit.Short(share) + " %"
}

// recordsVerdict counts the readings that are off.
func (b *Book) recordsVerdict() Verdict {
	if len(b.Plan.Records) == 0 {
		return Verdict{Words: []Word{{"blank", b.words.Text("records.nothing-recorded")}}, Says: b.words.Text("records.the-plan-has-not-been"), Do: b.words.Text("records.work-through-the-sheets-of")}
	}
	readings, off, open := 0, 0, 0
	for _, r := range b.Plan.Records {
		for _, reading := range r.Readings {
			readings++
			switch b.Plan.Expect(reading).Judge(reading.Value) {
			case plan.Over, plan.Under, plan.TooLow:
				off++
			}
		}
		for _, item := range r.Items {
			if item.State == "" || item.State == "open" {
				open++
			}
		}
	}
	v := Verdict{Words: []Word{{"advice", b.words.Text("records.recorded")}}, Says: b.words.Text("records.count", b.words.Count("records.records", len(b.Plan.Records)), b.words.Count("records.readings", readings))}
	if off > 0 {
		v.Words = []Word{{"notmet", b.words.Text("records.off")}}
		v.Says += " " + b.countWith("records.readings-off", off, agreeShare())
		v.Do = b.words.Text("records.take-again")
	}
	if open > 0 {
		v.Words = append(v.Words, Word{"ask", b.words.Text("records.open-points")})
		v.Says += " " + b.words.Count("records.points-open", open)
	}
	return v
}

func (b *Book) recordRow(r *record.Record) recordRow {
	row := recordRow{ID: recordID(r), File: record.Folder + "/" + r.File, Date: r.Date.String(), Head: b.words.Text("records.head", r.Date.String(), r.Kind), Role: r.Role, Note: r.Note, Letter: letterPath(r)}
	for _, w := range record.Words("record kind") {
		if w.Word == r.Kind {
			row.Means = w.Means
		}
	}
	if len(r.Done) > 0 {
		row.Means = b.words.Text("records.means-done", row.Means, b.list(r.Done))
	}
	for _, reading := range r.Readings {
		row.Readings = append(row.Readings, b.measuredRow(r, reading))
	}
	for _, item := range r.Items {
		row.Items = append(row.Items, itemRow{Asks: item.Asks, Rule: item.Rule, Gap: item.Gap, Answered: item.Answered.String(), Evidence: item.Evidence, State: b.itemWord(item.State)})
	}
	return row
}

// itemWord is how far a point of a letter is.
func (b *Book) itemWord(state string) Word {
	switch state {
	case "closed":
		return Word{"met", state}
	case "answered":
		return Word{"advice", state}
	}
	return Word{"ask", b.words.Text("records.open")}
}

func (b *Book) measuredRow(r *record.Record, reading record.Reading) measuredRow {
	m, _ := record.FindMeasure(reading.Of)
	e := b.Plan.Expect(reading)
	row := measuredRow{
		Date: r.Date.String(), RecordPath: b.recordAt[r], Role: r.Role,
		Of: reading.Of, At: reading.At, AtPath: b.pathOf(m, reading.At), Use: reading.Use, Filter: reading.Filter,
		Value: reading.Value.Text, Then: reading.Expected.Text, With: reading.With, State: b.outcome(e, reading.Value),
	}
	if u := b.Plan.Air.FindUse(reading.Use); u != nil && len(u.Machines) > 0 {
		row.UsePath = b.Path("use", u.Name)
	}
	if reading.Calibrated.Year > 0 {
		row.Calibrated = reading.Calibrated.String()
	}
	if reading.Value.Foreign(b.units) {
		row.Here = m.Print(b.units, reading.Value.SI)
	}
	switch {
	case !e.Known() && m.Kind == 0 && e.Why == source.Because("no-figure"): // a text, which nothing reckons
		row.Expected = "—"
	case !e.Known():
		row.Expected = b.words.Because(e.Why)
	case e.Text != "":
		row.Expected = e.Text
	default:
		row.Expected, row.Off = b.band(m, e), b.off(m, e, reading.Value.SI)
		if row.Then != "" && m.Print(b.units, reading.Expected.SI) == row.Expected {
			row.Then = "" // as today
		}
		if e.Judge(reading.Value) == plan.TooLow {
			row.Least = b.words.Text("records.least", m.Print(b.units, e.Least), b.words.Text("records.least-of."+string(e.LeastOf)))
		}
	}
	return row
}

// band writes what is expected: a value, or the two ends of a band.
func (b *Book) band(m record.Measure, e plan.Expected) string {
	if e.One() {
		return m.Print(b.units, e.Low)
	}
	return b.between(m.Figure(b.units, e.Low), m.Print(b.units, e.High))
}

// off writes how far a value lies off, with its share.
func (b *Book) off(m record.Measure, e plan.Expected, x float64) string {
	off, share := e.Off(x), e.Share(x)
	if off == 0 {
		return "0"
	}
	sign := "+"
	if off < 0 {
		sign = "−"
	}
	text := sign + m.Figure(b.units, math.Abs(off))
	if !math.IsInf(share, 0) {
		text += " (" + sign + unit.Fixed(100*math.Abs(share), 0) + " %)"
	}
	return text
}

// outcome is how a reading stands, in a word.
func (b *Book) outcome(e plan.Expected, q record.Quantity) Word {
	switch e.Judge(q) {
	case plan.Agrees:
		return Word{"met", b.words.Text("records.agrees")}
	case plan.Over:
		return Word{"thin", b.words.Text("records.over")}
	case plan.Under:
		return Word{"thin", b.words.Text("records.under")}
	case plan.TooLow:
		return Word{"notmet", b.words.Text("records.too-low")}
	case plan.Same:
		return Word{"met", b.words.Text("records.the-same")}
	case plan.Differs:
		return Word{"thin", b.words.Text("records.differs")}
	}
	return Word{}
}

// pathOf is where the thing of a reading is shown; empty where it has no
// place.
func (b *Book) pathOf(m record.Measure, name string) string {
	for _, kind := range m.At {
		switch kind {
		case "port":
			for _, machine := range b.Plan.Shop.Machines {
				for _, p := range machine.Ports {
					if p.Full() == name {
						return b.Path("use", machine.Name)
					}
				}
			}
		case "duct":
			for _, d := range b.Plan.Shop.Ducts {
				if d.Name == name || slices.ContainsFunc(d.Stretches, func(s *shop.Stretch) bool { return s.Name() == name }) {
					return b.Path("duct", d.Name)
				}
			}
		case "tap":
			for _, t := range b.Plan.Shop.Taps {
				if t.Name == name && t.On != nil {
					return b.Path("duct", t.On.Name)
				}
			}
		default:
			if path := b.namedPath(kind, name); path != "" {
				return path
			}
		}
	}
	return ""
}

// namedPath is the place of a thing that goes by its own name.
func (b *Book) namedPath(kind, name string) string {
	if kind == "filter" {
		kind = "collector"
	}
	has := false
	switch kind {
	case "gate", "device":
		kind = "gate"
		has = slices.ContainsFunc(b.Plan.Shop.Gates, func(g *shop.Gate) bool { return g.Name == name })
	case "collector":
		has = slices.ContainsFunc(b.Plan.Shop.Collectors, func(c *shop.Collector) bool { return c.Name == name })
	case "machine":
		has = slices.ContainsFunc(b.Plan.Shop.Machines, func(m *shop.Machine) bool { return m.Name == name })
	case "room":
		has = slices.ContainsFunc(b.Plan.Shop.Rooms, func(r *shop.Room) bool { return r.Name == name })
	}
	if !has {
		return ""
	}
	return b.Path(kind, name)
}
