package templates

import (
	"slices"

	"dustbook/plan/room"
	"dustbook/plan/unit"
)

// noiseView is how loud a day is, by every published rate.
type noiseView struct {
	Unit   string
	Rates  []rateView
	Rows   []noiseRow
	Silent []string // the fields that are missing, where no dose at all is known
}

// rateView is the head of a rate's column: its limit, and the dose that stands
// for it.
type rateView struct{ Name, Limit, Dose, Source string }

type noiseRow struct {
	Use, Level, Hours, Waits string
	Doses                    []doseCell
}

// doseCell is a dose and the steady level of a full day with the same dose. It
// is marked where it has come to the limit of its column.
type doseCell struct{ Share, Average, Mark string }

func (b *Book) noiseView() noiseView {
	v := noiseView{Unit: unit.Loud.Unit(b.units)}
	for _, r := range room.Rates() {
		v.Rates = append(v.Rates, rateView{
			r.Name, b.words.Text("rooms.rate", r.Called, unit.Loud.Print(b.units, r.Limit), unit.Short(r.Hours)),
			b.words.Text("rooms.rate-dose", inPercent(r.LimitDose())), r.LimitBasis.BriefIn(b.words.Mark),
		})
	}
	for _, d := range b.Plan.Rooms.Doses {
		v.Rows = append(v.Rows, b.noiseRow(d.Use, d))
	}
	v.Rows = append(v.Rows, b.noiseRow(b.words.Text("rooms.day"), b.Plan.Rooms.Day))
	if !slices.ContainsFunc(v.Rows, func(r noiseRow) bool { return len(r.Doses) > 0 }) {
		v.Silent, v.Rows = b.noiseMissing(), nil
	}
	return v
}

func inPercent(share float64) string { return unit.Fixed(100*share, 0) + " %" }

// closePercent is a dose in percent; one that only rounds to a figure it is
// held against shows a digit more.
func closePercent(share float64, against ...float64) string {
	for _, mark := range against {
		if inPercent(share) == inPercent(mark) && unit.Compare(share, mark) != 0 {
			return unit.Fixed(100*share, 1) + " %"
		}
	}
	return inPercent(share)
}

func (b *Book) noiseRow(name string, d *room.Dose) noiseRow {
	row := noiseRow{Use: name, Level: "—", Hours: "—"}
	if !d.Known() {
		row.Waits = b.waits(d.Missing[:1])
		return row
	}
	if len(d.Day) == 1 {
		row.Level, row.Hours = unit.Loud.Figure(b.units, d.Day[0].Level), unit.Short(d.Day[0].Hours)
	}
	for _, by := range d.By {
		row.Doses = append(row.Doses, b.doseCell(by))
	}
	return row
}

// doseCell marks a dose by the figure itself, not by the digits printed.
func (b *Book) doseCell(by room.RateDose) doseCell {
	c := doseCell{Share: closePercent(by.Share, by.Rate.LimitDose(), 1)}
	if by.Average.Known() {
		c.Average = unit.Loud.Print(b.units, by.Average.V)
	}
	switch {
	case room.Full(by.Share):
		c.Mark = b.words.Text("rooms.dose-full")
	case by.Rate.Beyond(by.Share):
		c.Mark = b.words.Text("rooms.dose-limit", by.Rate.Called)
	}
	return c
}

// noiseMissing are the fields that all doses wait for, each once.
func (b *Book) noiseMissing() []string {
	var list []string
	for _, d := range append(slices.Clone(b.Plan.Rooms.Doses), b.Plan.Rooms.Day) {
		for _, m := range d.Missing {
			if says := b.words.Missing(m.Thing, m.Field, m.Why); !slices.Contains(list, says) {
				list = append(list, says)
			}
		}
	}
	return list
}
