// Command dustbook turns one file that describes a small shop's dust control
// into numbers, findings and a book. It knows verbs, flags and folders on
// disk; it does no arithmetic of its own.
//
// A call goes one way: arguments → verb (verb.go, flag.go) → shop file and
// records → plan (load.go) → the verb's own file → what is printed (talk.go).
// Only publish reads the shop's own notes (notes.go).
// The folder of a book is looked at (target.go, folder.go) and written
// (write.go) through one narrow layer (disk.go). Records are written whole or
// not at all by their own package (measure.go).
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
		book: book.Make, open: openDisk,
	}
	os.Exit(p.run(os.Args[1:]))
}
