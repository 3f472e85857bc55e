// Command dustbook turns one file that describes a small shop's dust control
// into numbers, findings and a book. It knows verbs, flags and folders on
// disk; it does no arithmetic of its own.
//
// A call goes one way: arguments → verb (verb.go, flag.go) → shop file and
// records → plan (load.go) → the verb's own file → what is printed (talk.go).
// Only publish and preview read the shop's own notes (notes.go) and another layout
// (beside.go). The folder of a book is looked at (target.go, folder.go) and
// written (into.go, write.go) through one narrow layer (disk.go). Records are
// written whole or not at all by their own package (measure.go). A terminal is
// told how far a long run has come (progress.go); a run that is asked to stop
// leaves what it found, or what it was to make, and nothing between (halt.go).
// Preview makes the same book in memory (preview.go) and serves it to this machine
// alone (preview_site.go), with what it adds to a page (preview_page.go).
package main

import (
	"os"
	"time"

	"dustbook/templates/book"
)

func main() {
	p := &program{
		out: os.Stdout, err: os.Stderr,
		env: os.Getenv, now: time.Now, home: os.UserHomeDir,
		book: book.Order.Make, open: openDisk,
	}
	p.onTerminal(os.Stderr)
	asked, release := signals()
	os.Exit(p.runUntil(asked, release, os.Args[1:]))
}
