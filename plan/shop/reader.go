package shop

import (
	"fmt"
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
	broken  map[string]bool // machines whose own table had a problem: no second complaint about their ports
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
	if node == nil && s.row(field).Need == "must" {
		s.r.problem(s.t.At, s.title()+" without "+entry.Quote(field), fmt.Sprintf("a line %s = …: %s", field, lower(s.row(field).Means)), fmt.Sprintf("add %s to %s", field, s.title()))
	}
	return node
}

// title names the table in messages: `the duct "Saw drop"`, `the hose of "Saw drop"`.
func (s *scope) title() string {
	switch {
	case s.table == "" || s.table == "shop" || s.table == "method" || s.table == "control":
		return "the table [" + s.table + "]"
	case s.about == "":
		return article(s.table)
	}
	return fmt.Sprintf("the %s %s", s.table, entry.Quote(s.about))
}

// close reports every key of the table that nothing read.
func (s *scope) close() {
	var known []string
	if s.table == "" {
		known = topTables
	} else {
		for _, row := range rowsOf[s.table] {
			known = append(known, row.Field)
		}
	}
	for _, node := range s.t.Nodes {
		if s.seen[node.Name] {
			continue
		}
		what := "a field of " + article(s.table)
		if s.table == "" {
			what = "a table of the shop file"
		}
		s.r.problem(node.Key, "the key "+entry.Quote(node.Name), what, nearest(node.Name, known))
	}
}

// topTables are the tables a shop file may hold, in the order of the contract.
var topTables = []string{"shop", "method", "room", "appliance", "wall", "extinguisher", "stop", "machine", "collector",
	"duct", "gate", "leak", "tap", "trigger", "control", "chain", "sensor", "use", "confirmed", "accepted", "document", "revision"}

// table opens a top-level table that may stand once.
func (s *scope) single(name string) *scope {
	s.seen[name] = true
	node := s.t.Get(name)
	if node == nil {
		return nil
	}
	t, ok := node.Value.(*entry.Table)
	if !ok {
		s.r.problem(node.Key, "["+"["+name+"]] or "+name+" = "+node.Source, "one table ["+name+"]", "write ["+name+"] on a line of its own, once")
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
	return s.tables(node, name, "")
}

func (s *scope) tables(node *entry.Node, table, about string) []*scope {
	if t, ok := node.Value.(*entry.Table); ok {
		if strings.Contains(table, " ") || table == "port" {
			return []*scope{s.r.open(t, table, about)}
		}
		s.r.problem(node.Key, "["+table+"]", "[["+table+"]], because there may be several", "write [["+table+"]] with two brackets")
		return nil
	}
	list, ok := node.Value.([]*entry.Node)
	if !ok {
		s.r.problem(node.At, node.Name+" = "+node.Source, "[["+table+"]] tables", "write [["+table+"]] on a line of its own")
		return nil
	}
	var scopes []*scope
	for _, item := range list {
		if t, ok := item.Value.(*entry.Table); ok {
			scopes = append(scopes, s.r.open(t, table, about))
			continue
		}
		s.r.problem(item.At, item.Source, "a table", "write { … } or [["+table+"]]")
	}
	return scopes
}

// nearest is the advice for a word that is not known.
func nearest(word string, known []string) string {
	if near := entry.Nearest(word, known, 3); len(near) > 0 {
		return "write " + orList(quoteAll(near))
	}
	if len(known) <= 12 {
		return "use one of " + strings.Join(quoteAll(known), ", ")
	}
	return "see the list of fields and words, or leave it out"
}

func quoteAll(list []string) []string {
	quoted := make([]string, len(list))
	for i, word := range list {
		quoted[i] = entry.Quote(word)
	}
	return quoted
}

func orList(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " or " + list[len(list)-1]
}

func article(word string) string {
	if word != "" && strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

func lower(sentence string) string {
	sentence = strings.TrimSuffix(sentence, ".")
	if sentence == "" {
		return sentence
	}
	return strings.ToLower(sentence[:1]) + sentence[1:]
}
