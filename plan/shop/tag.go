package shop

import (
	"fmt"
	"regexp"
)

// tagForm is what a tag looks like: short enough for a label on a wire.
var tagForm = regexp.MustCompile(`^[A-Z]{1,2}[1-9][0-9]{0,2}$`)

// tag reads the tag of a device, which no other has.
func (s *scope) tag(field string) Field[string] {
	v := s.text(field)
	if !v.Known() {
		return v
	}
	node := s.t.Get(field)
	if !tagForm.MatchString(v.V) {
		s.wrong(node, "one or two capital letters and a number up to 999", `write "G1"`)
		return Field[string]{}
	}
	if line, taken := s.r.tags[v.V]; taken {
		s.wrong(node, fmt.Sprintf("a tag of its own: line %d gives it to another device", line), "give one of the two another tag")
		return Field[string]{}
	}
	s.r.tags[v.V] = node.At.Line
	return v
}
