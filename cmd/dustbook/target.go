package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// place is a folder that a book must not be written over.
type place struct{ path, called string }

// mayWrite refuses a folder that a book must not go to: a link, something
// that is no folder, one that holds the shop or the user's own things, and
// one that a shop keeps other things in. The folder of a shop is empty for the
// example.
func (p *program) mayWrite(to string, shops ...string) error {
	refuse := func(why string) error {
		return wrongUse{"the book does not go to " + to + ": " + why, "nothing was written; name a new or empty folder with --to"}
	}
	info, err := os.Lstat(filepath.Clean(to))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		info = nil
	case err != nil:
		return refuse("it cannot be looked at, " + cause(err).Error())
	case info.Mode()&fs.ModeSymlink != 0:
		return refuse("it is a link")
	case !info.IsDir():
		return refuse("it is no folder")
	}
	if whole, err := filepath.Abs(to); err == nil && filepath.Dir(whole) == whole {
		return refuse("it is the root of the disk")
	}
	if info != nil {
		for _, at := range p.guarded(shops) {
			if same, err := holds(info, at.path); err != nil {
				return err
			} else if same {
				return refuse("it is or holds " + at.called)
			}
		}
	}
	for _, shop := range shops {
		if err := inOwnFolder(to, shop, refuse); err != nil {
			return err
		}
	}
	return nil
}

// inOwnFolder refuses a folder that lies in one that a shop keeps for its own
// files.
func inOwnFolder(to, shop string, refuse func(why string) error) error {
	if shop == "" {
		return nil
	}
	for _, name := range startFolders {
		own := filepath.Join(shop, name)
		if kept, err := os.Stat(own); err == nil {
			if inside, err := holds(kept, to); err != nil {
				return err
			} else if inside {
				return refuse(own + " is for the shop's own files")
			}
		}
	}
	return nil
}

// guarded lists what must not lie in the folder of a book.
func (p *program) guarded(shops []string) []place {
	list := []place{{".", "the folder you are in"}}
	if home, err := p.home(); err == nil && home != "" {
		list = append(list, place{home, "your home folder"})
	}
	for i, shop := range shops {
		switch {
		case shop == "":
		case i == 0:
			list = append(list, place{shop, "the folder of the shop file"})
		default:
			list = append(list, place{shop, "the folder of the other layout"})
		}
	}
	return list
}

// holds reports whether a folder is a path or one of the folders above it, as
// the path is written and as its links lead.
func holds(folder fs.FileInfo, path string) (bool, error) {
	whole, err := filepath.Abs(path)
	if err != nil {
		return false, fmt.Errorf("cannot look at %s: %w", path, cause(err))
	}
	ways := []string{whole}
	if real, err := filepath.EvalSymlinks(whole); err == nil && real != whole {
		ways = append(ways, real)
	}
	for _, at := range ways {
		for {
			if info, err := os.Stat(at); err == nil && os.SameFile(info, folder) {
				return true, nil
			}
			up := filepath.Dir(at)
			if up == at {
				break
			}
			at = up
		}
	}
	return false, nil
}
