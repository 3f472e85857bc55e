package trace

// Span is a stretch of time over which one thing keeps a state.
type Span struct {
	From, To Time
	State    uint8
	Why      uint8 // as in the record that began it
}

// Lane is the story of one thing as spans that follow each other without a gap
// from 0 to the trace's end. Changes that last no time are left out. Of Happens
// there is no lane: ask Input.
func (t *Trace) Lane(kind Kind, thing int) []Span {
	return t.spans(func(r *Record) (state, why uint8, is bool) {
		return r.State, r.Why, r.Kind == kind && int(r.Thing) == thing
	})
}

// Input is the story of a trigger's input as it comes in from outside, noticed
// or not: 0 off, 1 on. A latched switch is off from a power cut on.
func (t *Trace) Input(trigger int) []Span {
	latched := t.Head.Triggers[trigger].Latched
	return t.spans(func(r *Record) (state, why uint8, is bool) {
		switch {
		case int(r.Thing) == trigger && r.Is(On):
			return 1, 0, true
		case int(r.Thing) == trigger && r.Is(Off), latched && r.Is(PowerCut):
			return 0, 0, true
		}
		return 0, 0, false
	})
}

// Power is the story of the power: 0 off, 1 on.
func (t *Trace) Power() []Span {
	list := t.spans(func(r *Record) (state, why uint8, is bool) {
		if r.Is(PowerCut) {
			return 1, 0, true
		}
		return 0, 0, r.Is(PowerBack)
	})
	for i := range list {
		list[i].State = 1 - list[i].State
	}
	return list
}

// Lockout is the story of the lockout: 0 off, 1 on.
func (t *Trace) Lockout() []Span {
	return t.spans(func(r *Record) (state, why uint8, is bool) {
		if r.Is(LockoutOn) {
			return 1, 0, true
		}
		return 0, 0, r.Is(LockoutOff)
	})
}

// spans makes spans of what a function picks from the records.
func (t *Trace) spans(pick func(*Record) (state, why uint8, is bool)) []Span {
	list := []Span{{To: t.End}}
	for i := range t.Records {
		r := &t.Records[i]
		state, why, is := pick(r)
		last := &list[len(list)-1]
		if !is || state == last.State && why == last.Why {
			continue
		}
		last.To = r.At
		if last.From == last.To {
			list = list[:len(list)-1]
		}
		if n := len(list); n > 0 && list[n-1].State == state && list[n-1].Why == why {
			list[n-1].To = t.End
			continue
		}
		list = append(list, Span{r.At, t.End, state, why})
	}
	return list
}
