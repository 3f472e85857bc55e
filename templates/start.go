package templates

import (
	"html/template"
	"strconv"

	"dustbook/checks"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// addStart adds the overview, the contents and the sheet on how to read the
// book.
func (b *Book) addStart() {
	b.add(&Sheet{Part: partStart, Path: "index.html", Title: b.Plan.Shop.Name, Kind: "overview", Lede: b.words.Text("overview.dust-control-plan-what-works"),
		Verdict: b.overall(), name: "overview.html", view: func() any { return b.overview() }})
	b.add(&Sheet{Part: partStart, Path: "contents.html", Title: b.words.Text("overview.contents"), Kind: "list", Lede: b.words.Text("overview.every-sheet-of-the-book"),
		Verdict: b.lookUp("contents"), name: "contents.html"})
	b.add(&Sheet{Part: partStart, Path: "reading.html", Title: b.words.Text("overview.how-to-read-this-book"), Kind: "list", Lede: b.words.Text("overview.what-the-states-the-marks"),
		Verdict: b.lookUp("reading"), name: "reading.html", view: b.readingView})
}

// lookUp is the verdict of a sheet that judges nothing.
func (b *Book) lookUp(sheet string) Verdict {
	return Verdict{Words: []Word{{"advice", b.words.Text("verdict.look-up")}}, Says: b.words.Text("verdict." + sheet), Do: b.words.Text("verdict." + sheet + "-do")}
}

// heldUses counts the uses of machines, and those in which every port gets its
// air and every duct carries its dust.
func (b *Book) heldUses() (held, all int) {
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) == 0 {
			continue
		}
		all++
		air, dust := b.finding("air-captured", kindOf(u), u.Name), b.finding("dust-carried", kindOf(u), u.Name)
		if air != nil && dust != nil && air.State == checks.Met && dust.State == checks.Met {
			held++
		}
	}
	return held, all
}

// planVerdict says of how many uses the plan holds.
func (b *Book) planVerdict() Verdict {
	held, all := b.heldUses()
	word := Word{"notmet", b.words.Text("verdict.plan-fails")}
	switch {
	case all == 0:
		word = Word{"blank", b.words.Text("verdict.plan-none")}
	case held == all:
		word = Word{"met", b.words.Text("verdict.plan-works")}
	}
	return Verdict{Words: []Word{word}, Says: b.words.Count("verdict.plan", all) + " " + b.words.Text("verdict.plan-held", strconv.Itoa(held), strconv.Itoa(all-held)), Do: b.words.Text("verdict.plan-do")}
}

// overall is the verdict of the whole book: the heaviest findings first.
func (b *Book) overall() Verdict {
	stops, mends, accepted := 0, 0, 0
	var first *checks.Finding
	for i, f := range b.Findings {
		if f.State == checks.Met {
			continue
		}
		if f.Accepted != nil {
			accepted++
			continue
		}
		switch f.Weight {
		case checks.Stop:
			stops++
		case checks.Mend:
			mends++
		}
		if first == nil {
			first = &b.Findings[i]
		}
	}
	switch {
	case stops > 0:
		return Verdict{Words: []Word{{"stop", b.words.Text("overview.stop")}}, Says: b.stopsSay(stops, first), Do: first.Do}
	case mends > 0:
		return Verdict{Words: []Word{{"notmet", b.words.Text("overview.to-mend")}}, Says: b.words.Count("overview.mends", mends), Do: b.doAbout(first), Sizes: waitsForSizes(first)}
	case first != nil:
		return Verdict{Words: []Word{{"thin", b.words.Text("overview.to-know")}}, Says: b.words.Text("overview.nothing-says-stop-and-nothing"), Do: b.words.Text("overview.read-the-findings-prove-the")}
	}
	if accepted > 0 {
		return Verdict{Words: []Word{{"advice", b.words.Text("overview.accepted")}}, Says: b.words.Count("overview.accepted-now", accepted), Do: b.words.Text("overview.look-at-the-days-on")}
	}
	return Verdict{Words: []Word{{"met", b.words.Text("overview.nothing-open")}}, Says: b.words.Text("overview.nothing-stands-against-the-plan"), Do: b.words.Text("overview.prove-the-figures-with-a")}
}

// stopsSay counts the findings that say stop, and leads to what to do about the
// first.
func (b *Book) stopsSay(stops int, first *checks.Finding) string {
	says := b.words.Count("overview.stops", stops)
	if first.About != "" {
		says += " " + b.words.Text("overview.until-settled", first.About)
	}
	return says
}

// doAbout is what a finding says to do, behind what it is about; alone where
// that is the whole shop.
func (b *Book) doAbout(f *checks.Finding) string {
	if f.About == "" {
		return f.Do
	}
	return b.words.Text("overview.about-do", f.About, f.Do)
}

// overviewView is what the overview shows.
type overviewView struct {
	FirstDay   string
	Packet     string
	Drawing    template.HTML
	First      []findingRow
	More       int
	Rows       []useRow
	Collectors []collectorRow
}

// useRow is one use in the table of what works.
type useRow struct {
	Name, Path   string
	Open         []string
	Air, Carries Word
	Worst        string
}

// collectorRow is one collector in the table of the overview.
type collectorRow struct {
	Name, Path                  string
	Claimed, Delivered, Suction string
	Exhaust                     string
}

func (b *Book) overview() overviewView {
	v := overviewView{FirstDay: b.Path("first day", ""), Packet: packetPath, Drawing: trusted(b.board.Plan(nil, "plan"))}
	const most = 5
	for _, f := range b.Findings {
		if f.Weight == checks.Know || f.State == checks.Met || f.Accepted != nil {
			continue
		}
		if len(v.First) == most {
			v.More++
			continue
		}
		v.First = append(v.First, b.findingRow(f))
	}
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) > 0 {
			v.Rows = append(v.Rows, b.useRow(u))
		}
	}
	for _, c := range b.Plan.Shop.Collectors {
		v.Collectors = append(v.Collectors, b.collectorRow(c))
	}
	return v
}

func (b *Book) useRow(u *duct.Use) useRow {
	row := useRow{Name: u.Name, Path: b.Path("use", u.Name)}
	for _, g := range b.Plan.Shop.Gates {
		if u.Open[g] {
			row.Open = append(row.Open, g.Name)
		}
	}
	row.Air, row.Carries = Word{"blank", b.words.Text("overview.not-given")}, Word{"blank", b.words.Text("overview.not-given")}
	if f := b.finding("air-captured", kindOf(u), u.Name); f != nil {
		row.Air = stateWord(f.State)
	}
	if f := b.finding("dust-carried", kindOf(u), u.Name); f != nil {
		row.Carries = stateWord(f.State)
		if f.State != checks.Met {
			row.Worst = f.Says
		}
	}
	return row
}

// collectorRow shows what the maker claims beside what the ducts let through.
func (b *Book) collectorRow(c *shop.Collector) collectorRow {
	row := collectorRow{Name: c.Name, Path: b.Path("collector", c.Name), Claimed: "—", Suction: "—", Exhaust: b.notGiven()}
	if c.Claims != nil {
		row.Claimed, row.Suction = unit.Air.Print(b.units, c.Claims.Flow), unit.Press.Print(b.units, c.Claims.Suction)
	}
	if c.Exhaust.Known() {
		row.Exhaust = c.Exhaust.V
	}
	low, high := b.delivered(c)
	switch {
	case high == 0:
		row.Delivered = b.notKnown()
	case unit.Air.Figure(b.units, low) == unit.Air.Figure(b.units, high):
		row.Delivered = unit.Air.Print(b.units, high)
	default:
		row.Delivered = b.between(unit.Air.Figure(b.units, low), unit.Air.Print(b.units, high))
	}
	return row
}

// delivered is the least and the most air a collector moves when machines
// run.
func (b *Book) delivered(c *shop.Collector) (low, high unit.Flow) {
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.Results {
			if r.Collector != c || !r.OnCurve || len(u.Machines) == 0 {
				continue
			}
			if low == 0 || r.Flow < low {
				low = r.Flow
			}
			high = max(high, r.Flow)
		}
	}
	return low, high
}

// contentsView lists the sheets by part.
type contentsView struct {
	Parts []contentsPart
	Files []dataFile
}

type contentsPart struct {
	Part   Part
	Groups []contentsGroup
}

// contentsGroup are sheets of a part that stand together: those of checks by
// their family, all else without a name.
type contentsGroup struct {
	Name   string
	Sheets []*Sheet
}

// put adds a sheet to the group that it belongs to.
func (p *contentsPart) put(s *Sheet) {
	if last := len(p.Groups) - 1; last < 0 || p.Groups[last].Name != s.Group {
		p.Groups = append(p.Groups, contentsGroup{Name: s.Group})
	}
	last := &p.Groups[len(p.Groups)-1]
	last.Sheets = append(last.Sheets, s)
}

// fillContents lists the sheets once all are known.
func (b *Book) fillContents() {
	v := contentsView{Files: b.dataFiles()}
	for _, s := range b.Sheets {
		if len(v.Parts) == 0 || v.Parts[len(v.Parts)-1].Part != s.Part {
			v.Parts = append(v.Parts, contentsPart{Part: s.Part})
		}
		v.Parts[len(v.Parts)-1].put(s)
	}
	for _, s := range b.Sheets {
		if s.name == "contents.html" {
			s.view = func() any { return v }
		}
	}
}

// readingView is the key to states and marks.
func (b *Book) readingView() any {
	type row struct {
		Word  Word
		Means string
	}
	return struct {
		States, Weights []row
		Marks           [][2]string
		Signs           []keySign
	}{
		States: []row{
			{stateWord(checks.Met), b.words.Text("key.met")},
			{stateWord(checks.NotMet), b.words.Text("key.not-met")},
			{stateWord(checks.Thin), b.words.Text("key.thin")},
			{stateWord(checks.InPlay), b.words.Text("key.in-play")},
			{stateWord(checks.Ask), b.words.Text("key.ask")},
			{stateWord(checks.NotGiven), b.words.Text("key.not-given")},
			{stateWord(checks.Advice), b.words.Text("key.advice")},
		},
		Weights: []row{
			{Word{"stop", b.words.Text("overview.stop")}, b.words.Text("key.weight-stop")},
			{Word{"notmet", b.words.Text("overview.mend")}, b.words.Text("key.weight-mend")},
			{Word{"advice", b.words.Text("overview.know")}, b.words.Text("key.weight-know")},
		},
		Marks: [][2]string{
			{b.words.Text("key.mark-read"), b.words.Text("key.mark-read-means")},
			{b.words.Text("key.mark-reported"), b.words.Text("key.mark-reported-means")},
			{b.words.Text("key.mark-memory"), b.words.Text("key.mark-memory-means")},
			{b.words.Text("key.mark-practice"), b.words.Text("key.mark-practice-means")},
			{b.words.Text("key.mark-computed"), b.words.Text("key.mark-computed-means")},
			{b.words.Text("key.mark-given"), b.words.Text("key.mark-given-means")},
			{b.words.Text("assumed.letter"), b.words.Text("assumed.letter-means")},
		},
		Signs: signs(),
	}
}

// keySign is a mark of the drawings with its meaning.
type keySign struct {
	Name, Means string
	Sample      template.HTML
}

// signs are the marks of the drawings.
func signs() []keySign {
	var list []keySign
	for _, row := range drawing.Key("key") {
		if !row.Class {
			list = append(list, keySign{row.Name, row.Means, trusted(row.Sample)})
		}
	}
	return list
}
