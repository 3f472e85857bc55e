package trace

// Trace is the story of one run.
type Trace struct {
	Head    *Head
	Records []Record
	Airs    []Air
	End     Time // when the story ends: nothing would change after it without a new event
}

// Record is one thing that happened or changed.
//
//	Kind       Thing                         State            Why
//	Happens    what the What is about        a What           –
//	GateIs     a gate                        a GateState      1: arrival shown by the time alone, not proven
//	FanIs      a collector                   a FanState       –
//	RequestIs  a trigger                     a RequestState   a Why, where it waits
//	SignalIs   0, lamp or buzzer             0 off, 1 on      –
//	AirIs      its place in the trace's Airs –                –
type Record struct {
	At    Time
	Thing int32
	Kind  Kind
	State uint8
	Why   uint8
}

// Kind says what a record is of.
type Kind uint8

// The kinds of record.
const (
	Happens   Kind = iota // an event from outside; what follows from it comes after it
	GateIs                // a gate has a new state
	FanIs                 // a fan has a new state
	RequestIs             // what a trigger asks for has a new state
	SignalIs              // the signal goes on or off
	AirIs                 // what the air does with the gates and machines as they are now
)

// What is an event from outside.
type What uint8

// The events, with what their Thing is.
const (
	On           What = iota // a trigger: the machine runs, the switch is on, the purge is pressed
	Off                      // a trigger: the machine stands, the switch is off, the purge is ended
	LockoutOn                // –
	LockoutOff               // –
	PowerCut                 // –
	PowerBack                // –
	StopPressed              // a stop button
	HoldOn                   // a collector: its filter is very loaded or its bin full
	HoldOff                  // a collector: that is seen to
	StartsUsedUp             // a collector: the starts of the time just past are used up
	GateSticks               // a gate: from now on it does not arrive where it is sent
	GateFreed                // a gate: someone has seen to it
	GateLocked               // a gate: someone padlocks it shut; without effect where it is not shut
	GateUnlocked             // a gate
	Confirmed                // a gate: someone has looked and says it is where it was sent
)

// GateState is where a powered gate is, as far as the control half knows.
type GateState uint8

// The states of a gate. In Opening, Shutting and Homing its drive is on.
const (
	Shut GateState = iota
	Opening
	Open
	Shutting
	Between    // its drive went off on the way: neither open nor shut is known
	Homing     // it looks for its shut stop after a power cut
	Faulted    // it did not arrive; its drive is off until someone has seen to it
	LockedShut // padlocked
)

// Moves reports whether a gate in this state has its drive on.
func (s GateState) Moves() bool { return s == Opening || s == Shutting || s == Homing }

// FanState is what a collector's fan does.
type FanState uint8

// The states of a fan.
const (
	FanOff   FanState = iota // it stands still
	FanOn                    // switched on
	Coasting                 // switched off and still turning
)

// RequestState is how it stands with what a trigger asks for.
type RequestState uint8

// The states of a request.
const (
	Idle   RequestState = iota // nothing is asked for
	Waits                      // asked for and not served; the signal is on
	Opens                      // its gates are on their way, or its start delay runs
	Served                     // its gates have arrived and its collectors run
	RunsOn                     // no longer asked for: gates and fan stay until the run-on is over
)

// Why says what a request waits for.
type Why uint8

// The reasons.
const (
	NoReason  Why = iota
	NoWay         // no whole way: a gate on it is not opened by this trigger
	SeenOff       // it was on before it could count: it has to go off first
	Locked        // the lockout is on
	HomingGap     // gates look for their stops after a power cut
	Faulty        // a gate of its own did not arrive
	Padlocked     // a gate of its own is locked
	Unseen        // someone has to look at a gate and say that it is open
	EndTaken      // another machine has the movable end
	Starves       // opening would leave a running machine, or its own, short of air
	Held          // the filter is very loaded or the bin is full
	Limit         // the starts are used up or the fan rests
)

// Air is what the air does with gates open and machines running.
type Air struct {
	Open     Set // powered gates that are open or opening
	Running  Set // machines whose trigger is on and whose gates were sent to open
	Carrying Set // those, and the machines whose run-on lasts
	Short    Set // of the running: machines that get less than their need
	Slow     Set // stretches on the way of the carrying whose air is too slow for their dust
}

// GateState is the state in a record of a gate.
func (r *Record) GateState() GateState { return GateState(r.State) }

// What is the event in a record of something that happens.
func (r *Record) What() What { return What(r.State) }

// Is reports whether a record tells of one event.
func (r *Record) Is(w What) bool { return r.Kind == Happens && r.State == uint8(w) }

// Proven reports whether an arrival is proven by a switch or a person.
func (r *Record) Proven() bool { return r.Why == 0 }
