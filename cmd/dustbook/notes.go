package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"dustbook/content"
	"dustbook/plan/entry"
	"dustbook/templates"
)

// notes is the folder of the shop's own notes, open for reading; nothing
// outside it can be reached through it.
type notes struct {
	files    fs.FS          // nil where there is no folder
	problems entry.Problems // of the folder itself
	root     *os.Root
}

// Close closes the folder.
func (n *notes) Close() {
	if n.root != nil {
		_ = n.root.Close()
	}
}

// openNotes opens the folder of notes beside the shop file; the example's are
// carried by the program.
func (l *loaded) openNotes() *notes {
	if l.path == "" {
		return &notes{files: content.ExampleNotes()}
	}
	folder := filepath.Join(l.folder(), templates.NotesFolder)
	wrong := func(read, do string) *notes {
		return &notes{problems: entry.Problems{{File: folder, Read: read, Expected: "the folder of the shop's own notes", Do: do}}}
	}
	info, err := os.Lstat(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return &notes{}
	case err != nil:
		return wrong(cause(err).Error(), "change its permissions, or mend the disk")
	case info.Mode()&fs.ModeSymlink != 0:
		return wrong("a link", "put the folder itself there")
	case !info.IsDir():
		return wrong("a file", "rename it")
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return wrong(cause(err).Error(), "change its permissions, or mend the disk")
	}
	return &notes{files: root.FS(), root: root}
}

// withNotes adds to the problems of a shop those of its notes, so that all are
// said at once. Any other error, and none, stays as it is.
func (l *loaded) withNotes(err error, n *notes) error {
	var problems entry.Problems
	if err == nil && len(n.problems) == 0 || err != nil && !errors.As(err, &problems) {
		return err
	}
	list := append(problems, n.problems...)
	if n.files != nil {
		list = append(list, l.inFolder(templates.CheckNotes(n.files, l.text))...)
	}
	return list.Err()
}
