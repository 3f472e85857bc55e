package templates

// wordsView is a table of words for the same thing on both sides of the sea.
type wordsView struct{ Groups []wordGroup }

type wordGroup struct {
	Head string
	Rows []wordRow
}

// wordRow is one thing: its words in the United States, in Britain and
// Australia, and the one of this book. Not is a remark on a word that means
// something else; empty for most.
type wordRow struct{ Thing, US, UK, Here, Not string }

// The things in the order of the table; their words stand in rows.
var wordGroups = []struct {
	key    string
	things []string
}{
	{"system", []string{"whole", "collector", "fan", "separator", "bin", "filter", "waste"}},
	{"ducts", []string{"main", "drop", "pipe", "hose", "join", "bend", "size", "gate", "hood", "sweep"}},
	{"air", []string{"suction", "flow", "speed", "make-up", "vacuum"}},
	{"power", []string{"bond", "starter", "run-on", "meter"}},
	{"people", []string{"first-start", "fault", "authority"}},
	{"machines", []string{"saw", "jointer", "planer", "mitre", "shaper", "sander"}},
}

// remarked are the things with a word that has a remark.
var remarked = map[string]bool{"bin": true, "main": true, "gate": true, "vacuum": true}

// addTradeWords adds the sheet of words.
func (b *Book) addTradeWords() {
	b.add(&Sheet{Part: partPeople, Path: "trade-words.html", Title: b.words.Text("trade.title"), Kind: "table", Lede: b.words.Text("trade.lede"),
		name: "trade-words.html", view: func() any { return b.tradeWords() }})
}

func (b *Book) tradeWords() wordsView {
	var v wordsView
	for _, g := range wordGroups {
		group := wordGroup{Head: b.words.Text("trade.group." + g.key)}
		for _, thing := range g.things {
			row := wordRow{Thing: b.words.Text("trade.what." + thing), US: b.words.Text("trade.us." + thing), UK: b.words.Text("trade.uk." + thing), Here: b.words.Text("trade.here." + thing)}
			if remarked[thing] {
				row.Not = b.words.Text("trade.not." + thing)
			}
			group.Rows = append(group.Rows, row)
		}
		v.Groups = append(v.Groups, group)
	}
	return v
}
