package templates

import (
	_ "embed"
	"slices"
	"strings"

	"dustbook/checks"
	"dustbook/plan/shop"
)

// findScript is the name of the script of the sheet of finding.
const findScript = "find.js"

//go:embed find.js
var findCode []byte

// Scripts are the scripts of the book by path, with the style that one of them
// asks for. A sheet names its script, and says all it has to say without it.
func Scripts() map[string][]byte {
	return map[string][]byte{findScript: findCode, upkeepScript: upkeepCode, fillScript: fillCode, fillStyle: fillLook}
}

// foundThing is one name and the sheets that speak of it.
type foundThing struct {
	Name  string
	What  string // its kind
	Links []foundLink
}

type foundLink struct{ Text, Path string }

// foundLetter are the names that begin with one letter.
type foundLetter struct {
	Letter string
	Things []foundThing
}

// addFind adds the list of all names, which a script lets people search.
func (b *Book) addFind() {
	b.add(&Sheet{Part: partStart, Path: "find.html", Title: b.words.Text("find.title"), Kind: "list", Lede: b.words.Text("find.lede"), Script: findScript, name: "find.html",
		view: func() any { return struct{ Letters []foundLetter }{b.foundLetters()} }})
}

// foundLetters are the names of the book in the order of their letters.
func (b *Book) foundLetters() []foundLetter {
	things := append(b.foundThings(), b.foundSheets()...)
	slices.SortStableFunc(things, func(a, b foundThing) int { return strings.Compare(foundKey(a.Name), foundKey(b.Name)) })
	var letters []foundLetter
	for _, t := range things {
		letter := "#"
		if key := foundKey(t.Name); key != "" && key[0] >= 'a' && key[0] <= 'z' {
			letter = strings.ToUpper(key[:1])
		}
		if len(letters) == 0 || letters[len(letters)-1].Letter != letter {
			letters = append(letters, foundLetter{Letter: letter})
		}
		last := &letters[len(letters)-1]
		last.Things = append(last.Things, t)
	}
	return letters
}

// foundKey is what names are put in order by: as addresses are made of them.
func foundKey(name string) string { return shop.Slug(name) }

// foundThings are the things of the shop.
func (b *Book) foundThings() []foundThing {
	var list []foundThing
	put := func(what, name string, links ...foundLink) {
		links = slices.DeleteFunc(links, func(l foundLink) bool { return l.Path == "" || !b.has(l.Path) })
		if len(links) > 0 {
			list = append(list, foundThing{name, b.words.Text("find.what." + what), links})
		}
	}
	on := func(text, path string) foundLink { return foundLink{b.words.Text("find.on." + text), path} }
	s := b.Plan.Shop
	for _, m := range s.Machines {
		put("machine", m.Name, on("use", b.Path("use", m.Name)), on("card", b.Path("card", m.Name)))
	}
	for _, c := range s.Collectors {
		put("collector", c.Name, on("collector", b.Path("collector", c.Name)))
	}
	for _, d := range s.Ducts {
		put("duct", d.Name, on("schedule", b.Path("duct", d.Name)))
	}
	for _, g := range s.Gates {
		put("gate", g.Name, on("schedule", b.Path("gate", g.Name)), on("gate-card", b.Path("gate card", g.Name)))
	}
	for _, r := range s.Rooms {
		put("room", r.Name, on("plan", b.Path("room", r.Name)))
	}
	for _, u := range s.Uses {
		put("use", u.Name, on("use", b.Path("use", u.Name)))
	}
	for _, t := range s.Triggers {
		put("trigger", t.Name, on("trigger", b.Path("trigger", t.Name)))
	}
	for _, c := range s.Chains {
		put("chain", c.Name, on("wiring", b.Path("chain", c.Name)))
	}
	for _, c := range checks.All {
		list = append(list, foundThing{c.Name, b.words.Text("find.what.check"), []foundLink{{c.Title + "?", b.Path("check", c.ID)}}})
	}
	return list
}

// foundSheets are the sheets that are about no single thing, by their titles.
func (b *Book) foundSheets() []foundThing {
	var list []foundThing
	for _, s := range b.Sheets {
		if s.Card == nil && s.language() == "en" && !slices.ContainsFunc([]string{"check-", "use-", "collector-"}, func(start string) bool { return strings.HasPrefix(s.Path, start) }) {
			list = append(list, foundThing{s.Title, b.words.Text("find.what.sheet"), []foundLink{{s.Number() + " " + s.Lede, s.Path}}})
		}
	}
	return list
}
