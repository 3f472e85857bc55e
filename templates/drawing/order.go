package drawing

import (
	"strconv"

	"dustbook/plan/shop"
)

// InOrder lists the stretches of a collector's ducts as a drawing numbers
// them: from the collector outwards, each duct's own against the air, then
// what empties into it, from its downstream end on. The first has number one.
func InOrder(s *shop.Shop, c *shop.Collector) []*shop.Stretch {
	var list []*shop.Stretch
	for _, d := range s.Ducts {
		if d.Into == nil && d.Collector == c {
			list = outwards(list, d)
		}
	}
	return list
}

func outwards(list []*shop.Stretch, d *shop.Duct) []*shop.Stretch {
	for i := len(d.Stretches) - 1; i >= 0; i-- {
		list = append(list, d.Stretches[i])
	}
	for i := len(d.Joined) - 1; i >= 0; i-- {
		list = outwards(list, d.Joined[i])
	}
	return list
}

// numbering gives every stretch of a collector its number.
func numbering(s *shop.Shop, c *shop.Collector) map[*shop.Stretch]int {
	numbers := map[*shop.Stretch]int{}
	for i, stretch := range InOrder(s, c) {
		numbers[stretch] = i + 1
	}
	return numbers
}

// numbersOf are the numbers of a duct's stretches: "4", or "4 to 6".
func numbersOf(d *shop.Duct, numbers map[*shop.Stretch]int) string {
	low, high := numbers[lastOf(d)], numbers[d.Stretches[0]]
	if low == high {
		return strconv.Itoa(low)
	}
	return wording.Text("drawing.to", strconv.Itoa(low), strconv.Itoa(high))
}

// numberOf is a stretch's number as a text.
func (s *sheet) numberOf(stretch *shop.Stretch) string { return strconv.Itoa(s.numbers[stretch]) }
