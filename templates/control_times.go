package templates

import (
	"strings"

	"dustbook/checks"
	"dustbook/plan/control/timing"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// timeRow is one time, or the threshold, of a trigger: what is set beside the
// least, and how the check of it stands.
type timeRow struct {
	What, Set, Least, Why string
	State                 Word // empty where no check speaks of it
}

// triggerTimes are the times of one trigger in the table of all.
type triggerTimes struct {
	ID, Tag, Name string
	Rows          []timeRow
}

// inTimes reports whether the table of times says all that a finding says: a
// time that is not given, or waits for another figure.
func inTimes(f checks.Finding) bool {
	return (f.Check == "start-delay" || f.Check == "run-on") && f.State == checks.NotGiven
}

// timeRows are the times of a trigger that starts a fan, and its threshold.
func (b *Book) timeRows(of *timing.OfTrigger) []timeRow {
	var rows []timeRow
	if of.Delay.Verdict != timing.NoFan {
		rows = append(rows, b.delayRow(of), b.runOnRow(of))
	}
	if x := of.Threshold; x.Stand != timing.NoCurrent {
		row := timeRow{What: b.words.Text("triggers.threshold"), Set: b.notGiven(), Least: b.words.Text("timing.unknown"), State: b.stateAbout("threshold", of.Trigger)}
		if x.Set.Known() {
			row.Set = unit.Amps.Print(b.units, x.Set.V)
		}
		switch {
		case !x.Sensed.Apart():
		case x.NoRoom || x.Low > x.High:
			row.Least = b.words.Text("timing.no-band")
		default:
			row.Least = b.words.Text("timing.band", unit.Amps.Print(b.units, x.Low), unit.Amps.Print(b.units, x.High))
		}
		if x.OffHigh > 0 {
			key := "timing.lets-go"
			switch {
			case x.NoLetGo:
				key = "timing.no-let-go"
			case x.AboveOff():
				key = "timing.lets-go-above"
			}
			row.Why = b.words.Text(key, unit.Amps.Print(b.units, x.OffLow), unit.Amps.Print(b.units, x.OffHigh))
		}
		rows = append(rows, row)
	}
	return rows
}

func (b *Book) delayRow(of *timing.OfTrigger) timeRow {
	d := of.Delay
	row := timeRow{What: b.words.Text("triggers.from-trigger-to-fan"), Set: b.delay(d.Set), Least: b.words.Text("timing.or-more", b.seconds(d.Least)), State: b.stateAbout("start-delay", of.Trigger)}
	switch {
	case len(d.Missing) > 0:
		row.Least, row.Why = b.words.Text("timing.unknown"), b.words.Text("timing.no-travel", b.lacking(d.Missing))
	case d.Slowest == nil || d.Open < d.Least:
		row.Why = b.words.Text("timing.by-practice")
	default:
		row.Why = b.words.Text("timing.by-gate", d.Slowest.Name)
	}
	return row
}

func (b *Book) runOnRow(of *timing.OfTrigger) timeRow {
	r := of.RunOn
	row := timeRow{What: b.words.Text("triggers.run-on"), Set: b.delay(r.Set), Least: b.words.Text("timing.or-more", b.seconds(r.Least)), State: b.stateAbout("run-on", of.Trigger)}
	switch {
	case len(r.Missing)+len(r.Unsolved) > 0:
		row.Least = b.words.Text("timing.known-so-far", b.seconds(r.Least))
		if len(r.Missing) > 0 {
			row.Why = b.words.Text("timing.no-coast", b.lacking(r.Missing))
		} else {
			row.Why = b.words.Text("timing.no-air")
		}
	case r.Least == r.Coast.V:
		row.Why = b.words.Text("timing.by-coast")
	case r.Least == r.Clear.Least:
		row.Why = b.words.Text("timing.by-way", b.seconds(r.Cautious))
	default:
		row.Why = b.words.Text("timing.by-practice")
	}
	return row
}

// lacking are the names of what a field is missing of.
func (b *Book) lacking(list []timing.Missing) string {
	var names []string
	for _, m := range list {
		names = append(names, m.Of)
	}
	return strings.Join(names, ", ")
}

func (b *Book) seconds(t unit.Time) string { return unit.Seconds.Print(b.units, t) }

// span prints the two ends of a time, or the one where they are the same.
func (b *Book) span(s timing.Span) string {
	if unit.Compare(float64(s.Least), float64(s.Most)) == 0 {
		return b.seconds(s.Most)
	}
	return b.words.Text("timing.span", unit.Seconds.Figure(b.units, s.Least), b.seconds(s.Most))
}

// stateAbout is the state of what a check found about a trigger.
func (b *Book) stateAbout(check string, t *shop.Trigger) Word {
	for _, f := range b.findingsAbout("trigger", t.Name) {
		if f.Check == check {
			return stateWord(f.State)
		}
	}
	return Word{}
}

// dustBefore says how long a machine makes dust before its air is there;
// empty where it makes none, or where nobody can tell.
func (b *Book) dustBefore(d *timing.Dust) string {
	if d == nil || !d.Known() {
		return ""
	}
	text := b.words.Text("timing.dust", b.span(d.Time), d.Fan.Name)
	if d.Loose.Most > 0 {
		text += b.words.Text("timing.dust-volume", unit.Heap.Print(b.units, d.Loose.Most))
	}
	return text
}

// cautionKeys are the texts of the cautions; the first two hold for every
// sensor and stand at the end of the sheet.
var cautionKeys = map[timing.Caution]string{
	timing.BothInClamp:   "timing.caution.both-in-clamp",
	timing.BothLegs:      "timing.caution.both-legs",
	timing.LineSide:      "timing.caution.line-side",
	timing.WeakReading:   "timing.caution.weak-reading",
	timing.NameplateOnly: "timing.caution.nameplate-only",
}

func (b *Book) cautions(x timing.Threshold) []string {
	var list []string
	for _, c := range x.Cautions {
		if key, own := cautionKeys[c]; own {
			list = append(list, b.words.Text(key))
		}
	}
	return list
}

// fanFacts are how a collector's fan comes to speed and coasts, and how often
// it may start and is asked to. What is not known is left to its finding.
func (b *Book) fanFacts(c *shop.Collector) []fact {
	of := b.Plan.Times.On(c)
	var facts []fact
	add := func(key, says string) { facts = append(facts, fact{b.words.Text(key), sourced{Text: says}}) }
	if takes, known := of.Fan.Takes(); known {
		says := b.span(takes)
		if of.Fan.Set.Known() && of.Fan.Known() {
			says = b.words.Text("timing.run-up-both", says, b.span(of.Fan.RunUp))
		}
		add("timing.run-up", says)
	}
	if f := of.Fan; f.Known() {
		add("timing.coasts", b.words.Text("timing.coasts-so", b.seconds(f.Carries), b.seconds(f.Half), b.seconds(f.Stands)))
	}
	x := of.Starts
	if x.Limit.Known() {
		limit := b.words.Text("timing.most-given", unit.Significant(x.Limit.PerHour, 3))
		if x.Limit.By == timing.ByTable {
			limit = b.words.Text("timing.most-table", unit.Significant(x.Limit.PerHour, 3), x.Limit.Basis.BriefIn(b.words.Mark), b.seconds(x.Limit.Rest))
		}
		add("timing.starts", limit)
	}
	if len(x.Machines) > 0 && len(x.Missing) == 0 {
		add("timing.asked", b.words.Text("timing.asked-so", unit.Fixed(x.Asked, 1)))
	}
	return facts
}
