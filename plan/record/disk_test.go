package record

import (
	"errors"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// testDisk is a disk that fails at one operation, or has no links, or whose
// writer is ended before an operation: then nothing more happens to it.
type testDisk struct {
	disk
	noLinks bool
	ended   bool  // at the fault, and for good
	at      int   // the operation that fails, counted from 1; 0: none
	fault   error // what it fails with

	count int
	last  string // the operation that failed
}

// step counts an operation and says whether it fails.
func (d *testDisk) step(what string) error {
	d.count++
	if d.at > 0 && (d.count == d.at || d.ended && d.count > d.at) {
		if d.count == d.at {
			d.last = what
		}
		return d.fault
	}
	return nil
}

func (d *testDisk) Names() ([]string, error) {
	if err := d.step("names"); err != nil {
		return nil, err
	}
	return d.disk.Names()
}

func (d *testDisk) Create(name string) (file, error) {
	if err := d.step("create"); err != nil {
		return nil, &os.PathError{Op: "openat", Path: "/home/me/" + name, Err: err}
	}
	f, err := d.disk.Create(name)
	return &testFile{f, d}, err
}

func (d *testDisk) Link(from, to string) error {
	if err := d.step("link"); err != nil {
		return &os.LinkError{Op: "linkat", Old: "/home/me/" + from, New: to, Err: err}
	}
	if d.noLinks {
		return &os.LinkError{Op: "linkat", Old: from, New: to, Err: syscall.EPERM}
	}
	return d.disk.Link(from, to)
}

func (d *testDisk) Rename(from, to string) error {
	if err := d.step("rename"); err != nil {
		return err
	}
	return d.disk.Rename(from, to)
}

func (d *testDisk) Has(name string) (bool, error) {
	if err := d.step("has"); err != nil {
		return false, err
	}
	return d.disk.Has(name)
}

func (d *testDisk) Remove(name string) error {
	if err := d.step("remove"); err != nil {
		return err
	}
	return d.disk.Remove(name)
}

func (d *testDisk) Settle() {
	if d.step("settle") == nil {
		d.disk.Settle()
	}
}

// testFile is a file of such a disk; a write that fails has put down a half.
type testFile struct {
	file
	d *testDisk
}

func (f *testFile) Write(data []byte) (int, error) {
	if err := f.d.step("write"); err != nil {
		n := 0
		if f.d.count == f.d.at {
			n, _ = f.file.Write(data[:len(data)/2])
		}
		return n, err
	}
	return f.file.Write(data)
}

func (f *testFile) Sync() error {
	if err := f.d.step("sync"); err != nil {
		return err
	}
	return f.file.Sync()
}

func (f *testFile) Close() error {
	shut := f.file.Close() // the system closes what a process leaves open
	if err := f.d.step("close"); err != nil {
		return err
	}
	return shut
}

// oneThere makes a folder that holds one record already.
func oneThere(t *testing.T) (dir string, d disk) {
	t.Helper()
	dir = t.TempDir()
	root := openRoot(t, dir)
	if _, err := Write(root, event("there before")); err != nil {
		t.Fatal(err)
	}
	return dir, rootDisk{root}
}

// Whatever fails on a full disk, the folder holds the whole new record or is
// as it was before, and the error says what happened.
func TestWriteFullDisk(t *testing.T) {
	for _, noLinks := range []bool{false, true} {
		failed := map[string]bool{}
		for at := 1; ; at++ {
			dir, d := oneThere(t)
			before := contents(t, dir)
			full := &testDisk{disk: d, noLinks: noLinks, at: at, fault: syscall.ENOSPC}
			name, err := write(full, event("new"))
			after := contents(t, dir)
			if full.count < at {
				break // nothing failed any more
			}
			failed[full.last] = true
			if err == nil {
				before[name] = string(event("new").TOML())
			} else if !errors.Is(err, syscall.ENOSPC) || !strings.HasPrefix(err.Error(), "cannot write records/") || strings.Contains(err.Error(), "/home/") ||
				!strings.HasSuffix(err.Error(), "no space left on device; nothing was written; see that the disk has room and the folder may be written to, then try again") {
				t.Errorf("%s: %v", full.last, err)
			}
			if full.last == "remove" {
				maps.DeleteFunc(after, func(name, _ string) bool { return strings.HasPrefix(name, ".tmp-") })
			}
			if !maps.Equal(after, before) {
				t.Errorf("after a failing %s (%v) the folder holds %v", full.last, err, after)
			}
		}
		want := []string{"close", "create", "link", "names", "remove", "settle", "sync", "write"}
		if noLinks {
			want = []string{"close", "create", "has", "link", "names", "remove", "rename", "settle", "sync", "write"}
		}
		if got := slices.Sorted(maps.Keys(failed)); !slices.Equal(got, want) {
			t.Errorf("failed at %v", got)
		}
	}
}

// A folder that may not be written to.
func TestWriteNotAllowed(t *testing.T) {
	dir, d := oneThere(t)
	before := contents(t, dir)
	name, err := write(&testDisk{disk: d, at: 2, ended: true, fault: syscall.EROFS}, event("new"))
	const want = "cannot write records/2026-11-24-service-2.toml: read-only file system; nothing was written; see that the disk has room and the folder may be written to, then try again"
	if name != "" || err == nil || err.Error() != want || !maps.Equal(contents(t, dir), before) {
		t.Errorf("%q, %v", name, err)
	}
}

// What cannot be removed is named, so that a person can delete it.
func TestWriteLeaves(t *testing.T) {
	dir, d := oneThere(t)
	_, err := write(&testDisk{disk: d, at: 3, ended: true, fault: syscall.EIO}, event("new"))
	left := ""
	for name := range contents(t, dir) {
		if strings.HasPrefix(name, draftPrefix) {
			left = name
		}
	}
	if want := fmt.Sprintf("input/output error; delete what was begun: %s; see", left); left == "" || err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("left %q: %v", left, err)
	}
}

// A writer that is ended at any moment leaves whole records only, and the next
// one finds its way.
func TestWriteEnded(t *testing.T) {
	for _, noLinks := range []bool{false, true} {
		written := 0
		for at := 1; ; at++ {
			dir, d := oneThere(t)
			ending := &testDisk{disk: d, noLinks: noLinks, at: at, ended: true, fault: errors.New("ended")}
			if _, _ = write(ending, event("new")); ending.count < at {
				break // it came to its end
			}
			notes := wholeNotes(t, dir)
			switch {
			case slices.Equal(notes, []string{"there before", "new"}):
				written++
			case !slices.Equal(notes, []string{"there before"}):
				t.Errorf("ended before %s: %q", ending.last, notes)
			}
			name, err := write(&testDisk{disk: d, noLinks: noLinks}, event("next"))
			if err != nil {
				t.Errorf("after an end before %s: %v", ending.last, err)
			}
			if got := wholeNotes(t, dir); !slices.Equal(got, append(notes, "next")) {
				t.Errorf("after an end before %s: %s, %q", ending.last, name, got)
			}
		}
		if written < 2 { // before the draft is removed, before the names are settled
			t.Errorf("without links %v: ended %d times with the record written", noLinks, written)
		}
	}
}

// wholeNotes are the notes of a folder's records, all of which are whole.
func wholeNotes(t *testing.T, dir string) []string {
	t.Helper()
	records, problems := ReadFolder(os.DirFS(dir))
	if len(problems) > 0 {
		t.Error(problems)
	}
	var notes []string
	for _, r := range records {
		if want := string(event(r.Note).TOML()); contents(t, dir)[r.File] != want {
			t.Errorf("%s is not whole", r.File)
		}
		notes = append(notes, r.Note)
	}
	return notes
}

// A name that another writer takes first is left to it.
func TestWritePlaceTaken(t *testing.T) {
	for _, noLinks := range []bool{false, true} {
		dir, d := oneThere(t)
		late := &lateDisk{testDisk{disk: d, noLinks: noLinks}}
		before := contents(t, dir)
		name, err := write(late, event("new"))
		before["2026-11-24-service-2.toml"] = string(event("new").TOML())
		if err != nil || name != "2026-11-24-service-2.toml" || !maps.Equal(contents(t, dir), before) {
			t.Errorf("%s, %v", name, err)
		}
	}
}

// lateDisk lists what was in the folder before others wrote into it.
type lateDisk struct{ testDisk }

func (d *lateDisk) Names() ([]string, error) { return nil, nil }

// A name that another writer has a claim to is left to it, and so is the
// claim.
func TestWriteClaimTaken(t *testing.T) {
	dir, d := oneThere(t)
	const claim = claimPrefix + "2026-11-24-service-2.toml"
	f, err := d.Create(claim)
	if err != nil {
		t.Fatal(err)
	}
	f.Close()
	before := contents(t, dir)
	name, err := write(&testDisk{disk: d, noLinks: true}, event("new"))
	before["2026-11-24-service-3.toml"] = string(event("new").TOML())
	if err != nil || name != "2026-11-24-service-3.toml" || !maps.Equal(contents(t, dir), before) {
		t.Errorf("%s, %v", name, err)
	}
	if _, err := d.Create(claim); !errors.Is(err, os.ErrExist) {
		t.Errorf("made twice: %v", err)
	}
}
