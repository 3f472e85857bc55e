package content

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// What a folder of notes may hold.
const (
	mostNotes        = 200
	mostNoteBytes    = 256 << 10
	mostNotesBytes   = 8 << 20
	noteEnding       = ".md"
	longestNoteTitle = 120
)

// noteReader reads a folder of notes.
type noteReader struct {
	files    fs.FS
	guide    Guide
	names    map[string]string // the links that names alone stand for, by label
	notes    []*Note
	byFile   map[string]*Note
	shown    []string            // the names of files that may be pictures
	pictures map[string]*picture // those that were read, by file name; nil where one is none
	paths    map[string]string   // the file name of a picture by its path in the book
	weight   int                 // of the pictures, in bytes
	faults   []Fault             // about files and the folder
}

// ReadNotes reads the notes that lie at the top of a folder, and the pictures
// they show, and reports everything that is wrong with them. Files that begin
// with a point are left alone; no folder is no notes.
func ReadNotes(files fs.FS, guide Guide) (*Notes, []Fault) {
	r := &noteReader{files: files, guide: guide, byFile: map[string]*Note{}, pictures: map[string]*picture{}, paths: map[string]string{}}
	if files == nil {
		return &Notes{}, nil
	}
	r.readFolder()
	r.names = guide.bareNames()
	for _, n := range r.notes {
		n.parse(r.names)
		n.outline(guide.Slug)
	}
	for _, n := range r.notes {
		r.look(n)
	}
	return r.result()
}

// result is what was read, with every fault: those of the folder, then those
// of each note in turn.
func (r *noteReader) result() (*Notes, []Fault) {
	list := r.faults
	for _, n := range r.notes {
		list = append(list, n.told()...)
	}
	if len(list) > 0 {
		return nil, list[:min(len(list), mostFaults)]
	}
	notes := &Notes{Pages: r.notes, Pictures: map[string][]byte{}}
	for _, p := range r.pictures {
		notes.Pictures[p.path] = p.data // none is nil where there is no fault
	}
	return notes, nil
}

// wrong reports a fault of a whole file.
func (r *noteReader) wrong(file, read, expected, do string) {
	r.faults = append(r.faults, Fault{File: file, Read: read, Expected: expected, Do: do})
}

// readFolder reads the files of the notes, in order.
func (r *noteReader) readFolder() {
	entries, err := fs.ReadDir(r.files, ".")
	if errors.Is(err, fs.ErrNotExist) {
		return
	}
	if err != nil {
		r.wrong("", cause(err), "a folder of notes", "change its permissions, or mend the disk")
		return
	}
	var names []string
	for _, e := range entries {
		switch name := e.Name(); {
		case strings.HasPrefix(name, "."):
		case r.isNote(name):
			names = append(names, name)
		case isPicture(name):
			r.shown = append(r.shown, name)
		}
	}
	if len(names) > mostNotes {
		r.wrong("", fmt.Sprintf("%d notes", len(names)), fmt.Sprintf("at most %d", mostNotes), "put several into one, or move some elsewhere")
		return
	}
	slices.SortFunc(names, byNumber)
	paths, total := map[string]string{}, 0
	for _, name := range names {
		n := &Note{File: name, Path: notePath(name, r.guide.Slug)}
		if first, twice := paths[n.Path]; twice {
			r.wrong(name, "a name that makes the same sheet as "+first+": "+n.Path, "another name, apart from its number", "rename one of the two")
			continue
		}
		paths[n.Path] = name
		if n.source = r.readText(name); n.source == nil {
			continue
		}
		if total += len(n.source); total > mostNotesBytes {
			r.wrong("", fmt.Sprintf("notes of more than %d MiB", mostNotesBytes>>20), fmt.Sprintf("at most %d MiB of text", mostNotesBytes>>20), "move some elsewhere")
			return
		}
		r.notes = append(r.notes, n)
		r.byFile[name] = n
	}
}

// isNote tells whether a file is a note, and refuses names that were meant to
// be one.
func (r *noteReader) isNote(name string) bool {
	switch low := strings.ToLower(name); {
	case strings.ContainsFunc(name, unicode.IsControl) || !utf8.ValidString(name):
		if strings.HasSuffix(low, noteEnding) {
			r.wrong(quoted(name), "a file name with control characters", "a name of letters, digits, spaces and dashes", "rename it")
		}
		return false
	case strings.HasSuffix(name, noteEnding):
		return true
	case strings.HasSuffix(low, noteEnding), strings.HasSuffix(low, ".markdown"):
		base := name[:strings.LastIndexByte(name, '.')]
		r.wrong(name, "a file name that ends in "+quoted(name[len(base):]), "a note's name to end in .md", "rename it "+base+noteEnding)
	}
	return false
}

// readText reads the text of a note; nil where it is none.
func (r *noteReader) readText(name string) []byte {
	data := r.readFile(name, "a note", mostNoteBytes, "256 KiB", "take it apart into several notes")
	if data == nil {
		return nil
	}
	data = bytes.ReplaceAll(bytes.TrimPrefix(data, []byte("\ufeff")), []byte("\r\n"), []byte("\n"))
	if at, read, do := badText(data); at >= 0 {
		line, column := place(data, at)
		r.faults = append(r.faults, Fault{name, line, column, read, "text saved as UTF-8", do})
		return nil
	}
	if len(bytes.TrimSpace(data)) == 0 {
		r.wrong(name, "an empty file", "a note", "write something in it, or take it away")
		return nil
	}
	return data
}

// badText finds the first byte that no text may hold, or -1.
func badText(data []byte) (at int, read, do string) {
	const again = "save the file again with the encoding UTF-8 and ordinary line endings"
	for i := 0; i < len(data); {
		c, width := utf8.DecodeRune(data[i:])
		switch {
		case c == utf8.RuneError && width == 1:
			return i, fmt.Sprintf("the byte 0x%02X, which is not UTF-8", data[i]), again
		case c == '\r':
			return i, "a carriage return without a line feed", again
		case !sound(c):
			return i, fmt.Sprintf("the control character U+%04X", c), "take the character away"
		}
		i += width
	}
	return -1, "", ""
}

// sound reports whether a page may hold a character.
func sound(c rune) bool {
	switch {
	case c == '\t' || c == '\n':
		return true
	case unicode.IsControl(c), c >= 0xfdd0 && c <= 0xfdef, c&0xfffe == 0xfffe:
		return false
	}
	return true
}

// readFile reads a file of the folder; nil where it cannot. A link, a folder
// or a device is refused unopened, and a file that is too large unread.
func (r *noteReader) readFile(name, what string, most int, called, smaller string) []byte {
	info, err := fs.Lstat(r.files, name)
	if err != nil {
		r.wrong(name, cause(err), what+" that can be read", "change its permissions, or mend the disk")
		return nil
	}
	switch mode := info.Mode(); {
	case mode&fs.ModeSymlink != 0:
		r.wrong(name, "a link", what, "put the file itself there")
		return nil
	case mode.IsDir():
		r.wrong(name, "a folder", what, "move it out of the folder, or rename it")
		return nil
	case !mode.IsRegular():
		r.wrong(name, "a device or pipe", what, "put an ordinary file there")
		return nil
	}
	data, err := load(r.files, name, most)
	switch {
	case err != nil:
		r.wrong(name, cause(err), what+" that can be read", "change its permissions, or mend the disk")
	case len(data) > most:
		r.wrong(name, "more than "+called, what+" of at most "+called, smaller)
	case data == nil:
		return []byte{}
	default:
		return data
	}
	return nil
}

// load reads no more of a file than it takes to see that it is too large.
func load(files fs.FS, name string, most int) ([]byte, error) {
	file, err := files.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, int64(most)+1))
}

// cause says what went wrong, without the path of the machine.
func cause(err error) string {
	var inPath *fs.PathError
	if errors.As(err, &inPath) {
		err = inPath.Err
	}
	return err.Error()
}

// byNumber puts 9-b before 10-a, and what has no number last.
func byNumber(a, b string) int {
	numberA, _ := numbered(a)
	numberB, _ := numbered(b)
	if numberA == "" || numberB == "" {
		return cmp.Or(cmp.Compare(len(numberB), len(numberA)), cmp.Compare(a, b))
	}
	numberA, numberB = strings.TrimLeft(numberA, "0"), strings.TrimLeft(numberB, "0")
	return cmp.Or(cmp.Compare(len(numberA), len(numberB)), cmp.Compare(numberA, numberB), cmp.Compare(a, b))
}

// numbered takes the leading number off a note's name, with what parts it
// from the rest. A name that is nothing but a number keeps it.
func numbered(file string) (number, name string) {
	base := strings.TrimSuffix(file, noteEnding)
	rest := strings.TrimLeft(base, "0123456789")
	name = strings.TrimLeft(rest, "-_. ")
	number = base[:len(base)-len(rest)]
	switch {
	case name == "":
		return number, base
	case len(name) == len(rest):
		return "", base
	}
	return number, name
}

// notePath is the sheet of a note.
func notePath(file string, slug func(string) string) string {
	_, name := numbered(file)
	return "note-" + slug(name) + ".html"
}

// fileTitle is a note's title where its text gives none.
func fileTitle(file string) string {
	_, name := numbered(file)
	words := strings.Join(strings.FieldsFunc(name, func(c rune) bool { return c == '-' || c == '_' || c == ' ' }), " ")
	if words == "" {
		return name
	}
	first, width := utf8.DecodeRuneInString(words)
	return string(unicode.ToUpper(first)) + words[width:]
}
