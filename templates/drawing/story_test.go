package drawing

import "dustbook/plan/control/trace"

// Story is a run told by hand: a saw with a zone gate that a switch proves and
// its own gate that time alone proves, a fan, then a power cut and a request
// that waits.
func Story() *trace.Trace {
	head := &trace.Head{
		Gates:      []trace.Gate{{Name: "Zone gate", Zone: true}, {Name: "Saw gate"}, {Name: "Other gate"}},
		Collectors: []trace.Collector{{Name: "Cyclone"}},
		Triggers:   []trace.Trigger{{Name: "Saw running"}, {Name: "Planer running"}},
	}
	is := func(at trace.Time, kind trace.Kind, thing int, state, why uint8) trace.Record {
		return trace.Record{At: at, Kind: kind, Thing: int32(thing), State: state, Why: why}
	}
	return &trace.Trace{Head: head, End: 40000, Records: []trace.Record{
		is(500, trace.Happens, 0, uint8(trace.On), 0),
		is(500, trace.RequestIs, 0, uint8(trace.Opens), 0),
		is(500, trace.GateIs, 0, uint8(trace.Opening), 0),
		is(2300, trace.GateIs, 0, uint8(trace.Open), 0),
		is(2300, trace.GateIs, 1, uint8(trace.Opening), 0),
		is(3800, trace.GateIs, 1, uint8(trace.Open), 1),
		is(3800, trace.FanIs, 0, uint8(trace.FanOn), 0),
		is(3800, trace.RequestIs, 0, uint8(trace.Served), 0),
		is(20000, trace.Happens, 0, uint8(trace.PowerCut), 0),
		is(20000, trace.FanIs, 0, uint8(trace.Coasting), 0),
		is(20000, trace.RequestIs, 0, uint8(trace.Idle), 0),
		is(25000, trace.Happens, 0, uint8(trace.PowerBack), 0),
		is(25000, trace.RequestIs, 0, uint8(trace.Waits), uint8(trace.SeenOff)),
		is(25000, trace.SignalIs, 0, 1, 0),
		is(32000, trace.FanIs, 0, uint8(trace.FanOff), 0),
		is(32000, trace.GateIs, 0, uint8(trace.Homing), 0),
		is(33800, trace.GateIs, 0, uint8(trace.Shut), 0),
		is(33800, trace.GateIs, 1, uint8(trace.Homing), 0),
		is(35300, trace.GateIs, 1, uint8(trace.Shut), 0),
		is(36000, trace.Happens, 0, uint8(trace.Off), 0),
		is(36000, trace.RequestIs, 0, uint8(trace.Idle), 0),
		is(36000, trace.SignalIs, 0, 0, 0),
	}}
}

// StoryNames are the names of its lanes.
var StoryNames = LaneNames{Triggers: []string{"T1 Saw running", "T2 Planer running"}, Gates: []string{"Z1 Zone gate", "G1 Saw gate", "G2 Other gate"}, Collectors: []string{"Cyclone"}}
