package checks

import (
	"strconv"
	"strings"

	"dustbook/plan/shop"
)

// fireClasses are what the rating on an extinguisher says: how much of a fire of class A
// and of class B it puts out, and whether it suits burning metal.
type fireClasses struct {
	A, B  int
	Metal bool
}

// readLabel reads a rating as labels in the United States have it: letters with a
// number and a hyphen before A and B, with colons or blanks between. Ratings of
// other places, such as those without hyphens, count otherwise and are not read.
func readLabel(text string) (l fireClasses, ok bool) {
	words := strings.FieldsFunc(strings.ToUpper(text), func(r rune) bool { return r == ':' || r == ' ' || r == ',' })
	for _, word := range words {
		number, class, counted := strings.Cut(word, "-")
		if !counted {
			class = word
		}
		if len(class) != 1 {
			return fireClasses{}, false
		}
		n := 0
		if counted {
			var err error
			if n, err = strconv.Atoi(number); err != nil || n < 1 || n > mostOfClass {
				return fireClasses{}, false
			}
		}
		switch letter := class[0]; {
		case letter == 'A' && counted:
			l.A = n
		case letter == 'B' && counted:
			l.B = n
		case letter == 'D' && !counted:
			l.Metal = true
		case (letter == 'C' || letter == 'K') && !counted: // no number goes with these
		default:
			return fireClasses{}, false
		}
	}
	return l, len(words) > 0
}

// mostOfClass is more than any label says.
const mostOfClass = 999

// labelsOf are the labels of all extinguishers of a shop, those without one that
// can be read left out, and how many these are.
func labelsOf(s *shop.Shop) (list []readExtinguisher, unread []*shop.Extinguisher) {
	for _, e := range s.Extinguishers {
		if l, ok := readLabel(e.Rating.V); ok {
			list = append(list, readExtinguisher{e, l})
		} else {
			unread = append(unread, e)
		}
	}
	return list, unread
}

// readExtinguisher is an extinguisher with what its label says.
type readExtinguisher struct {
	*shop.Extinguisher
	classes fireClasses
}

// unreadWords says which ratings could not be read; one that is not there is
// not given.
func unreadWords(unread []*shop.Extinguisher) string {
	if list := marked(unread); list != "" {
		return say("finding-extinguisher.unread.says", list)
	}
	return say("finding-extinguisher.no-rating.says")
}

// marked are the ratings that some extinguishers carry; empty where none does.
func marked(list []*shop.Extinguisher) string {
	var ratings []string
	for _, e := range list {
		if e.Rating.Known() {
			ratings = append(ratings, e.Rating.V)
		}
	}
	return listed(firstFew(unique(ratings)))
}

// atLeastA reports whether a label has at least the class A of a text's label.
func atLeastA(l fireClasses, text string) bool {
	least, ok := readLabel(text)
	return ok && l.A >= least.A
}
