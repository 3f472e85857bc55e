package shop

import (
	"fmt"
	"slices"
	"strings"

	"dustbook/plan/entry"
)

// reader reads one file and keeps every problem it meets.
type reader struct {
	file     string
	shop     *Shop
	problems entry.Problems

	names   []named  // what the file names, in file order
	pending []func() // references to resolve once everything is read
	joins   []join   // where ducts join, to find once every duct is known
	known   map[string]map[string]any
	ports   map[*Machine]map[string]*Port
	search  search

	nameLists map[string][]string // names by what may hold them

	// What is wrong already, so that one cause gives one message.
	broken   map[string]bool // machines whose ports could not be read
	lost     map[string]bool // kinds whose table is misspelt or of the wrong shape
	nameless map[string]bool // kinds of which one has no name that can be read
	twice    map[string]bool // names that stand twice
	tags     map[string]int  // of devices, with the line of each
}

func newReader(file string) *reader {
	return &reader{file: file, shop: &Shop{File: file}, ports: map[*Machine]map[string]*Port{}, nameLists: map[string][]string{},
		broken: map[string]bool{}, lost: map[string]bool{}, nameless: map[string]bool{}, twice: map[string]bool{}, tags: map[string]int{}}
}

// named is one thing of the file that others may refer to.
type named struct {
	kind string
	ref  Ref
}

// scope is one table of the file while it is read.
type scope struct {
	r     *reader
	t     *entry.Table
	table string // its table in fields.csv, "" for the top
	about string // the thing it describes, for assumptions and messages
	seen  map[string]bool
}

func (r *reader) open(t *entry.Table, table, about string) *scope {
	return &scope{r: r, t: t, table: table, about: about, seen: map[string]bool{}}
}

// problem keeps one problem.
func (r *reader) problem(at entry.Place, read, expected, do string) {
	r.problems = append(r.problems, entry.Problem{File: r.file, Place: at, Read: read, Expected: expected, Do: do})
}

// row is what the contract says of a field of this table. Asking for a field
// that the contract does not have is a fault of the program.
func (s *scope) row(field string) *Row {
	row := rowOf[[2]string{s.table, field}]
	if row == nil {
		panic(fmt.Sprintf("shop: fields.csv has no row %s.%s", s.table, field))
	}
	return row
}

// node finds the field's node and marks it as read; nil where the file does
// not have it. A required field that is missing is a problem.
func (s *scope) node(field string) *entry.Node {
	s.seen[field] = true
	node := s.t.Get(field)
	if row := s.row(field); node == nil && row.Need == "must" && !s.misspelt(field) {
		s.r.problem(s.t.At, s.title()+" without "+entry.Quote(field), lower(row.Means), "add "+field+" = "+row.sample())
	}
	return node
}

// misspelt reports whether a key that nothing knows is likely to mean the
// field. Such a key gets a message of its own.
func (s *scope) misspelt(field string) bool {
	for _, node := range s.t.Nodes {
		if rowOf[[2]string{s.table, node.Name}] != nil {
			continue
		}
		if near := s.r.search.near(s.table, node.Name, s.fields()); len(near) > 0 && near[0] == field {
			return true
		}
	}
	return false
}

// fields are the names a key of this table may have.
func (s *scope) fields() []string {
	if s.table == "" {
		return topTables
	}
	return fieldNames[s.table]
}

// title names the table in messages: `the duct "Saw drop"`, `the hose of
// "Saw drop"`, "a table [[wall]]".
func (s *scope) title() string {
	top := slices.Contains(topTables, s.table)
	switch {
	case onceTables[s.table]:
		return "the table [" + s.table + "]"
	case top && s.about == "":
		return "a table [[" + s.table + "]]"
	case s.about == "":
		return article(s.table)
	case top || s.table == "port":
		return fmt.Sprintf("the %s %s", s.table, entry.Quote(s.about))
	case strings.Contains(s.table, " "):
		return fmt.Sprintf("%s of %s", article(s.table), entry.Quote(s.about))
	}
	return fmt.Sprintf("the %s of %s", s.table, entry.Quote(s.about))
}

// close reports every key of the table that nothing read.
func (s *scope) close() {
	for _, node := range s.t.Nodes {
		if s.seen[node.Name] {
			continue
		}
		read, what, none := "the key "+entry.Quote(node.Name), "a field of "+article(s.table), "see the list of fields, or take it out"
		switch {
		case s.table == "":
			read, what, none = said(node), "a table of the shop file", "see the list of tables, or take it out"
			if near := s.r.search.near("", node.Name, topTables); len(near) > 0 {
				s.r.lost[near[0]] = true
			}
		case onceTables[s.table]:
			what = "a field of the table [" + s.table + "]"
		}
		s.r.problem(node.Key, read, what, s.r.nearest(s.table, node.Name, s.fields(), none))
	}
}

// single opens a top-level table that may stand once.
func (s *scope) single(name string) *scope {
	s.seen[name] = true
	node := s.t.Get(name)
	if node == nil {
		return nil
	}
	t, ok := node.Value.(*entry.Table)
	if !ok {
		s.r.problem(node.Key, said(node), "one table ["+name+"]", "write ["+name+"] on a line of its own, once")
		return nil
	}
	return s.r.open(t, name, "")
}

// several opens the top-level tables of an array of tables.
func (s *scope) several(name string) []*scope {
	s.seen[name] = true
	node := s.t.Get(name)
	if node == nil {
		return nil
	}
	if _, one := node.Value.(*entry.Table); one {
		s.r.lost[name] = true
		s.r.problem(node.Key, said(node), "[["+name+"]], because there may be several", "write [["+name+"]] with two brackets")
		return nil
	}
	return s.tables(node, name, "", "write [["+name+"]] on a line of its own")
}

// tables opens the tables of a list of tables, or one table in place of it.
func (s *scope) tables(node *entry.Node, table, about, do string) []*scope {
	if t, ok := node.Value.(*entry.Table); ok {
		return []*scope{s.r.open(t, table, about)}
	}
	list, ok := node.Value.([]*entry.Node)
	if !ok {
		s.r.lost[table] = true
		s.wrong(node, "a table, or a list of them", do)
		return nil
	}
	var scopes []*scope
	for _, item := range list {
		if t, ok := item.Value.(*entry.Table); ok {
			scopes = append(scopes, s.r.open(t, table, about))
			continue
		}
		s.r.lost[table] = true
		s.wrong(item, "a table, or a list of them", do)
	}
	return scopes
}
