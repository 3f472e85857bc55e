package book_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/templates/book"
)

// What a telephone in the shop has to load, by the project's own budget: a
// sheet with its stylesheet, and the whole of the school's book.
const (
	largestSheet = 150_000
	largestBook  = 6_000_000
)

// overSize lists the sheets over a size, each with its stylesheet.
func overSize(files map[string][]byte, most int) []string {
	var over []string
	for path, data := range files {
		if size := len(data) + len(files["book.css"]); strings.HasSuffix(path, ".html") && size > most {
			over = append(over, fmt.Sprintf("%s: %d bytes with the stylesheet", path, size))
		}
	}
	return over
}

func bookSize(files map[string][]byte) int {
	sum := 0
	for _, data := range files {
		sum += len(data)
	}
	return sum
}

func TestSizes(t *testing.T) {
	p := planOf(t, content.Example())
	school, err := book.Make(p, checks.Run(p), content.ExampleNotes(), 2)
	if err != nil {
		t.Fatal(err)
	}
	if size := bookSize(school); size > largestBook {
		t.Errorf("the school's book is %d bytes, more than %d", size, largestBook)
	}
	if len(school["book.css"]) == 0 {
		t.Error("no stylesheet to count")
	}
	for name, files := range map[string]map[string][]byte{
		"school":  school,
		"small":   bookOf(t, content.Small(), 2),
		"starter": bookOf(t, content.Starter(), 2),
		"hall":    bookOf(t, []byte(hallText(t)), 2),
		"works":   bookOf(t, worksText(t), 2),
	} {
		for _, over := range overSize(files, largestSheet) {
			t.Errorf("%s: %s, more than %d", name, over, largestSheet)
		}
	}
}

// worksText is the shop file of the works: twenty-four machines.
func worksText(t testing.TB) []byte {
	t.Helper()
	text, err := os.ReadFile("../drawing/testdata/works.toml")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// The count takes the stylesheet in, and reports a sheet one byte over.
func TestOverSize(t *testing.T) {
	files := map[string][]byte{"book.css": make([]byte, 40), "a.html": make([]byte, 60), "b.html": make([]byte, 61), "plan.png": make([]byte, 500)}
	if over := overSize(files, 100); len(over) != 1 || !strings.HasPrefix(over[0], "b.html: 101 ") {
		t.Errorf("over 100 bytes: %v", over)
	}
	if size := bookSize(files); size != 661 {
		t.Errorf("the book is %d bytes", size)
	}
}
