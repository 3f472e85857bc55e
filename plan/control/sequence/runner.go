package sequence

import "dustbook/plan/control/trace"

// never is later than any time of a run.
const never = trace.Time(1) << 60

// Runner runs works. It keeps its space from run to run, so the trace of a run
// holds only until the next one; Run makes one that lasts. One goroutine uses
// it at a time.
type Runner struct {
	works  *Works
	head   *trace.Head
	air    Air
	broken rule

	now     trace.Time
	power   bool
	lockout bool
	signal  bool
	moving  int // gates whose drive is on
	gates   []gate
	fans    []fan
	asks    []ask
	queue   []int // asks that count, the oldest first
	changed bool

	open              trace.Set // gates that are open or opening
	running, carrying trace.Set // machines
	told              trace.Air

	trace trace.Trace
}

// gate is where a gate is.
type gate struct {
	state  trace.GateState
	until  trace.Time // when its move is over
	from   trace.Time // when it may look for its stops
	stuck  bool
	lost   bool // it has to look for its stops
	unseen bool // it was sent to open, and someone has to look
	takes  bool // opening it now would take a machine that is served below its need
}

// fan is what a fan does.
type fan struct {
	state   trace.FanState
	until   trace.Time // when it stands still
	rested  trace.Time // when it may start again
	starts  []trace.Time
	held    bool
	stopped bool // by a button: its gates keep their places until something new is asked for
}

// ask is how it stands with what a trigger asks for.
type ask struct {
	on     bool // the input
	counts bool // it was seen to come on while it could count
	sent   bool // its gates are asked to be open, until its run-on is over
	state  trace.RequestState
	why    trace.Why
	since  trace.Time
	until  trace.Time // the end of its run-on, or of a purge's turn
	turn   int        // of a purge
	next   int        // the turn whose gates are on their way
}

// NewRunner makes a runner. It can run again and again.
func NewRunner(w *Works, air Air) *Runner {
	return &Runner{works: w, head: w.Head, air: air,
		gates: make([]gate, len(w.Head.Gates)), fans: make([]fan, len(w.Head.Collectors)), asks: make([]ask, len(w.Head.Triggers))}
}

// Run runs events, which stand in the order of their times, until nothing would
// change any more without another one.
func Run(w *Works, air Air, events []Event) *trace.Trace { return NewRunner(w, air).Run(events) }

// Run runs events like the function of that name; the trace holds until the
// next run.
func (r *Runner) Run(events []Event) *trace.Trace {
	r.reset()
	for _, e := range events {
		r.until(e.At)
		r.now = max(r.now, e.At)
		r.happen(e)
		r.settle()
	}
	r.until(never)
	r.trace.End = r.now
	return &r.trace
}

func (r *Runner) reset() {
	r.now, r.power, r.lockout, r.signal, r.moving = 0, true, false, false, 0
	clear(r.gates)
	for i := range r.fans {
		r.fans[i] = fan{starts: r.fans[i].starts[:0]}
	}
	clear(r.asks)
	r.queue = r.queue[:0]
	r.open, r.running, r.carrying, r.told = trace.Set{}, trace.Set{}, trace.Set{}, trace.Air{}
	r.trace = trace.Trace{Head: r.head, Records: r.trace.Records[:0], Airs: r.trace.Airs[:0]}
}

// until runs up to a time, from one thing that is due to the next.
func (r *Runner) until(end trace.Time) {
	for {
		due := r.due()
		if due > end || due == never {
			return
		}
		r.now = due
		r.expire()
		r.settle()
	}
}

// due is when the next thing is due after now; never where nothing is.
func (r *Runner) due() trace.Time {
	next := never
	take := func(at trace.Time) {
		if at > r.now && at < next {
			next = at
		}
	}
	for i := range r.gates {
		switch g := &r.gates[i]; {
		case g.state.Moves():
			take(g.until)
		case g.lost && r.power:
			take(g.from)
		}
	}
	for c := range r.fans {
		if r.fans[c].state == trace.Coasting {
			take(r.fans[c].until)
		}
	}
	for t := range r.asks {
		a := &r.asks[t]
		if a.state == trace.RunsOn || r.head.Triggers[t].Purge {
			take(a.until)
		}
		if a.why == trace.Limit {
			for _, c := range r.head.Triggers[t].Starts {
				take(r.allowed(c))
			}
		}
		if a.counts && a.sent {
			take(a.since + r.head.Triggers[t].StartDelay)
		}
	}
	return next
}

// expire ends what is due now: moves of gates, and coasting.
func (r *Runner) expire() {
	for g := range r.gates {
		if r.gates[g].state.Moves() && r.gates[g].until <= r.now {
			r.arrive(g)
		}
	}
	for c := range r.fans {
		if r.fans[c].state == trace.Coasting && r.fans[c].until <= r.now {
			r.turn(c, trace.FanOff)
		}
	}
}

// settle lets follow what follows from the state as it is now.
func (r *Runner) settle() {
	for range 1000 { // far more than ever follow at one moment
		r.changed = false
		if r.power {
			r.answer()
			r.release()
			r.runFans()
			r.move()
			r.serve()
		}
		r.light()
		if !r.changed {
			return
		}
	}
}
