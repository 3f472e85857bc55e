package templates

import (
	"html/template"
	"io/fs"
	"path"
	"strings"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// NotesFolder is the name of the folder that holds the shop's own notes,
// beside the shop file.
const NotesFolder = "notes"

var partNotes = Part{11, "part.notes"}

// noteView is a note of the shop's own.
type noteView struct{ Text template.HTML }

// AddNotes adds a sheet for each note in a folder, after all others; nil is no
// folder. What is wrong with them is its error, of type entry.Problems.
func (b *Book) AddNotes(files fs.FS) error {
	if files == nil {
		return nil
	}
	notes, faults := content.ReadNotes(files, b.guide())
	if len(faults) > 0 {
		return noteProblems(faults)
	}
	for _, n := range notes.Pages {
		text, err := n.HTML()
		if err != nil {
			return err
		}
		b.add(&Sheet{Part: partNotes, Path: n.Path, Title: n.Title, Kind: "note", Lede: b.words.Text("note.lede", path.Join(NotesFolder, n.File)), Outside: n.Outside,
			Verdict: Verdict{Words: []Word{{"advice", b.words.Text("note.own")}}, Says: b.words.Text("note.not-checked"), Do: b.words.Text("note.where-they-differ")}, name: "note.html", view: func() any { return noteView{trusted(text)} }})
	}
	b.Pictures = notes.Pictures
	b.fillContents()
	return nil
}

// CheckNotes reports what is wrong with notes where there is no plan, since
// the shop file or the records have errors. A link to a thing has to have a
// name that stands in the text of the shop file; where that cannot be read at
// all, such links are not looked at.
func CheckNotes(files fs.FS, shopFile []byte) entry.Problems {
	if files == nil {
		return nil
	}
	guide := content.Guide{Slug: shop.Slug, Near: entry.Nearest}
	if root, problems := entry.Read("", shopFile); len(problems) == 0 {
		guide.Names = func(kind string) []string { return writtenNames(root, kind) }
	}
	_, faults := content.ReadNotes(files, guide)
	return noteProblems(faults)
}

// writtenNames lists the names that a kind of link may hold, as they stand in
// a shop file that is not yet checked.
func writtenNames(root *entry.Table, kind string) []string {
	switch kind {
	case "check":
		return checkNames()
	case "card":
		return writtenNames(root, "machine")
	}
	var names []string
	if list := root.Get(kind); list != nil {
		elements, _ := list.Value.([]*entry.Node)
		for _, element := range elements {
			table, ok := element.Value.(*entry.Table)
			if !ok {
				continue
			}
			if name := table.Get("name"); name != nil {
				if text, ok := name.Value.(string); ok {
					names = append(names, text)
				}
			}
		}
	}
	if kind == "use" {
		names = append(names, writtenNames(root, "machine")...)
	}
	return names
}

func checkNames() []string {
	return namesIn(checks.All, func(c *checks.Check) string { return c.ID })
}

// noteProblems are faults of notes as problems of files.
func noteProblems(faults []content.Fault) entry.Problems {
	var list entry.Problems
	for _, f := range faults {
		list = append(list, entry.Problem{File: path.Join(NotesFolder, f.File), Place: entry.Place{Line: f.Line, Column: f.Column}, Read: f.Read, Expected: f.Expected, Do: f.Do})
	}
	return list
}

// guide answers what notes ask of the shop and of the sheets laid out so far.
func (b *Book) guide() content.Guide {
	names := map[string][]string{}
	for _, kind := range content.Kinds {
		names[kind] = b.namesOf(kind)
	}
	sheets := map[string]bool{}
	for _, s := range b.Sheets {
		sheets[s.Path] = true
	}
	return content.Guide{
		Slug: shop.Slug, Near: entry.Nearest,
		Names: func(kind string) []string { return names[kind] },
		Path: func(kind, name string) string {
			at := b.Path(kind, name)
			if kind == "sheet" {
				at = name + ".html"
			}
			if file, _, _ := strings.Cut(at, "#"); !sheets[file] {
				return ""
			}
			return at
		},
	}
}

// namesOf lists the names that a kind of link may hold.
func (b *Book) namesOf(kind string) []string {
	s := b.Plan.Shop
	switch kind {
	case "machine", "card":
		return namesIn(s.Machines, func(m *shop.Machine) string { return m.Name })
	case "gate":
		return namesIn(s.Gates, func(g *shop.Gate) string { return g.Name })
	case "duct":
		return namesIn(s.Ducts, func(d *shop.Duct) string { return d.Name })
	case "collector":
		return namesIn(s.Collectors, func(c *shop.Collector) string { return c.Name })
	case "room":
		return namesIn(s.Rooms, func(r *shop.Room) string { return r.Name })
	case "use":
		return usesOf(b.Plan)
	case "trigger":
		return namesIn(s.Triggers, func(t *shop.Trigger) string { return t.Name })
	case "chain":
		return namesIn(s.Chains, func(c *shop.Chain) string { return c.Name })
	case "check":
		return checkNames()
	case "sheet":
		return namesIn(b.Sheets, func(s *Sheet) string { return strings.TrimSuffix(s.Path, ".html") })
	}
	return nil
}

func namesIn[T any](list []T, name func(T) string) []string {
	var names []string
	for _, one := range list {
		names = append(names, name(one))
	}
	return names
}

// usesOf lists the uses that have a sheet: the shop's own, then every machine
// alone.
func usesOf(p *plan.Plan) []string {
	own := namesIn(p.Shop.Uses, func(u *shop.Use) string { return u.Name })
	return append(own, namesIn(p.Shop.Machines, func(m *shop.Machine) string { return m.Name })...)
}
