package main

import (
	"errors"
	"os"
	"os/signal"
	"sync"
	"syscall"
)

// halt is how a run hears that somebody wants it to stop, as with Ctrl-C.
// While it only reckons it ends at once. While it puts something on the disk
// or prints, it ends where what is there is whole: before, or after.
type halt struct {
	mu    sync.Mutex
	asked bool
	busy  bool
	said  bool
	says  string
}

// errStopped ends a run that was asked to stop and has taken back what it
// began.
var errStopped = errors.New("stopped")

// begin marks that from now on something is put on the disk or printed, until
// the run is over. It fails when the run was asked to stop before that.
func (h *halt) begin() error {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.asked && !h.busy {
		return errStopped
	}
	h.busy = true
	return nil
}

// stopping reports whether the run was asked to stop.
func (h *halt) stopping() bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.asked
}

// ask asks the run to stop; it reports whether that may be at once.
func (h *halt) ask() (now bool) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.asked = true
	return !h.busy
}

// will says what a run that is stopped leaves behind.
func (h *halt) will(says string) {
	h.mu.Lock()
	h.says = says
	h.mu.Unlock()
}

// word is what to say of the stop; empty once it was said.
func (h *halt) word() string {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.said {
		return ""
	}
	h.said = true
	if h.says == "" {
		return "stopped; nothing was written"
	}
	return h.says
}

// signals are those by which people and machines ask a run to stop. One that
// is turned off where the run was started stays so.
func signals() (asked <-chan os.Signal, release func()) {
	heard := make(chan os.Signal, 1)
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		if !signal.Ignored(s) {
			signal.Notify(heard, s)
		}
	}
	return heard, func() { signal.Stop(heard) }
}

// runUntil is run that can be stopped. Asked a second time, it ends as any
// program does.
func (p *program) runUntil(asked <-chan os.Signal, release func(), args []string) int {
	done := make(chan int, 1)
	go func() { done <- p.run(args) }()
	select {
	case status := <-done:
		return status
	case <-asked:
	}
	release()
	if p.halt.ask() {
		return p.sayStopped()
	}
	return <-done
}

// sayStopped says, once, that the run was stopped.
func (p *program) sayStopped() int {
	if text := p.halt.word(); text != "" {
		p.say(text)
	}
	return statusFailed
}
