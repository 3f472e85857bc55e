package record

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"dustbook/plan/entry"
)

// Write makes one new file of a record in the folder of records and returns
// its name, DATE-KIND-N.toml with the next number that is free. It changes no
// file. At every moment the folder holds the whole record or none; the number
// is taken by exclusive creation, so that any number of writers get one file
// each.
//
// A record that reading would refuse is not written; the error is then of
// type entry.Problems, without places. Any other error is the disk's, and what
// was begun is removed.
func Write(dir *os.Root, r *Record) (name string, err error) { return write(rootDisk{dir}, r) }

func write(d disk, r *Record) (string, error) {
	text := r.TOML()
	if _, problems := Read("", text); len(problems) > 0 {
		for i := range problems {
			problems[i].Place = entry.Place{}
		}
		return "", problems
	}
	w := &writing{disk: d, record: r}
	if err := w.run(text); err != nil {
		return "", w.failed(err)
	}
	d.Settle()
	return w.name, nil
}

// writing is one record on its way to the disk.
type writing struct {
	disk
	record *Record
	name   string   // the file name that is tried
	left   []string // what could not be removed
}

func (w *writing) run(text []byte) error {
	names, err := w.Names()
	if err != nil {
		return err
	}
	number := nextNumber(names, w.record.Date, w.record.Kind)
	w.name = fileName(w.record.Date, w.record.Kind, number)
	draft := draftPrefix + rand.Text()
	f, err := w.Create(draft)
	if err != nil {
		return err
	}
	defer w.clear(draft)
	if err := fill(f, text); err != nil {
		return err
	}
	for ; number <= mostNumber; number++ {
		w.name = fileName(w.record.Date, w.record.Kind, number)
		if err := w.place(draft); !errors.Is(err, fs.ErrExist) {
			return err
		}
	}
	return errNumbers
}

// errNumbers is that a day has all the records of a kind it can have.
var errNumbers = fmt.Errorf("every number up to %d is taken", mostNumber)

// Names of files that are no records: the text of a record before it has its
// name, and what says that someone is about to take a name.
const (
	draftPrefix = ".tmp-record-"
	claimPrefix = ".tmp-claim-"
)

// fill puts the text into a new file, and the file on the disk.
func fill(f file, text []byte) error {
	_, err := f.Write(text)
	if err == nil {
		err = f.Sync()
	}
	if shut := f.Close(); err == nil {
		err = shut
	}
	return err
}

// place gives the draft its name in one step, where nothing has that name.
func (w *writing) place(draft string) error {
	err := w.Link(draft, w.name)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	return w.placeByClaim(draft)
}

// placeByClaim does the same on a disk without links, such as a memory stick:
// whoever makes the claim may take the name. A claim that stays behind when a
// writer is ended costs a number and nothing else.
func (w *writing) placeByClaim(draft string) error {
	claim := claimPrefix + w.name
	f, err := w.Create(claim)
	if err != nil {
		return err
	}
	defer w.clear(claim)
	if err := f.Close(); err != nil {
		return err
	}
	taken, err := w.Has(w.name)
	switch {
	case err != nil:
		return err
	case taken:
		return fs.ErrExist
	}
	return w.Rename(draft, w.name)
}

// clear removes a file that may be gone already.
func (w *writing) clear(name string) {
	if err := w.Remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
		w.left = append(w.left, name)
	}
}

// failed says what could not be written and why, without the path of the
// machine.
func (w *writing) failed(err error) error {
	name := w.name
	if name == "" {
		name = "a record"
	}
	tail := "nothing was written"
	if len(w.left) > 0 {
		tail = "delete what was begun: " + strings.Join(w.left, ", ")
	}
	do := "see that the disk has room and the folder may be written to, then try again"
	if err == errNumbers {
		do = "see whether the date is right"
	}
	return fmt.Errorf("cannot write %s: %w; %s; %s", shown(name), cause(err), tail, do)
}
