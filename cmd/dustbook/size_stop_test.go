package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A search ends when somebody asks the run to stop, and prints nothing.
func TestSizeStops(t *testing.T) {
	text := "[shop]\nname = \"Stop\"\n[[collector]]\nname = \"Fan\"\ninlet = \"6 in\"\nclaims = { flow = \"1600 cfm\", suction = \"11.5 inwg\" }\n" +
		"[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\nport = { size = \"5 in\", flow = \"500 cfm\" }\n" +
		"[[duct]]\nname = \"Drop\"\nto = \"Fan\"\nsize = \"choose\"\nlength = \"15 ft\"\nserves = [\"Saw/cabinet\"]\n"
	for flag, size := range map[string]string{"--choose": "choose", "--sets": "5 in"} {
		file := filepath.Join(t.TempDir(), "shop.toml")
		if err := os.WriteFile(file, []byte(strings.Replace(text, "choose", size, 1)), 0o666); err != nil {
			t.Fatal(err)
		}
		for _, ask := range []bool{false, true} {
			var out, messages bytes.Buffer
			p := &program{out: &out, err: &messages, env: func(string) string { return "" }, now: time.Now}
			want := statusDone
			if ask {
				want = statusFailed
				p.halt.ask()
			}
			got := p.run([]string{"size", flag, file})
			if got != want || (out.Len() == 0) != ask || strings.Contains(messages.String(), "stopped") != ask {
				t.Errorf("%s, asked to stop %v: status %d, %d bytes, %q", flag, ask, got, out.Len(), messages.String())
			}
		}
	}
}

// The context of a search is done soon after somebody asks, and not before.
func TestUntilStopped(t *testing.T) {
	p := &program{}
	ctx, release := p.untilStopped()
	defer release()
	if err := ctx.Err(); err != nil {
		t.Fatal(err)
	}
	p.halt.ask()
	<-ctx.Done()
	if err := stopped(ctx.Err()); !errors.Is(err, errStopped) {
		t.Error(err)
	}
	if err := stopped(context.DeadlineExceeded); errors.Is(err, errStopped) {
		t.Error("another error counts as a stop")
	}
}
