package circuit

import (
	"slices"
	"testing"

	"dustbook/plan/shop"
)

// given is a field that a file states.
func given[Q any](v Q) shop.Field[Q] { return shop.Field[Q]{V: v, How: shop.Stated} }

// fed is a shop with one machine: its motor, nameplate, breaker, wire and
// terminals; empty where the file leaves it out.
type fed struct {
	power, volts                        string
	phase                               int
	amps, breaker, wire, terminals, air string
}

func (f fed) reckon() *Of { return f.under("us") }

// under is the circuit in a shop of some rules.
func (f fed) under(rules string) *Of {
	s, m := &shop.Shop{Rules: rules}, &shop.Machine{Name: "Saw", Circuit: &shop.Circuit{}}
	if f.power != "" {
		m.Motor = &shop.Motor{Power: power(f.power)}
		if f.volts != "" {
			m.Motor.Volts = given(volts(f.volts))
		}
		if f.phase != 0 {
			m.Motor.Phase = given(f.phase)
		}
	}
	if f.amps != "" {
		m.Amps = given(amps(f.amps))
	}
	if f.breaker != "" {
		m.Circuit.Breaker = given(amps(f.breaker))
	}
	if f.wire != "" {
		m.Circuit.Wire = given(wire(f.wire))
	}
	if f.terminals != "" {
		m.Circuit.Terminals = given(heat(f.terminals))
	}
	s.AirTemperature = given(heat("70 F"))
	if f.air != "" {
		s.AirTemperature = given(heat(f.air))
	}
	s.Machines = []*shop.Machine{m}
	return Reckon(s).Circuits[0]
}

func TestJudge(t *testing.T) {
	for _, c := range []struct {
		name    string
		fed     fed
		verdict Verdict
		faults  []Fault
		doubts  []Doubt
		missing []string
	}{
		// A blower from practice on a pigtail of 14 AWG and 15 A, then a motor
		// of 2 hp, whose supply is not told: both are tried.
		{"C32: 2 hp at 115 V", fed{"2 hp", "115 V", 1, "", "15 A", "14 AWG", "", ""}, Fails, []Fault{BreakerSmall, WireBelowMotor, WireSmall}, nil, nil},
		{"C32: 1.5 hp at 115 V", fed{"1.5 hp", "115 V", 1, "", "15 A", "14 AWG", "", ""}, Fails, []Fault{BreakerSmall, WireSmall}, nil, nil},
		{"C32: 2 hp at 230 V just passes", fed{"2 hp", "230 V", 1, "", "15 A", "14 AWG", "", ""}, Holds, nil, nil, nil},

		{"breaker at its greatest, with an overload", fed{"5 hp", "230 V", 1, "", "70 A", "10 AWG", "75 C", ""}, WithOverload, nil, nil, nil},
		{"breaker one size larger", fed{"5 hp", "230 V", 1, "", "80 A", "10 AWG", "75 C", ""}, Fails, []Fault{BreakerLarge}, nil, nil},
		{"breaker as small as the motor's current", fed{"3 hp", "230 V", 1, "", "17 A", "10 AWG", "", ""}, Holds, nil, nil, nil},
		{"breaker smaller", fed{"3 hp", "230 V", 1, "", "16.9 A", "10 AWG", "", ""}, Fails, []Fault{BreakerSmall}, nil, nil},
		{"breaker smaller than the table, not than the nameplate", fed{"3 hp", "230 V", 1, "14 A", "15 A", "10 AWG", "", ""}, Holds, nil, nil, nil},
		{"breaker as large as the wire alone bears", fed{"3 hp", "230 V", 1, "", "30 A", "10 AWG", "", ""}, Holds, nil, nil, nil},
		{"breaker larger than the wire alone bears", fed{"3 hp", "230 V", 1, "", "35 A", "10 AWG", "", ""}, WithOverload, nil, nil, nil},
		{"the limit of a small conductor on warm terminals", fed{"3 hp", "230 V", 1, "", "25 A", "12 AWG", "75 C", ""}, WithOverload, nil, nil, nil},

		{"wire just enough", fed{"3 hp", "230 V", 1, "", "20 A", "12 AWG", "75 C", ""}, Holds, nil, nil, nil}, // 21.25 of 25 A
		{"wire short on cool terminals", fed{"3 hp", "230 V", 1, "", "20 A", "12 AWG", "60 C", ""}, Fails, []Fault{WireSmall}, nil, nil},
		{"wire short unless terminals are warm", fed{"3 hp", "230 V", 1, "", "20 A", "12 AWG", "", ""}, Doubtful, nil, []Doubt{ByTerminals}, nil},
		{"wire short on any terminals", fed{"3 hp", "230 V", 1, "", "20 A", "14 AWG", "", ""}, Fails, []Fault{WireSmall}, nil, nil},
		{"terminals below the table", fed{"3 hp", "230 V", 1, "", "20 A", "10 AWG", "50 C", ""}, Doubtful, nil, []Doubt{ByTerminals}, nil},
		{"wire short in warm air", fed{"3 hp", "230 V", 1, "", "20 A", "12 AWG", "75 C", "45 C"}, Fails, []Fault{WireSmall}, nil, nil},  // 20.5 A
		{"wire enough in air as warm as it bears", fed{"3 hp", "230 V", 1, "", "20 A", "12 AWG", "75 C", "40 C"}, Holds, nil, nil, nil}, // 22 A
		{"air hotter than the table", fed{"3 hp", "230 V", 1, "", "20 A", "8 AWG", "75 C", "55 C"}, Doubtful, nil, []Doubt{ByAir}, nil},
		{"wire thinner than the table", fed{"1/6 hp", "115 V", 1, "", "15 A", "18 AWG", "", ""}, Fails, []Fault{WireBelowMotor, WireSmall}, nil, nil},
		{"metric wire", fed{"3 hp", "230 V", 1, "", "20 A", "4 mm2", "", ""}, NotComparable, nil, nil, nil},
		{"metric wire, breaker too large", fed{"3 hp", "230 V", 1, "", "50 A", "4 mm2", "", ""}, Fails, []Fault{BreakerLarge}, nil, nil},

		{"between two rows, both hold", fed{"4 hp", "230 V", 1, "", "30 A", "8 AWG", "75 C", ""}, Holds, nil, nil, nil},
		{"between two rows, breaker in doubt", fed{"4 hp", "230 V", 1, "", "50 A", "6 AWG", "75 C", ""}, Doubtful, nil, []Doubt{ByPower}, nil},
		{"between two rows, wire in doubt", fed{"4 hp", "230 V", 1, "", "25 A", "12 AWG", "75 C", ""}, Doubtful, nil, []Doubt{ByPower}, nil},
		{"nameplate over the table, wire in doubt", fed{"3 hp", "230 V", 1, "22 A", "25 A", "12 AWG", "75 C", ""}, Doubtful, nil, []Doubt{ByNameplate}, nil},
		{"nameplate over the table, breaker in doubt", fed{"3 hp", "230 V", 1, "22 A", "50 A", "8 AWG", "75 C", ""}, Doubtful, nil, []Doubt{ByNameplate}, nil},
		{"nameplate over the table, both hold", fed{"3 hp", "230 V", 1, "22 A", "30 A", "10 AWG", "75 C", ""}, Holds, nil, nil, nil},
		{"wire carries less than the nameplate", fed{"3 hp", "230 V", 1, "26 A", "30 A", "12 AWG", "75 C", ""}, Fails, []Fault{WireBelowMotor}, []Doubt{ByNameplate}, nil},

		{"no motor", fed{"", "", 0, "", "15 A", "14 AWG", "", ""}, Unknown, nil, nil, []string{NeedsMotor}},
		{"no motor, and less than the nameplate", fed{"", "", 0, "17 A", "15 A", "14 AWG", "", ""}, Fails, []Fault{BreakerSmall}, nil, []string{NeedsMotor}},
		{"no volts and phase", fed{"3 hp", "", 0, "", "15 A", "14 AWG", "", ""}, Unknown, nil, nil, []string{NeedsVolts, NeedsPhase}},
		{"no breaker", fed{"3 hp", "230 V", 1, "", "", "10 AWG", "", ""}, Unknown, nil, nil, []string{NeedsBreaker}},
		{"no breaker, wire short", fed{"3 hp", "230 V", 1, "", "", "14 AWG", "", ""}, Fails, []Fault{WireSmall}, nil, []string{NeedsBreaker}},
		{"no wire", fed{"3 hp", "230 V", 1, "", "30 A", "", "", ""}, Unknown, nil, nil, []string{NeedsWire}},
		{"off the table", fed{"3 hp", "400 V", 3, "", "30 A", "10 AWG", "", ""}, OffTable, nil, nil, nil},
		{"off the table, breaker under the nameplate", fed{"30 hp", "230 V", 3, "80 A", "70 A", "2 AWG", "75 C", ""}, Fails, []Fault{BreakerSmall}, nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := c.fed.reckon()
			if o.Verdict != c.verdict || !slices.Equal(o.Faults, c.faults) || !slices.Equal(o.Doubts, c.doubts) || !slices.Equal(o.Missing, c.missing) {
				t.Errorf("verdict %d, faults %v, doubts %v, missing %v; want %d %v %v %v", o.Verdict, o.Faults, o.Doubts, o.Missing, c.verdict, c.faults, c.doubts, c.missing)
			}
		})
	}
}

// What is shown beside a circuit: the table's current, the least conductor
// and the greatest breaker; for a power between rows the stricter of each.
func TestShown(t *testing.T) {
	for _, c := range []struct {
		fed                   fed
		table, least, largest string
		raised                bool
	}{
		{fed{"5 hp", "230 V", 1, "", "100 A", "10 AWG", "75 C", ""}, "28 A", "10 AWG", "70 A", true},
		{fed{"5 hp", "230 V", 1, "", "110 A", "10 AWG", "75 C", ""}, "28 A", "10 AWG", "70 A", true}, // 112 A
		{fed{"5 hp", "230 V", 1, "", "125 A", "10 AWG", "75 C", ""}, "28 A", "10 AWG", "70 A", false},
		{fed{"5 hp", "230 V", 1, "", "70 A", "10 AWG", "", ""}, "28 A", "8 AWG", "70 A", false},
		{fed{"4 hp", "230 V", 1, "", "30 A", "8 AWG", "75 C", ""}, "28 A", "10 AWG", "45 A", false},
	} {
		o := c.fed.reckon()
		if o.Table.Current != amps(c.table) || o.Least != wire(c.least) || o.Largest.Size != amps(c.largest) || o.Raised != c.raised {
			t.Errorf("%+v: %v %v %v %v", c.fed, o.Table.Current, o.Least, o.Largest, o.Raised)
		}
	}
}

// Collectors stand first; a motor whose volts are given and whose circuit is
// not is named, one of which only the power is given is not.
func TestReckon(t *testing.T) {
	motor := &shop.Motor{Power: power("3 hp"), Volts: given(volts("230 V"))}
	s := &shop.Shop{
		Rules:      "us",
		Machines:   []*shop.Machine{{Name: "Saw", Circuit: &shop.Circuit{}}, {Name: "Planer", Motor: motor}, {Name: "Sweep"}},
		Collectors: []*shop.Collector{{Name: "Cyclone", Circuit: &shop.Circuit{}}, {Name: "Cabinet", Motor: motor}, {Name: "Bag", Motor: &shop.Motor{Power: power("1 hp")}}},
	}
	names := func(list []*Of) (names []string) {
		for _, o := range list {
			names = append(names, o.Name())
		}
		return names
	}
	k := Reckon(s)
	if !slices.Equal(names(k.Circuits), []string{"Cyclone", "Saw"}) || !slices.Equal(names(k.Without), []string{"Cabinet", "Planer"}) {
		t.Errorf("%v without %v", names(k.Circuits), names(k.Without))
	}
}

// The tables of the US say nothing under other rules; a breaker is held against
// the nameplate everywhere.
func TestElsewhere(t *testing.T) {
	short := fed{"2 hp", "115 V", 1, "", "15 A", "14 AWG", "", ""}
	plate := fed{"2 hp", "115 V", 1, "18 A", "15 A", "14 AWG", "", ""}
	for rules, want := range map[string][2]Verdict{"us": {Fails, Fails}, "none": {Fails, Fails}, "uk": {Elsewhere, Fails}, "eu": {Elsewhere, Fails}, "quebec": {Elsewhere, Fails}} {
		a, b := short.under(rules), plate.under(rules)
		if a.Verdict != want[0] || b.Verdict != want[1] || !b.Has(BreakerSmall) {
			t.Errorf("%s: %d %v, %d %v", rules, a.Verdict, a.Faults, b.Verdict, b.Faults)
		}
		if told := rules == "us" || rules == "none"; a.Told != told || b.Has(WireSmall) != told || (len(a.Bases()) > 0) != told {
			t.Errorf("%s: the table is told: %v", rules, a.Told)
		}
	}
}

// What was read decides; a figure from memory among the bases does not.
func TestBases(t *testing.T) {
	decides := func(f fed) bool {
		list := f.reckon().Bases()
		for _, b := range list {
			if !b.Mark.Decides() {
				return false
			}
		}
		return len(list) > 0
	}
	for name, c := range map[string]struct {
		fed  fed
		want bool
	}{
		"all was read":         {fed{"5 hp", "230 V", 1, "", "70 A", "10 AWG", "75 C", ""}, true},
		"480 V":                {fed{"5 hp", "480 V", 3, "", "15 A", "12 AWG", "", ""}, true},
		"440 V":                {fed{"5 hp", "440 V", 3, "", "15 A", "12 AWG", "", ""}, false},
		"a thick conductor":    {fed{"10 hp", "115 V", 1, "", "200 A", "1/0 AWG", "75 C", ""}, false},
		"a breaker of 250 A":   {fed{"10 hp", "115 V", 1, "", "250 A", "", "", ""}, false},
		"terminals over 100 A": {fed{"10 hp", "115 V", 1, "", "", "2 AWG", "", ""}, false},
		"terminals stated":     {fed{"10 hp", "115 V", 1, "", "", "2 AWG", "75 C", ""}, true},
	} {
		if got := decides(c.fed); got != c.want {
			t.Errorf("%s: decides is %v", name, got)
		}
	}
	if list := (fed{"", "", 0, "", "15 A", "", "", ""}).reckon().Bases(); len(list) != 0 {
		t.Errorf("nothing compared: %v", list)
	}
}
