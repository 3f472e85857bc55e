package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"dustbook/content"
	"dustbook/plan/entry"
)

// startFolders are the empty folders of a new shop.
var startFolders = []string{"records", "notes"}

// start writes a starter shop folder.
func (p *program) start(c *call) error {
	if err := mayStart(c.shop); err != nil {
		return err
	}
	if err := p.halt.begin(); err != nil {
		return err
	}
	if err := p.writeStarter(c.shop); err != nil {
		return err
	}
	name := quotedPath(c.shop)
	p.print("%s is written, with the folders records and notes beside it", filepath.Join(c.shop, shopFile))
	p.print("")
	p.print("next:")
	p.print("  put your own machines, ducts and collector into %s; keep the folder in git", shopFile)
	p.print("  dustbook size %s       what air each machine gets", name)
	p.print("  dustbook inspect %s    what to mend, with file and line", name)
	p.print("  dustbook publish %s    the book", name)
	return nil
}

// quotedPath is a path as a person types it.
func quotedPath(path string) string {
	for _, r := range path {
		if r == ' ' || r == '\'' || r == '"' {
			return entry.Quote(path)
		}
	}
	return path
}

// mayStart refuses a folder in which something is in the way.
func mayStart(dir string) error {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return wrongUse{dir + " cannot be looked at, " + cause(err).Error(), "name another folder"}
	case !info.IsDir():
		return wrongUse{dir + " is there already and is no folder", "name another folder"}
	}
	if _, err := os.Lstat(filepath.Join(dir, shopFile)); !errors.Is(err, fs.ErrNotExist) {
		return wrongUse{dir + " already has a " + shopFile, "nothing was written; name another folder"}
	}
	for _, name := range startFolders {
		if info, err := os.Stat(filepath.Join(dir, name)); err == nil && !info.IsDir() {
			return wrongUse{filepath.Join(dir, name) + " is there already and is no folder", "nothing was written; name another folder"}
		}
	}
	return nil
}

// writeStarter makes the folders and the file, or takes back what it made.
func (p *program) writeStarter(dir string) (err error) {
	var made []string
	defer func() {
		for i := len(made) - 1; err != nil && i >= 0; i-- {
			_ = os.Remove(made[i]) // a folder that is not empty stays
		}
	}()
	for _, folder := range starterFolders(dir) {
		if err := os.Mkdir(folder, 0o777); err == nil {
			made = append(made, folder)
		} else if !errors.Is(err, fs.ErrExist) {
			return fmt.Errorf("cannot make the folder %s: %w", folder, cause(err))
		}
	}
	d, err := p.open(dir)
	if err != nil {
		return fmt.Errorf("cannot open %s: %w", dir, cause(err))
	}
	defer d.Close()
	if err := writeNew(d, shopFile, content.Starter()); err != nil {
		if errors.Is(err, fs.ErrExist) {
			return wrongUse{dir + " already has a " + shopFile, "nothing was written; name another folder"}
		}
		return fmt.Errorf("cannot write %s: %w", filepath.Join(dir, shopFile), cause(err))
	}
	return nil
}

// starterFolders lists the folders to make, each after the one it lies in.
func starterFolders(dir string) []string {
	list := missingFolders(dir)
	for _, name := range startFolders {
		list = append(list, filepath.Join(dir, name))
	}
	return list
}
