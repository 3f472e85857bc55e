package templates

import (
	"slices"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// changesView is the sheet on what to change first.
type changesView struct {
	Flow     string // unit
	Over     []changesOver
	Uses     []changesUse
	Dust     []changesDust
	Enough   []changesUse // the short list of uses that have their air
	Unserved string
	Served   string
	Shut     string
	Open     string // those that wait for sizes
}

// changesDust is a use with its air in which dust settles, and what helps.
type changesDust struct{ Use, Path, Says, Relief, Smaller string }

// changesOver is one change over all uses that are short of air.
type changesOver struct {
	Name, Work    string
	Helps, Enough int
	Best          string
	best          unit.Flow
}

type changesUse struct {
	Use, Path, Says string
	Flow            string // unit
	Rows            []changesRow
	More            []string
}

type changesRow struct {
	Name, Work, Gain, Gets, Share string
	Full                          bool
	Carried                       Word
}

// mostOver changes stand in the table of all uses, mostEnough for a use that
// has its air.
const (
	mostOver   = 12
	mostEnough = 3
)

// addChanges adds the sheet, where the shop has uses of machines.
func (b *Book) addChanges() {
	if len(b.Plan.Shop.Machines) == 0 || len(b.Plan.Shop.Collectors) == 0 {
		return
	}
	found := b.shortOfAir()
	b.add(&Sheet{Part: partAir, Path: "first.html", Title: b.words.Text("first.title"), Kind: "table", Lede: b.words.Text("first.lede"),
		Verdict: b.changesVerdict(found), name: "changes.html", view: func() any { return b.changesView(found) }})
}

func (b *Book) changesVerdict(found airShort) Verdict {
	say := func(key string, about ...string) string { return b.words.Text("first."+key, about...) }
	short := found.short
	if len(short) == 0 {
		if len(found.none) > 0 {
			return Verdict{Words: []Word{{"notmet", b.words.Text("enough.word.unserved")}}, Says: b.unservedSays(found.none), Do: b.words.Text("enough.do-unserved")}
		}
		if len(found.open) > 0 {
			return b.openSizes(nil)
		}
		if len(found.off) > 0 && len(found.served) > 0 {
			says := say("off-says", b.few(found.off))
			if found.doubt.Any() {
				says += " " + b.doubtSays(found.doubt)
			}
			return Verdict{Words: []Word{{"thin", say("word.off")}}, Says: says, Do: say("unknown-do")}
		}
		if len(found.served) == 0 {
			return Verdict{Words: []Word{{"blank", say("word.unknown")}}, Says: say("unknown-says"), Do: say("unknown-do")}
		}
		if len(found.dust) > 0 {
			worst := slices.MinFunc(found.dust, func(a, c *duct.Settling) int { return unit.Compare(a.Share, c.Share) })
			says := say("dust-says", worst.Result.Use.Name, unit.Percent(worst.Share))
			if more := len(found.dust) - 1; more > 0 {
				says += " " + b.words.Count("first.dust-more", more)
			}
			if found.doubt.Any() {
				says += " " + b.doubtSays(found.doubt)
			}
			return Verdict{Words: []Word{{"notmet", say("word.dust")}}, Says: says, Do: say("dust-do")}
		}
		filtered := ""
		if !slices.ContainsFunc(b.Plan.Shop.Collectors, func(c *shop.Collector) bool { return c.Filter != nil }) {
			filtered = "-plain"
		}
		if found.doubt.Any() {
			return Verdict{Words: []Word{{"thin", b.words.Text("enough.word.thin")}}, Says: say("none-says"+filtered) + " " + b.doubtSays(found.doubt), Do: b.doubtDo(found.doubt)}
		}
		return Verdict{Words: []Word{{"met", say("word.none")}}, Says: say("none-says" + filtered), Do: say("none-do" + filtered)}
	}
	worst := short[0]
	for _, f := range short {
		if f.Share < worst.Share {
			worst = f
		}
	}
	about := []string{worst.Result.Use.Name, worst.Port.Full(), unit.Percent(worst.Share), b.filterOf(worst.Result)}
	gains := b.gaining(worst)
	if len(gains) == 0 {
		return Verdict{Words: []Word{{"notmet", say("word")}}, Says: say("nothing-says", about...), Do: say("nothing-do")}
	}
	best := gains[0]
	about = append(about, b.changeName(best), unit.Air.Figure(b.units, best.Gain), unit.Air.Unit(b.units))
	do := say("do")
	if !unit.AtLeast(float64(worst.All), float64(worst.Port.Flow)) {
		reach, need := unit.Air.Pair(b.units, worst.All, worst.Port.Flow)
		do = say("do-fan", worst.Port.Full(), reach, need, unit.Air.Unit(b.units))
	}
	return Verdict{Words: []Word{{"notmet", say("word")}}, Says: say("says", about...), Do: do}
}

// gaining are the changes that gain air that shows when it is printed, the most
// first.
func (b *Book) gaining(f *duct.First) []duct.Change {
	var list []duct.Change
	for _, c := range f.Changes {
		if c.OnCurve && b.shows(c) {
			list = append(list, c)
		}
	}
	return list
}

// shows reports whether what a change gains shows when it is printed.
func (b *Book) shows(c duct.Change) bool {
	return c.Gain > 0 && unit.Air.Figure(b.units, c.Gain) != unit.Air.Figure(b.units, 0)
}

func (b *Book) changesView(found airShort) changesView {
	v := changesView{Flow: unit.Air.Unit(b.units)}
	if len(found.served) > 0 {
		v.Served = b.words.Text("first.served", joined(found.served))
	}
	if shut := slices.Concat(found.off, found.shut); len(shut) > 0 {
		v.Shut = b.words.Text("first.shut", joined(shut))
	}
	if len(found.open) > 0 {
		v.Open = b.words.Text("first.open", joined(found.open))
	}
	if len(found.none) > 0 {
		v.Unserved = b.words.Text("first.unserved", joined(namesIn(found.none, func(u *duct.Use) string { return u.Name })))
	}
	for _, f := range found.short {
		v.Uses = append(v.Uses, b.changesUse(f, len(f.Changes)))
	}
	for _, f := range found.enough {
		v.Enough = append(v.Enough, b.changesUse(f, mostEnough))
	}
	for _, d := range found.dust {
		v.Dust = append(v.Dust, b.changesDust(d))
	}
	v.Over = b.overAll(found.short)
	return v
}

// changesUse says what gains most for the weakest port of a use: so many
// changes at most.
func (b *Book) changesUse(f *duct.First, most int) changesUse {
	u := changesUse{Use: f.Result.Use.Name, Flow: unit.Air.Unit(b.units), Path: b.Path("use", f.Result.Use.Name)}
	u.Says = b.words.Text("first.weakest", f.Port.Full(), unit.Percent(f.Share), unit.Air.Print(b.units, f.Port.Flow), b.filterOf(f.Result))
	gains := b.gaining(f)
	for i, c := range gains {
		if i == most {
			u.More = append(u.More, b.words.Count("first.more", len(gains)-i))
			break
		}
		part := unit.Six(float64(c.Flow / f.Port.Flow))
		row := changesRow{Name: b.changeName(c), Work: b.words.Text("first.work." + c.Work), Gain: unit.Air.Figure(b.units, c.Gain), Gets: unit.Air.Figure(b.units, c.Flow), Share: unit.Percent(part) + " %", Full: part >= 1, Carried: Word{"met", b.words.Text("first.carried.yes")}}
		if !c.Carried {
			row.Carried = Word{"notmet", b.words.Text("first.carried.no")}
		}
		u.Rows = append(u.Rows, row)
	}
	vain, off := 0, 0
	for _, c := range f.Changes {
		if !c.OnCurve {
			off++
		} else if !b.shows(c) {
			vain++
		}
	}
	if vain > 0 {
		u.More = append(u.More, b.words.Count("first.vain", vain))
	}
	if off > 0 {
		u.More = append(u.More, b.words.Count("first.leaves", off))
	}
	return u
}

// overAll counts each change over the uses that are short of air.
func (b *Book) overAll(short []*duct.First) []changesOver {
	var list []*changesOver
	byName := map[string]*changesOver{}
	for _, f := range short {
		for _, c := range b.gaining(f) {
			name := b.changeName(c)
			row := byName[name]
			if row == nil {
				row = &changesOver{Name: name, Work: b.words.Text("first.work." + c.Work)}
				byName[name] = row
				list = append(list, row)
			}
			row.Helps++
			if unit.AtLeast(float64(c.Flow), float64(f.Port.Flow)) {
				row.Enough++
			}
			if row.best = max(row.best, c.Gain); row.best == c.Gain {
				row.Best = unit.Air.Figure(b.units, c.Gain)
			}
		}
	}
	slices.SortStableFunc(list, func(a, c *changesOver) int {
		switch {
		case a.Enough != c.Enough:
			return c.Enough - a.Enough
		case a.Helps != c.Helps:
			return c.Helps - a.Helps
		}
		return unit.Compare(float64(c.best), float64(a.best))
	})
	var out []changesOver
	for i, row := range list {
		if i < mostOver {
			out = append(out, *row)
		}
	}
	return out
}

// changeName says what a change is.
func (b *Book) changeName(c duct.Change) string {
	on, how := "", ""
	if c.Duct != nil {
		on = c.Duct.Name
	}
	switch {
	case c.Stretch != nil:
		on = c.Stretch.Name()
		how = unit.Size.Print(b.units, c.Size)
	case c.Size > 0:
		how = unit.Size.Print(b.units, c.Size)
	case c.Length > 0:
		how = unit.Run.Print(b.units, c.Length)
	case c.Angle > 0:
		how = unit.Degrees.Print(b.units, c.Angle)
	case c.Elbows != "":
		how = c.Elbows
	}
	return b.words.Text("first.name."+c.Name, on, how)
}

// joined are names in one line.
func joined(list []string) string { return strings.Join(list, ", ") }
