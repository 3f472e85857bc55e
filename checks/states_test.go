package checks_test

import (
	"strings"

	"dustbook/checks"
)

// firstStates are the cases of the checks that came first.
var firstStates = []stateCase{
	{"air met", nil, "air-captured", "Saw", checks.Met, checks.ByModel, checks.Know, "cfm where it needs 400, filter"},
	{"air not met, far below", []change{{`makes = "wood"
port = { size = "4 in", flow = "400 cfm" }
[[machine]]`, `makes = "wood"
port = { size = "4 in", flow = "2000 cfm" }
[[machine]]`}}, "air-captured", "Saw", checks.NotMet, checks.ByModel, checks.Mend, "of the 2000 cfm it needs"},
	{"air missing: no duct serves", []change{{`serves = ["Saw"]`, ``}}, "air-captured", "Saw", checks.NotGiven, checks.ByTopology, checks.Mend, "No duct serves Saw/cabinet"},
	{"air thin: need from memory", []change{{`makes = "wood"
port = { size = "4 in", flow = "400 cfm" }
[[machine]]`, `makes = "wood"
[[machine]]`}}, "air-captured", "Saw", checks.Thin, checks.ByModel, checks.Know, "a figure from memory"},
	{"air thin: claims only", []change{{`fan_curve = [["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]]`, `claims = { flow = "2000 cfm", suction = "13 inwg" }`}}, "air-captured", "Saw", checks.Thin, checks.ByModel, checks.Know, "two claims"},

	{"dust met", nil, "dust-carried", "Lathe", checks.Met, checks.ByModel, checks.Know, "slowest stretch"},
	{"dust not met, far below", []change{{`size = "5 in"
material = "spiral steel"
gauge = "24 ga"
route = [[20, 10, 8]`, `size = "10 in"
material = "spiral steel"
gauge = "24 ga"
route = [[20, 10, 8]`}}, "dust-carried", "Lathe", checks.NotMet, checks.ByModel, checks.Mend, "dust settles there"},
	{"dust not met, near", []change{{`size = "5 in"
material = "spiral steel"
gauge = "24 ga"
route = [[20, 10, 8]`, `size = "7 in"
material = "spiral steel"
gauge = "24 ga"
route = [[20, 10, 8]`}}, "dust-carried", "Lathe", checks.NotMet, checks.ByModel, checks.Know, "dust settles there"},
	{"dust missing: no duct serves", []change{{`serves = ["Lathe"]`, ``}}, "dust-carried", "Lathe", checks.NotGiven, checks.ByTopology, checks.Mend, "No duct serves Lathe/scoop"},

	{"fan met", nil, "fan-on-curve", "Cyclone", checks.Met, checks.ByModel, checks.Know, "Every use crosses"},
	{"fan not met: past the end", []change{{`["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]`, `["640 cfm", "11.9 inwg"]`}}, "fan-on-curve", "Cyclone", checks.NotMet, checks.ByModel, checks.Mend, "more air than the curve's last point"},
	{"fan not met: before the start", []change{{`["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], `, ``}}, "fan-on-curve", "Cyclone", checks.NotMet, checks.ByModel, checks.Mend, "less air than the curve's first point"},
	{"fan not met: left of the peak", []change{{`["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"]`, `["0 cfm", "10 inwg"], ["1200 cfm", "13 inwg"]`}}, "fan-on-curve", "Cyclone", checks.NotMet, checks.ByModel, checks.Know, "left of the highest point"},
	{"fan missing: filter", []change{{`filter = { clean = "0.5 inwg", change = "2 inwg", at = "1000 cfm" }
exhaust = "outside"`, ``}}, "fan-on-curve", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "filter's pressure is not given"},
	{"fan thin: claims only", []change{{`fan_curve = [["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]]`, `claims = { flow = "2000 cfm", suction = "13 inwg" }`}}, "fan-on-curve", "Cyclone", checks.Thin, checks.ByModel, checks.Know, "There is no curve"},

	{"motor met", nil, "motor-power", "Cyclone", checks.Met, checks.ByGiven, checks.Know, "at most 3.9"},
	{"motor not met", []change{{`motor = { power = "5 hp" }`, `motor = { power = "3 hp", service_factor = 1.15 }`}}, "motor-power", "Cyclone", checks.NotMet, checks.ByGiven, checks.Mend, "of the motor's 3.45 hp"},
	{"motor met at its limit by the service factor", []change{{`motor = { power = "5 hp" }`, `motor = { power = "3.5 hp", service_factor = 1.15 }`}}, "motor-power", "Cyclone", checks.Met, checks.ByGiven, checks.Know, "of the motor's 4.03"},
	{"motor missing: power", []change{{`fan_power = [["0 cfm", "1 hp"], ["1800 cfm", "4 hp"]]`, ``}}, "motor-power", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "neither fan_power nor efficiency is given"},
	{"motor missing: motor", []change{{`motor = { power = "5 hp" }`, ``}}, "motor-power", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "motor is not given"},

	{"metal met", nil, "metal-on-wood-main", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "same sort of dust"},
	{"metal not met", []change{{`kind = "lathe"
at = [20, 5]
makes = "wood"`, `kind = "bench grinder"
at = [20, 5]`}}, "metal-on-wood-main", "Cyclone", checks.NotMet, checks.ByTopology, checks.Stop, "Lathe makes metal or sparks"},
	{"metal not met: a mixed machine alone", []change{{`kind = "lathe"
at = [20, 5]
makes = "wood"`, `kind = "lathe"
at = [20, 5]
makes = "mixed"`}, {`serves = ["Saw"]`, ``}}, "metal-on-wood-main", "Cyclone", checks.NotMet, checks.ByTopology, checks.Stop, "Lathe makes metal"},
	{"metal missing: a machine of no kind", []change{{`kind = "lathe"
at = [20, 5]
makes = "wood"`, `kind = "other"
at = [20, 5]`}}, "metal-on-wood-main", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "What Lathe makes is not given"},

	{"conducting met", nil, "conductive-duct", "Main", checks.Met, checks.ByTopology, checks.Know, "conduct by what the file says"},
	{"conducting not met", []change{plasticMain}, "conductive-duct", "Main", checks.NotMet, checks.ByRule, checks.Mend, "smooth plastic pipe"},
	{"conducting not met: hose", []change{{`serves = ["Saw"]`, `serves = ["Saw"]
hose = { length = "3 ft", material = "ribbed hose" }`}}, "conductive-duct", "Saw drop", checks.NotMet, checks.ByRule, checks.Mend, "ribbed hose"},
	{"conducting met: the file says it conducts", []change{{plasticMain.old, strings.Replace(plasticMain.new, "material", "conductive = true\nmaterial", 1)}}, "conductive-duct", "Main", checks.Met, checks.ByTopology, checks.Know, "conduct by what the file says"},
	{"conducting asked: no rules", []change{plasticMain, {`rules = "us"`, `rules = "none"`}}, "conductive-duct", "Main", checks.Ask, checks.ByRule, checks.Mend, "texts of other places"},
	{"conducting advice: home", []change{plasticMain, {`setting = "school"`, `setting = "home"`}}, "conductive-duct", "Main", checks.Advice, checks.ByModel, checks.Know, "does not make the pipe conduct"},
	{"conducting not met: home with someone employed", []change{plasticMain, {`setting = "school"`, "setting = \"home\"\nemployees = 1"}}, "conductive-duct", "Main", checks.NotMet, checks.ByRule, checks.Mend, "smooth plastic pipe"},
	{"conducting missing: setting", []change{plasticMain, {`setting = "school"`, ``}}, "conductive-duct", "Main", checks.NotGiven, checks.ByGiven, checks.Know, "whether people are employed"},
	{"conducting missing: material", []change{{`material = "spiral steel"
gauge = "24 ga"
route = [[20, 10, 8]`, `gauge = "24 ga"
route = [[20, 10, 8]`}}, "conductive-duct", "Main", checks.NotGiven, checks.ByGiven, checks.Know, "The duct's material is not given"},

	{"flue met", nil, "open-flue", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "No appliance with an open flue"},
	{"flue not met", []change{{`kind = "electric"`, `kind = "open-flue gas"`}}, "open-flue", "Cyclone", checks.NotMet, checks.ByTopology, checks.Stop, "the open-flue gas appliance in Hall"},
	{"flue not met: through an open doorway", []change{{`kind = "electric"
room = "Hall"`, `kind = "wood stove"
room = "House"`}, {`name = "Hall"
outline`, `name = "Hall"
open_to = ["House"]
outline`}}, "open-flue", "Cyclone", checks.NotMet, checks.ByTopology, checks.Stop, "wood stove in House"},
	{"flue not met: through a doorway that the other room tells of", []change{{`kind = "electric"
room = "Hall"`, `kind = "wood stove"
room = "House"`}, {`name = "House"
outline`, `name = "House"
open_to = ["Hall"]
outline`}}, "open-flue", "Cyclone", checks.NotMet, checks.ByTopology, checks.Stop, "wood stove in House"},
	{"flue met: another air space", []change{{`kind = "electric"
room = "Hall"`, `kind = "wood stove"
room = "House"`}}, "open-flue", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "No appliance with an open flue"},
	{"flue met: the air comes back", []change{{`kind = "electric"`, `kind = "open-flue gas"`}, {`exhaust = "outside"`, `exhaust = "returns to room"
returns_to = "Hall"`}}, "open-flue", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "comes back into the rooms"},
	{"flue not met: the air comes back elsewhere", []change{{`kind = "electric"`, `kind = "open-flue gas"`}, {`exhaust = "outside"`, `exhaust = "returns to room"
returns_to = "House"`}}, "open-flue", "Cyclone", checks.NotMet, checks.ByTopology, checks.Stop, "the open-flue gas appliance in Hall"},
	{"flue missing: appliances", []change{{`[[appliance]]
kind = "electric"
room = "Hall"`, ``}}, "open-flue", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "No appliance is listed"},
	{"flue missing: exhaust", []change{{`exhaust = "outside"`, ``}}, "open-flue", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "Where its air goes"},
	{"flue missing: a machine in no room", []change{{`at = [20, 5]
makes`, `at = [20, 25]
makes`}}, "open-flue", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "Which room Lathe stands in"},

	{"separation met", nil, "garage-separation", "", checks.Met, checks.ByTopology, checks.Know, "No duct crosses"},
	{"separation not met: plastic", []change{through, {`material = "spiral steel"
gauge = "24 ga"
route = [[20, 5, 2]`, `material = "smooth plastic"
route = [[20, 5, 2]`}}, "garage-separation", "Lathe drop", checks.NotMet, checks.ByRule, checks.Stop, "is smooth plastic"},
	{"separation not met: thin steel", []change{through, {`gauge = "24 ga"
route = [[20, 5, 2]`, `gauge = "28 ga"
route = [[20, 5, 2]`}}, "garage-separation", "Lathe drop", checks.NotMet, checks.ByRule, checks.Stop, "thinner steel"},
	{"separation asked: steel of the gauge itself", []change{through, {`gauge = "24 ga"
route = [[20, 5, 2]`, `gauge = "26 ga"
route = [[20, 5, 2]`}}, "garage-separation", "Lathe drop", checks.Ask, checks.ByRule, checks.Stop, "no openings into the garage"},
	{"separation asked: by thickness", []change{through, {`gauge = "24 ga"
route = [[20, 5, 2]`, `wall = "0.48 mm"
route = [[20, 5, 2]`}}, "garage-separation", "Lathe drop", checks.Ask, checks.ByRule, checks.Stop, "no openings into the garage"},
	{"separation not met: by thickness", []change{through, {`gauge = "24 ga"
route = [[20, 5, 2]`, `wall = "0.47 mm"
route = [[20, 5, 2]`}}, "garage-separation", "Lathe drop", checks.NotMet, checks.ByRule, checks.Stop, "thinner steel"},
	{"separation asked: no rules", []change{through, {`rules = "us"`, `rules = "none"`}}, "garage-separation", "Lathe drop", checks.Ask, checks.ByRule, checks.Stop, "No text on that was read"},
	{"separation missing: gauge", []change{through, {`gauge = "24 ga"
route = [[20, 5, 2]`, `route = [[20, 5, 2]`}}, "garage-separation", "Lathe drop", checks.NotGiven, checks.ByGiven, checks.Stop, "its gauge is not given"},
	{"separation missing: route", []change{{`route = [[20, 5, 2], [20, 5, 8], [20, 10, 8]]`, `length = "12 ft"`}}, "garage-separation", "Lathe drop", checks.NotGiven, checks.ByTopology, checks.Know, "has no route"},
	{"separation missing: walls of a home", []change{{`divides = "garage from dwelling"`, ``}, {`setting = "school"`, `setting = "home"`}}, "garage-separation", "", checks.NotGiven, checks.ByTopology, checks.Know, "Whether a wall divides"},
}
