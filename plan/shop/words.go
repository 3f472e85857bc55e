package shop

import (
	"strings"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// word reads a field that holds one of a group of words.
func (s *scope) word(field string) Field[string] {
	node := s.node(field)
	if node == nil {
		return defaulted(s, field, func(text string) string { return text })
	}
	v, ok := s.oneOf(field, node)
	if !ok {
		return Field[string]{}
	}
	return Field[string]{v, Stated, node.At}
}

// words reads a list of words of a group; one string is a list of one.
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
		if w, ok := s.oneOf(field, item); ok {
			list = append(list, w)
		}
	}
	return list
}

// oneOf reads one word of the field's group. A machine's kind may go by
// another name.
func (s *scope) oneOf(field string, node *entry.Node) (string, bool) {
	group := s.row(field).Of
	known := spellings[group]
	v, isText := node.Value.(string)
	if isText {
		if word, ok := wordOf[[2]string{group, v}]; ok {
			return word, true
		}
	} else if _, one := node.Value.([]*entry.Node); !one {
		v = node.Source
	}
	do := "use one of these words"
	if near := s.r.search.near("words of "+group, v, known); len(near) > 0 {
		do = "write " + orList(quoteAll(near))
	} else if group == "kind" {
		do = `write "other", and give the port's size and flow`
	}
	s.wrong(node, s.expectedWords(field), do)
	return "", false
}

// longGroups name the groups of words that are too long for a message.
var longGroups = map[string]string{"kind": "a kind of machine from the list of kinds", "elbows": "a make of elbow from the list of elbows"}

// expectedWords says what a field of words may hold.
func (s *scope) expectedWords(field string) string {
	group := s.row(field).Of
	if name, long := longGroups[group]; long {
		return name
	}
	return orList(quoteAll(wordNames(group)))
}

// strings reads a list of strings; one string is a list of one.
func (s *scope) strings(field string) []Ref {
	node := s.node(field)
	if node == nil {
		return nil
	}
	if v, ok := node.Value.(string); ok {
		return []Ref{{v, node.At}}
	}
	what, do := "a text in quotes", "write it in quotes"
	if s.row(field).Kind == "names" {
		what, do = "a name in quotes", "write the name in quotes"
	}
	items, ok := node.Value.([]*entry.Node)
	if !ok {
		s.wrong(node, what+", or a list of them", "write "+s.row(field).sample())
		return nil
	}
	var list []Ref
	for _, item := range items {
		if v, ok := s.strOr(item, what, do); ok {
			list = append(list, Ref{v, item.At})
		}
	}
	return list
}

// says is what a kind of machine brings, in words.
func (k *Kind) says() string {
	var ports, more []string
	for _, p := range k.Ports {
		if p.Standard {
			ports = append(ports, p.Name)
		} else {
			more = append(more, p.Name)
		}
	}
	text := phrase("kind throws", k.Makes, k.Waste, strings.Join(ports, ", "))
	if more != nil {
		text += phrase("kind more ports", strings.Join(more, ", "))
	}
	if k.Aliases != nil {
		text += phrase("kind aliases", orList(quoteAll(k.Aliases)))
	}
	return text
}

// says is what an elbow costs, in words.
func (e *ElbowMake) says() string {
	text := phrase("elbow loss", unit.Short(e.K90))
	if e.About != "" {
		text += "; " + e.About
	}
	return text
}

// conducting says whether a wall conducts.
func conducting(conducts bool) string {
	if conducts {
		return phrase("wall conducts")
	}
	return phrase("wall does not conduct")
}
