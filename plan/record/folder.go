package record

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"syscall"

	"dustbook/plan/entry"
)

// What a folder of records may hold, and where the list of its problems ends.
const (
	mostFiles          = 10000
	mostBytes          = 64 << 20
	mostFolderProblems = 200
)

// ReadFolder reads every record of the folder that fsys is, in the order of
// their names. Files that do not end in .toml, or begin with a point, are
// left alone; a folder that is not there has no records. Where some files have
// problems the others are returned beside them.
func ReadFolder(fsys fs.FS) ([]*Record, entry.Problems) {
	entries, err := fs.ReadDir(fsys, ".")
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, entry.Problems{noFolder(err)}
	}
	var names []string
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), ".toml") && !strings.HasPrefix(e.Name(), ".") {
			names = append(names, e.Name())
		}
	}
	if len(names) > mostFiles {
		return nil, entry.Problems{crowded(fmt.Sprintf("%d files", len(names)), fmt.Sprintf("at most %d records", mostFiles))}
	}
	slices.SortFunc(names, func(a, b string) int { return cmp.Compare(order(a), order(b)) })
	f := &folder{files: fsys, names: names}
	for _, name := range names {
		if f.bytes > mostBytes {
			return nil, entry.Problems{crowded(fmt.Sprintf("more than %d MiB", mostBytes>>20), fmt.Sprintf("records of at most %d MiB together", mostBytes>>20))}
		}
		if len(f.problems) >= mostFolderProblems {
			break
		}
		f.read(name)
	}
	return f.records, f.problems
}

// noFolder is the problem of a folder that cannot be listed.
func noFolder(err error) entry.Problem {
	p := unreadable(Folder, err)
	p.Expected = "a folder of records"
	if errors.Is(err, syscall.ENOTDIR) {
		p.Do = "rename the file " + Folder + ", and put a folder in its place"
	}
	return p
}

// crowded is the problem of a folder that holds too much.
func crowded(read, expected string) entry.Problem {
	return entry.Problem{File: Folder, Read: read, Expected: expected, Do: "move the oldest records to another folder"}
}

// folder is a folder of records while it is read.
type folder struct {
	files    fs.FS
	names    []string // of the records, and those proposed for them
	bytes    int
	records  []*Record
	problems entry.Problems
}

// read reads one file and holds its name against its contents.
func (f *folder) read(name string) {
	says, fits := readName(name)
	data, fault := f.open(name)
	if fault != nil {
		f.problems = append(f.problems, *fault)
		return
	}
	f.bytes += len(data)
	rec, heads, problems := read(shown(name), data)
	switch {
	case !fits:
		problems = append(entry.Problems{f.misnamed(name, rec)}, problems...)
	case rec != nil:
		problems = append(problems, disagrees(says, rec, heads)...)
	}
	if f.problems = append(f.problems, problems...); len(problems) == 0 {
		f.records = append(f.records, rec)
	}
}

// misnamed is the problem of a name that is not of the form. What can be read
// gets a name proposed that no other file has.
func (f *folder) misnamed(name string, rec *Record) entry.Problem {
	do := "rename it in that way, or move it out of the folder"
	if rec != nil {
		fit := fileName(rec.Date, rec.Kind, nextNumber(f.names, rec.Date, rec.Kind))
		f.names = append(f.names, fit)
		do = "rename it " + fit + ", or move it out of the folder"
	}
	return entry.Problem{File: shown(name), Read: "the file name " + entry.Quote(name),
		Expected: "date, kind and number of the record, such as 2026-11-24-commissioning-1.toml", Do: do}
}

// disagrees lists what a file's name says otherwise than the record in it.
func disagrees(says named, rec *Record, at heads) entry.Problems {
	var problems entry.Problems
	rename := "rename the file " + fileName(rec.Date, rec.Kind, says.number)
	differ := func(node *entry.Node, what, inName, written string) {
		problems = append(problems, entry.Problem{File: shown(rec.File), Place: node.At, Read: said(node),
			Expected: inName + ", the " + what + " in the file's name", Do: rename + ", or write " + what + " = " + written})
	}
	if says.kind != rec.Kind {
		differ(at.kind, "kind", entry.Quote(says.kind), entry.Quote(says.kind))
	}
	if says.date != rec.Date.String() {
		differ(at.date, "date", says.date, says.date)
	}
	problems.Sort()
	return problems
}

// open returns the bytes of a file, or why it cannot be a record.
func (f *folder) open(name string) ([]byte, *entry.Problem) {
	info, err := fs.Stat(f.files, name) // before opening: opening a pipe would wait for a writer
	if err == nil && !info.Mode().IsRegular() {
		read := "a device or pipe"
		if info.IsDir() {
			read = "a folder"
		}
		return nil, &entry.Problem{File: shown(name), Read: read, Expected: "the file of a record", Do: "move it out of the folder"}
	}
	var data []byte
	if err == nil {
		data, err = f.load(name)
	}
	if err != nil {
		p := unreadable(shown(name), err)
		return nil, &p
	}
	return data, nil
}

// load reads no more of a file than it takes to see that it is too large.
func (f *folder) load(name string) ([]byte, error) {
	file, err := f.files.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, entry.MaxBytes+1))
}

// unreadable says why a file or folder could not be read, without its path.
func unreadable(shown string, err error) entry.Problem {
	p := entry.Problem{File: shown, Read: cause(err).Error(), Expected: "a file that can be read", Do: "try again, or mend the disk"}
	switch {
	case errors.Is(err, fs.ErrPermission):
		p.Read, p.Do = "a file that may not be read", "change its permissions"
	case errors.Is(err, fs.ErrNotExist):
		p.Read, p.Do = "no such file", "take the link away that leads to it, or try again"
	}
	return p
}

// cause is what went wrong, without the path of the machine.
func cause(err error) error {
	var inPath *fs.PathError
	var inLink *os.LinkError
	switch {
	case errors.As(err, &inPath):
		return inPath.Err
	case errors.As(err, &inLink):
		return inLink.Err
	}
	return err
}
