package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

// fanFed gives the fan of the whole shop a motor and a circuit, under some
// rules.
func fanFed(motor, circuit string, more ...change) []change {
	if circuit != "" {
		circuit = "\ncircuit = { " + circuit + " }"
	}
	return append([]change{{`motor = { power = "5 hp" }`, "motor = { " + motor + " }" + circuit}}, more...)
}

// sawFed gives the saw of the whole shop lines about its motor.
func sawFed(lines string, more ...change) []change {
	return append([]change{{"name = \"Saw\"\nrestarts = false\n", "name = \"Saw\"\nrestarts = false\n" + lines + "\n"}}, more...)
}

const (
	fiveHorse  = `power = "5 hp", volts = "230 V", phase = 1`
	threeHorse = `power = "3 hp", volts = "230 V", phase = 1`
)

func underRules(rules string) change { return change{`rules = "us"`, `rules = "` + rules + `"`} }

func TestMotorCircuit(t *testing.T) {
	for _, e := range []expected{
		{"met", fanFed(threeHorse, `breaker = "30 A", wire = "10 AWG"`), "motor-circuit", "Cyclone", checks.Met, checks.ByRule, checks.Know, "By the table its motor draws 17 A at full load. Its conductors have to carry 21.3 A: 10 AWG or thicker, copper. The most for its breaker is 45 A."},
		{"met: the edition that was read is named", fanFed(threeHorse, `breaker = "30 A", wire = "10 AWG"`, editions(`{ "NEC" = "2023" }`)), "motor-circuit", "Cyclone", checks.Met, checks.ByRule, checks.Know, "draws 17 A at full load"},
		{"ask: another edition is named", fanFed(threeHorse, `breaker = "30 A", wire = "10 AWG"`, editions(`{ "NEC" = "2020" }`)), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, ""},
		{"ask: only with an overload", fanFed(fiveHorse, `breaker = "70 A", wire = "10 AWG", terminals = "75 C"`), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "breaker of 70 A is larger than the 30 A that protect such wire by themselves"},
		{"not met: breaker too large", fanFed(fiveHorse, `breaker = "80 A", wire = "10 AWG", terminals = "75 C"`), "motor-circuit", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "breaker of 80 A is larger than 70 A, the most for this motor: a fault on the circuit burns longer before it trips. Up to 112 A is only for a motor"},
		{"not met: breaker far too large", fanFed(fiveHorse, `breaker = "125 A", wire = "10 AWG", terminals = "75 C"`), "motor-circuit", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "larger than 70 A"},
		{"not met: breaker too small", fanFed(fiveHorse, `breaker = "25 A", wire = "8 AWG"`), "motor-circuit", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "breaker of 25 A is smaller than the 28 A"},
		{"not met: wire short of what is asked", fanFed(fiveHorse, `breaker = "35 A", wire = "10 AWG", terminals = "60 C"`), "motor-circuit", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "10 AWG, carries less than the 35 A that a motor of this current asks for"},
		{"not met: wire carries less than the motor draws", fanFed(fiveHorse, `breaker = "30 A", wire = "12 AWG", terminals = "75 C"`), "motor-circuit", "Cyclone", checks.NotMet, checks.ByRule, checks.Stop, "12 AWG, carries less than the 28 A that the motor draws"},
		{"not met, and the rest in doubt", fanFed(threeHorse, `breaker = "50 A", wire = "12 AWG"`), "motor-circuit", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Whether its wire is thick enough hangs on what the terminals"},
		{"not met, and the wire metric", fanFed(threeHorse, `breaker = "50 A", wire = "4 mm2"`), "motor-circuit", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "4 mm², is metric"},
		{"not met, and the wire not given", fanFed(threeHorse, `breaker = "50 A"`), "motor-circuit", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "The rest cannot be told: circuit.wire is not given."},
		{"nameplate and wire", sawFed(`amps = "26 A"` + "\n" + `motor = { ` + threeHorse + ` }` + "\n" + `circuit = { breaker = "25 A", wire = "12 AWG", terminals = "75 C" }`), "motor-circuit", "Saw", checks.NotMet, checks.ByRule, checks.Stop, "breaker of 25 A is smaller than the 26 A"},
		{"ask: terminals below the table", fanFed(threeHorse, `breaker = "30 A", wire = "10 AWG", terminals = "50 C"`), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "what the terminals at both ends are rated"},
		{"missing: terminals", fanFed(threeHorse, `breaker = "20 A", wire = "12 AWG"`), "motor-circuit", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "its wire, 12 AWG, carries 20 A, and has to carry 21.3 A."},
		{"missing: wire", fanFed(threeHorse, `breaker = "30 A"`), "motor-circuit", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "circuit.wire is not given"},
		{"missing: volts, phase and breaker", fanFed(`power = "3 hp"`, `wire = "10 AWG"`), "motor-circuit", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "motor.volts, motor.phase and circuit.breaker are not given"},
		{"missing: the circuit", fanFed(threeHorse, ""), "motor-circuit", "", checks.NotGiven, checks.ByGiven, checks.Know, "What circuit feeds Cyclone is not given."},
		{"ask: metric wire", fanFed(threeHorse, `breaker = "30 A", wire = "6 mm2"`), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "6 mm², is metric"},
		{"ask: between two rows", fanFed(`power = "4 hp", volts = "230 V", phase = 1`, `breaker = "50 A", wire = "6 AWG", terminals = "75 C"`), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "No row of the table has its power"},
		{"ask: no such volts", fanFed(`power = "3 hp", volts = "400 V", phase = 3`, `breaker = "30 A", wire = "10 AWG"`), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "no column for 400 V"},
		{"ask: too large", fanFed(`power = "20 hp", volts = "230 V", phase = 1`, `breaker = "100 A", wire = "2 AWG"`), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "no motor of 20 hp"},
		{"ask: a figure from memory", fanFed(`power = "5 hp", volts = "440 V", phase = 3`, `breaker = "15 A", wire = "12 AWG"`), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "draws 7.6 A"},
		{"ask: hot air", fanFed(threeHorse, `breaker = "20 A", wire = "8 AWG", terminals = "75 C"`, change{`rules = "us"`, "rules = \"us\"\nair_temperature = \"130 F\""}), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "hotter than the table"},

		// where the rules are not those of the US the tables decide nothing
		{"no rules: shown and asked", fanFed(threeHorse, `breaker = "30 A", wire = "10 AWG"`, underRules("none")), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "they are shown and decide nothing"},
		{"no rules: a short wire is asked", fanFed(fiveHorse, `breaker = "30 A", wire = "12 AWG", terminals = "75 C"`, underRules("none")), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Mend, "12 AWG, carries less"},
		{"other rules", fanFed(fiveHorse, `breaker = "30 A", wire = "12 AWG", terminals = "75 C"`, underRules("eu")), "motor-circuit", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "this shop goes by other rules"},

		// a breaker under the nameplate is told under any rules
		{"nameplate", sawFed(`amps = "17 A"`+"\n"+`circuit = { breaker = "15 A" }`, underRules("eu")), "motor-circuit", "Saw", checks.NotMet, checks.ByGiven, checks.Mend, "smaller than the 17 A"},
		{"nameplate, just enough", sawFed(`amps = "15 A"`+"\n"+`circuit = { breaker = "15 A" }`, underRules("eu")), "motor-circuit", "Saw", checks.Ask, checks.ByRule, checks.Know, "other rules"},
		{"nameplate, no rules, and the wire by the table", sawFed(`amps = "17 A"`+"\n"+`motor = { `+threeHorse+` }`+"\n"+`circuit = { breaker = "15 A", wire = "14 AWG" }`, underRules("none")), "motor-circuit", "Saw", checks.NotMet, checks.ByGiven, checks.Mend, "14 AWG, carries less than the 21.3 A"},
		{"nameplate over the table", sawFed(`amps = "22 A"` + "\n" + `motor = { ` + threeHorse + ` }` + "\n" + `circuit = { breaker = "25 A", wire = "12 AWG", terminals = "75 C" }`), "motor-circuit", "Saw", checks.Ask, checks.ByRule, checks.Know, "as slow motors do"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	for _, file := range [][]change{nil, sawFed(`amps = "17 A"`)} {
		if found := pick(checks.Run(planOf(t, file...)), "motor-circuit", ""); len(found) != 0 {
			t.Errorf("neither circuit nor volts of a motor: %+v", found)
		}
	}
}

// C32: a blower on a relay and a pigtail of 14 AWG and 15 A gets a motor of
// 2 hp. On 115 V it draws 24 A, one of 1.5 hp 20 A, and neither may run there;
// on 230 V 12 A, and 1.25 times that are the 15 A of the wire. The relay is
// advised against on all of them.
func TestCaseBlowerOnAPigtail(t *testing.T) {
	const motor = `power = "2 hp", volts = "115 V"`
	for _, c := range []struct {
		motor string
		expected
	}{
		{motor, expected{state: checks.NotMet, weight: checks.Stop, says: "breaker of 15 A is smaller than the 24 A"}},
		{motor, expected{state: checks.NotMet, weight: checks.Stop, says: "14 AWG, carries less than the 24 A that the motor draws"}},
		{`power = "1.5 hp", volts = "120 V"`, expected{state: checks.NotMet, weight: checks.Mend, says: "breaker of 15 A is smaller than the 20 A"}},
		{`power = "2 hp", volts = "230 V"`, expected{state: checks.Met, weight: checks.Know, says: "draws 12 A at full load. Its conductors have to carry 15 A: 14 AWG"}},
	} {
		list := checks.Run(readCase(t, "c32-blower-on-a-pigtail", change{motor, c.motor}))
		c.check, c.about, c.by = "motor-circuit", "Blower", checks.ByRule
		c.hold(t, list)
		relay := expected{check: "starter-kind", about: "Blower", state: checks.Advice, by: checks.ByTopology, weight: checks.Mend, says: "commonly fails closed"}
		relay.hold(t, list)
	}
}

// The question has all that the file says of the circuit, and names what it
// does not; the overload is by the nameplate.
func TestMotorCircuitQuestion(t *testing.T) {
	list := checks.Run(planOf(t, sawFed(`amps = "16 A"`+"\n"+`motor = { `+threeHorse+` }`+"\n"+`circuit = { breaker = "45 A", wire = "10 AWG" }`)...))
	f := only(t, list, "motor-circuit", "Saw")
	for text, parts := range map[string][]string{
		f.Asks: {"Saw: motor 3 hp, 230 V, single phase, nameplate current 16 A; breaker 45 A, wire 10 AWG, terminals not given."},
		f.Do:   {"show you the overload", "Its overload trips at 18.4 A or less, by the nameplate's 16 A."},
	} {
		for _, part := range parts {
			if !strings.Contains(text, part) {
				t.Errorf("%q lacks %q", text, part)
			}
		}
	}
	if len(f.Figures) != 2 || f.Figures[0].Value != 45 || *f.Figures[0].Limit != 45 || f.Figures[1].Value != 30 || *f.Figures[1].Limit != 21.25 {
		t.Errorf("figures: %+v", f.Figures)
	}
	if len(f.Basis) != 2 || f.Basis[0].Clause != "430.6(A), 430.22, 430.32, 430.52" || f.Basis[1].Clause != "table 430.248, tables 430.248, 430.250, 430.6(A), 430.22, table 310.16, 430.52, 240.6, 240.4(D), 240.4(G)" {
		t.Errorf("%+v", f.Basis)
	}
	// a figure from memory keeps its mark beside those that were read
	f = only(t, checks.Run(planOf(t, fanFed(`power = "5 hp", volts = "440 V", phase = 3`, `breaker = "15 A", wire = "12 AWG"`)...)), "motor-circuit", "Cyclone")
	if len(f.Basis) != 3 || f.Basis[2].Mark.Decides() || !f.Basis[1].Mark.Decides() {
		t.Errorf("%+v", f.Basis)
	}
}

// What is lost on the way is advice, beside the verdict on the circuit.
func TestMotorCircuitDrop(t *testing.T) {
	for length, want := range map[string]string{
		"80 ft":  "", // 2.3 % at full load, 14 % while it starts
		"90 ft":  "On the 90 ft of its circuit 6.06 V are lost at full load, 2.6 % of the supply; the code advises no more than 3 %. While the motor starts about 16 % are lost",
		"120 ft": "8.08 V are lost at full load, 3.5 %",
	} {
		var found []checks.Finding
		for _, f := range checks.Run(planOf(t, fanFed(threeHorse, `breaker = "20 A", wire = "12 AWG", terminals = "75 C", length = "`+length+`"`)...)) {
			if f.Check == "motor-circuit" && f.State == checks.Advice {
				found = append(found, f)
			}
		}
		if want == "" && len(found) != 0 || want != "" && (len(found) != 1 || !strings.Contains(found[0].Says, want) || found[0].Weight != checks.Know || *found[0].Figures[0].Limit != 0.03) {
			t.Errorf("%s: %+v", length, found)
		}
	}
}

// A stop about a wire is settled by the electrician's answer.
func TestMotorCircuitConfirmed(t *testing.T) {
	answer := change{`[[room]]
name = "Hall"`, `[[confirmed]]
figure = "motor-circuit"
value = "12 AWG in free air, looked at on site"
by = "licensed electrician, letter of 2026-11-02"
[[room]]
name = "Hall"`}
	p := planOf(t, fanFed(fiveHorse, `breaker = "30 A", wire = "12 AWG", terminals = "75 C"`, answer)...)
	f := only(t, checks.Run(p), "motor-circuit", "Cyclone")
	if f.State != checks.NotMet || f.Weight != checks.Know || f.Settled == "" {
		t.Errorf("%+v", f)
	}
}

func TestStarterKind(t *testing.T) {
	starter := func(kind string, more ...change) []change {
		return append([]change{{`starter = "magnetic, three-wire"`, `starter = "` + kind + `"`}}, more...)
	}
	noMotor := change{`motor = { power = "5 hp" }`, ""}
	for _, e := range []expected{
		{"met", nil, "starter-kind", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "A magnetic starter switches it"},
		{"advice: a relay in the cord", starter("plug-in relay"), "starter-kind", "Cyclone", checks.Advice, checks.ByTopology, checks.Mend, "A plug-in relay switches its motor. A solid-state one commonly fails closed"},
		{"advice: a two-wire relay", starter("two-wire relay"), "starter-kind", "Cyclone", checks.Advice, checks.ByTopology, checks.Mend, "A two-wire relay switches its motor."},
		{"missing: the motor", starter("plug-in relay", noMotor), "starter-kind", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "its motor is not given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	for name, changes := range map[string][]change{"a plain switch": starter("switch"), "no starter given": {{`starter = "magnetic, three-wire"` + "\n", ""}}} {
		if found := pick(checks.Run(planOf(t, changes...)), "starter-kind", ""); len(found) != 0 {
			t.Errorf("%s: %+v", name, found)
		}
	}
	// what comes back after a power cut is said once, by its own check
	for _, kind := range []string{"plug-in relay", "two-wire relay"} {
		f := only(t, checks.Run(planOf(t, starter(kind)...)), "starter-kind", "Cyclone")
		if strings.Contains(f.Says+f.Do, "power comes back") || f.Basis[0].Document != "" {
			t.Errorf("%s: %+v", kind, f)
		}
	}
}
