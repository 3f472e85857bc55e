package main

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// shopFile is the name of the file in a shop's folder.
const shopFile = "shop.toml"

// exampleFile is the name that messages give the example the program carries.
const exampleFile = "school.toml"

// loaded is a shop file, read and reckoned.
type loaded struct {
	plan *plan.Plan
	path string // the shop file as the user names it; empty for the example
	text []byte // of the shop file
}

// shown is the file's name where people may want to open it.
func (l *loaded) shown() string {
	if l.path == "" {
		return exampleFile
	}
	return l.path
}

// folder is where the shop file lies; empty for the example.
func (l *loaded) folder() string {
	if l.path == "" {
		return ""
	}
	return filepath.Dir(l.path)
}

// load reads and reckons the shop that a call names.
func (p *program) load(c *call, asOf entry.Date) (*loaded, error) {
	path, err := find(c.shop)
	if err != nil {
		return nil, err
	}
	p.progress.step("reading")
	return p.loadFile(path, asOf)
}

// loadFile reads and reckons a shop file, with the records beside it. Every
// error of the files is in the error, also those that only the checks can see.
func (p *program) loadFile(path string, asOf entry.Date) (*loaded, error) {
	l := &loaded{path: path}
	s, problems, err := p.readShop(l)
	if err != nil {
		return nil, err
	}
	records, wrong := l.readRecords()
	if len(problems) == 0 {
		wrong = append(wrong, l.inFolder(plan.CheckRecords(s, records))...)
	}
	if len(problems)+len(wrong) == 0 {
		l.plan = plan.Make(s, records, asOf)
		problems = checks.Problems(l.plan)
		problems.Sort()
	} else if len(problems) == 0 { // what can be told without a plan
		problems = checks.EditionProblems(s)
	}
	for i := range problems {
		problems[i].File = l.shown()
	}
	slices.SortStableFunc(wrong, func(a, b entry.Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return l, append(problems, wrong...).Err()
}

// readShop reads the shop file, or the example where its path is empty. Its
// problems are those of the file alone; the error is that of the disk, or of
// a file that is none.
func (p *program) readShop(l *loaded) (*shop.Shop, entry.Problems, error) {
	name := exampleFile
	l.text = content.Example()
	if l.path != "" {
		var err error
		name = filepath.Base(l.path)
		if l.text, err = entry.ReadFile(l.path, l.path); err != nil {
			return nil, nil, err
		}
	}
	s, problems := shop.Read(name, l.text)
	if l.path == "" {
		p.say("no " + shopFile + " here, so this is the example that the program carries" + exampleName(s))
	}
	return s, problems, nil
}

// readRecords reads the records beside the shop file; the example's are carried
// by the program.
func (l *loaded) readRecords() ([]*record.Record, entry.Problems) {
	files := content.ExampleRecords()
	if l.path != "" {
		files = os.DirFS(filepath.Join(l.folder(), record.Folder))
	}
	records, problems := record.ReadFolder(files)
	return records, l.inFolder(problems)
}

// inFolder names the files of problems the way the user names the shop's
// folder.
func (l *loaded) inFolder(problems entry.Problems) entry.Problems {
	for i := range problems {
		problems[i].File = filepath.Join(l.folder(), problems[i].File)
	}
	return problems
}

func exampleName(s *shop.Shop) string {
	if s == nil {
		return ""
	}
	return ": " + s.Name
}

// find finds the shop file that SHOP names: a folder's, or the file itself.
// Empty stands for the example.
func find(arg string) (path string, err error) {
	if arg == "" {
		if _, err := os.Lstat(shopFile); errors.Is(err, fs.ErrNotExist) {
			return "", nil
		}
		return shopFile, nil
	}
	if info, err := os.Stat(arg); err == nil && info.IsDir() {
		return filepath.Join(arg, shopFile), nil
	}
	return arg, nil
}

// today is the day by the clock, which nothing but size, inspect and measure
// asks.
func (p *program) today() entry.Date { return dateOf(p.now()) }
