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
	"sync/atomic"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/templates"
)

// Manifest is the name of the file that lists what the tool wrote: a line
// "sha256  path" for every other file, sorted by path.
const Manifest = "dustbook.manifest"

// Make makes the book of an order that says no more than this; notes may be
// nil.
func Make(p *plan.Plan, findings []checks.Finding, notes fs.FS, workers int) (map[string][]byte, error) {
	return Order{Plan: p, Findings: findings, Notes: notes, Workers: workers}.Make()
}

// Make makes every file of the book, by path with forward slashes. The bytes
// depend on the plan, its findings, the other layout and the shop's own notes
// alone, whatever the count of workers. What is wrong with the notes is an
// error of type entry.Problems. Any other error means a fault of the program:
// a template that does not render, a link that leads nowhere, an id that
// stands twice.
func (o Order) Make() (map[string][]byte, error) {
	sheets, err := templates.New(o.Plan, o.Findings, o.Beside...)
	if err != nil {
		return nil, err
	}
	if err := sheets.AddNotes(o.Notes); err != nil {
		return nil, err
	}
	pages, tables, read, err := o.render(sheets)
	if err != nil {
		return nil, err
	}
	files := maps.Clone(sheets.Pictures)
	if files == nil {
		files = map[string][]byte{}
	}
	for path, table := range sheets.Tables {
		if _, twice := files[path]; twice {
			return nil, fmt.Errorf("two files want the path %s", path)
		}
		files[path] = table
	}
	for i, table := range tables {
		path := sheets.Sheets[i].TablePath()
		if _, twice := files[path]; twice && table != nil {
			return nil, fmt.Errorf("two files want the path %s", path)
		}
		if table != nil {
			files[path] = table
		}
	}
	outside, known := map[string][]string{}, map[string]page{}
	for i, s := range sheets.Sheets {
		if _, twice := files[s.Path]; twice {
			return nil, fmt.Errorf("two files want the path %s", s.Path)
		}
		files[s.Path] = pages[i]
		outside[s.Path], known[s.Path] = s.Outside, read[i]
	}
	for path, code := range templates.Scripts() {
		files[path] = code
	}
	css, err := squeezeStyle(templates.Stylesheet())
	if err != nil {
		return nil, err
	}
	files["book.css"] = css
	if err := checkLinks(files, known, outside); err != nil {
		return nil, err
	}
	files[Manifest] = manifest(files)
	return files, nil
}

// render renders every sheet and reads its links, each into its own place, so
// that the order of the work changes nothing.
func (o Order) render(b *templates.Book) ([][]byte, [][]byte, []page, error) {
	pages, tables, read := make([][]byte, len(b.Sheets)), make([][]byte, len(b.Sheets)), make([]page, len(b.Sheets))
	faults := make([]error, len(b.Sheets))
	next := make(chan int)
	var made atomic.Int64
	var done sync.WaitGroup
	for range max(o.Workers, 1) {
		done.Go(func() {
			for i := range next {
				if pages[i], tables[i], faults[i] = renderOne(b, b.Sheets[i]); faults[i] == nil {
					read[i] = readPage(pages[i])
				}
				o.tell(int(made.Add(1)), len(pages))
			}
		})
	}
	for i := range b.Sheets {
		next <- i
	}
	close(next)
	done.Wait()
	return pages, tables, read, errors.Join(faults...)
}

// renderOne renders one sheet. A panic in it becomes its error: it must not
// end the program from a worker, where nobody would catch it.
func renderOne(b *templates.Book, s *templates.Sheet) (page, tables []byte, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("%s: %v", s.Path, fault)
		}
	}()
	page, err = b.Render(s)
	if err == nil && s.Spread() {
		if tables, err = tablesOf(page); err == nil && tables != nil {
			page = withTables(page, b.TableLink(s))
		}
	}
	if err == nil {
		page, err = squeezePage(page)
	}
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", s.Path, err)
	}
	return page, tables, nil
}

// manifest lists the files with their sums.
func manifest(files map[string][]byte) []byte {
	var out strings.Builder
	for _, path := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(&out, "%x  %s\n", sha256.Sum256(files[path]), path)
	}
	return []byte(out.String())
}
