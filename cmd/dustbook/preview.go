package main

import (
	"context"
	"errors"
	"io/fs"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/templates"
)

// preview serves the book to browsers on this machine and makes it anew with
// every change of its files, until somebody stops it.
func (p *program) preview(c *call) error {
	port, err := portOf(c)
	if err != nil {
		return err
	}
	if _, err := c.asOf(entry.Date{}); err != nil {
		return err
	}
	files, err := watched(c)
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", net.JoinHostPort(loopback, strconv.Itoa(port)))
	if err != nil {
		return wrongUse{"port " + strconv.Itoa(port) + " of this machine cannot be had: " + cause(err).Error(), "name another with --port, or leave it out"}
	}
	if err := p.halt.begin(); err != nil {
		_ = listener.Close()
		return err
	}
	site := newSite(listener.Addr().(*net.TCPAddr).Port, p.now().UnixNano())
	mark := fingerprint(files)
	site.put(p.previewBook(c))
	p.progress.done()
	server := &http.Server{Handler: site, ReadHeaderTimeout: 10 * time.Second}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	p.say("the book is at " + site.address() + " on this machine; Ctrl-C ends it")
	p.sayState(site)
	for !p.halt.stopping() {
		select {
		case err := <-ended:
			return err
		case <-time.After(watchEvery):
		}
		if now := fingerprint(files); now != mark {
			mark = now
			site.put(p.previewBook(c))
			p.sayState(site)
		}
	}
	site.end()
	ctx, cancel := context.WithTimeout(context.Background(), time.Second)
	defer cancel()
	_ = server.Shutdown(ctx)
	return nil
}

const (
	loopback   = "127.0.0.1"
	watchEvery = 200 * time.Millisecond
)

// portOf is the port that a call names; nought for any that is free.
func portOf(c *call) (int, error) {
	text, given := c.flags["port"]
	if !given {
		return 0, nil
	}
	port, err := strconv.Atoi(text)
	if err != nil || port < 1 || port > 65535 {
		return 0, wrongUse{"--port " + entry.Quote(text) + " is no port", "give a number from 1024 to 65535, or leave it out"}
	}
	return port, nil
}

// previewBook makes the book of a call, or says what is wrong with its files.
func (p *program) previewBook(c *call) (pages map[string][]byte, err error) {
	defer func() {
		if cause := recover(); cause != nil {
			pages, err = nil, broken(cause)
		}
	}()
	asOf, err := c.asOf(entry.Date{})
	if err != nil {
		return nil, err
	}
	l, err := p.load(c, asOf)
	other, err := p.loadOther(c, l, asOf, err)
	if l == nil {
		return nil, err
	}
	own := l.openNotes()
	defer own.Close()
	if err := l.withNotes(err, own); err != nil {
		return nil, err
	}
	return p.makeBook(l, other, own)
}

// sayState says on the terminal what the browser shows now.
func (p *program) sayState(s *site) {
	_, _, faults := s.now()
	var problems entry.Problems
	switch {
	case faults == nil:
		p.say(p.now().Format(time.TimeOnly) + " the book is made")
	case errors.As(faults, &problems):
		p.sayProblems(problems)
	default:
		p.say(faults.Error())
	}
}

// watched are the files and folders that a preview is made from.
func watched(c *call) ([]string, error) {
	var list []string
	names := []string{c.shop}
	if other, given := c.flags["beside"]; given {
		names = append(names, other)
	}
	for _, name := range names {
		path, err := find(name)
		if err != nil {
			return nil, err
		}
		if path == "" {
			path = shopFile // which may come
		}
		list = append(list, path, filepath.Join(filepath.Dir(path), record.Folder), filepath.Join(filepath.Dir(path), templates.NotesFolder))
	}
	return list, nil
}

// fingerprint changes with every file that is written, comes or goes.
func fingerprint(files []string) string {
	var mark []byte
	note := func(path string, info fs.FileInfo) {
		mark = append(mark, path...)
		mark = strconv.AppendInt(append(mark, ' '), info.Size(), 10)
		mark = strconv.AppendInt(append(mark, ' '), info.ModTime().UnixNano(), 10)
		mark = append(mark, '\n')
	}
	for _, path := range files {
		info, err := os.Stat(path)
		if err != nil {
			continue
		}
		note(path, info)
		entries, err := os.ReadDir(path)
		if err != nil {
			continue // a file
		}
		for _, e := range entries {
			if info, err := e.Info(); err == nil {
				note(filepath.Join(path, e.Name()), info)
			}
		}
	}
	return string(mark)
}
