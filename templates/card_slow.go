package templates

import "dustbook/plan/duct"

// slowOnCard names the stretch where the verdict of a card is about the dust
// in one: the finding says "there" of what only the sheet of the use shows.
func (b *Book) slowOnCard(v Verdict, u *duct.Use) Verdict {
	f := deciding(b.finding("air-captured", kindOf(u), u.Name), b.finding("dust-carried", kindOf(u), u.Name))
	if f == nil || f.Slow == nil {
		return v
	}
	where, key := f.Slow.Stretch.Name(), "card.slow"
	if f.Slow.Hose {
		where = b.words.Text("card.hose-of", where)
	}
	if f.Slow.Settles {
		key = "card.settles"
	}
	return Verdict{Words: v.Words, Says: b.words.Text(key, where)}
}
