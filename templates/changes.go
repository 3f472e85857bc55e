package templates

import (
	"slices"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// changesView is the sheet on what to change first.
type changesView struct {
	Flow   string // unit
	Over   []changesOver
	Uses   []changesUse
	Served string
	Shut   string
	Open   string // those that wait for sizes
}

// changesOver is one change over all uses that are short of air.
type changesOver struct {
	Name, Work    string
	Helps, Enough int
	Best          string
	best          unit.Flow
}

type changesUse struct {
	Use, Path, Says string
	Rows            []changesRow
	More            string
}

type changesRow struct {
	Name, Work, Gain, Gets, Share string
	Full                          bool
	Carried                       Word
}

// mostChanges stand in the table of a use, mostOver in that of all.
const (
	mostChanges = 6
	mostOver    = 12
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

// airShort sorts the uses of machines by their air.
type airShort struct {
	short  []*duct.First // what to change first, for every use and collector that is short of air
	served []string      // uses that are not
	shut   []string      // uses that cannot be told
	off    []string      // uses off the fan's curve in some state of the filter
	open   []string      // uses that wait for sizes still to be chosen
}

// shortOfAir finds, for every use and collector, what to change first in the
// state of the filter in which the weakest port gets least.
func (b *Book) shortOfAir() (found airShort) {
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) == 0 {
			continue
		}
		known, enough, open, off := false, true, false, false
		for _, c := range u.Collectors(b.Plan.Shop) {
			open = open || b.unsized(c)
			var worst *duct.First
			for _, r := range u.On(c) {
				off = off || !r.OnCurve
				f := b.Plan.First(r)
				if f != nil && (worst == nil || f.Share < worst.Share) {
					worst = f
				}
			}
			if worst == nil {
				continue
			}
			known = true
			if worst.Share < 1 {
				enough = false
				found.short = append(found.short, worst)
			}
		}
		switch {
		case open:
			found.open = append(found.open, u.Name)
		case off && enough:
			found.off = append(found.off, u.Name)
		case !known:
			found.shut = append(found.shut, u.Name)
		case enough:
			found.served = append(found.served, u.Name)
		}
	}
	return found
}

func (b *Book) changesVerdict(found airShort) Verdict {
	say := func(key string, about ...string) string { return b.words.Text("first."+key, about...) }
	short := found.short
	if len(short) == 0 {
		if len(found.open) > 0 {
			return b.openSizes(nil)
		}
		if len(found.off) > 0 && len(found.served) > 0 {
			return Verdict{Words: []Word{{"thin", say("word.off")}}, Says: say("off-says", joined(found.off)), Do: say("unknown-do")}
		}
		if len(found.served) == 0 {
			return Verdict{Words: []Word{{"blank", say("word.unknown")}}, Says: say("unknown-says"), Do: say("unknown-do")}
		}
		return Verdict{Words: []Word{{"met", say("word.none")}}, Says: say("none-says"), Do: say("none-do")}
	}
	worst := short[0]
	for _, f := range short {
		if f.Share < worst.Share {
			worst = f
		}
	}
	about := []string{worst.Result.Use.Name, worst.Port.Full(), unit.Percent(worst.Share), b.filterState(worst.Result.Filter)}
	gains := b.gaining(worst)
	if len(gains) == 0 {
		return Verdict{Words: []Word{{"notmet", say("word")}}, Says: say("nothing-says", about...), Do: say("nothing-do")}
	}
	best := gains[0]
	about = append(about, b.changeName(best), unit.Air.Figure(b.units, best.Gain), unit.Air.Unit(b.units))
	return Verdict{Words: []Word{{"notmet", say("word")}}, Says: say("says", about...), Do: say("do")}
}

// gaining are the changes that gain air that shows when it is printed, the most
// first.
func (b *Book) gaining(f *duct.First) []duct.Change {
	var list []duct.Change
	for _, c := range f.Changes {
		if c.OnCurve && c.Gain > 0 && unit.Air.Figure(b.units, c.Gain) != unit.Air.Figure(b.units, 0) {
			list = append(list, c)
		}
	}
	return list
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
	for _, f := range found.short {
		v.Uses = append(v.Uses, b.changesUse(f))
	}
	v.Over = b.overAll(found.short)
	return v
}

func (b *Book) changesUse(f *duct.First) changesUse {
	u := changesUse{Use: f.Result.Use.Name, Path: b.Path("use", f.Result.Use.Name)}
	u.Says = b.words.Text("first.weakest", f.Port.Full(), unit.Percent(f.Share), unit.Air.Print(b.units, f.Port.Flow), b.filterState(f.Result.Filter))
	gains := b.gaining(f)
	for i, c := range gains {
		if i == mostChanges {
			u.More = b.words.Count("first.more", len(gains)-i)
			break
		}
		part := unit.Six(float64(c.Flow / f.Port.Flow))
		row := changesRow{Name: b.changeName(c), Work: b.words.Text("first.work." + c.Work), Gain: unit.Air.Figure(b.units, c.Gain), Gets: unit.Air.Figure(b.units, c.Flow), Share: unit.Percent(part) + " %", Full: part >= 1, Carried: Word{"met", b.words.Text("first.carried.yes")}}
		if !c.Carried {
			row.Carried = Word{"notmet", b.words.Text("first.carried.no")}
		}
		u.Rows = append(u.Rows, row)
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
