package main

import (
	"strconv"
	"strings"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// cell is a place of a list; "-" in the first row where the list is empty.
func cell(list []string, i int) string {
	switch {
	case i < len(list):
		return list[i]
	case i == 0:
		return "-"
	}
	return ""
}

func countOf(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

func machineList(list []*shop.Machine) string {
	var names []string
	for _, m := range list {
		names = append(names, m.Name)
	}
	return strings.Join(names, ", ")
}

// whyNot says what breaks a set, on each collector with its filter in each
// state; of one that works, why it is thin.
func whyNot(s *duct.Set) (list []string) {
	for _, d := range s.Thin {
		list = append(list, doubtSaid(d))
	}
	switch {
	case s.Works:
		return list
	case s.Apart != nil:
		return []string{"both take their air through the end of " + s.Apart.Name}
	}
	for _, port := range s.Bare() {
		list = append(list, "no duct serves "+port.Full())
	}
	for _, v := range s.On {
		in := ", " + filterWord(v.Filter)
		if duct.FilterOpen(v.Collector) {
			in = ", the filter's pressure not given"
		}
		if !v.OnCurve {
			list = append(list, v.Collector.Name+": "+v.Why.String()+in)
		}
		if v.Port != nil && v.Port.Duct != nil {
			list = append(list, shortOfAir(v.Port, v.PortShare)+in)
		}
		if v.Slowest != nil {
			list = append(list, tooSlow(v.Slowest, v.Hose, v.Speed)+in)
		}
	}
	return list
}

// doubtSaid says why a verdict is thin, in the words of the sheets.
func doubtSaid(d duct.Doubt) string {
	return content.WordsIn(content.English).Text("enough.doubt." + string(d))
}

// doubtsSaid says what keeps a verdict at thin; empty where nothing does.
func doubtsSaid(doubts duct.Doubts) string {
	var says []string
	for _, d := range doubts {
		says = append(says, doubtSaid(d))
	}
	return strings.Join(says, "; ")
}

// whatHelps says what would mend a set. Where it needs several collectors, each
// is named.
func whatHelps(s *duct.Set) (list []string) {
	switch s.Stands() {
	case "apart":
		return []string{"run them one after the other"}
	case "air":
		return []string{"another gate takes air away"}
	case "unserved":
		return []string{"lay a duct to it in the file"}
	}
	for _, r := range s.Relief {
		says := "no gate mends it"
		switch {
		case len(r.Gates) > 0:
			says = "open " + strings.Join(gateNames(r.Gates), ", ") + " as well"
		case r.Through >= 0:
			says = "no gate mends it, up to " + countOf(r.Through, "gate") + " tried"
		}
		if s.Several() {
			says = r.Collector.Name + ": " + says
		}
		list = append(list, says)
	}
	return list
}

// withAlso is the machines of a set, and the gates opened as well.
func withAlso(s *duct.Set, also []*shop.Gate) string {
	if len(also) == 0 {
		return machineList(s.Machines)
	}
	return machineList(s.Machines) + "; with " + strings.Join(gateNames(also), ", ") + " as well"
}

func gateNames(gates []*shop.Gate) []string {
	var names []string
	for _, g := range gates {
		names = append(names, g.Name)
	}
	return names
}
