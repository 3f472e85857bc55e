// Package entry knows how a plan file is read before anyone asks what it
// means: bounded reading of a TOML file, the place of every key and value in
// it, and the list of problems found on the way. It also knows how a place is
// named to people and which known word a mistyped one is nearest to.
//
// It knows nothing of shops, records or quantities. Text stays text here:
// "800 cfm" is a string with a place.
//
// A file is read in this order. The bytes are looked over (size, encoding,
// control characters). One pass then builds the outline: every key with its
// place, every bracket and quote checked, every problem that can be told. What
// passed is decoded for its values, and outline and values are joined. Where
// the decoder lists other keys than the outline, every place is dropped: an
// unknown place is better than a wrong one.
package entry

import "fmt"

// Place is a position in a file. Line and Column count from 1, columns in
// characters; the zero Place is unknown.
type Place struct{ Line, Column int }

// Known reports whether the place is known.
func (p Place) Known() bool { return p.Line > 0 }

// Node is one value of a file: that of a key, or one element of an array.
type Node struct {
	Path   string // machine[3].port[0].flow, arrays counted from 0; Words is for people
	Name   string // the last name of the path; an element has its array's name
	Key    Place  // where the name stands; for an element, where it starts or the name in its [[header]]
	At     Place  // where the value starts; for a header, its bracket; for a table that only a longer name implies, Key
	Source string // the value as written, on one line, at most 80 characters, for messages
	Value  any    // string, int64, float64, bool, Date, Clock, Moment, time.Time, []*Node or *Table

	grown bool // an array that [[headers]] add to
}

// Words returns the path of the node as people read it: machine 4, port 1, flow.
func (n *Node) Words() string { return Words(n.Path) }

// Date is a calendar date without a time: 2026-11-24.
type Date struct{ Year, Month, Day int }

// String writes the date as TOML does.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// Clock is a time of day without a date: 07:32:00. A plan file has no use for
// one; it has a type so that whoever reads can refuse it.
type Clock string

// Moment is a date with a time but without an offset: 2026-11-24T07:32:00. It
// has a type for the same reason. A date and time with an offset is a time.Time.
type Moment string

// Table is a TOML table: the file itself, what stands under a header, or what
// stands in braces.
type Table struct {
	Path  string
	At    Place
	Nodes []*Node // in the order of the file

	names  map[string]*Node
	origin origin
}

// Get returns the node of that name, or nil. Names that differ in case are
// different names.
func (t *Table) Get(name string) *Node {
	if t == nil {
		return nil
	}
	return t.names[name]
}

// add puts a node at the end of the table.
func (t *Table) add(n *Node) {
	if t.names == nil {
		t.names = map[string]*Node{}
	}
	t.names[n.Name] = n
	t.Nodes = append(t.Nodes, n)
}

// Read reads the bytes of a TOML file. The name is used in problems only. When
// there are problems the table is nil. Problems come sorted by place, and the
// same bytes always give the same ones.
func Read(file string, data []byte) (*Table, Problems) {
	text, problems := look(file, data)
	if len(problems) > 0 {
		return nil, problems
	}
	out := scan(text)
	values, keys, refused := decode(text, out.good)
	problems = append(out.problems, refused...)
	if len(problems) > 0 {
		problems.Sort()
		return nil, problems
	}
	root := join(out, values, keys)
	if problems = unbounded(file, root); len(problems) > 0 {
		problems.Sort()
		return nil, problems
	}
	return root, nil
}
