package templates

import (
	"strconv"

	"dustbook/checks"
	"dustbook/plan/control"
	"dustbook/plan/control/chain"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// chainView is what a chain's sheet says of volts, supply, fuse and cable.
type chainView struct {
	Volts    []voltRow
	Need     string // how the lowest volts were found, with how many gates together
	Mends    []string
	Too      string // what those leave undone
	Assumed  []string
	Fuse     [][2]string // none above low voltage
	Supply   [][2]string
	Listing  string
	Terminal []string // what to know for cutting, stripping and pulling; none above low voltage
	Joints   []string // the connectors, from the supply on; none above low voltage
	Loose    []tagged // devices that have to be fed and stand on no chain
}

// voltRow is one device of a chain.
type voltRow struct {
	Device                      tagged
	Run, Rest, Lowest, Need, By string
	Margin                      string
	State                       Word
}

// chainView gathers what is reckoned about a chain.
func (b *Book) chainView(c *shop.Chain) chainView {
	a := b.Plan.Chains.Of(c)
	v := chainView{}
	if len(a.Nodes) == 0 {
		return v
	}
	v.Need = b.together(a.Together)
	for _, n := range a.Nodes {
		v.Volts = append(v.Volts, b.voltRow(n))
	}
	for _, m := range a.Mends {
		v.Mends = append(v.Mends, checks.Mended(m))
	}
	if len(v.Mends) > 0 {
		v.Too = checks.MendsLeave(b.Plan, a)
	}
	for _, s := range a.Assumed {
		v.Assumed = append(v.Assumed, b.words.Text(assumedKeys[s.Input], s.Device.Pair(), unit.Amps.Print(b.units, s.Current), s.Basis.In(b.words.Mark)))
	}
	v.Supply, v.Listing = b.supplyFacts(b.Plan.Chains.Supply)
	if !b.aboveLow() {
		v.Fuse, v.Terminal, v.Joints = b.fuseFacts(a), b.terminal(a), b.joints(a)
	}
	for _, d := range b.Plan.Chains.Loose {
		v.Loose = append(v.Loose, tagged{d.Tag, d.Name, devicePath(d)})
	}
	return v
}

// aboveLow reports whether the control supply lies above low voltage.
func (b *Book) aboveLow() bool { return b.Plan.Chains.Reach == chain.OutOfReach }

// together says how many gates of a chain are stalled at the worst.
func (b *Book) together(count int) string {
	if count == 0 {
		return b.words.Text("chain.together-none")
	}
	return b.words.Count("chain.together", count)
}

// assumedKeys are the rows that say what is assumed of a device.
var assumedKeys = map[chain.Input]string{
	chain.StallCurrent: "chain.assumed-stall", chain.HoldingCurrent: "chain.assumed-holding", chain.DrawnCurrent: "chain.assumed-draws",
}

// states are the words of the verdicts.
var states = map[chain.Verdict]checks.State{chain.Holds: checks.Met, chain.Thin: checks.Thin, chain.Short: checks.NotMet, chain.Unknown: checks.NotGiven}

func (b *Book) voltRow(n chain.Node) voltRow {
	row := voltRow{Device: tagged{Name: b.words.Text("chain.device")}, Run: unit.Run.Figure(b.units, n.Run)}
	if d := n.Device; d != nil {
		row.Device = tagged{d.Tag, d.Name, devicePath(d)}
	}
	if n.Judged {
		state := states[n.Verdict]
		if b.aboveLow() && (state == checks.Met || state == checks.Thin) {
			state = checks.Ask
		}
		row.State = stateWord(state)
		if n.Need > 0 {
			row.Need = unit.Volts.Figure(b.units, n.Need)
		}
	}
	if !n.Solved {
		return row
	}
	row.Rest, row.Lowest = unit.Volts.Figure(b.units, n.AtRest), unit.Volts.Figure(b.units, n.Volts)
	if n.Judged && n.Need > 0 {
		row.Margin = unit.Volts.Figure(b.units, n.Margin)
	}
	row.By = b.list(tagsOf(n.Movers))
	return row
}

// fuseFacts are what the fuse of a chain lies between, and what bounds it.
func (b *Book) fuseFacts(a *chain.Answer) [][2]string {
	f := a.Fuse
	var facts [][2]string
	if f.Least > 0 {
		facts = append(facts, [2]string{b.words.Text("chain.may-draw"), unit.Amps.Print(b.units, f.Least)})
	}
	carries := b.notGiven()
	if f.Known {
		carries = b.words.Text("chain.carries-by", unit.Amps.Print(b.units, f.Most), f.Basis.In(b.words.Mark))
	}
	facts = append(facts, [2]string{b.words.Text("chain.carries"), carries})
	if f.Idle {
		has := unit.Amps.Print(b.units, b.Plan.Chains.Supply.Has)
		facts = append(facts, [2]string{b.words.Text("chain.idle-fuse"), b.words.Text("chain.idle-fuse-says", has, unit.Amps.Print(b.units, f.Most))})
	}
	switch f.Bound {
	case chain.ByVolts:
		facts = append(facts, [2]string{b.words.Text("chain.bound"), b.words.Text("chain.by-volts")})
	case chain.ByHeat:
		facts = append(facts, [2]string{b.words.Text("chain.bound"), b.words.Text("chain.by-heat")})
	}
	return facts
}

// supplyFacts are the sum of the supply and what stands on its label.
func (b *Book) supplyFacts(a *chain.Supply) (facts [][2]string, listing string) {
	if a == nil {
		return nil, ""
	}
	amps := func(key string, i unit.Current, about ...string) {
		facts = append(facts, [2]string{b.words.Text(key, about...), unit.Amps.Print(b.units, i)})
	}
	if a.Summed {
		amps("chain.supply-moving", a.Moving, b.list(tagsOf(a.Movers)))
		amps("chain.supply-rest", a.Rest)
		amps("chain.supply-controller", a.Controller)
		amps("chain.supply-relays", a.Relays)
		amps("chain.supply-sum", a.Sum)
		amps("chain.supply-asked", a.Asked)
	}
	if a.Has > 0 {
		amps("chain.supply-has", a.Has)
	}
	l := a.Limited
	if l.Tight.Power > 0 {
		facts = append(facts, [2]string{b.words.Text("chain.limit"), b.words.Text("chain.limit-by", unit.Short(float64(l.Tight.Power)), l.Tight.Basis.In(b.words.Mark))})
	}
	if b.aboveLow() {
		return facts, b.words.Text("chain.above-low")
	}
	return facts, b.words.Text(listingKeys[l.Listed])
}

// listingKeys are the rows that say what is known of the listing.
var listingKeys = map[chain.Listed]string{
	chain.ListingAsked: "chain.listing-asked", chain.NotListed: "chain.not-listed", chain.ListedWithin: "chain.listed",
	chain.ListedDoubted: "chain.listing-doubted", chain.ListedBeyond: "chain.listing-beyond",
	chain.ListedHalfWay: "chain.listing-half-way", chain.ListedOutOfReach: "chain.above-low",
}

// terminal says how the wires of a chain are cut, stripped and pulled.
func (b *Book) terminal(a *chain.Answer) []string {
	if len(a.Wires) == 0 {
		return nil
	}
	w := a.Wires[0]
	contacts := 0
	for _, w := range a.Wires {
		contacts += w.Contacts
	}
	says := []string{
		b.words.Text("chain.slack", unit.Run.Print(b.units, w.Slack/2)),
		b.words.Text("chain.strip", unit.Size.Print(b.units, w.StripLeast), unit.Size.Print(b.units, w.StripMost)),
		b.words.Count("chain.contacts", contacts),
	}
	if w.PullKnown {
		says = append(says, b.words.Text("chain.pull", unit.Short(w.Pull.Newtons), w.Pull.Pounds, w.PullBasis.In(b.words.Mark)))
	}
	return append(says, b.words.Text("chain.try-by-hand"))
}

// joints lists the connectors of a chain: at the supply, on the way, at the
// end, and how many it takes in all.
func (b *Book) joints(a *chain.Answer) []string {
	if len(a.Joints) == 0 {
		return nil
	}
	var way []string
	sockets := 0
	for _, j := range a.Joints {
		sockets += j.Runs
		if j.Runs > 1 {
			way = append(way, j.Device.Tag)
		}
	}
	first, last := a.Joints[0], a.Joints[len(a.Joints)-1]
	poles := strconv.Itoa(first.Poles)
	says := []string{b.words.Text("chain.joint-first", first.Device.Tag, poles)}
	if len(way) > 0 {
		says = append(says, b.words.Text("chain.joint-way", b.list(way), poles))
	}
	return append(says, b.words.Text("chain.joint-last", last.Device.Tag, poles),
		b.words.Text("chain.joint-count", strconv.Itoa(sockets), strconv.Itoa(sockets), poles), b.words.Text("chain.joint-keyed"))
}

// tagsOf are the tags of devices.
func tagsOf(list []*control.Device) []string {
	var tags []string
	for _, d := range list {
		tags = append(tags, d.Tag)
	}
	return tags
}
