package main

import (
	"fmt"
	"maps"
	"path"
	"slices"

	"dustbook/templates/book"
)

// update brings a folder from what look found to the book. Every file is
// replaced in one step, so that a run that is killed leaves whole files, old
// or new; the journal tells the next run which ones. The manifest comes last.
func (f *folder) update(d disk) error {
	if f.same() || f.settled() {
		return nil
	}
	for _, name := range f.leftovers {
		if err := d.Remove(name); err != nil {
			return failed("remove", name, err)
		}
	}
	if err := f.openJournal(d); err != nil {
		return err
	}
	for _, name := range slices.Sorted(slices.Values(slices.Concat(f.missing, f.changed))) {
		if err := f.writePage(d, name); err != nil {
			return err
		}
	}
	if err := f.clear(d); err != nil {
		return err
	}
	if err := writeWhole(d, book.Manifest, f.manifest); err != nil {
		return failed("write", book.Manifest, err)
	}
	if err := d.Remove(journal); err != nil {
		return failed("remove", journal, err)
	}
	return nil
}

// settled reports whether nothing has to be written, though files that were
// changed by hand stay.
func (f *folder) settled() bool {
	return len(f.missing)+len(f.changed)+len(f.surplus)+len(f.leftovers) == 0 && f.listed
}

// openJournal lists what may be in the folder from now on: what was there,
// and what will be.
func (f *folder) openJournal(d disk) error {
	all := list(f.pages)
	all.add(f.wrote)
	if err := writeWhole(d, journal, all.lines()); err != nil {
		return failed("write", journal, err)
	}
	return nil
}

func (f *folder) writePage(d disk, name string) error {
	if up := path.Dir(name); up != "." {
		if err := d.Folder(up); err != nil {
			return failed("make the folder", up, err)
		}
	}
	if err := writeWhole(d, name, f.pages[name]); err != nil {
		return failed("write", name, err)
	}
	return nil
}

// clear removes what the book no longer has, and the folders that are empty
// for it, the deepest first.
func (f *folder) clear(d disk) error {
	emptied := map[string]bool{}
	for _, name := range f.surplus {
		if err := d.Remove(name); err != nil {
			return failed("remove", name, err)
		}
		for up := path.Dir(name); up != "."; up = path.Dir(up) {
			emptied[up] = true
		}
	}
	for _, name := range slices.Backward(slices.Sorted(maps.Keys(emptied))) {
		_ = d.Remove(name) // one that still holds something stays
	}
	return nil
}

// failed says what could not be done to which file, and why.
func failed(what, name string, err error) error {
	return fmt.Errorf("cannot %s %s: %w", what, name, cause(err))
}
