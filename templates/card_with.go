package templates

import (
	"strings"

	"dustbook/plan/shop"
)

// mostBeside is how many machines a card names as running beside its own.
const mostBeside = 8

// cardWith says which one other machine may run beside this one, by the plan,
// thin or not; nothing where pairs were not reckoned.
func (b *Book) cardWith(v *cardView, m *shop.Machine) {
	if len(b.Plan.Shop.Collectors) == 0 || b.unsized(nil) {
		return
	}
	sets := b.Plan.Together()
	alone := sets.Of(m)
	if sets.Size < 2 || alone == nil || len(alone.On) == 0 {
		return
	}
	var fine, short []string
	for _, other := range b.Plan.Shop.Machines {
		s := sets.Of(m, other)
		if other == m || s == nil || len(sets.Of(other).On) == 0 {
			continue // no duct serves the other: it takes no air
		}
		if s.Works {
			fine = append(fine, other.Name)
		} else {
			short = append(short, other.Name)
		}
	}
	switch {
	case len(fine)+len(short) == 0:
		return
	case len(short) == 0:
		v.With = b.words.Text("card.with-any")
	case len(fine) == 0 && !alone.Works:
		v.With = b.words.Text("card.with-nothing")
		return
	case len(fine) == 0:
		v.With = b.words.Text("card.with-none")
	case len(fine) <= len(short) && len(fine) <= mostBeside:
		v.With = b.words.Text("card.with-only", strings.Join(fine, ", "))
	case len(short) <= mostBeside:
		v.With = b.words.Text("card.with-not", strings.Join(short, ", "))
	default:
		v.With = b.words.Text("card.with-table", b.words.Text("together.title"))
	}
	if v.Driven && len(short) > 0 {
		v.With += " " + b.words.Text("card.with-waits")
	}
}
