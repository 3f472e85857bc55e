package checks_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// lacking is a shop with a field left out: everywhere, or of one thing.
type lacking struct {
	field string // "room.way_out"; of an inline table "layer.depth"
	about string // the thing, where the field is left out of it alone
	text  string
}

var (
	tableLine = regexp.MustCompile(`^\[+([a-z]+)\]+$`)
	fieldLine = regexp.MustCompile(`^([a-z_]+) = (.*)$`)
	inTable   = regexp.MustCompile(`([a-z_]+) = ("[^"]*"|\[[^\]]*\]|[^,} ]+)(, )?`)
)

// leftOut are the shops with each field left out in turn.
func leftOut(text string) []lacking {
	var list []lacking
	lines := strings.Split(text, "\n")
	all := map[string][]int{}
	var order []string
	add := func(field string, line int) {
		if all[field] == nil {
			order = append(order, field)
		}
		all[field] = append(all[field], line)
	}
	table, name := "", ""
	names := map[int]string{}
	for i, l := range lines {
		if m := tableLine.FindStringSubmatch(l); m != nil {
			table, name = m[1], ""
			continue
		}
		m := fieldLine.FindStringSubmatch(l)
		if m == nil || strings.HasSuffix(l, "[") {
			continue
		}
		if m[1] == "name" {
			name = strings.Trim(m[2], `"`)
		}
		names[i] = name
		add(table+"."+m[1], i)
		if strings.HasPrefix(m[2], "{") {
			for _, inner := range inTable.FindAllStringSubmatch(m[2], -1) {
				add(m[1]+"."+inner[1], i)
			}
		}
	}
	drop := func(field string, at ...int) string {
		kept := slices.Clone(lines)
		for _, i := range at {
			m := fieldLine.FindStringSubmatch(kept[i])
			if _, key, _ := strings.Cut(field, "."); m[1] == key {
				kept[i] = ""
			} else {
				kept[i] = m[1] + " = " + inTable.ReplaceAllStringFunc(m[2], func(part string) string {
					if strings.HasPrefix(part, key+" = ") {
						return ""
					}
					return part
				})
				kept[i] = strings.Replace(kept[i], ", }", " }", 1)
			}
		}
		return strings.Join(kept, "\n")
	}
	for _, field := range order {
		list = append(list, lacking{field, "", drop(field, all[field]...)})
		for _, i := range all[field] {
			if names[i] != "" {
				list = append(list, lacking{field, names[i], drop(field, i)})
			}
		}
	}
	return list
}

// needs reports whether a check names a field among what it needs.
func needs(c *checks.Check, field string) bool {
	return slices.Contains(strings.FieldsFunc(c.Needs, func(r rune) bool { return r == ',' || r == ' ' }), field)
}

// An input that is missing never counts as met: with each field of the whole shop
// left out in turn, no check that needs it says met, apart from those of which
// the list tells why. Of the setting nothing is asked: texts for work places are
// held against every shop that is not said to be a home.
func TestMissingIsNeverMet(t *testing.T) {
	read, used := 0, map[string]bool{}
	for _, text := range []string{whole, drivenText()} {
		for _, w := range leftOut(text) {
			s, problems := shop.Read("shop.toml", []byte(w.text))
			if len(problems) > 0 || w.field == "shop.setting" {
				continue // it cannot be left out
			}
			read++
			for _, f := range checks.Run(plan.Make(s, nil, entry.Date{})) {
				if f.State != checks.Met || w.about != "" && f.About != w.about || !needs(checks.Find(f.Check), w.field) {
					continue
				}
				if key := f.Check + " " + w.field; metWithout[key] != "" {
					used[key] = true
				} else {
					t.Errorf("%s is left out of %q, and %s about %q says met: %s", w.field, w.about, f.Check, f.About, f.Says)
				}
			}
		}
	}
	if read < 100 {
		t.Errorf("only %d shops were read", read)
	}
	for key := range metWithout {
		if !used[key] {
			t.Errorf("%s: nothing says met there any more; take it off the list", key)
		}
	}
}

// metWithout tells why a check may say met where a field that it reads is left out.
var metWithout = map[string]string{
	"open-bag-indoors collector.at": closed, "open-bag-indoors machine.at": closed, "open-bag-indoors room.exits": closed, "open-bag-indoors shop.rules": closed,
	"garage-separation duct.material": apart, "garage-separation duct.gauge": apart, "garage-separation shop.rules": apart,
	"duct-headroom room.exits":            "where no duct hangs low it does not matter where the exits are",
	"fan-on-curve collector.exhaust":      "the filter is given",
	"fan-on-curve collector.filter":       outdoors,
	"air-captured collector.filter":       outdoors,
	"starter-kind collector.motor":        "a magnetic starter suits any motor",
	"supply-margin control.supply_listed": "the watts are given; what the label says is asked by a finding of its own",
	"supply-margin trigger.starts":        "a trigger draws what it draws whatever it starts",
	"start-delay control.moves_together":  "one at a time is reckoned with, the slowest way",
	"unexpected-start trigger.starts":     "powered gates move by themselves as well",
	"power-cut trigger.starts":            "the starter stays out by itself",
	"power-cut machine.restarts":          "the machines have a finding of their own",
	"papers-in-hand document.date":        undated, "training-record document.date": undated,
	"papers-in-hand shop.rules":         "the papers that it asks for are asked for under every pack",
	"conductive-duct shop.rules":        "every duct conducts",
	"commissioning-record machine.port": "the report is in hand",
	"sensor-levels sensor.senses":       "a level is a level of whatever it senses",
	"starts-per-hour trigger.run_on":    "no start is saved by a run-on that is not given",
	"chain-devices gate.drive":          moved, "trigger-opens gate.drive": moved, "trigger-path gate.drive": moved, "unexpected-start gate.drive": moved,
	"bonded-duct collector.bonded": ownBond, "bonded-duct duct.material": ownBond,
	"dust-cleaning machine.makes": byKind, "flame-near-dust machine.makes": byKind, "hood-labels machine.makes": byKind, "metal-on-wood-main machine.makes": byKind,
	"flame-near-dust appliance.room": worst, "open-flue appliance.room": worst,
}

const (
	closed   = "a rigid housing is no open bag"
	apart    = "no duct crosses the wall"
	outdoors = "air that goes outdoors may have no filter"
	undated  = "these papers carry no day that counts"
	ownBond  = "the finding is of a resistance that is given"
	byKind   = "what a saw or a lathe makes is known by its kind"
	moved    = "a trigger opens each gate, so it moves by power"
	worst    = "it counts as standing in every room"
)

// scant is a shop with no more than what a file has to give.
const scant = `
[shop]
name = "Bare"
rules = "us"
[[room]]
name = "Hall"
outline = [[0, 0], [30, 0], [30, 20], [0, 20]]
[[machine]]
name = "Saw"
kind = "table saw"
[[machine]]
name = "Router"
kind = "other"
[[collector]]
name = "Fan"
inlet = "6 in"
claims = { flow = "1500 cfm", suction = "10 inwg" }
[[duct]]
name = "Main"
to = "Fan"
size = "6 in"
length = "30 ft"
serves = ["Saw"]
[[duct]]
name = "Router drop"
to = "Main"
size = "4 in"
length = "30 ft"
serves = ["Router"]
[[stop]]
name = "Button"
[[extinguisher]]
at = [1, 1]
[[wall]]
from = [30, 0]
to = [30, 20]
[[trigger]]
name = "Saw runs"
senses = "current"
opens = ["Gate"]
[[gate]]
name = "Gate"
on = "Router drop"
`

// Little given is little said: nothing of a shop with no more than what a file has
// to give is met, whatever its rules.
func TestBareShopMeetsNothing(t *testing.T) {
	for _, pack := range []string{"none", "us", "uk", "eu", "quebec"} {
		s, problems := shop.Read("shop.toml", []byte(strings.Replace(scant, `rules = "us"`, `rules = "`+pack+`"`, 1)))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		list := checks.Run(plan.Make(s, nil, entry.Date{}))
		if len(list) < 20 {
			t.Errorf("%s: only %d findings", pack, len(list))
		}
		for _, f := range list {
			if f.State == checks.Met {
				t.Errorf("%s: %s about %q says met: %s", pack, f.Check, f.About, f.Says)
			}
		}
	}
}
