package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"dustbook/checks"
	"dustbook/plan/entry"
	"dustbook/templates/book"
)

// publish makes the whole book, then brings its folder up to date.
func (p *program) publish(c *call) error {
	asOf, err := c.asOf(entry.Date{})
	if err != nil {
		return err
	}
	l, err := p.load(c, asOf)
	other, err := p.loadOther(c, l, asOf, err)
	if l == nil {
		return err
	}
	own := l.openNotes()
	defer own.Close()
	if err := l.withNotes(err, own); err != nil {
		return err
	}
	to := target(c, l)
	if err := p.mayWrite(to, folders(l, other)...); err != nil {
		return err
	}
	if !c.has("check") {
		p.halt.will(leaves(to))
	}
	pages, err := p.makeBook(l, other, own)
	if err != nil {
		return err
	}
	if c.has("check") {
		return p.checkBook(to, pages)
	}
	return p.writeBook(to, pages)
}

// makeBook makes the whole book of a shop, with another layout beside it where
// one is named.
func (p *program) makeBook(l, other *loaded, own *notes) (map[string][]byte, error) {
	p.progress.step("checking")
	order := book.Order{Plan: l.plan, Findings: checks.Run(l.plan), Beside: layouts(other), Notes: own.files, Workers: runtime.GOMAXPROCS(0), Told: p.progress.count("sheets")}
	if len(l.plan.Shop.Unsized(nil)) > 0 {
		p.progress.step("choosing") // before all is laid out
	} else {
		p.progress.step("laying-out")
	}
	pages, err := p.book(order)
	var wrong entry.Problems
	switch {
	case errors.As(err, &wrong):
		return nil, l.inFolder(wrong)
	case err != nil:
		return nil, fmt.Errorf("the book cannot be made: %w; please report this line together with the shop file", err)
	case len(pages) == 0:
		return nil, errors.New("the book came out empty, so nothing was written; please report this line together with the shop file")
	}
	return pages, nil
}

// folders are those of the shops that a book is made from; that of the
// example is empty.
func folders(l, other *loaded) []string {
	if other == nil {
		return []string{l.folder()}
	}
	return []string{l.folder(), other.folder()}
}

// leaves says what stands in the folder of a book when the run is stopped.
func leaves(to string) string {
	if _, err := os.Lstat(filepath.Join(to, book.Manifest)); err == nil {
		return "stopped; the book that was there stands as it was"
	}
	return "stopped; nothing was written"
}

// target is where the book goes.
func target(c *call, l *loaded) string {
	switch to, given := c.flags["to"]; {
	case given:
		return filepath.Clean(to)
	case l.path == "":
		return "public"
	}
	return filepath.Join(l.folder(), "book")
}

// openTarget opens the folder of a book; nil where it is not there yet.
func (p *program) openTarget(to string) (disk, error) {
	named, err := os.Lstat(to)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("cannot look at %s: %w", to, cause(err))
	}
	d, err := p.open(to)
	if err != nil {
		return nil, fmt.Errorf("cannot open %s: %w", to, cause(err))
	}
	opened, err := fs.Stat(d.Tree(), ".")
	if err != nil || !os.SameFile(named, opened) {
		_ = d.Close()
		return nil, fmt.Errorf("%s was changed for another folder meanwhile; publish again", to)
	}
	return d, nil
}

// compare opens a folder and looks at how it stands to the book. The disk is
// nil where the folder is not there.
func (p *program) compare(to string, pages map[string][]byte) (disk, *folder, error) {
	d, err := p.openTarget(to)
	if err != nil {
		return nil, nil, err
	}
	tree := os.DirFS(to)
	if d != nil {
		tree = d.Tree()
	}
	f, err := look(tree, pages)
	if err == nil {
		return d, f, nil
	}
	if d != nil {
		_ = d.Close()
	}
	if errors.Is(err, errDamaged) {
		return nil, nil, wrongUse{"the book does not go to " + to + ": " + err.Error(), "nothing was written; remove the folder, or name another with --to"}
	}
	return nil, nil, fmt.Errorf("%s: %w", to, err)
}

// checkBook lists what in the folder differs from the book and writes
// nothing.
func (p *program) checkBook(to string, pages map[string][]byte) error {
	d, f, err := p.compare(to, pages)
	if err != nil {
		return err
	}
	if d != nil {
		defer d.Close()
	}
	if f.same() {
		p.print("%s is just the book: %s", to, count(len(f.pages), "file"))
		return nil
	}
	n := 0
	each := func(word string, names []string) {
		for _, name := range names {
			p.print("%-9s %s", word, filepath.Join(to, name))
		}
		n += len(names)
	}
	each("missing", f.missing)
	each("changed", f.changed)
	each("surplus", f.surplus)
	each("by hand", f.kept)
	each("foreign", f.foreign)
	each("left over", f.leftovers)
	if !f.listed && n == 0 {
		p.print("%s holds the sheets of the book, but its manifest is not finished", to)
		return errDiffers
	}
	p.print("%s: %s not as in the book", to, count(n, "file"))
	return errDiffers
}

// writeBook brings the folder up to date and says what it did.
func (p *program) writeBook(to string, pages map[string][]byte) error {
	p.progress.step("comparing", to)
	d, f, err := p.compare(to, pages)
	if err != nil {
		return err
	}
	if d != nil {
		err = p.writeInto(to, d, f)
	} else {
		err = p.writeNewFolder(to, f)
	}
	if err != nil {
		return err
	}
	for _, name := range f.edited {
		p.say(filepath.Join(to, name) + " was changed by hand and is written anew; the book comes from the shop file")
	}
	for _, name := range f.kept {
		p.say(filepath.Join(to, name) + " was changed by hand and is kept, though the book no longer has it; remove it when you no longer need it")
	}
	p.print("%s: %s; %d new, %d changed, %d removed", to, count(len(f.pages), "file"), len(f.missing), len(f.changed), len(f.surplus))
	p.print("open %s", filepath.Join(to, front(f.pages)))
	return nil
}

// front is the sheet to open first; empty where the book has none by the name
// that browsers look for.
func front(pages map[string][]byte) string {
	if _, ok := pages["index.html"]; ok {
		return "index.html"
	}
	return ""
}
