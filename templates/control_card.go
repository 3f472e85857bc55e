package templates

import (
	"math"
	"slices"
	"strings"

	"dustbook/checks"
	"dustbook/plan/control"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// cardGates sorts the gates of a machine into two boxes: those that a trigger
// of it opens, and those that whoever runs it opens.
func (b *Book) cardGates(v *cardView, m *shop.Machine, u *duct.Use) {
	for _, g := range b.Plan.Shop.Gates {
		opener := b.openerFor(m, g)
		switch {
		case opener != nil:
			gate := cardGate{Name: g.Name}
			if control.Pressed(opener) {
				gate.Why = b.words.Text("card.pressed", opener.Name)
			}
			v.ByItself = append(v.ByItself, gate)
		case u.Open[g]:
			gate := cardGate{Name: g.Name}
			if slices.Contains(m.AlsoOpen, g) {
				gate.Why = b.words.Text("card.as-well")
			} else if b.Plan.Control.Drive(g) == control.Powered {
				gate.Why = b.words.Text("card.no-trigger")
			}
			v.Open = append(v.Open, gate)
		}
	}
}

// openerFor is the trigger that opens a powered gate for a machine: one that
// notices that it runs before one that is pressed; nil where there is none.
func (b *Book) openerFor(m *shop.Machine, g *shop.Gate) *shop.Trigger {
	if b.Plan.Control.Drive(g) != control.Powered {
		return nil
	}
	var found *shop.Trigger
	for _, t := range b.Plan.Control.Openers(g) {
		if t.Machine == m && (found == nil || control.Pressed(found) && !control.Pressed(t)) {
			found = t
		}
	}
	return found
}

// starting is how the collectors of a card start.
type starting struct {
	itself   []string      // with the machine
	pressed  *shop.Trigger // by a switch of the control
	switched []string      // by their own switch
	with     []string      // what the pressed switch starts
	delay    shop.Field[unit.Time]
	runOn    shop.Field[unit.Time]
}

// startingOf finds how each collector of a use starts.
func (b *Book) startingOf(m *shop.Machine, u *duct.Use) starting {
	var s starting
	for _, c := range u.Collectors(b.Plan.Shop) {
		var runs, pressed *shop.Trigger
		for _, t := range b.Plan.Control.StartersFor(m, c) {
			if control.Pressed(t) && pressed == nil {
				pressed = t
			} else if !control.Pressed(t) && runs == nil {
				runs = t
			}
		}
		switch {
		case runs != nil:
			s.itself, s.delay, s.runOn = append(s.itself, c.Name), runs.StartDelay, runs.RunOn
		case pressed != nil:
			s.pressed, s.with, s.delay, s.runOn = pressed, append(s.with, c.Name), pressed.StartDelay, pressed.RunOn
		default:
			s.switched = append(s.switched, c.Name)
		}
	}
	return s
}

// cardOrder writes the order of starting and stopping, by how the collector
// starts.
func (b *Book) cardOrder(v *cardView, m *shop.Machine, u *duct.Use) {
	s := b.startingOf(m, u)
	v.Driven = len(v.ByItself) > 0 || len(s.itself) > 0 || s.pressed != nil
	if len(v.Open) > 0 || !v.Driven {
		v.Start = append(v.Start, b.words.Text("card.open-gates"))
	}
	if len(s.switched) > 0 || len(s.itself)+len(s.with) == 0 {
		v.Start = append(v.Start, b.words.Text("card.switch-on", b.orCollector(s.switched)))
	}
	if s.pressed != nil {
		v.Start = append(v.Start, b.words.Text("card.press", s.pressed.Name, b.follows(v, s.with, s.delay)))
	}
	if m.Kind == "floor sweep" || m.Kind == "open end" {
		v.Start = append(v.Start, b.words.Text("card.then-sweep"))
	} else if len(s.itself) > 0 || s.pressed == nil && len(v.ByItself) > 0 {
		v.Start = append(v.Start, b.words.Text("card.run-empty", b.follows(v, s.itself, s.delay)), b.words.Text("card.then-feed"))
	} else {
		v.Start = append(v.Start, b.words.Text("card.then-start"))
	}
	v.End = []string{b.words.Text("card.last-chips")}
	switch {
	case len(s.itself) > 0 && s.runOn.Known():
		v.End = append(v.End, b.words.Text("card.runs-on-for", b.list(s.itself), b.delay(s.runOn)))
	case len(s.itself) > 0:
		v.End = append(v.End, b.words.Text("card.runs-on", b.list(s.itself)))
	case s.pressed != nil && s.runOn.Known():
		v.End = append(v.End, b.words.Text("card.press-off-for", s.pressed.Name, b.list(s.with), b.delay(s.runOn)))
	case s.pressed != nil:
		v.End = append(v.End, b.words.Text("card.press-off", s.pressed.Name, b.list(s.with)))
	default:
		v.End = append(v.End, b.words.Text("card.off"))
	}
	if len(s.switched) > 0 && len(s.itself)+len(s.with) > 0 {
		v.End = append(v.End, b.words.Text("card.then-off", b.list(s.switched)))
	}
	v.End = append(v.End, b.words.Text("card.chips-back"))
	if v.Driven && b.Plan.Shop.Control.Lockout.Known() {
		v.Lockout = b.Plan.Shop.Control.Lockout.V
	}
}

// follows says what follows by itself: gates open, collectors start.
func (b *Book) follows(v *cardView, collectors []string, delay shop.Field[unit.Time]) string {
	text := ""
	if len(v.ByItself) > 0 {
		text = b.words.Count("card.opens", len(v.ByItself))
	}
	if len(collectors) > 0 {
		if text != "" {
			text += ", "
		}
		if delay.Known() {
			text += b.words.Text("card.starts-after", b.list(collectors), b.delay(delay))
		} else {
			text += b.words.Text("card.starts", b.list(collectors))
		}
	}
	return text
}

func (b *Book) orCollector(names []string) string {
	if len(names) == 0 {
		return b.words.Text("card.the-collector")
	}
	return b.list(names)
}

// cardStop notes the stop button on the way out, and what says that the
// machine must not run: a stop finding about a trigger of it, about itself or
// about a collector of it.
func (b *Book) cardStop(v *cardView, m *shop.Machine, u *duct.Use) {
	collectors := u.Collectors(b.Plan.Shop)
	v.Stopper = b.stopName(m, collectors)
	for _, f := range b.Findings {
		if f.Weight != checks.Stop || v.Stop != "" {
			continue
		}
		mine := f.Kind == "machine" && f.About == m.Name
		for _, t := range b.Plan.Shop.Triggers {
			mine = mine || f.Kind == "trigger" && f.About == t.Name && (t.Machine == m || t.Machine == nil && control.Pressed(t) && startsOneOf(t, collectors))
		}
		for _, c := range collectors {
			mine = mine || f.Kind == "collector" && f.About == c.Name
		}
		if mine {
			v.Stop, v.StopDo = f.Says, f.Do
		}
	}
}

func startsOneOf(t *shop.Trigger, collectors []*shop.Collector) bool {
	return slices.ContainsFunc(t.Starts, func(c *shop.Collector) bool { return slices.Contains(collectors, c) })
}

// stopName is the stop button nearest to a machine that stops every collector
// it uses; empty where there is none.
func (b *Book) stopName(m *shop.Machine, collectors []*shop.Collector) string {
	name, near := "", math.Inf(1)
	for _, s := range b.Plan.Shop.Stops {
		if len(collectors) == 0 || slices.ContainsFunc(collectors, func(c *shop.Collector) bool { return !slices.Contains(s.Collectors, c) }) {
			continue
		}
		far := math.MaxFloat64
		if m != nil && m.Place.Known() && s.Place.Known() {
			far = unit.Six(math.Hypot(m.Place.V.X-s.Place.V.X, m.Place.V.Y-s.Place.V.Y))
		}
		if d := b.Plan.Control.DeviceOf(s); far < near && d != nil {
			name, near = d.Name, far
		}
	}
	return name
}

// list joins names as a sentence does, in the language of the sheet.
func (b *Book) list(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " " + b.words.Text("card.and") + " " + names[last]
}
