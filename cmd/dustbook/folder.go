package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"dustbook/templates/book"
)

// folder is how a folder on disk stands to the book that belongs in it. Every
// list of paths is sorted.
type folder struct {
	pages map[string][]byte // the book, without its manifest
	wrote listing           // what the tool wrote there, by manifest and journal

	missing   []string // of the book, not there
	changed   []string // of the book, there with other bytes
	edited    []string // those of changed that somebody changed by hand
	surplus   []string // the tool wrote it, the book no longer has it
	kept      []string // the same, but somebody changed it by hand: it stays
	foreign   []string // the tool did not write it
	leftovers []string // temporary files of a run that was killed
	journal   bool     // a run was killed before its manifest was in place
	ours      bool     // the tool wrote to it before: it has a manifest or a journal
	manifest  []byte   // as it has to be
	listed    bool     // the manifest is there and is just that
	placing   bool     // files of the book are being put in their places
}

// errDamaged says that a manifest cannot be read.
var errDamaged = errors.New("its " + book.Manifest + " cannot be read")

// look compares a folder with the book. It reads only.
func look(tree fs.FS, made map[string][]byte) (*folder, error) {
	f := &folder{pages: maps.Clone(made), wrote: listing{}}
	delete(f.pages, book.Manifest)
	for name := range f.pages {
		if err := soundPath(name); err != nil {
			return nil, fmt.Errorf("the book cannot be written: %w", err)
		}
	}
	old, err := f.readManifests(tree)
	if err != nil {
		return nil, err
	}
	onDisk, err := f.walk(tree)
	if err != nil {
		return nil, err
	}
	if err := f.sort(tree, onDisk); err != nil {
		return nil, err
	}
	f.manifest = f.nextManifest()
	f.listed = bytes.Equal(old, f.manifest) && !f.journal
	if whole, given := made[book.Manifest]; given && !bytes.Equal(whole, list(f.pages).lines()) {
		return nil, errors.New("the book cannot be written: its manifest does not list its files")
	}
	return f, nil
}

// readManifests learns what the tool wrote into the folder before.
func (f *folder) readManifests(tree fs.FS) (old []byte, err error) {
	old, err = readPlain(tree, book.Manifest)
	if err != nil {
		return nil, err
	}
	l, whole := readListing(old)
	if !whole {
		return nil, errDamaged
	}
	f.wrote.add(l)
	data, err := readPlain(tree, journal)
	if err != nil {
		return nil, err
	}
	l, _ = readListing(data) // a run killed while it wrote this had written nothing else
	f.wrote.add(l)
	f.journal = data != nil
	f.ours = f.journal || old != nil
	return old, nil
}

// readPlain reads a file that may not be there; it follows no link.
func readPlain(tree fs.FS, name string) ([]byte, error) {
	info, err := fs.Lstat(tree, name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, errDamaged
	}
	data, err := fs.ReadFile(tree, name)
	if data == nil && err == nil {
		data = []byte{}
	}
	return data, err
}

// walk lists the files of the folder. A folder that the tool never wrote to
// is not walked: what lies at its top is foreign.
func (f *folder) walk(tree fs.FS) (files []string, err error) {
	err = fs.WalkDir(tree, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case name == "." && errors.Is(err, fs.ErrNotExist):
			return nil // the folder is yet to be made
		case err != nil:
			return err
		case name == "." || name == book.Manifest || name == journal:
		case f.isLeftover(name) && d.Type().IsRegular():
			f.leftovers = append(f.leftovers, name)
		case d.IsDir() && f.ours:
		case d.IsDir():
			f.foreign = append(f.foreign, name+"/")
			return fs.SkipDir
		case !d.Type().IsRegular():
			f.foreign = append(f.foreign, name)
		default:
			files = append(files, name)
		}
		return nil
	})
	return files, err
}

// isLeftover reports whether a file is one that a killed run was writing.
func (f *folder) isLeftover(name string) bool {
	base, temp := strings.CutPrefix(path.Base(name), temporary)
	whole := path.Join(path.Dir(name), base)
	if !f.ours || !temp {
		return temp && whole == journal // the first file a run writes
	}
	return f.pages[whole] != nil || f.wrote[whole] != nil || whole == book.Manifest || whole == journal
}

// sort puts every file of the folder and of the book into its list.
func (f *folder) sort(tree fs.FS, onDisk []string) error {
	for _, name := range onDisk {
		if f.wrote[name] == nil {
			f.foreign = append(f.foreign, name)
			continue
		}
		data, err := fs.ReadFile(tree, name)
		if err != nil {
			return err
		}
		page, ours := f.pages[name]
		switch untouched := f.wrote.wrote(name, data); {
		case ours && bytes.Equal(page, data):
		case ours:
			f.changed = append(f.changed, name)
			if !untouched {
				f.edited = append(f.edited, name)
			}
		case untouched:
			f.surplus = append(f.surplus, name)
		default:
			f.kept = append(f.kept, name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(f.pages)) {
		if !slices.Contains(onDisk, name) {
			f.missing = append(f.missing, name)
		}
	}
	slices.Sort(f.foreign)
	return nil
}

// nextManifest lists the book, and the files that stay because somebody
// changed them: they were the tool's once and must not turn foreign.
func (f *folder) nextManifest() []byte {
	l := list(f.pages)
	for _, name := range f.kept {
		l[name] = f.wrote[name]
	}
	return l.lines()
}

// same reports whether the folder is just the book.
func (f *folder) same() bool {
	return len(f.missing)+len(f.changed)+len(f.surplus)+len(f.kept)+len(f.foreign)+len(f.leftovers) == 0 && f.listed
}

// blocked names the files of the book in whose place a folder lies, or that
// need a folder where a file lies.
func (f *folder) blocked(tree fs.FS) []string {
	var list []string
	for _, name := range f.missing {
		if info, err := fs.Lstat(tree, name); err == nil && info.IsDir() {
			list = append(list, name)
		}
		for up := path.Dir(name); up != "."; up = path.Dir(up) {
			if info, err := fs.Lstat(tree, up); err == nil && !info.IsDir() {
				list = append(list, up)
			}
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}
