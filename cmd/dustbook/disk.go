package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
)

// disk is the folder of a book, and all that is ever done to it. Paths have
// forward slashes and never lead out of the folder.
type disk interface {
	// Tree is the folder for reading. It follows no link out of the folder.
	Tree() fs.FS
	// Create makes a file that is not there yet.
	Create(name string) (io.WriteCloser, error)
	// Rename puts a file in the place of another in one step.
	Rename(from, to string) error
	// Place gives a file its name in one step, where nothing has that name.
	Place(from, to string) error
	// Folder makes a folder and those it lies in.
	Folder(name string) error
	// Remove takes away a file or an empty folder.
	Remove(name string) error
	Close() error
}

// rootDisk is a folder that the operating system keeps us inside of.
type rootDisk struct{ *os.Root }

// openDisk opens a folder that is there.
func openDisk(folder string) (disk, error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	return rootDisk{root}, nil
}

func (d rootDisk) Tree() fs.FS { return d.FS() }

func (d rootDisk) Create(name string) (io.WriteCloser, error) {
	return d.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
}

func (d rootDisk) Folder(name string) error { return d.MkdirAll(name, 0o777) }

func (d rootDisk) Place(from, to string) error {
	err := d.Link(from, to)
	if err == nil {
		return d.Remove(from)
	}
	if errors.Is(err, fs.ErrExist) {
		return err
	}
	// a disk without links, as a memory stick
	if _, err := d.Lstat(to); !errors.Is(err, fs.ErrNotExist) {
		return &fs.PathError{Op: "place", Path: to, Err: fs.ErrExist}
	}
	return d.Rename(from, to)
}

// temporary begins the name of a file that is not whole yet.
const temporary = ".tmp-"

// temporaryOf is the name under which a file is written before it is whole.
func temporaryOf(name string) string {
	return path.Join(path.Dir(name), temporary+path.Base(name))
}

// writeWhole puts a file in place in one step: at every moment the old one or
// the new one is there, never a part.
func writeWhole(d disk, name string, data []byte) error {
	return writeThen(d, name, data, d.Rename)
}

// writeNew is writeWhole where nothing may have the name yet.
func writeNew(d disk, name string, data []byte) error {
	return writeThen(d, name, data, d.Place)
}

func writeThen(d disk, name string, data []byte, settle func(from, to string) error) error {
	if err := writeTemporary(d, name, data); err != nil {
		return err
	}
	temp := temporaryOf(name)
	err := settle(temp, name)
	if err != nil {
		_ = d.Remove(temp) // what cannot be removed is removed by the next run
	}
	return err
}

// writeTemporary writes a file whole beside its place, or not at all.
func writeTemporary(d disk, name string, data []byte) error {
	temp := temporaryOf(name)
	file, err := d.Create(temp)
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	if err = errors.Join(err, file.Close()); err != nil {
		_ = d.Remove(temp) // what cannot be removed is removed by the next run
	}
	return err
}
