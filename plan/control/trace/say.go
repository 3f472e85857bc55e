package trace

import "strconv"

// The words of a record for messages, tests and keys of texts.
var (
	whatWords    = [...]string{"on", "off", "lockout on", "lockout off", "power cut", "power back", "stop pressed", "hold on", "hold off", "starts used up", "sticks", "freed", "locked", "unlocked", "confirmed"}
	gateWords    = [...]string{"shut", "opening", "open", "shutting", "between", "homing", "faulted", "locked shut"}
	fanWords     = [...]string{"off", "on", "coasting"}
	requestWords = [...]string{"idle", "waits", "opens", "served", "runs on"}
	whyWords     = [...]string{"", "no way", "seen off", "locked", "homing", "faulty", "padlocked", "unseen", "end taken", "starves", "held", "limit"}
	signalWords  = [...]string{"off", "on"}
)

func (w What) String() string         { return whatWords[w] }
func (s GateState) String() string    { return gateWords[s] }
func (s FanState) String() string     { return fanWords[s] }
func (s RequestState) String() string { return requestWords[s] }
func (w Why) String() string          { return whyWords[w] }

// Says is a record in a few words: "Saw gate opening".
func (t *Trace) Says(r *Record) string {
	h := t.Head
	switch r.Kind {
	case GateIs:
		text := h.Gates[r.Thing].Name + " " + gateWords[r.State]
		if !r.Proven() {
			text += ", not proven"
		}
		return text
	case FanIs:
		return h.Collectors[r.Thing].Name + " fan " + fanWords[r.State]
	case RequestIs:
		text := h.TriggerName(int(r.Thing)) + ": " + requestWords[r.State]
		if r.Why != 0 {
			text += ", " + whyWords[r.Why]
		}
		return text
	case SignalIs:
		return "signal " + signalWords[r.State]
	case AirIs:
		a := &t.Airs[r.Thing]
		return "air: open " + strconv.Itoa(a.Open.Count()) + ", short " + strconv.Itoa(a.Short.Count()) + ", slow " + strconv.Itoa(a.Slow.Count())
	}
	return h.about(What(r.State), int(r.Thing)) + What(r.State).String()
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
