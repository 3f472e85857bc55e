package templates

import (
	"bytes"
	"html/template"
	"slices"
	"strconv"
)

// allCardsView is every card and sign, one after the other for the printer.
type allCardsView struct{ Cards []printedCard }

// printedCard is a card as its own sheet shows it, in a frame of its own.
type printedCard struct {
	Sheet *Sheet
	Block block
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
	v := Verdict{Words: []Word{{"advice", b.words.Text("gate.all-verdict")}}, Says: b.words.Count("gate.all-says", len(cards)), Do: b.words.Text("gate.all-do")}
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

func (b *Book) allCards(cards []*Sheet) allCardsView {
	var v allCardsView
	for _, s := range cards {
		v.Cards = append(v.Cards, printedCard{s, b.block(s, slices.Index(b.Sheets, s))})
	}
	return v
}

// Body is what the card's own sheet shows.
func (c printedCard) Body() (template.HTML, error) { return c.rendered(c.Sheet.name, c.Sheet.view()) }

// HTML is the card with its head and title block, in its own language.
func (c printedCard) HTML() (template.HTML, error) { return c.rendered("card-printed.html", c) }

func (c printedCard) rendered(name string, view any) (template.HTML, error) {
	var out bytes.Buffer
	err := pages[c.Sheet.language()].ExecuteTemplate(&out, name, view)
	return trusted(out.String()), err
}
