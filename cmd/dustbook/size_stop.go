package main

import (
	"context"
	"time"
)

// untilStopped is done when somebody asks the run to stop. Its end must be
// released.
func (p *program) untilStopped() (ctx context.Context, release func()) {
	ctx, release = context.WithCancel(context.Background())
	go func() {
		tick := time.NewTicker(beat)
		defer tick.Stop()
		for !p.halt.stopping() {
			select {
			case <-ctx.Done():
				return
			case <-tick.C:
			}
		}
		release()
	}()
	return ctx, release
}

// stopped is the error of work that ended because its context did.
func stopped(err error) error {
	if err == context.Canceled {
		return errStopped
	}
	return err
}
