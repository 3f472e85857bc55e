package main

import (
	"bytes"
	"errors"
	"io"
	"time"

	"dustbook/plan/entry"
	"dustbook/templates/book"
)

// program is one run: what it talks to, and the result it has so far.
type program struct {
	out, err io.Writer
	env      func(name string) string
	now      func() time.Time
	home     func() (string, error)
	book     func(book.Order) (map[string][]byte, error)
	open     func(folder string) (disk, error)
	progress *progress // nil where standard error is no terminal
	halt     halt

	result bytes.Buffer // printed when the verb is done
	json   bool         // the result, and problems of a file, are for programs
}

// The exit statuses.
const (
	statusDone    = 0
	statusDiffers = 1 // a stop finding stands, or the folder differs
	statusWrong   = 2 // wrong use, or a file with errors
	statusFailed  = 3 // the tool or the disk failed, or somebody stopped it
)

// run does what the arguments ask and returns the exit status. Whatever goes
// wrong inside, the user sees one line.
func (p *program) run(args []string) (status int) {
	defer func() {
		if cause := recover(); cause != nil {
			status = p.sayBroken(cause)
		}
	}()
	p.progress.run()
	defer p.progress.done()
	return p.end(p.do(args))
}

// do finds the verb and runs it.
func (p *program) do(args []string) error {
	if len(args) == 0 || isHelp(args[0]) {
		return p.help(nil)
	}
	if args[0] == "help" {
		return p.help(args[1:])
	}
	v := findVerb(args[0])
	if v == nil {
		return unknownVerb(args[0])
	}
	call, err := readCall(v, args[1:])
	if err != nil {
		return err
	}
	if call.has("help") {
		return p.help([]string{v.name})
	}
	p.json = call.has("json")
	return v.run(p, call)
}

// wrongUse is a mistake on the command line: what is wrong, and what to do.
type wrongUse struct{ says, do string }

// Error is the mistake on one line.
func (w wrongUse) Error() string { return w.says + "; " + w.do }

// errDiffers ends a verb that did its work and found what exit status 1 is
// for. Its result says what.
var errDiffers = errors.New("a stop finding stands, or the folder differs")

// end prints the result, or what went wrong instead of it.
func (p *program) end(err error) (status int) {
	var wrong wrongUse
	var problems entry.Problems
	switch {
	case err == nil:
		status = statusDone
	case errors.Is(err, errDiffers):
		status = statusDiffers
	case errors.Is(err, errStopped):
		return p.sayStopped()
	case errors.As(err, &problems):
		p.sayProblems(problems)
		return statusWrong
	case errors.As(err, &wrong):
		p.say(wrong.Error())
		return statusWrong
	default:
		p.say(err.Error())
		return statusFailed
	}
	if p.halt.begin() != nil {
		return p.sayStopped()
	}
	if _, err := p.out.Write(p.result.Bytes()); err != nil {
		p.say("cannot print the result: " + cause(err).Error())
		return statusFailed
	}
	return status
}
