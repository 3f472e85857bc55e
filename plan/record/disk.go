package record

import (
	"errors"
	"io"
	"io/fs"
	"os"
)

// disk is the folder of records, and all that writing one does to it.
type disk interface {
	// Names lists what is in the folder.
	Names() ([]string, error)
	// Create makes a file that is not there yet.
	Create(name string) (file, error)
	// Link gives a file a second name that nothing has yet.
	Link(from, to string) error
	// Rename gives a file another name, in the place of what has it.
	Rename(from, to string) error
	// Has reports whether something has the name.
	Has(name string) (bool, error)
	// Remove takes a name away.
	Remove(name string) error
	// Settle brings the names themselves to the disk where it can.
	Settle()
}

// file is a new file.
type file interface {
	io.WriteCloser
	Sync() error
}

// rootDisk is a folder that the operating system keeps us inside of.
type rootDisk struct{ *os.Root }

func (d rootDisk) Names() ([]string, error) {
	folder, err := d.Open(".")
	if err != nil {
		return nil, err
	}
	defer folder.Close()
	return folder.Readdirnames(-1)
}

func (d rootDisk) Create(name string) (file, error) {
	return d.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
}

func (d rootDisk) Has(name string) (bool, error) {
	_, err := d.Lstat(name)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	return err == nil, err
}

func (d rootDisk) Settle() {
	if folder, err := d.Open("."); err == nil {
		_ = folder.Sync() // not every system can
		_ = folder.Close()
	}
}
