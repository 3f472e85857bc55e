package templates

import (
	"bytes"
	"html/template"
)

// allCardsView is every card and sign, one after the other for the printer.
type allCardsView struct{ Cards []printedCard }

// printedCard is a card as its own sheet shows it, without the frame.
type printedCard struct {
	Sheet *Sheet
	Block block
	Body  template.HTML
}

// addAllCards adds the sheet of all cards.
func (b *Book) addAllCards() {
	var cards []*Sheet
	worst := 0
	for _, s := range b.Sheets {
		if s.Card != nil {
			cards = append(cards, s)
			worst = max(worst, fitPlace(s.Card.Fit))
		}
	}
	if len(cards) == 0 {
		return
	}
	v := Verdict{[]Word{{"advice", b.words.Text("gate.all-verdict")}}, b.words.Count("gate.all-says", len(cards)), b.words.Text("gate.all-do")}
	b.add(&Sheet{Part: partMachines, Path: "cards.html", Title: b.words.Text("gate.all-title"), Kind: "cards", Lede: b.words.Text("gate.all-lede"), Verdict: v, Fit: fits[worst].class,
		name: "cards.html", view: func() any { return b.allCards(cards) }})
}

// fitPlace is the place of a class among the fits.
func fitPlace(class string) int {
	for i, f := range fits {
		if f.class == class {
			return i
		}
	}
	return 0
}

func (b *Book) allCards(cards []*Sheet) any {
	var v allCardsView
	for _, s := range cards {
		var body bytes.Buffer
		if err := pages[s.language()].ExecuteTemplate(&body, s.name, s.view()); err != nil {
			return err
		}
		at := 0
		for i, other := range b.Sheets {
			if other == s {
				at = i
			}
		}
		v.Cards = append(v.Cards, printedCard{s, b.block(s, at), trusted(body.String())})
	}
	return v
}
