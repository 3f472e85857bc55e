package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestDiskNeverOverwritesByAccident(t *testing.T) {
	folder := t.TempDir()
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	write("mine", "mine")
	write("new", "new")
	d, err := openDisk(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer d.Close()
	if _, err := d.Create("mine"); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a file that is there was made anew: %v", err)
	}
	if err := d.Place("new", "mine"); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a file that is there was placed over: %v", err)
	}
	if data, _ := os.ReadFile(filepath.Join(folder, "mine")); string(data) != "mine" {
		t.Errorf("it holds %q now", data)
	}
	if err := d.Place("new", "other"); err != nil {
		t.Error(err)
	}
	if _, err := os.Lstat(filepath.Join(folder, "new")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the first name is still there: %v", err)
	}
}

func TestDiskStaysInItsFolder(t *testing.T) {
	outside := t.TempDir()
	folder := filepath.Join(outside, "book")
	if err := errors.Join(os.Mkdir(folder, 0o777), os.Symlink(outside, filepath.Join(folder, "link"))); err != nil {
		t.Fatal(err)
	}
	d, err := openDisk(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer d.Close()
	for _, name := range []string{"../x", "/x", "link/x", "a/../../x"} {
		if err := writeWhole(d, name, []byte("x")); err == nil {
			t.Errorf("%s was written", name)
		}
		if err := d.Folder(name); err == nil {
			t.Errorf("the folder %s was made", name)
		}
	}
	if _, err := os.Lstat(filepath.Join(outside, "x")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("something was written outside: %v", err)
	}
}

func TestAFolderThatIsSwappedMeanwhileIsNotWritten(t *testing.T) {
	asked, other := t.TempDir(), t.TempDir()
	p, _ := quiet(&bytes.Buffer{})
	p.open = func(string) (disk, error) { return openDisk(other) }
	err := p.writeBook(asked, firstBook)
	if err == nil || !strings.Contains(err.Error(), "another folder") {
		t.Errorf("written: %v", err)
	}
	if files := onDisk(t, other); len(files) > 0 {
		t.Errorf("%d files in the other folder", len(files))
	}
}
