package checks

import (
	"cmp"
	_ "embed"
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// PaperState is how far a paper is at hand.
type PaperState string

const (
	Held       PaperState = "held"         // a [[document]] of the file is in hand
	InThisBook PaperState = "in this book" // the book prints it
	Missing    PaperState = "missing"
	NotAsked   PaperState = "not asked here" // not in this setting, under these rules or in this shop
)

// Paper is one thing that inspectors, school officers and insurers ask to see in
// writing.
type Paper struct {
	ID       string
	Name     string         // in English, the row finding-paper.ID
	From     Person         // who can give it; empty where the shop writes it itself
	State    PaperState     // a paper held counts before one that the book prints
	Sheet    string         // the sheet that prints it, such as "plan"; empty where the book does not
	Document *shop.Document // what the file tells of it, in hand or not; nil where nothing
	Check    string         // the id of the check that looks at it alone; empty where none does
	Basis    source.Basis   // who asks for it
}

//go:embed papers.csv
var papersData []byte

var paperRows = source.MustRows("papers.csv", papersData, "paper", "words", "settings", "rules", "where", "from", "sheet", "shown", "check")

// Papers lists every paper of papers.csv, in its order, and how far it is at hand
// in a shop.
func Papers(p *plan.Plan) []Paper {
	told := toldOf(p.Shop)
	var list []Paper
	for i, r := range paperRows {
		paper := Paper{ID: r.Text("paper"), Name: say("finding-paper." + r.Text("paper")), From: Person(r.Text("from")), State: Missing, Document: told[i], Check: r.Text("check"), Basis: r.Basis}
		if r.Text("sheet") != "" && shownBy[shown(r.Text("shown"))](p) {
			paper.Sheet = r.Text("sheet")
		}
		switch {
		case !askedHere(p, r):
			paper.State = NotAsked
		case paper.Document != nil && paper.Document.Held.V:
			paper.State = Held
		case paper.Sheet != "":
			paper.State = InThisBook
		}
		list = append(list, paper)
	}
	return list
}

// toldOf is the document that the file has for each row of papers; of several the
// first in hand, else the last.
func toldOf(s *shop.Shop) map[int]*shop.Document {
	told := map[int]*shop.Document{}
	for _, d := range s.Documents {
		i := paperOf(d.Kind)
		if i >= 0 && (told[i] == nil || !told[i].Held.V) {
			told[i] = d
		}
	}
	return told
}

// paperOf is the row that a kind of document is of, by the longest of its words;
// -1 where no row has a word of it.
func paperOf(kind string) int {
	best, longest := -1, 0
	for i, r := range paperRows {
		for _, word := range strings.Split(r.Text("words"), ", ") {
			if len(word) > longest && strings.Contains(strings.ToLower(kind), word) {
				best, longest = i, len(word)
			}
		}
	}
	return best
}

// askedHere reports whether a paper is asked for in a shop. Where the setting is
// not given all of them are.
func askedHere(p *plan.Plan, r source.Row) bool {
	s := p.Shop
	setting := s.Setting.V
	if people, known := peopleEmployedOrTaught(s); !known || people {
		setting = cmp.Or(workplace, setting)
	}
	if !slices.Contains(strings.Split(r.Text("settings"), ", "), setting) {
		return false
	}
	if packs := r.Text("rules"); packs != "" && !slices.Contains(strings.Split(packs, ", "), s.Rules) {
		return false
	}
	met, conditional := onlyWhere[condition(r.Text("where"))]
	return !conditional || met(p)
}

// workplace is the setting whose papers a shop is asked for in which people are
// employed or taught, whatever its own.
const workplace string = "business"

// condition is why a paper is asked for in some shops only.
type condition string

const (
	whereAirReturns     condition = "air returns"
	whereStartsByItself condition = "starts by itself"
)

var onlyWhere = map[condition]func(*plan.Plan) bool{
	whereAirReturns: func(p *plan.Plan) bool {
		return slices.ContainsFunc(p.Shop.Collectors, func(c *shop.Collector) bool { return c.Exhaust.V == "returns to room" })
	},
	whereStartsByItself: startsByItself,
}
