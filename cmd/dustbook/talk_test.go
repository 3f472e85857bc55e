package main

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"
)

// quiet is a program that talks into memory.
func quiet(out interface{ Write([]byte) (int, error) }) (*program, *bytes.Buffer) {
	said := &bytes.Buffer{}
	return &program{
		out: out, err: said, now: time.Now, open: openDisk,
		env:  func(string) string { return "" },
		home: func() (string, error) { return "", errors.New("no home") },
	}, said
}

type fullWriter struct{}

func (fullWriter) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestAResultThatCannotBePrintedIsAFailure(t *testing.T) {
	p, said := quiet(fullWriter{})
	if status := p.run([]string{"help"}); status != statusFailed {
		t.Errorf("status %d, want %d", status, statusFailed)
	}
	if said.String() != "dustbook: cannot print the result: no space left on device\n" {
		t.Errorf("said %q", said)
	}
}

func TestEveryVerbTeaches(t *testing.T) {
	for _, v := range verbs {
		var out bytes.Buffer
		p, said := quiet(&out)
		if status := p.run([]string{"help", v.name}); status != statusDone || said.Len() > 0 {
			t.Errorf("help %s: status %d, %s", v.name, status, said)
		}
		text := out.String()
		for _, want := range []string{"dustbook " + v.name + " " + v.takes + "\n", v.tries, "exit status\n  0 done", "--help"} {
			if !strings.Contains(text, want) {
				t.Errorf("help %s does not say %q", v.name, want)
			}
		}
		for _, f := range v.flags {
			if !strings.Contains(text, "--"+f.name) {
				t.Errorf("help %s does not say --%s", v.name, f.name)
			}
		}
		if !strings.HasPrefix(v.tries, "dustbook "+v.name+" ") {
			t.Errorf("the example of %s is %q", v.name, v.tries)
		}
		narrow(t, v.name, text)
	}
	narrow(t, "help", overview())
}

// narrow asks that a text fits a terminal.
func narrow(t *testing.T, name, text string) {
	t.Helper()
	if n := strings.Count(text, "\n"); n > 30 {
		t.Errorf("help %s has %d lines", name, n)
	}
	for line := range strings.SplitSeq(text, "\n") {
		if n := utf8.RuneCountInString(line); n > 90 {
			t.Errorf("help %s: %d characters in %q", name, n, line)
		}
	}
}

func TestFolded(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"", nil},
		{"  one  two ", []string{"one two"}},
		{"one two three four", []string{"one two", "three four"}},
		{"exactly ten chars", []string{"exactly", "ten chars"}},
		{"averyveryverylongword x", []string{"averyveryverylongword", "x"}},
		{"ünïcödé wörd xx", []string{"ünïcödé", "wörd xx"}},
	} {
		if got := folded(c.text, 10); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

func TestClean(t *testing.T) {
	for text, want := range map[string]string{
		"plain ä²":     "plain ä²",
		"a\nb\tc":      "a b c",
		"\x1b[31mred":  "\ufffd[31mred",
		"x\u202ey":     "x\ufffdy",
		"bad\xffbytes": "bad\ufffdbytes",
	} {
		if got := clean(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestFew(t *testing.T) {
	if got := few([]string{"a", "b"}); got != "a, b" {
		t.Error(got)
	}
	if got := few(strings.Split("a b c d e f g h i j k l", " ")); got != "a, b, c, d, e, f, g, h, i, j and 2 more" {
		t.Error(got)
	}
}

func TestColumnsStandUnderOneAnother(t *testing.T) {
	table := columns{right: map[int]bool{1: true}}
	table.add("name", "m³/h", "")
	table.add("longer name", "9", "short")
	want := []string{"  name         m³/h", "  longer name     9  short"}
	if got := table.lines("  "); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
