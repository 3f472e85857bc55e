package record

import (
	"fmt"
	"path"
	"regexp"
	"slices"
	"strconv"

	"dustbook/plan/entry"
)

// mostNumber is the highest number of a record of one kind and day.
const mostNumber = 9999

// fileName is a record's file name.
func fileName(day entry.Date, kind string, number int) string {
	return fmt.Sprintf("%s-%s-%d.toml", day, kind, number)
}

// named is what a file name says.
type named struct {
	date, kind string
	number     int
}

var nameForm = regexp.MustCompile(`^([0-9]{4}-[0-9]{2}-[0-9]{2})-([a-z]+)-([1-9][0-9]{0,3})\.toml$`)

// readName reads a file name of the form DATE-KIND-N.toml.
func readName(name string) (named, bool) {
	m := nameForm.FindStringSubmatch(name)
	if m == nil || !slices.Contains(wordsOf("record kind"), m[2]) {
		return named{}, false
	}
	_, exists := dateIn(m[1])
	number, err := strconv.Atoi(m[3])
	return named{m[1], m[2], number}, exists && err == nil
}

// order is what file names are sorted by: as they stand, but for the number,
// which counts by its size.
func order(name string) string {
	n, ok := readName(name)
	if !ok {
		return name
	}
	return fmt.Sprintf("%s-%s-%04d.toml", n.date, n.kind, n.number)
}

// nextNumber is the number after the highest that a record of the kind and
// day has.
func nextNumber(names []string, day entry.Date, kind string) int {
	highest := 0
	for _, name := range names {
		if n, ok := readName(name); ok && n.date == day.String() && n.kind == kind {
			highest = max(highest, n.number)
		}
	}
	return highest + 1
}

// shown is a file of the folder as messages name it.
func shown(name string) string {
	if name == "" {
		return ""
	}
	return path.Join(Folder, name)
}
