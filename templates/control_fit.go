package templates

import (
	"unicode/utf8"

	"dustbook/content"
)

// A card prints on one A5 sheet. No browser is asked whether it does: what
// stands on it is counted in lines, and a card with much on it is set in
// smaller type. Lengths are in the type's own size (rem), widths in signs of
// an average letter; both were read off printed cards.

const (
	cardFull = 100 // signs across a card
	cardHalf = 46  // across one of two columns
	cardHead = 24  // across a half in large type
	cardFits = 76  // rem that an A5 sheet holds in the usual size

	smallestHolds = 114 // in the smallest there is
)

// fits are the classes of a card by how much stands on it, each with how much
// it holds.
var fits = []struct {
	class string
	holds float64
}{{"", cardFits}, {"tight", 85}, {"tighter", 98}, {"tightest", smallestHolds}}

// fit is the class of the type that a card of so much height wants.
func fit(height float64) string {
	for _, f := range fits {
		if height <= f.holds {
			return f.class
		}
	}
	return fits[len(fits)-1].class
}

// inEnglish are the texts that stand for those of either language when a card
// is measured: they take as many lines.
var inEnglish = content.WordsIn(content.English)

// hit is what the order at smoke says of a stop.
func hit(stopper string) string { return inEnglish.Text("smoke.hit", stopper) }

// lines is how many lines a text takes at a width, at least one.
func lines(text string, width int) float64 {
	n := utf8.RuneCountInString(text)
	return float64(max(1, (n+width-1)/width))
}

// height is how tall a card is printed, about.
func (v *cardView) height() float64 {
	h := 19.5 + 1.4*lines(hit(v.Stopper), 34) // head, order at smoke, verdict, title block
	h += 1.5 * lines(v.Verdict.Says, 70)
	if v.Stop != "" {
		h += 4 + 1.5*(lines(v.Stop, cardFull)+lines(v.StopDo, cardFull-8))
	}
	width, head := cardFull, cardHead*2
	if len(v.ByItself) > 0 {
		width, head = cardHalf, cardHead
	}
	h += max(v.box(v.ByItself, head, width), v.box(v.Open, head, width)+1.5*lines(inEnglish.Text("card.shut-yours"), width)+1.5*sum(v.Hoses, width))
	h += 3 + 1.7*max(sum(v.Start, cardHalf), sum(v.End, cardHalf))
	if n := len(v.Gauges); n > 0 {
		h += 5 + 4*float64((n+1)/2)
	}
	side := 0.0
	if len(v.Bin) > 0 {
		side = 2 + 1.5*sum(v.Bin, cardHalf)
	}
	if v.Lockout != "" {
		side = max(side, 2+1.5*lines(v.Lockout, cardHalf)+4.5)
	}
	h += max(4+1.6*float64(len(v.Never)+2)/3, 4+1.5*float64(len(v.Wear)+2))
	if v.Unchecked {
		h += 3.5
	}
	if v.Code != nil {
		h += 6
	}
	if v.With != "" {
		h += 3 + 1.5*lines(v.With, cardFull)
	}
	if v.Cut != "" {
		h += 3 + 1.5*lines(v.Cut, cardFull)
	}
	return h + side
}

// box is the height of a box of gates.
func (v *cardView) box(gates []cardGate, head, width int) float64 {
	h, large, signs := 3.5, 2.1, head
	if v.Many {
		large, signs = 1.5, head*4/3
	}
	for _, g := range gates {
		h += large * lines(g.Name, signs)
		if g.Why != "" {
			h += 1.3 * lines(g.Why, width)
		}
	}
	if len(gates) == 0 {
		h += large
	}
	return h
}

func sum(texts []string, width int) float64 {
	n := 0.0
	for _, text := range texts {
		n += lines(text, width)
	}
	return n
}

// height is how tall a sign is printed, about.
func (v *signView) height() float64 {
	h := 30 + 1.4*lines(hit(v.Stopper), 34) + 1.5*sum(v.ByHand, cardFull)
	for _, r := range v.Rows {
		h += 2.2 * max(lines(r.Which, 26), lines(r.Worst, 18))
	}
	if v.Unchecked {
		h += 3.5
	}
	return h + 3 + 1.5*max(sum(v.Together, cardHalf), sum(v.Never, cardHalf)) + 12
}

// Many reports whether more machines need a gate than fit in large type.
func (v gateCardView) Many() bool { return len(v.For) > mostLarge }

// height is how tall a gate's card is printed, about.
func (v gateCardView) height() float64 {
	h := 44 + 1.4*lines(hit(v.Stopper), 34) + 1.5*lines(v.Verdict.Says, 70) // all but the boxes
	large, signs := 2.1, cardHead
	if v.Many() {
		large, signs = 1.5, cardHead*4/3
	}
	right := 5.0
	for _, name := range v.For {
		right += large * lines(name, signs)
	}
	h += max(right+3*float64(len(v.AsWell)), 8+1.5*sum(v.Opens, cardHalf))
	if v.Unchecked {
		h += 3.5
	}
	if v.Code != nil {
		h += 6
	}
	return h
}
