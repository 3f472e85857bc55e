package checks

import (
	"strconv"
	"strings"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// english are the texts of the findings; each stands as a row in a file
// finding-….csv of the words of content.
var english = content.WordsIn(content.English)

// say is a text with what it is about in its places.
func say(key string, about ...string) string { return english.Text(key, about...) }

// sayOf is the text for a number of things: that of key.one for 1, else that
// of key.many.
func sayOf(n int, key string, about ...string) string {
	if n == 1 {
		return say(key+".one", about...)
	}
	return say(key+".many", about...)
}

// given is the basis of what the shop file tells; what says which part of it.
func given(what string) source.Basis {
	return source.Basis{Mark: source.Given, Clause: what}
}

// ownFile is the basis of what is told by the names and paths of the file.
func ownFile(what string) []source.Basis { return []source.Basis{given(what)} }

// join puts sentences one after the other; an empty one is left out.
func join(sentences ...string) string {
	var list []string
	for _, s := range sentences {
		if s != "" {
			list = append(list, s)
		}
	}
	return strings.Join(list, " ")
}

// listed joins names as a sentence does: "A", "A and B", "A, B and C".
func listed(names []string) string {
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return names[0]
	default:
		return say("finding-common.and", strings.Join(names[:n-1], ", "), names[n-1])
	}
}

// firstFew are the first three of some names and how many more there are.
func firstFew(list []string) []string {
	if len(list) > 3 {
		return append(append([]string{}, list[:3]...), say("finding-common.more", strconv.Itoa(len(list)-3)))
	}
	return list
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

// filterWords says in which state the filter is.
func filterWords(filter string) string {
	switch filter {
	case duct.Clean:
		return say("finding-common.filter.clean")
	case duct.ChangeOut:
		return say("finding-common.filter.change")
	}
	return say("finding-common.filter.none")
}
