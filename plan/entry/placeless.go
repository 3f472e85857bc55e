package entry

import (
	"fmt"
	"sort"
	"strings"
	"time"

	"github.com/BurntSushi/toml"
)

// placeless makes a table from decoded values alone, in the order in which the
// decoder lists the keys.
func placeless(values map[string]any, keys []toml.Key) *Table {
	order := map[string]int{}
	for i, key := range keys {
		for end := range key {
			path := strings.Join(key[:end+1], "\x00")
			if _, seen := order[path]; !seen {
				order[path] = i
			}
		}
	}
	return placelessTable("", "", values, order)
}

// placelessTable makes one table. The names that lead to it, without those of
// elements, find the order of its nodes.
func placelessTable(path, names string, values map[string]any, order map[string]int) *Table {
	table := &Table{Path: path}
	sorted := make([]string, 0, len(values))
	for name := range values {
		sorted = append(sorted, name)
	}
	sort.Slice(sorted, func(i, j int) bool {
		a, b := order[names+sorted[i]], order[names+sorted[j]]
		return a < b || a == b && sorted[i] < sorted[j]
	})
	for _, name := range sorted {
		n := &Node{Path: pathOf(path, name), Name: name}
		placelessValue(n, names+name+"\x00", values[name], order)
		table.add(n)
	}
	return table
}

// placelessValue gives a node without a place its value.
func placelessValue(n *Node, names string, value any, order map[string]int) {
	if table, isTable := value.(map[string]any); isTable {
		n.Value = placelessTable(n.Path, names, table, order)
		return
	}
	items, isArray := itemsOf(value)
	if !isArray {
		n.Value = scalarOf(value)
		n.Source = written(n.Value)
		return
	}
	list := make([]*Node, len(items))
	for i, item := range items {
		list[i] = &Node{Path: indexed(n.Path, i), Name: n.Name}
		placelessValue(list[i], names, item, order)
	}
	n.Value = list
}

// written writes a value much as a file would, where its own text is not known.
func written(value any) string {
	switch v := value.(type) {
	case string:
		return excerpt(Quote(v), sourceLength)
	case time.Time:
		return v.Format(time.RFC3339Nano)
	}
	return fmt.Sprint(value)
}
