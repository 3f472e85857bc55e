package entry

import (
	"fmt"
	"strconv"
)

// Bounds on what a file may nest. They keep reading quick whatever is fed in;
// a plan file stays far below them.
const (
	MaxDepth     = 32  // brackets open at a time
	MaxParts     = 8   // names in one dotted key
	MaxPathNames = 12  // names from the top of the file to a value
	MaxPathBytes = 256 // bytes of these names together
)

// origin tells how a table came about, which decides who may add to it.
type origin int

const (
	implied origin = iota // by a longer header: a header of its own may follow
	headed                // by its own header
	dotted                // by a dotted key: other dotted keys of the section may add to it
	inline                // in braces: closed at the brace
)

// outline is a file without its values: every key, in the order of the file,
// with its place; and what is wrong with the way they are written.
type outline struct {
	*text
	root     *Table
	keys     [][]string // as the decoder lists them
	problems Problems
	good     int // everything before this byte is free of problems

	broken  bool // something that is no TOML was found
	limited bool // something that nests too far was found
	halted  bool // reading on would be too costly or no help
	here    *Table
	prefix  []string // the names that lead here
	entryAt int      // where the entry being read begins
}

// part is one name of a dotted key.
type part struct {
	name  string
	place Place
}

// namesOf returns the names of the parts after those that lead to them.
func namesOf(before []string, parts []part) []string {
	names := append(make([]string, 0, len(before)+len(parts)), before...)
	for _, p := range parts {
		names = append(names, p.name)
	}
	return names
}

// report adds a problem to the list.
func (o *outline) report(at Place, read, expected, do string) {
	if o.halted {
		return
	}
	o.good = min(o.good, o.entryAt)
	o.problems = append(o.problems, Problem{File: o.file, Place: at, Read: read, Expected: expected, Do: do})
	o.halted = len(o.problems) >= mostProblems
}

// again reports a name that is given already.
func (o *outline) again(at Place, read string, first *Node, do string) {
	o.report(at, read, fmt.Sprintf("each name once; it is given first at line %d, column %d", first.Key.Line, first.Key.Column), do)
}

// shut reports a name within one that holds a value or a complete table.
func (o *outline) shut(at Place, read string, first *Node) {
	name := pathName(first.Name)
	o.report(at, read, fmt.Sprintf("a table that may still be added to; %s is given in full at line %d, column %d",
		name, first.Key.Line, first.Key.Column), "write it where "+name+" is given, or use another name")
}

// within refuses a path that is too long to be a plan's.
func (o *outline) within(names []string, at Place) bool {
	bytes := 0
	for _, name := range names {
		bytes += len(name)
	}
	if len(names) <= MaxPathNames && bytes <= MaxPathBytes {
		return true
	}
	o.report(at, fmt.Sprintf("%d names of %d bytes one inside the other", len(names), bytes),
		fmt.Sprintf("at most %d names of %d bytes together", MaxPathNames, MaxPathBytes), "use fewer or shorter names")
	o.limited, o.halted = true, true
	return false
}

// header goes to the table of a [header], or to a new table of the array of a
// [[header]]. Where the name is taken the entries that follow are read and left
// out.
func (o *outline) header(parts []part, array bool, at Place, source string) {
	o.prefix = namesOf(nil, parts)
	o.keys = append(o.keys, o.prefix)
	last := parts[len(parts)-1]
	o.here = &Table{At: at, origin: headed}
	above, taken := o.descend(o.root, parts[:len(parts)-1], implied)
	if taken != nil {
		o.shut(last.place, source, taken)
		return
	}
	n := above.Get(last.name)
	if n == nil {
		n = &Node{Path: pathOf(above.Path, last.name), Name: last.name, Key: last.place, At: at, Source: source, grown: array}
		above.add(n)
		if array {
			n.Value = []*Node{}
		} else {
			o.here.Path, n.Value = n.Path, o.here
			return
		}
	}
	if array && n.grown {
		o.grow(n, last, at, source)
		return
	}
	table, isTable := n.Value.(*Table)
	if !array && isTable && table.origin == implied {
		table.origin, table.At, o.here = headed, at, table
		n.Key, n.At, n.Source = last.place, at, source
		return
	}
	o.again(last.place, source, n, headerAdvice(n, last.name, array))
}

// headerAdvice says what to do about a header whose name is taken.
func headerAdvice(n *Node, name string, array bool) string {
	name = pathName(name)
	table, isTable := n.Value.(*Table)
	switch {
	case n.grown:
		return "write [[ ]] round the name as there, for one more of them"
	case isTable && table.origin == headed && array:
		return "write [[ ]] round the name there too, if there are several of them"
	case isTable && table.origin == headed:
		return "put the entries of both under one header; if there are several of them, write [[ ]] round the name in both places"
	case isTable && table.origin == implied:
		return "give " + name + " before what stands within it"
	}
	return "use another name, or give all of " + name + " in one place"
}

// grow adds one table to an array of tables.
func (o *outline) grow(array *Node, last part, at Place, source string) {
	items := array.Value.([]*Node)
	o.here.Path = indexed(array.Path, len(items))
	array.Value = append(items, &Node{Path: o.here.Path, Name: array.Name, Key: last.place, At: at, Source: source, Value: o.here})
}

// indexed writes the path of one element of an array.
func indexed(path string, index int) string { return path + "[" + strconv.Itoa(index) + "]" }

// plant adds the node of a key to a table. A name that is taken is reported,
// and the node returned belongs to no table.
func (o *outline) plant(into *Table, parts []part) *Node {
	last := parts[len(parts)-1]
	n := &Node{Name: last.name, Key: last.place}
	table, taken := o.descend(into, parts[:len(parts)-1], dotted)
	if taken != nil {
		o.shut(last.place, "a name within "+pathName(taken.Name), taken)
		return n
	}
	n.Path = pathOf(table.Path, last.name)
	if first := table.Get(last.name); first != nil {
		o.again(last.place, pathName(last.name)+" again", first, "take one of the two away, or change its name")
		return n
	}
	table.add(n)
	return n
}

// descend walks from a table along the names, making the tables that are not
// there. It returns the node in the way where a name leads to no table that
// may be added to.
func (o *outline) descend(from *Table, parts []part, as origin) (*Table, *Node) {
	for _, p := range parts {
		n := from.Get(p.name)
		if n == nil {
			path := pathOf(from.Path, p.name)
			n = &Node{Path: path, Name: p.name, Key: p.place, At: p.place, Source: pathName(p.name),
				Value: &Table{Path: path, At: p.place, origin: as}}
			from.add(n)
		}
		next := open(n, as)
		if next == nil {
			return nil, n
		}
		from = next
	}
	return from, nil
}

// open returns the table behind a node where one of that origin may add to it:
// dotted keys only to what dotted keys made, headers to all but braces.
func open(n *Node, as origin) *Table {
	table, isTable := n.Value.(*Table)
	if items, isArray := n.Value.([]*Node); isArray && n.grown && as == implied {
		table, isTable = items[len(items)-1].Value.(*Table)
	}
	switch {
	case !isTable || table.origin == inline:
		return nil
	case as == dotted && table.origin != dotted:
		return nil
	}
	return table
}
