package templates

import (
	"cmp"
	"slices"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

func (b *Book) portRows(results []*duct.Result) []portRow {
	var rows []portRow
	for i, at := range results[0].Ports {
		row := portRow{Name: at.Port.Full(), Need: sourced{Text: "—"}, From: at.Port.Need.String(), State: Word{"met", b.words.Text("use.captured")}}
		if at.Port.FlowFrom != "" {
			row.From = at.Port.FlowFrom
		}
		if at.Port.Flow > 0 {
			row.Need = b.sourced(unit.Air.Figure(b.units, at.Port.Flow), "port", at.Port.Full(), "flow")
		}
		for _, r := range results {
			p := r.Ports[i]
			if !r.OnCurve {
				row.Gets, row.Hood, row.Bands = append(row.Gets, "—"), append(row.Hood, "—"), append(row.Bands, "")
				row.State = Word{"notmet", b.words.Text("use.not-known")}
				continue
			}
			got, _ := unit.Air.Pair(b.units, p.Flow, p.Port.Flow)
			row.Gets = append(row.Gets, got)
			row.Hood = append(row.Hood, unit.Press.Figure(b.units, p.Hood))
			band := b.Plan.Air.Spread(r).Port(p.Port)
			row.Bands = append(row.Bands, ranged(b.units, unit.Air, band))
			row.State = heavier(row.State, b.stands(band.Judge(float64(p.Port.Flow)), p.Captured, "use.too-little"))
		}
		if at.Weak && row.State.Class == "met" {
			row.State = Word{"thin", b.words.Text("use.need-not-sure")}
		}
		rows = append(rows, row)
	}
	return rows
}

// stands is the word for a figure that has a need: by its band where it has
// one, else as it was reckoned. It is empty where the need is met.
func (b *Book) stands(likely duct.Likely, met bool, short string) Word {
	switch {
	case likely == duct.Hardly || likely == duct.Unknown && !met:
		return Word{"notmet", b.words.Text(short)}
	case likely == duct.Thinly:
		return Word{"thin", b.words.Text("use.may-fall-short")}
	}
	return Word{}
}

// heavier is the worse of two words for one row.
func heavier(had, now Word) Word {
	if now.Class == "" || had.Class == "notmet" || had.Class == "thin" && now.Class == "thin" {
		return had
	}
	return now
}

// ranged prints a band; empty where there is none.
func ranged[Q unit.Measure](sys unit.System, scale unit.Scale[Q], band duct.Range) string {
	if (band == duct.Range{}) {
		return ""
	}
	return scale.Figure(sys, Q(band.Low)) + "–" + scale.Figure(sys, Q(band.High))
}

// stretchRows lists the stretches on the way, the farthest from the collector
// first.
func (b *Book) stretchRows(results []*duct.Result) []stretchRow {
	var rows []stretchRow
	last := results[len(results)-1]
	numbers := map[*shop.Stretch]int{}
	for i, stretch := range drawing.InOrder(b.Plan.Shop, last.Collector) {
		numbers[stretch] = i + 1
	}
	for _, i := range onTheWay(last) {
		at := last.Stretches[i]
		d := at.Stretch.Duct
		row := stretchRow{Number: numbers[at.Stretch], Name: at.Stretch.Name(), Path: b.Path("duct", d.Name), Size: sourced{Text: b.sizeWords(d.Size)}, Need: unit.Speed.Figure(b.units, at.Transport), Case: at.Case, State: Word{"met", b.words.Text("use.carries")}}
		for _, g := range at.Stretch.Gates {
			row.Gates = append(row.Gates, g.Name)
		}
		hose := stretchRow{Name: b.words.Text("use.hose", d.Name), Path: row.Path, Need: row.Need, Case: row.Case, State: Word{"met", b.words.Text("use.carries")}}
		for _, r := range results {
			x := r.Stretches[i]
			if !r.OnCurve {
				row.Air, row.Speed, row.State = append(row.Air, "—"), append(row.Speed, "—"), Word{"notmet", b.words.Text("use.not-known")}
				row.Bands = append(row.Bands, "")
				hose.Air, hose.Speed, hose.State, hose.Bands = row.Air, row.Speed, row.State, row.Bands
				continue
			}
			speed, _ := unit.Speed.Pair(b.units, x.Velocity, x.Transport)
			row.Air, row.Speed = append(row.Air, unit.Air.Figure(b.units, x.Flow)), append(row.Speed, speed)
			band := b.Plan.Air.Spread(r).Speed(x.Stretch)
			own, slow := "", "" // the band is that of the slower of pipe and hose
			if shown := ranged(b.units, unit.Speed, band); x.Slower() < x.Velocity {
				slow = shown
				row.State = heavier(row.State, b.stands(duct.Unknown, x.Carries, "use.settles"))
			} else {
				own = shown
				row.State = heavier(row.State, b.stands(band.Judge(float64(x.Transport)), x.Carries, "use.settles"))
			}
			row.Bands, hose.Bands = append(row.Bands, own), append(hose.Bands, slow)
			if x.Hose {
				speed, _ := unit.Speed.Pair(b.units, x.HoseVelocity, x.Transport)
				hose.Air, hose.Speed = append(hose.Air, "—"), append(hose.Speed, speed)
				likely := duct.Unknown
				if x.Slower() < x.Velocity {
					likely = band.Judge(float64(x.Transport))
				}
				hose.State = heavier(hose.State, b.stands(likely, x.HoseCarries, "use.settles"))
			}
		}
		if at.Hose {
			hose.Size = b.sourced(b.sizeWords(d.Hose.Size), "hose", d.Name, "size")
			hose.Air = row.Air
			rows = append(rows, hose)
		}
		rows = append(rows, row)
	}
	return rows
}

// onTheWay lists the judged stretches of a result by their place, the farthest
// from the collector first.
func onTheWay(r *duct.Result) []int {
	steps := func(s *shop.Stretch) int {
		n := 0
		for s != nil {
			s, n = s.Below(), n+1
		}
		return n
	}
	var list []int
	for i, at := range r.Stretches {
		if at.Judged {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(i, j int) int {
		return cmp.Compare(steps(r.Stretches[j].Stretch), steps(r.Stretches[i].Stretch))
	})
	return list
}

// leaks is what the collector draws beside the open ports: through shut
// gates, holes, and gates opened as well.
func (b *Book) leaks(results []*duct.Result) []string {
	var list []string
	for _, r := range results {
		rest := r.Flow
		for _, p := range r.Ports {
			rest -= p.Flow
		}
		if !r.OnCurve {
			list = append(list, "—")
			continue
		}
		list = append(list, unit.Air.Figure(b.units, unit.Flow(unit.Six(float64(rest)))))
	}
	return list
}

// filterHead is the state of a filter as a word in a table.
func filterHead(filter string) string {
	return content.WordsIn(content.English).Text("use.filter." + filter)
}

// filterPhrase is the state of a filter in a sentence.
func filterPhrase(filter string) string {
	return content.WordsIn(content.English).Text("use.with-filter." + filter)
}
