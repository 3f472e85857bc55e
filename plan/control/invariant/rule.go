package invariant

import (
	"fmt"

	"dustbook/plan/control/trace"
)

// Breach is one place where a story breaks a rule.
type Breach struct {
	Rule  string
	At    trace.Time
	About string // the things, by name
}

// String is the breach on one line.
func (b Breach) String() string { return fmt.Sprintf("%s at %d ms: %s", b.Rule, b.At, b.About) }

// Rule is one thing that must hold in every story.
type Rule struct {
	Name string
	Says string // in full

	sees  func(*scene) // after each record
	kinds []trace.Kind // of which records; none: of all
	rests func(*scene) // at the end of every moment, and of the story
}

// Rules are all rules.
var Rules = []Rule{
	{Name: "well told", Says: "Times never fall, and every state follows from one that it can follow.", rests: toldAir},
	{Name: "whole way", Says: "A fan runs only while a whole way of a request is open: its powered gates have arrived, its hand gates are on the card.", kinds: of(trace.FanIs), sees: startsOnWay, rests: keepsWay},
	{Name: "last gate", Says: "The last open way of a fan never shuts while the fan turns, nor until it has coasted down.", kinds: of(trace.GateIs), sees: lastGate},
	{Name: "cuts no way", Says: "A closing never cuts the way of a request that is served or runs on.", kinds: of(trace.GateIs), sees: cutsNoWay},
	{Name: "keeps carrying", Says: "A closing never takes a stretch below its transport velocity.", kinds: of(trace.AirIs), sees: keepsCarrying},
	{Name: "starves none", Says: "An opening never takes a machine that is served below its need.", kinds: of(trace.AirIs), sees: starvesNone},
	{Name: "few at once", Says: "No more gates move at once than may.", kinds: of(trace.GateIs), sees: fewAtOnce},
	{Name: "zone first", Says: "A zone gate is sent to open no later than the gates before it.", kinds: of(trace.GateIs), sees: zoneFirst},
	{Name: "zone last", Says: "A zone gate is sent to shut no sooner than the gates before it.", kinds: of(trace.GateIs), sees: zoneLast},
	{Name: "after a power cut", Says: "After a power cut nothing starts by itself: a trigger counts only after it was seen off.", kinds: of(trace.FanIs), sees: afterPowerCut},
	{Name: "latch cleared", Says: "A power cut clears every latched request.", kinds: of(trace.RequestIs), sees: latchCleared},
	{Name: "lockout", Says: "Under lockout no trigger acts and no gate moves; after it, a trigger counts only after it was seen off.", kinds: of(trace.GateIs, trace.FanIs, trace.RequestIs), sees: lockout},
	{Name: "relief", Says: "A request is served only with its relief gates open.", kinds: of(trace.RequestIs), sees: relief},
	{Name: "starts", Says: "A fan starts no more often than its motor may.", kinds: of(trace.FanIs), sees: starts},
	{Name: "rest", Says: "A fan rests as long as its motor must before it starts again.", kinds: of(trace.FanIs), sees: rest},
	{Name: "fault", Says: "A gate that did not reach its switch is not taken for open, and starts no fan.", kinds: of(trace.GateIs, trace.FanIs, trace.RequestIs), sees: fault},
	{Name: "answered", Says: "Every request is served, waits with the signal on, or is withdrawn.", rests: answered},
	{Name: "one at an end", Says: "A movable end serves one machine at a time.", kinds: of(trace.AirIs), sees: oneAtAnEnd},
	{Name: "stop", Says: "A stop button drops fan and gate drives; only a new request starts them again.", kinds: of(trace.GateIs, trace.FanIs), sees: stopHolds, rests: stopDrops},
	{Name: "hold", Says: "A very loaded filter or a full bin lets no fan start.", kinds: of(trace.FanIs), sees: hold},
	{Name: "homes still", Says: "Gates look for their stops with the fan at a stand, and before they are sent to open.", kinds: of(trace.GateIs), sees: homesStill},
	{Name: "run-on", Says: "A fan does not stop before the run-on of every trigger that it served.", kinds: of(trace.FanIs), sees: runOn},
	{Name: "start delay", Says: "A fan does not start before the start delay of a trigger is over.", kinds: of(trace.FanIs), sees: startDelay},
	{Name: "dead without power", Says: "Without power nothing moves, runs, asks or signals.", rests: deadWithout},
	{Name: "purge yields", Says: "A purge ends when anything else asks on its collector.", rests: purgeYields},
	{Name: "together", Says: "What a request opens is sent as soon as one more gate may move.", rests: together},
	{Name: "waits for cause", Says: "What a request waits for at the end of a story is so.", rests: waitsForCause},
	{Name: "arrival", Says: "A gate arrives no sooner than it can, and shows whether that is proven.", kinds: of(trace.GateIs), sees: arrival},
}

func of(kinds ...trace.Kind) []trace.Kind { return kinds }

// Judge finds every breach of every rule in a story.
func Judge(t *trace.Trace) []Breach { return new(Judging).Of(t) }

// Judging judges stories one after the other in space that it keeps. One
// goroutine uses it at a time; its breaches hold until the next story.
type Judging struct{ s scene }

// byKind are the rules that see each kind of record; resting those that look at
// the end of every moment.
var byKind, resting = func() (kinds [trace.AirIs + 1][]*Rule, resting []*Rule) {
	for i := range Rules {
		r := &Rules[i]
		for _, k := range r.kinds {
			kinds[k] = append(kinds[k], r)
		}
		if r.rests != nil {
			resting = append(resting, r)
		}
	}
	return kinds, resting
}()

// Of finds every breach of every rule in a story.
func (j *Judging) Of(t *trace.Trace) []Breach {
	s := &j.s
	s.begin(t)
	for i := range t.Records {
		r := &t.Records[i]
		if !s.wellTold(r) {
			return s.breaches // nothing can be read from what is not well told
		}
		if r.At > s.now {
			s.rest()
			s.now = r.At
		}
		s.take(r)
		for _, rule := range byKind[r.Kind] {
			s.rule = rule.Name
			rule.sees(s)
		}
	}
	s.rest()
	if t.End < s.now {
		s.rule = "well told"
		s.breach("the story ends before its last record")
	}
	s.over = true
	s.rest()
	return s.breaches
}

// rest has the rules look that look at the end of a moment.
func (s *scene) rest() {
	for _, rule := range resting {
		s.rule = rule.Name
		rule.rests(s)
	}
	s.stopped, s.cut = trace.Set{}, false
}

// breach notes a breach of the rule that looks.
func (s *scene) breach(about ...string) {
	text := ""
	for i, part := range about {
		if i > 0 {
			text += ", "
		}
		text += part
	}
	s.breaches = append(s.breaches, Breach{s.rule, s.now, text})
}
