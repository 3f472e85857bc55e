package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// writeNewFolder makes the folder of a book and writes into it. Where nothing
// comes of that, it takes the folder away again.
func (p *program) writeNewFolder(to string, f *folder) (err error) {
	if err := p.halt.begin(); err != nil {
		return err
	}
	made := missingFolders(to)
	defer func() {
		for i := len(made) - 1; err != nil && i >= 0; i-- {
			_ = os.Remove(made[i]) // a folder that holds something stays
		}
	}()
	if err := os.MkdirAll(to, 0o777); err != nil {
		return fmt.Errorf("cannot make the folder %s: %w", to, cause(err))
	}
	d, err := p.openTarget(to)
	if err != nil {
		return err
	}
	if d == nil {
		return fmt.Errorf("%s was removed meanwhile; publish again", to)
	}
	return p.writeInto(to, d, f)
}

// missingFolders are the folders on a path that are not there, each after the
// one it lies in.
func missingFolders(to string) []string {
	var list []string
	for at := filepath.Clean(to); ; at = filepath.Dir(at) {
		if _, err := os.Stat(at); err == nil || at == filepath.Dir(at) {
			return list
		}
		list = append([]string{at}, list...)
	}
}

// writeInto brings an open folder up to date, and closes it.
func (p *program) writeInto(to string, d disk, f *folder) error {
	defer d.Close()
	if len(f.foreign) > 0 {
		return wrongUse{"the book does not go to " + to + ": it holds files that dustbook did not write (" + few(f.foreign) + ")", "nothing was written; move them away, or name another folder with --to"}
	}
	if list := f.blocked(d.Tree()); len(list) > 0 {
		return wrongUse{"the book does not go to " + to + ": something is in the way of its sheets (" + few(list) + ")", "nothing was written; remove the folder " + to + " and publish again"}
	}
	if err := p.halt.begin(); err != nil {
		return err
	}
	err := f.update(d, watch{p.halt.stopping, p.progress.count("writing")})
	switch {
	case err == nil, errors.Is(err, errStopped):
		return err
	case f.placing:
		return fmt.Errorf("%s: %w; every file there is whole, old or new: publish again when that is mended", to, err)
	}
	return fmt.Errorf("%s: %w; the sheets that were there stand as they were: publish again when that is mended", to, err)
}
