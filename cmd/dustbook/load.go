package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
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

// load reads and reckons the shop that a call names. Every error of the file
// is in the error, also those that only the checks can see.
func (p *program) load(c *call, asOf entry.Date) (*loaded, error) {
	path, err := find(c.shop)
	if err != nil {
		return nil, err
	}
	l := &loaded{path: path}
	data, name := content.Example(), exampleFile
	if path != "" {
		name = filepath.Base(path)
		if data, err = entry.ReadFile(path, path); err != nil {
			return nil, err
		}
	}
	s, problems := shop.Read(name, data)
	if len(problems) == 0 {
		l.plan = plan.Make(s, asOf)
		problems = checks.Problems(l.plan)
		problems.Sort()
	}
	if path == "" {
		p.say("no " + shopFile + " here, so this is the example that the program carries" + exampleName(s))
	}
	for i := range problems {
		problems[i].File = l.shown()
	}
	return l, problems.Err()
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

// today is the day by the clock, which nothing but size and inspect asks.
func (p *program) today() entry.Date { return dateOf(p.now()) }
