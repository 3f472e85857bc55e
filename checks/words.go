package checks

import (
	"strings"

	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// ownFile is the basis of what is told by the names and paths of the file.
func ownFile(what string) []source.Basis {
	return []source.Basis{{Mark: source.Given, Clause: what}}
}

// listed joins names as a sentence does: "A", "A and B", "A, B and C".
func listed(names []string) string {
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return names[0]
	default:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
}

// unique leaves out names that stood before.
func unique(names []string) []string {
	var list []string
	seen := map[string]bool{}
	for _, name := range names {
		if !seen[name] {
			seen[name] = true
			list = append(list, name)
		}
	}
	return list
}

func gateNames(gates []*shop.Gate) []string {
	var names []string
	for _, g := range gates {
		names = append(names, g.Name)
	}
	return unique(names)
}

func collectorNames(list []*shop.Collector) []string {
	var names []string
	for _, c := range list {
		names = append(names, c.Name)
	}
	return unique(names)
}

// plural picks the form of a word that a list wants.
func plural(names []string, one, many string) string {
	if len(names) == 1 {
		return one
	}
	return many
}
