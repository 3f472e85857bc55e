package templates

import (
	"bytes"
	"html/template"
	"strconv"
)

// allCardsView is every card and sign, one after the other for the printer.
type allCardsView struct{ Cards []printedCard }

// printedCard is a card as its own sheet shows it, without the frame.
type printedCard struct {
	Sheet *Sheet
	Block block
	Body  template.HTML
}

// mostCards is how many cards a sheet of cards holds: more would make it
// heavy for a phone.
const mostCards = 30

// addAllCards adds the sheets of all cards.
func (b *Book) addAllCards() {
	var cards []*Sheet
	for _, s := range b.Sheets {
		if s.Card != nil {
			cards = append(cards, s)
		}
	}
	sheets := (len(cards) + mostCards - 1) / mostCards
	for i := range sheets {
		some := cards[i*mostCards : min(len(cards), (i+1)*mostCards)]
		path, title := "cards.html", b.words.Text("gate.all-title")
		if i > 0 {
			path = "cards-" + strconv.Itoa(i+1) + ".html"
		}
		if sheets > 1 {
			title = b.words.Text("gate.all-part", strconv.Itoa(i+1), strconv.Itoa(sheets))
		}
		b.addCardSheet(path, title, some)
	}
}

// addCardSheet adds a sheet of some of the cards, in the type that the fullest
// of them needs.
func (b *Book) addCardSheet(path, title string, cards []*Sheet) {
	worst := 0
	for _, s := range cards {
		worst = max(worst, fitPlace(s.Card.Fit))
	}
	v := Verdict{[]Word{{"advice", b.words.Text("gate.all-verdict")}}, b.words.Count("gate.all-says", len(cards)), b.words.Text("gate.all-do")}
	b.add(&Sheet{Part: partMachines, Path: path, Title: title, Kind: "cards", Lede: b.words.Text("gate.all-lede"), Verdict: v, Fit: fits[worst].class,
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
