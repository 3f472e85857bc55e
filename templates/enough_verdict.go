package templates

import (
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// enoughFound is what the verdict on collectors rests on.
type enoughFound struct {
	worst    *duct.Demand   // of those that a fan meets and that are on the curve
	off      []*duct.Demand // that leave the curve, each use once
	unserved []*duct.Use    // in which a port that needs air gets none from any fan
	doubt    duct.Doubts    // over all that is on the curve
}

func (b *Book) enoughFound(list []duct.Enough) (f enoughFound) {
	for i := range list {
		if w := list[i].Worst; w != nil && (f.worst == nil || w.Share < f.worst.Share) {
			f.worst = w
		}
		for j := range list[i].Demands {
			d := &list[i].Demands[j]
			if d.Port == nil || b.unsized(list[i].Collector) {
				continue
			}
			if d.OnCurve {
				f.doubt = f.doubt.And(d.Result.AirDoubts(b.Plan.Air.Spread(d.Result)))
			} else if n := len(f.off); n == 0 || f.off[n-1].Use != d.Use {
				f.off = append(f.off, d)
			}
		}
	}
	f.unserved = b.unserved()
	return f
}

// unserved are the uses in which a port that needs air gets none from any fan.
func (b *Book) unserved() (list []*duct.Use) {
	for _, u := range b.Plan.Air.Uses {
		if u.Unserved() != nil {
			list = append(list, u)
		}
	}
	return list
}

// unservedSays says which port of each use gets no air, and why.
func (b *Book) unservedSays(list []*duct.Use) string {
	const most = 3
	var says []string
	for i, u := range list {
		if i == most {
			says = append(says, b.words.Count("enough.unserved.more", len(list)-most))
			break
		}
		p, key := u.Unserved(), "enough.unserved.bare"
		if p.Duct != nil {
			key = "enough.unserved.shared"
		}
		about := []string{u.Name, p.Full(), ""}
		if p.Duct != nil {
			about[2] = p.Duct.Name
		}
		says = append(says, b.words.Text(key, about...))
	}
	return strings.Join(says, " ")
}

// offSays says which uses leave the fan's curve.
func (b *Book) offSays(list []*duct.Demand) string {
	var names []string
	for _, d := range list {
		names = append(names, d.Use.Name)
	}
	return b.words.Text("enough.says-off", b.few(names))
}

func (b *Book) enoughVerdict(list []duct.Enough) Verdict {
	say := func(key string, about ...string) string { return b.words.Text("enough."+key, about...) }
	f := b.enoughFound(list)
	worst := f.worst
	enough := worst == nil || worst.Share >= 1
	if b.unsized(nil) && enough {
		return b.openSizes(nil)
	}
	var says []string
	if !enough {
		says = append(says, say("says-no", worst.Use.Name, b.filterOf(worst.Result), worst.Port.Full(), unit.Percent(worst.Share)))
		if len(worst.Result.Crossings) > 1 {
			says = append(says, say("several", worst.Use.Name))
		}
	}
	if len(f.unserved) > 0 {
		says = append(says, b.unservedSays(f.unserved))
	}
	if len(f.off) > 0 {
		says = append(says, b.offSays(f.off))
	}
	all := func() string { return strings.Join(says, " ") }
	switch {
	case !enough:
		return Verdict{Words: []Word{{"notmet", say("word.no")}}, Says: all(), Do: b.enoughDo(worst)}
	case len(f.unserved) > 0:
		return Verdict{Words: []Word{{"notmet", say("word.unserved")}}, Says: all(), Do: say("do-unserved")}
	case len(f.off) > 0:
		return Verdict{Words: []Word{{"blank", say("word.unknown")}}, Says: all(), Do: say("do-off")}
	case worst == nil:
		return Verdict{Words: []Word{{"blank", say("word.unknown")}}, Says: say("says-unknown"), Do: say("do-unknown")}
	}
	about := []string{signedPercent(worst.Margin), worst.Use.Name, b.filterOf(worst.Result)}
	if f.doubt.Any() {
		return Verdict{Words: []Word{{"thin", say("word.thin")}}, Says: say("says-yes", about...) + " " + b.doubtSays(f.doubt), Do: b.doubtDo(f.doubt)}
	}
	return Verdict{Words: []Word{{"met", say("word.yes")}}, Says: say("says-yes", about...), Do: b.proveDo(worst.Result.Collector)}
}

// proveDo says to prove the worst use, with the filter due where there is one.
func (b *Book) proveDo(c *shop.Collector) string {
	if c.Filter == nil {
		return b.words.Text("enough.do-yes-plain")
	}
	return b.words.Text("enough.do-yes")
}

// enoughDo says where to begin where a port lacks air: at the ducts where they
// can give it its need, else at the fan.
func (b *Book) enoughDo(d *duct.Demand) string {
	f := b.Plan.First(d.Result)
	if f == nil || f.Port != d.Port {
		return b.words.Text("enough.do-no")
	}
	reach, need := unit.Air.Pair(b.units, f.All, f.Port.Flow)
	about := []string{f.Port.Full(), reach, need, unit.Air.Unit(b.units)}
	switch {
	case unit.AtLeast(float64(f.All), float64(f.Port.Flow)):
		return b.words.Text("enough.do-no")
	case d.InRange && d.Spare < 0:
		return b.words.Text("enough.do-fan", append(about, unit.Press.Print(b.units, d.Static), unit.Press.Print(b.units, d.Offered), unit.Air.Print(b.units, d.Flow))...)
	case !d.InRange && d.Reachable:
		return b.words.Text("enough.do-fan-beyond", append(about, unit.Press.Print(b.units, d.Static), unit.Air.Print(b.units, d.Flow))...)
	}
	return b.words.Text("enough.do-both", about...)
}

// doubtSays says what keeps a verdict at thin.
func (b *Book) doubtSays(d duct.Doubts) string {
	var says []string
	for _, one := range d {
		says = append(says, b.words.Text("enough.doubt."+string(one)))
	}
	return b.words.Text("enough.doubt", strings.Join(says, "; "))
}

// filterOf says in which state the filter of a result is, or that nothing is
// known of it.
func (b *Book) filterOf(r *duct.Result) string {
	if r.Filter == duct.NoFilter && r.Collector != nil && duct.FilterOpen(r.Collector) {
		return b.words.Text("enough.filter-open")
	}
	return b.filterState(r.Filter)
}

// doubtDo says what to do about the first thing that keeps a verdict at thin.
func (b *Book) doubtDo(d duct.Doubts) string {
	return b.words.Text("enough.doubt-do." + string(d[0]))
}
