package book_test

import (
	"sync"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/templates"
	"dustbook/templates/book"
)

// Whoever asks hears of every sheet once, in the end of all, and the book is
// the same.
func TestWhoeverAsksHearsOfEverySheet(t *testing.T) {
	p := planOf(t, content.Small())
	plain := bookOf(t, content.Small(), 2)
	var mu sync.Mutex
	heard, all := map[int]int{}, 0
	told, err := book.Order{Plan: p, Findings: checks.Run(p), Workers: 3, Told: func(made, of int) {
		mu.Lock()
		defer mu.Unlock()
		heard[made]++
		all = of
	}}.Make()
	if err != nil {
		t.Fatal(err)
	}
	if all < 20 || len(heard) != all {
		t.Errorf("heard of %d sheets of %d", len(heard), all)
	}
	for n, times := range heard {
		if times != 1 || n < 1 || n > all {
			t.Errorf("heard %d times of sheet %d of %d", times, n, all)
		}
	}
	if string(told[book.Manifest]) != string(plain[book.Manifest]) {
		t.Error("a book that somebody hears of is another one")
	}
}

// Another layout adds one sheet; its links hold, and its bytes are the same
// whatever the count of workers.
func TestABookWithAnotherLayout(t *testing.T) {
	p, other := planOf(t, content.Example()), planOf(t, content.Small())
	made := func(workers int) map[string][]byte {
		files, err := book.Order{Plan: p, Findings: checks.Run(p), Beside: []templates.Layout{{Plan: other, Findings: checks.Run(other)}}, Workers: workers}.Make()
		if err != nil {
			t.Fatal(err)
		}
		return files
	}
	one := made(1)
	if one["beside.html"] == nil || one["beside.csv"] == nil {
		t.Error("there is no sheet on both, or its tables are not in a file")
	}
	if string(one[book.Manifest]) != string(made(4)[book.Manifest]) {
		t.Error("the bytes depend on the count of workers")
	}
	if n := len(bookOf(t, content.Example(), 2)); len(one) != n+2 {
		t.Errorf("%d files, without the other layout %d", len(one), n)
	}
}
