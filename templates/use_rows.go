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
		row := portRow{Name: at.Port.Full(), Need: "—", From: at.Port.Need.String(), State: Word{"met", b.words.Text("use.captured")}}
		if at.Port.FlowFrom != "" {
			row.From = at.Port.FlowFrom
		}
		if at.Port.Flow > 0 {
			row.Need = unit.Air.Figure(b.units, at.Port.Flow)
		}
		for _, r := range results {
			p := r.Ports[i]
			if !r.OnCurve {
				row.Gets, row.Hood = append(row.Gets, "—"), append(row.Hood, "—")
				row.State = Word{"notmet", b.words.Text("use.not-known")}
				continue
			}
			got, _ := unit.Air.Pair(b.units, p.Flow, p.Port.Flow)
			row.Gets = append(row.Gets, got)
			row.Hood = append(row.Hood, unit.Press.Figure(b.units, p.Hood))
			if !p.Captured {
				row.State = Word{"notmet", b.words.Text("use.too-little")}
			}
		}
		if at.Weak && row.State.Class == "met" {
			row.State = Word{"thin", b.words.Text("use.need-not-sure")}
		}
		rows = append(rows, row)
	}
	return rows
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
		row := stretchRow{Number: numbers[at.Stretch], Name: at.Stretch.Name(), Path: b.Path("duct", d.Name), Size: unit.Size.Print(b.units, d.Size), Need: unit.Speed.Figure(b.units, at.Transport), Case: at.Case, State: Word{"met", b.words.Text("use.carries")}}
		for _, g := range at.Stretch.Gates {
			row.Gates = append(row.Gates, g.Name)
		}
		hose := stretchRow{Name: b.words.Text("use.hose", d.Name), Path: row.Path, Need: row.Need, Case: row.Case, State: Word{"met", b.words.Text("use.carries")}}
		for _, r := range results {
			x := r.Stretches[i]
			if !r.OnCurve {
				row.Air, row.Speed, row.State = append(row.Air, "—"), append(row.Speed, "—"), Word{"notmet", b.words.Text("use.not-known")}
				hose.Air, hose.Speed, hose.State = row.Air, row.Speed, row.State
				continue
			}
			speed, _ := unit.Speed.Pair(b.units, x.Velocity, x.Transport)
			row.Air, row.Speed = append(row.Air, unit.Air.Figure(b.units, x.Flow)), append(row.Speed, speed)
			if !x.Carries {
				row.State = Word{"notmet", b.words.Text("use.settles")}
			}
			if x.Hose {
				speed, _ := unit.Speed.Pair(b.units, x.HoseVelocity, x.Transport)
				hose.Air, hose.Speed = append(hose.Air, "—"), append(hose.Speed, speed)
				if !x.HoseCarries {
					hose.State = Word{"notmet", b.words.Text("use.settles")}
				}
			}
		}
		if at.Hose {
			hose.Size = unit.Size.Print(b.units, d.Hose.Size)
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
