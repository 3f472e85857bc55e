package main

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"

	"dustbook/templates/book"
)

// update brings a folder from what look found to the book. First every file
// that is new or changed is written whole beside its place; a run that fails
// or is stopped until then takes all of it back. Then the files are put in
// their places, each in one step, so that a run that is killed leaves whole
// files, old or new; the journal tells the next run which ones. The manifest
// comes last.
func (f *folder) update(d disk, watch watch) error {
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
	ready, err := f.prepare(d, watch)
	if err != nil {
		f.takeBack(d, ready)
		return err
	}
	f.placing = true
	for i, name := range ready.files {
		if err := d.Rename(temporaryOf(name), name); err != nil {
			for _, left := range ready.files[i:] {
				_ = d.Remove(temporaryOf(left)) // what cannot be removed is removed by the next run
			}
			return failed("write", name, err)
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

// watch is asked while files are written whether to stop, and told how far
// that has come. Either may be left out.
type watch struct {
	stopping func() bool
	told     func(written, all int)
}

func (w watch) stop() bool { return w.stopping != nil && w.stopping() }

func (w watch) tell(written, all int) {
	if w.told != nil {
		w.told(written, all)
	}
}

// prepared is what lies beside its place so far, and the folders that were
// made for it, each after the one it lies in.
type prepared struct{ files, folders []string }

// prepare writes every file that is new or changed beside its place.
func (f *folder) prepare(d disk, watch watch) (ready prepared, err error) {
	names := slices.Sorted(slices.Values(slices.Concat(f.missing, f.changed)))
	for i, name := range names {
		if watch.stop() {
			return ready, errStopped
		}
		if err := ready.makeFolder(d, path.Dir(name)); err != nil {
			return ready, err
		}
		if err := writeTemporary(d, name, f.pages[name]); err != nil {
			return ready, failed("write", name, err)
		}
		ready.files = append(ready.files, name)
		watch.tell(i+1, len(names))
	}
	if watch.stop() {
		return ready, errStopped
	}
	return ready, nil
}

// makeFolder makes a folder and those it lies in, where they are not there.
func (r *prepared) makeFolder(d disk, name string) error {
	if name == "." {
		return nil
	}
	var new []string
	for up := name; up != "."; up = path.Dir(up) {
		if _, err := fs.Lstat(d.Tree(), up); !errors.Is(err, fs.ErrNotExist) {
			break
		}
		new = append(new, up)
	}
	if err := d.Folder(name); err != nil {
		return failed("make the folder", name, err)
	}
	slices.Reverse(new)
	r.folders = append(r.folders, new...)
	return nil
}

// takeBack removes what was prepared. What cannot be removed is removed by
// the next run, which knows it by the journal.
func (f *folder) takeBack(d disk, ready prepared) {
	left := false
	remove := func(name string) {
		if err := d.Remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
			left = true
		}
	}
	for _, name := range ready.files {
		remove(temporaryOf(name))
	}
	for _, name := range slices.Backward(ready.folders) {
		remove(name)
	}
	if !left && !f.journal {
		remove(journal)
	}
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
