package entry

import (
	"errors"
	"math"
	"slices"
	"strings"
	"time"

	"github.com/BurntSushi/toml"
)

// decode reads the values of the part of a text that the outline found good,
// and lists the keys in the order of the text. What the decoder refuses comes
// back as a problem.
func decode(t *text, good int) (values map[string]any, keys []toml.Key, problems Problems) {
	defer func() {
		if recover() != nil { // the decoder's own failure
			values, keys = nil, nil
			problems = Problems{{File: t.file, Read: "a text that cannot be decoded", Expected: "a TOML file",
				Do: "take away what you wrote last, and try again"}}
		}
	}()
	found, err := toml.Decode(t.body[:good], &values)
	if err != nil {
		return nil, nil, Problems{refusal(t, err)}
	}
	return values, found.Keys(), nil
}

// refusal writes what the decoder refused, in our words and at our places: its
// line is not always right, its byte is.
func refusal(t *text, err error) Problem {
	p := Problem{File: t.file, Expected: "what the TOML rules allow here", Do: "write the line again, more simply"}
	var refused toml.ParseError
	if !errors.As(err, &refused) {
		p.Read = excerpt(err.Error(), sourceLength)
		return p
	}
	start := max(0, min(refused.Position.Start, len(t.body)))
	p.Place = t.place(start)
	line := t.body[t.lineStart(start):t.lineEnd(start)]
	p.Read = excerpt(line, sourceLength)
	if strings.Contains(refused.Message, "already") {
		p.Expected, p.Do = "each name once", "take the name away here, or where it is given first"
		return p
	}
	if refused.Message != "" {
		p.Expected += " (" + excerpt(refused.Message, sourceLength) + ")"
	}
	return p
}

// join gives the nodes of an outline their values. Where outline and decoder
// do not agree the table is made from the values alone, without places.
func join(o *outline, values map[string]any, keys []toml.Key) *Table {
	if sameKeys(o.keys, keys) && fill(o.root, values) {
		return o.root
	}
	return placeless(values, keys)
}

// sameKeys compares the keys of the outline with those of the decoder.
func sameKeys(ours [][]string, theirs []toml.Key) bool {
	return slices.EqualFunc(ours, theirs, func(a []string, b toml.Key) bool { return slices.Equal(a, b) })
}

// fill gives the nodes of a table their values. It reports whether both have
// the same shape.
func fill(t *Table, values map[string]any) bool {
	if len(t.Nodes) != len(values) {
		return false
	}
	for _, n := range t.Nodes {
		value, there := values[n.Name]
		if !there || !fillNode(n, value) {
			return false
		}
	}
	return true
}

// fillNode gives one node its value.
func fillNode(n *Node, value any) bool {
	switch held := n.Value.(type) {
	case *Table:
		table, isTable := value.(map[string]any)
		return isTable && fill(held, table)
	case []*Node:
		items, isArray := itemsOf(value)
		if !isArray || len(items) != len(held) {
			return false
		}
		for i, item := range items {
			if !fillNode(held[i], item) {
				return false
			}
		}
		return true
	}
	n.Value = scalarOf(value)
	return n.Value != nil
}

// itemsOf returns the elements of a decoded array of either kind.
func itemsOf(value any) ([]any, bool) {
	switch items := value.(type) {
	case []any:
		return items, true
	case []map[string]any:
		list := make([]any, len(items))
		for i, item := range items {
			list[i] = item
		}
		return list, true
	}
	return nil, false
}

// scalarOf turns a decoded value into one of this package, nil when it is none.
func scalarOf(value any) any {
	switch v := value.(type) {
	case string, int64, float64, bool:
		return v
	case time.Time:
		switch v.Location().String() {
		case "date-local":
			return Date{v.Year(), int(v.Month()), v.Day()}
		case "time-local":
			return Clock(v.Format("15:04:05.999999999"))
		case "datetime-local":
			return Moment(v.Format("2006-01-02T15:04:05.999999999"))
		}
		_, offset := v.Zone()
		return v.In(time.FixedZone("", offset)) // without the name that this machine gives the offset
	}
	return nil
}

// unbounded lists the numbers that are none: nan and inf.
func unbounded(file string, table *Table) Problems {
	var problems Problems
	var visit func(n *Node)
	visit = func(n *Node) {
		switch v := n.Value.(type) {
		case *Table:
			for _, inner := range v.Nodes {
				visit(inner)
			}
		case []*Node:
			for _, item := range v {
				visit(item)
			}
		case float64:
			if (math.IsNaN(v) || math.IsInf(v, 0)) && len(problems) < mostProblems {
				problems = append(problems, Problem{File: file, Place: n.At, Read: n.Source, Expected: "a finite number",
					Do: "write the number, or take the line away"})
			}
		}
	}
	for _, n := range table.Nodes {
		visit(n)
	}
	return problems
}
