package record

import (
	"fmt"
	"slices"
	"strings"

	"dustbook/plan/entry"
)

// mostProblems is where the list of problems of one record ends: whoever has
// mended that many reads the file again.
const mostProblems = 50

// reader keeps the problems of one file.
type reader struct {
	file     string
	problems entry.Problems
}

func (r *reader) full() bool { return len(r.problems) >= mostProblems }

// scope is one table of the file while it is read.
type scope struct {
	r     *reader
	t     *entry.Table
	table string // its table in fields.csv
}

func (s *scope) problem(at entry.Place, read, expected, do string) {
	if !s.r.full() {
		s.r.problems = append(s.r.problems, entry.Problem{File: s.r.file, Place: at, Read: read, Expected: expected, Do: do})
	}
}

// wrong reports a value of the wrong shape.
func (s *scope) wrong(node *entry.Node, expected, do string) {
	s.problem(node.At, said(node), expected, do)
}

// said is a node as the file says it: key = value, or a header or an element
// alone.
func said(node *entry.Node) string {
	header := node.Key.Known() && node.At.Line == node.Key.Line && node.At.Column < node.Key.Column
	if header || strings.HasSuffix(node.Path, "]") {
		return node.Source
	}
	return node.Name + " = " + node.Source
}

// row is what the contract says of a field. Asking for a field that it does
// not have is a fault of the program.
func (s *scope) row(field string) *Row {
	row := rowOf(s.table, field)
	if row == nil {
		panic(fmt.Sprintf("record: fields.csv has no row %s.%s", s.table, field))
	}
	return row
}

// title names the table in messages.
func (s *scope) title() string {
	if s.table == "record" {
		return "a record"
	}
	return "a [[" + s.table + "]]"
}

// node finds the field's node, nil where the file does not have it. A
// required field that is missing is a problem.
func (s *scope) node(field string) *entry.Node {
	node := s.t.Get(field)
	if row := s.row(field); node == nil && row.Need == "must" && !s.misspelt(field) {
		s.problem(s.t.At, s.title()+" without "+entry.Quote(field), clause(row.Means), "add "+field+" = "+row.sample())
	}
	return node
}

// samples are what a field of a kind may look like, for advice.
var samples = map[string]string{"date": "2026-11-24", "quantity": `"2.1 inwg"`}

// sample is what the field may look like.
func (row *Row) sample() string {
	if text, ok := samples[row.Kind]; ok {
		return text
	}
	if group := words[row.Of]; row.Kind == "word" {
		return entry.Quote(group[0].Word)
	}
	return `"…"`
}

// misspelt reports whether a key that the contract does not have is likely to
// mean the field. Such a key gets a message of its own.
func (s *scope) misspelt(field string) bool {
	if s.r.full() {
		return false
	}
	for _, node := range s.t.Nodes[:min(len(s.t.Nodes), mostProblems)] {
		if rowOf(s.table, node.Name) != nil {
			continue
		}
		if near := entry.Nearest(node.Name, fieldsOf(s.table), 1); len(near) > 0 && near[0] == field {
			return true
		}
	}
	return false
}

// close reports every key that the contract does not have.
func (s *scope) close() {
	for _, node := range s.t.Nodes {
		if s.r.full() {
			return
		}
		if rowOf(s.table, node.Name) != nil {
			continue
		}
		do := nearest(node.Name, fieldsOf(s.table), len(rows), "")
		if s.table != "record" && rowOf("record", node.Name) != nil {
			do = "move it above the first [[reading]] or [[item]]"
		}
		s.problem(node.Key, "the key "+entry.Quote(node.Name), "a field of "+s.title(), do)
	}
}

// tables opens the tables of an array of tables.
func (s *scope) tables(field string) []*scope {
	node := s.node(field)
	if node == nil {
		return nil
	}
	do := "write [[" + field + "]] on a line of its own"
	list, ok := node.Value.([]*entry.Node)
	if !ok {
		if _, one := node.Value.(*entry.Table); one {
			do = "write [[" + field + "]] with two brackets"
		}
		s.wrong(node, "[["+field+"]], because there may be several", do)
		return nil
	}
	var scopes []*scope
	for _, item := range list {
		if t, ok := item.Value.(*entry.Table); ok {
			scopes = append(scopes, &scope{s.r, t, field})
			continue
		}
		s.wrong(item, "a table [["+field+"]]", do)
	}
	return scopes
}

// words reads a field that holds words of a group: one, or a list of them.
func (s *scope) words(field string) []string {
	node := s.node(field)
	if node == nil {
		return nil
	}
	items, isList := node.Value.([]*entry.Node)
	if !isList {
		items = []*entry.Node{node}
	}
	var list []string
	for _, item := range items {
		if word := s.oneOf(field, item); word != "" && slices.Contains(list, word) {
			s.wrong(item, "each word once", "take one out")
		} else if word != "" {
			list = append(list, word)
		}
	}
	return list
}

// word reads a field that holds one word of a group; empty where it does not.
func (s *scope) word(field string) string {
	node := s.node(field)
	if node == nil {
		return ""
	}
	return s.oneOf(field, node)
}

// oneOf reads a word of a field's group from a node; empty where it is none.
func (s *scope) oneOf(field string, node *entry.Node) string {
	known := wordsOf(s.row(field).Of)
	v, isText := node.Value.(string)
	if isText && slices.Contains(known, v) {
		return v
	}
	if !isText {
		v = node.Source
	}
	if s.r.full() {
		return ""
	}
	expected := orList(quoteAll(known))
	if len(known) > 8 {
		expected = "a word for " + clause(s.row(field).Means)
	}
	s.wrong(node, expected, nearest(v, known, len(known), ""))
	return ""
}
