package templates

import (
	"slices"
	"strconv"
	"strings"

	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// letterKind is the kind of the records that are letters.
const letterKind = "letter"

// letterRow is one letter in a list.
type letterRow struct {
	Path, Title, Role      string
	Points                 int
	Open, Answered, Closed string
}

// letterView is the sheet that answers a letter.
type letterView struct {
	Date, Role, Note, File string
	Record                 string // where its record is shown
	Packet                 string
	Points                 []letterPoint
}

// letterPoint is one point of a letter, with the number it has there.
type letterPoint struct {
	Number int
	itemRow
	Closed   bool
	Dated    bool // answered with a day, not a text
	Concerns []concern
	More     int
}

// letters are the records that are letters, the newest first.
func (b *Book) letters() []*record.Record {
	return slices.DeleteFunc(b.newest(), func(r *record.Record) bool { return r.Kind != letterKind })
}

// letterPath is the sheet that answers a letter; empty for other records.
func letterPath(r *record.Record) string {
	if r.Kind != letterKind {
		return ""
	}
	return "letters-" + shop.Slug(strings.TrimSuffix(r.File, ".toml")) + ".html"
}

// addLetters adds a sheet for each letter.
func (b *Book) addLetters() {
	for _, r := range b.letters() {
		b.add(&Sheet{Part: partFindings, Path: letterPath(r), Title: b.letterTitle(r), Kind: "table", Lede: b.words.Text("letters.lede"),
			Verdict: b.letterVerdict(r), name: "letters.html", view: func() any { return b.letterView(r) }})
	}
}

// letterTitle names a letter by its day and whom it is from.
func (b *Book) letterTitle(r *record.Record) string {
	if r.Role == "" {
		return b.words.Text("letters.title", r.Date.String())
	}
	return b.words.Text("letters.title-from", r.Date.String(), r.Role)
}

// itemState is how far a point is; without a word it is open.
func itemState(item record.Item) string {
	if item.State == "" {
		return "open"
	}
	return item.State
}

// countItems counts the points of a letter in a state.
func countItems(r *record.Record, state string) (n int) {
	for _, item := range r.Items {
		if itemState(item) == state {
			n++
		}
	}
	return n
}

func (b *Book) letterVerdict(r *record.Record) Verdict {
	open, answered := countItems(r, "open"), countItems(r, "answered")
	switch {
	case len(r.Items) == 0:
		return Verdict{Words: []Word{{"blank", b.words.Text("letters.no-points")}}, Says: b.words.Text("letters.no-points-say"), Do: b.words.Text("letters.no-points-do")}
	case open > 0:
		return Verdict{Words: []Word{{"ask", b.words.Text("records.open-points")}}, Says: b.countWith("letters.open", open, strconv.Itoa(len(r.Items))), Do: b.words.Text("letters.open-do")}
	case answered > 0:
		return Verdict{Words: []Word{{"advice", b.words.Text("letters.all-answered")}}, Says: b.words.Count("letters.answered-open", answered), Do: b.words.Text("letters.answered-do")}
	}
	return Verdict{Words: []Word{{"met", b.words.Text("letters.all-closed")}}, Says: b.words.Text("letters.all-closed-say")}
}

// letterView orders the points: open ones first, then answered, then closed,
// each as the letter has them.
func (b *Book) letterView(r *record.Record) letterView {
	v := letterView{Date: r.Date.String(), Role: r.Role, Note: r.Note, File: record.Folder + "/" + r.File, Record: b.recordAt[r], Packet: packetPath}
	shown := b.recordRow(r)
	for _, state := range []string{"open", "answered", "closed"} {
		for i, item := range r.Items {
			if itemState(item) == state {
				point := letterPoint{Number: i + 1, itemRow: shown.Items[i], Closed: state == "closed", Dated: item.Answered.Text == ""}
				if !point.Closed {
					point.Concerns, point.More = b.concerns(item)
				}
				v.Points = append(v.Points, point)
			}
		}
	}
	return v
}

// letterRows lists the letters for the packet.
func (b *Book) letterRows() []letterRow {
	var list []letterRow
	for _, r := range b.letters() {
		list = append(list, letterRow{Path: letterPath(r), Title: b.letterTitle(r), Role: r.Role, Points: len(r.Items),
			Open: counted(countItems(r, "open")), Answered: counted(countItems(r, "answered")), Closed: counted(countItems(r, "closed"))})
	}
	return list
}
