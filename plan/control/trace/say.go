package trace

import (
	"strconv"
	"strings"
)

// The names of what a record can say, by which the texts of the pages are
// found. Says writes them with spaces.
var (
	whatNames    = [...]string{"on", "off", "lockout-on", "lockout-off", "power-cut", "power-back", "stop-pressed", "hold-on", "hold-off", "starts-used-up", "sticks", "freed", "locked", "unlocked", "confirmed"}
	gateNames    = [...]string{"shut", "opening", "open", "shutting", "between", "homing", "faulted", "locked-shut"}
	fanNames     = [...]string{"off", "on", "coasting"}
	requestNames = [...]string{"idle", "waits", "opens", "served", "runs-on"}
	whyNames     = [...]string{"", "no-way", "seen-off", "locked", "homing", "faulty", "padlocked", "unseen", "end-taken", "starves", "held", "limit"}
	signalNames  = [...]string{"off", "on"}
)

// The names of states and reasons.
func (s GateState) String() string    { return gateNames[s] }
func (s FanState) String() string     { return fanNames[s] }
func (s RequestState) String() string { return requestNames[s] }
func (w Why) String() string          { return whyNames[w] }

// Name is the stable name of the event or state in a record; empty for the air.
func (r *Record) Name() string {
	switch r.Kind {
	case Happens:
		return whatNames[r.State]
	case GateIs:
		return gateNames[r.State]
	case FanIs:
		return fanNames[r.State]
	case RequestIs:
		return requestNames[r.State]
	case SignalIs:
		return signalNames[r.State]
	}
	return ""
}

// inWords is a name with spaces.
func inWords(name string) string { return strings.ReplaceAll(name, "-", " ") }

// Says is a record in a few words: "Saw gate opening".
func (t *Trace) Says(r *Record) string {
	h, is := t.Head, inWords(r.Name())
	switch r.Kind {
	case GateIs:
		text := h.Gates[r.Thing].Name + " " + is
		if !r.Proven() {
			text += ", not proven"
		}
		return text
	case FanIs:
		return h.Collectors[r.Thing].Name + " fan " + is
	case RequestIs:
		text := h.TriggerName(int(r.Thing)) + ": " + is
		if r.Why != 0 {
			text += ", " + inWords(Why(r.Why).String())
		}
		return text
	case SignalIs:
		return "signal " + is
	case AirIs:
		a := &t.Airs[r.Thing]
		return "air: open " + strconv.Itoa(a.Open.Count()) + ", short " + strconv.Itoa(a.Short.Count()) + ", slow " + strconv.Itoa(a.Slow.Count())
	}
	return h.about(r.What(), int(r.Thing)) + is
}

// TriggerName is the name of a trigger; a purge is told by its collector.
func (h *Head) TriggerName(t int) string {
	if h.Triggers[t].Purge {
		return h.Triggers[t].Name + " purge"
	}
	return h.Triggers[t].Name
}

// about is the name of what an event is about, with a space after it.
func (h *Head) about(w What, thing int) string {
	switch w {
	case On, Off:
		return h.TriggerName(thing) + " "
	case StopPressed:
		return h.Stops[thing].Name + " "
	case HoldOn, HoldOff, StartsUsedUp:
		return h.Collectors[thing].Name + " "
	case GateSticks, GateFreed, GateLocked, GateUnlocked, Confirmed:
		return h.Gates[thing].Name + " "
	}
	return ""
}
