package templates

import (
	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/duct"
)

// slowSays are the rows of a card for what the check of the dust says to do.
var slowSays = map[string]string{
	content.WordsIn(content.English).Text("finding-dust-carried.thin.do"):    "card.slow",
	content.WordsIn(content.English).Text("finding-dust-carried.settles.do"): "card.settles",
}

// slowOnCard names the stretch where the verdict of a card is about the dust
// in one: the finding says "there" of what only the sheet of the use shows.
func (b *Book) slowOnCard(v Verdict, u *duct.Use) Verdict {
	f := b.finding("dust-carried", kindOf(u), u.Name)
	if f == nil || v.Says != f.Do {
		return v
	}
	key, where := slowSays[f.Do], b.slowest(f, u)
	if key == "" || where == "" {
		return v
	}
	return Verdict{Words: v.Words, Says: b.words.Text(key, where)}
}

// slowest names the stretch or hose of a finding in the words of the card;
// empty where it names none on the way.
func (b *Book) slowest(f *checks.Finding, u *duct.Use) string {
	if len(f.Figures) == 0 {
		return ""
	}
	english := content.WordsIn(content.English)
	for _, m := range u.Machines {
		for _, p := range m.Ports {
			for _, s := range p.Path() {
				switch name := s.Name(); f.Figures[0].Name {
				case name:
					return name
				case english.Text("finding-dust-carried.hose", name):
					return b.words.Text("card.hose-of", name)
				}
			}
		}
	}
	return ""
}
