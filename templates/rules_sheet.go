package templates

import (
	"cmp"
	"slices"
	"unicode"
	"unicode/utf8"

	"dustbook/checks"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// rulesPath is the sheet of the rules.
const rulesPath = "rules.html"

// rulesView is the sheet of the rules: which pack the shop compares with, and
// every figure with what each text says.
type rulesView struct {
	Pack      string // the key of its name
	Editions  []shop.Edition
	Figures   []ruleFigure
	Confirmed []confirmedRow
	Packet    string
}

// ruleFigure is one figure with what the texts say, side by side.
type ruleFigure struct {
	ID, Means string
	Checks    []aboutLink
	Agree     Word
	Rows      []ruleRow
}

// ruleRow is what one text says of a figure in one edition.
type ruleRow struct {
	Pack, Value string
	says        string // the value as it is compared
	Own         bool   // of the pack that the shop compares with
	Place       string // whose text it is, where it decides only for whoever names it
	Edition     string
	Clause      string
	Mark        string
	Text        citation
}

// addRules adds the sheet of the rules.
func (b *Book) addRules() {
	b.add(&Sheet{Part: partFindings, Path: rulesPath, Title: b.words.Text("rules-sheet.title"), Kind: "table", Lede: b.words.Text("rules-sheet.lede"),
		Verdict: b.rulesVerdict(), name: "rules-sheet.html", view: func() any { return b.rulesView() }})
}

// rulesVerdict says whether the shop compares with a pack, and that the texts
// adopted at the place decide.
func (b *Book) rulesVerdict() Verdict {
	pack := b.words.Text(packNames[b.Plan.Shop.Rules])
	if !slices.ContainsFunc(checks.Rules(), func(r checks.Rule) bool { return r.Rules == b.Plan.Shop.Rules }) {
		return Verdict{Words: []Word{{"blank", b.words.Text("rules-sheet.none")}}, Says: b.words.Text("rules-sheet.none-says"), Do: b.words.Text("rules-sheet.none-do")}
	}
	return Verdict{Words: []Word{{"advice", b.words.Text("verdict.look-up")}}, Says: b.words.Text("rules-sheet.says", pack), Do: b.words.Text("rules-sheet.do")}
}

func (b *Book) rulesView() rulesView {
	v := rulesView{Pack: packNames[b.Plan.Shop.Rules], Editions: b.Plan.Shop.Editions, Packet: packetPath}
	at := map[string]int{}
	for _, r := range checks.Rules() {
		i, met := at[r.Figure]
		if !met {
			i = len(v.Figures)
			at[r.Figure] = i
			v.Figures = append(v.Figures, ruleFigure{ID: r.Figure, Means: b.figureMeans(r.Figure), Checks: b.comparing(r.Figure)})
		}
		v.Figures[i].Rows = append(v.Figures[i].Rows, b.ruleRow(r))
	}
	for i := range v.Figures {
		v.Figures[i].Agree = b.agree(v.Figures[i].Rows)
	}
	for _, c := range b.Plan.Shop.Confirmed {
		v.Confirmed = append(v.Confirmed, confirmedRow{b.figureMeans(c.Figure), c.Value, c.By})
	}
	return v
}

func (b *Book) ruleRow(r checks.Rule) ruleRow {
	return ruleRow{Pack: r.Rules, Place: r.Place, says: sameAs(r), Value: cmp.Or(r.Value, b.words.Text("rules-sheet.no-number")), Own: r.Rules == b.Plan.Shop.Rules,
		Edition: cmp.Or(r.Basis.Edition(), "—"), Clause: cmp.Or(r.Basis.Clause, "—"), Mark: r.Basis.Mark.String(), Text: citation{r.Basis.TitleIn(b.words.Mark), documentPath(r.Basis.Document)}}
}

// agree says whether the texts beside each other say the same.
func (b *Book) agree(rows []ruleRow) Word {
	switch {
	case len(rows) == 1:
		return Word{"blank", b.words.Text("rules-sheet.one-text")}
	case slices.ContainsFunc(rows, func(r ruleRow) bool { return r.says != rows[0].says }):
		return Word{"thin", b.words.Text("rules-sheet.differ")}
	case rows[0].says == "":
		return Word{"blank", b.words.Text("rules-sheet.no-numbers")}
	}
	return Word{"advice", b.words.Text("rules-sheet.same")}
}

// sameAs is the value of a figure as it is compared: a quantity whatever its
// unit, else the words.
func sameAs(r checks.Rule) string {
	if r.Kind == 0 {
		return r.Value
	}
	if q, err := unit.ReadKind(r.Kind, r.Value); err == nil {
		return unit.Short(q)
	}
	return r.Value
}

// comparing are the checks that ask for a figure.
func (b *Book) comparing(figure string) []aboutLink {
	var list []aboutLink
	for _, c := range checks.All {
		if slices.Contains(c.Compares, figure) {
			list = append(list, aboutLink{c.Name, b.Path("check", c.ID)})
		}
	}
	return list
}

// figureMeans is a figure in words: those in which an owner is asked to confirm
// it, or words of its own.
func (b *Book) figureMeans(figure string) string {
	for _, c := range checks.Confirmables() {
		if c.ID == figure {
			return capital(c.Means)
		}
	}
	return b.words.Text("rules-sheet.figure." + figure)
}

// documentPath is the place of a document on the sheet of sources; empty where
// there is none.
func documentPath(document string) string {
	if document == "" {
		return ""
	}
	return "sources.html#" + documentID(document)
}

// capital sets the first letter of a text of a row large.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}
