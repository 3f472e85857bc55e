// Package book knows the whole book: the list of sheets, that their links and
// ids hold, and the bytes of every file. It writes nothing to disk.
package book

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"sync"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/templates"
)

// Manifest is the name of the file that lists what the tool wrote: a line
// "sha256  path" for every other file, sorted by path.
const Manifest = "dustbook.manifest"

// Make makes every file of the book, by path with forward slashes. The bytes
// depend on the plan, its findings and the shop's own notes alone, whatever
// the count of workers; notes may be nil. What is wrong with the notes is an
// error of type entry.Problems. Any other error means a fault of the program:
// a template that does not render, a link that leads nowhere, an id that
// stands twice.
func Make(p *plan.Plan, findings []checks.Finding, notes fs.FS, workers int) (map[string][]byte, error) {
	sheets, err := templates.New(p, findings)
	if err != nil {
		return nil, err
	}
	if err := sheets.AddNotes(notes); err != nil {
		return nil, err
	}
	pages, err := render(sheets, workers)
	if err != nil {
		return nil, err
	}
	files := maps.Clone(sheets.Pictures)
	if files == nil {
		files = map[string][]byte{}
	}
	outside := map[string][]string{}
	for i, s := range sheets.Sheets {
		if _, twice := files[s.Path]; twice {
			return nil, fmt.Errorf("two files want the path %s", s.Path)
		}
		files[s.Path] = pages[i]
		outside[s.Path] = s.Outside
	}
	css, err := squeezeStyle(templates.Stylesheet())
	if err != nil {
		return nil, err
	}
	files["book.css"] = css
	if err := checkLinks(files, outside); err != nil {
		return nil, err
	}
	files[Manifest] = manifest(files)
	return files, nil
}

// render renders every sheet, each into its own place, so that the order of
// the work changes nothing.
func render(b *templates.Book, workers int) ([][]byte, error) {
	pages := make([][]byte, len(b.Sheets))
	faults := make([]error, len(b.Sheets))
	next := make(chan int)
	var done sync.WaitGroup
	for range max(workers, 1) {
		done.Go(func() {
			for i := range next {
				pages[i], faults[i] = renderOne(b, b.Sheets[i])
			}
		})
	}
	for i := range b.Sheets {
		next <- i
	}
	close(next)
	done.Wait()
	return pages, errors.Join(faults...)
}

// renderOne renders one sheet. A panic in it becomes its error: it must not
// end the program from a worker, where nobody would catch it.
func renderOne(b *templates.Book, s *templates.Sheet) (page []byte, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("%s: %v", s.Path, fault)
		}
	}()
	if page, err = b.Render(s); err == nil {
		page, err = squeezePage(page)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", s.Path, err)
	}
	return page, nil
}

// manifest lists the files with their sums.
func manifest(files map[string][]byte) []byte {
	var out strings.Builder
	for _, path := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(&out, "%x  %s\n", sha256.Sum256(files[path]), path)
	}
	return []byte(out.String())
}
