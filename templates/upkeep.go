package templates

import (
	_ "embed"

	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/takeoff"
	"dustbook/plan/unit"
)

// upkeepScript is the script of the sheet of what falls due.
const upkeepScript = "upkeep.js"

//go:embed upkeep.js
var upkeepCode []byte

// upkeepView is what to do to keep the system up, and when.
type upkeepView struct {
	Jobs     []jobRow
	Never    int
	Calendar string
	Trouble  string // the path of the fault finder
}

// jobRow is one job of upkeep.
type jobRow struct {
	ID, Name, Path string
	Every          string
	Source         citation
	Last, Next     string // dates; empty where it was never done
	Do             string
	Figures        []string
	Record         string // the words that tell a record it was done
}

// addUpkeep adds the jobs of upkeep, the sheets to do them by, and the
// calendar; none for a shop without a collector.
func (b *Book) addUpkeep() {
	if len(b.Plan.Shop.Collectors) == 0 {
		return
	}
	v := b.upkeepView()
	b.add(&Sheet{Part: partUpkeep, Path: "upkeep.html", Title: b.words.Text("upkeep.title"), Kind: "table", Lede: b.words.Text("upkeep.lede"), Verdict: b.upkeepVerdict(v),
		Script: upkeepScript, name: "upkeep.html", view: func() any { return v }})
	b.add(&Sheet{Part: partUpkeep, Path: "service.html", Title: b.words.Text("upkeep.service"), Kind: "list", Lede: b.words.Text("upkeep.service-lede"),
		name: "service.html", view: func() any { return v }})
	b.file(calendarFile, b.calendar())
}

func (b *Book) upkeepView() upkeepView {
	v := upkeepView{Calendar: calendarFile, Trouble: troublePath}
	for _, d := range b.Plan.Due() {
		row := jobRow{ID: jobID(d.Service), Name: b.jobName(d.Service), Every: b.every(d.Every), Source: b.intervalFrom(d.Basis), Next: d.Next.String(), Do: b.jobDo(d.Service), Figures: b.jobFigures(d.Service), Record: d.Job}
		if d.Collector != nil {
			row.Path = b.Path("collector", d.Collector.Name)
		}
		if d.Last != (entry.Date{}) {
			row.Last = d.Last.String()
		} else {
			v.Never++
		}
		v.Jobs = append(v.Jobs, row)
	}
	return v
}

// citedOne is where one figure comes from, for a cell of a table.
func (b *Book) citedOne(basis source.Basis) citation {
	c := citation{Text: basis.In(b.words.Mark)}
	if basis.Document != "" {
		c.Path = "sources.html#" + documentID(basis.Document)
	}
	return c
}

// intervalFrom is where an interval comes from, in a few words.
func (b *Book) intervalFrom(basis source.Basis) citation {
	c := b.citedOne(basis)
	if c.Text = basis.BriefIn(b.words.Mark); basis.Mark == source.Computed {
		c.Text = b.words.Text("upkeep.reckoned")
	}
	return c
}

func (b *Book) upkeepVerdict(v upkeepView) Verdict {
	if v.Never == 0 {
		return Verdict{Words: []Word{{"met", b.words.Text("upkeep.all-once")}}, Says: b.words.Text("upkeep.all-once-says")}
	}
	return Verdict{Words: []Word{{"blank", b.words.Count("upkeep.never", v.Never)}}, Says: b.words.Text("upkeep.never-says"), Do: b.words.Text("upkeep.never-do")}
}

// jobID is a job's id on a sheet.
func jobID(s takeoff.Service) string {
	id := "job-" + shop.Slug(s.Job)
	if s.Collector != nil {
		id += "-" + shop.Slug(s.Collector.Name)
	}
	return id
}

// jobName is a job in words, with the collector it is about.
func (b *Book) jobName(s takeoff.Service) string {
	name := b.words.Text("job.name." + s.Job)
	if s.Collector != nil {
		return b.words.Text("upkeep.job-of", name, s.Collector.Name)
	}
	return name
}

// jobDo is what to do in a job.
func (b *Book) jobDo(s takeoff.Service) string { return b.words.Text("job.do." + s.Job) }

// every is an interval in words.
func (b *Book) every(i takeoff.Interval) string {
	if i.Months {
		return b.words.Count("upkeep.months", i.Count)
	}
	return b.words.Count("upkeep.days", i.Count)
}

// jobFigures are the shop's own figures for a job.
func (b *Book) jobFigures(s takeoff.Service) []string {
	c := s.Collector
	switch {
	case c == nil:
		return nil
	case s.Job == "filter":
		return []string{b.words.Text("upkeep.filter-figures", unit.Press.Print(b.units, c.Filter.Clean), unit.Press.Print(b.units, c.Filter.Change), unit.Air.Print(b.units, c.Filter.Flow))}
	}
	var list []string
	if f := b.Plan.Takeoff.Bin(c); f != nil && f.Fastest != nil {
		list = append(list, b.words.Text("upkeep.bin-figures", f.Fastest.Machine.Name, unit.Minutes.Print(b.units, f.Fastest.Until)))
	}
	return list
}
