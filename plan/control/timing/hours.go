package timing

import (
	"math"
	"math/bits"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// busyHour is an hour in which some machines are at work.
type busyHour struct {
	rates []Rate
	order []int     // places in rates, most starts first
	part  []float64 // starts of each in that hour, in that order
}

// busiest fills an hour with the machines that start most often, no more of
// them at once than people work at machines.
func busiest(rates []Rate, people int) busyHour {
	all := make([]int, 0, len(rates))
	for i := range rates {
		if rates[i].PerHour > 0 {
			all = append(all, i)
		}
	}
	slices.SortStableFunc(all, func(a, b int) int { return unit.Compare(rates[b].PerHour, rates[a].PerHour) })
	return hourOf(rates, all, people)
}

// hourOf is the hour of some machines, given with the most starts first.
func hourOf(rates []Rate, order []int, people int) busyHour {
	h := busyHour{rates: rates, order: order, part: make([]float64, len(order))}
	left := float64(max(people, 1))
	for i, at := range order {
		r := &rates[at]
		share := min(left, 1, float64(r.Machine.Starts.V)/r.PerHour)
		h.part[i] = unit.Six(share * r.PerHour)
		left -= share
	}
	return h
}

// mostHours is how many hours are tried one by one at most.
var mostHours = int(share("hours tried most"))

// hoursOf are all hours that some of the machines and some of the people make;
// none where they are too many to try.
func hoursOf(rates []Rate, people int) []busyHour {
	order := busiest(rates, people).order
	if len(order) >= bits.Len(uint(mostHours)) { // more sets than may be tried
		return nil
	}
	var all []busyHour
	for set := uint(1); set < 1<<len(order); set++ {
		var some []int
		for i, at := range order {
			if set&(1<<i) != 0 {
				some = append(some, at)
			}
		}
		for p := 1; p <= min(people, len(some)); p++ {
			if len(all) == mostHours {
				return nil
			}
			all = append(all, hourOf(rates, some, p))
		}
	}
	return all
}

// asked is how many starts the hour asks for.
func (h busyHour) asked() float64 {
	sum := 0.0
	for _, part := range h.part {
		sum += part
	}
	return unit.Six(sum)
}

// parts are the starts of each machine in the hour, in the order of the rates.
func (h busyHour) parts() []float64 {
	list := make([]float64, len(h.rates))
	for i, at := range h.order {
		list[at] = h.part[i]
	}
	return list
}

// machines are those at work in the hour, in the order of the rates.
func (h busyHour) machines() []*shop.Machine {
	var list []*shop.Machine
	for i, part := range h.parts() {
		if part > 0 {
			list = append(list, h.rates[i].Machine)
		}
	}
	return list
}

// times are the times of the hour's starts, in order: those of each machine
// spread evenly, the machines out of step.
func (h busyHour) times() []unit.Time {
	var times []unit.Time
	for i, part := range h.part {
		step := (float64(i) + 0.5) / float64(len(h.part))
		n := math.Ceil(part)
		for j := 0.0; j < n; j++ {
			times = append(times, unit.SixOf(unit.Time(float64(hour)*(j+step)/n)))
		}
	}
	slices.Sort(times)
	return times
}
