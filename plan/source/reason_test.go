package source

import (
	"slices"
	"strings"
	"testing"
)

func TestReasonsInWords(t *testing.T) {
	for _, c := range []struct {
		reason Reason
		want   string
	}{
		{Because("unsettled"), "the flows did not settle"},
		{Because("size-open", "Main"), "the size of Main is still to be chosen"},
		{Because("size-open", "{2} {1}"), "the size of {2} {1} is still to be chosen"},
		{Because("which-stretch", "Main 1", "Main 2"), "say which stretch, Main 1 to Main 2"},
		{Because("size-open", "Main").Causing("off-in-use"), "the plan has none in this use: the size of Main is still to be chosen"},
		{Reason{}, ""},
	} {
		if got := c.reason.String(); got != c.want || c.reason.Is() != (c.want != "") {
			t.Errorf("%q, there: %v; want %q", got, c.reason.Is(), c.want)
		}
	}
	if main, again := Because("size-open", "Main"), Because("size-open", "Main"); main != again || main == Because("size-open", "Drop") {
		t.Error("reasons do not compare")
	}
	if name, about, causes := Because("size-open", "Main").Causing("off-in-use").Because(); name != "size-open" || !slices.Equal(about, []string{"Main"}) || causes != "off-in-use" {
		t.Errorf("%q about %q causes %q", name, about, causes)
	}
}

// A reason that is not there, and one about the wrong number of names, are
// faults of the program.
func TestReasonsThatAreRefused(t *testing.T) {
	for name, f := range map[string]func(){
		"unknown":              func() { Because("weather") },
		"no name":              func() { Because("size-open") },
		"a name too many":      func() { Because("unsettled", "Main") },
		"a cause of no reason": func() { Because("unsettled").Causing("unserved") },
		"twice":                func() { mustReasons([]byte("name,says\na,b\na,c\n")) },
		"empty":                func() { mustReasons([]byte("name,says\na,\n")) },
		"ragged":               func() { mustReasons([]byte("name,says\na\n")) },
	} {
		if !panics(f) {
			t.Errorf("%s: not refused", name)
		}
	}
	if panics(func() { mustReasons([]byte("name,says\na,b\n")) }) {
		t.Error("a sound table is refused")
	}
}

func panics(f func()) (did bool) {
	defer func() { did = recover() != nil }()
	f()
	return false
}

// Every reason has one text, with at most two places, in order.
func TestReasonTexts(t *testing.T) {
	if len(Reasons()) < 15 {
		t.Fatalf("only %d reasons", len(Reasons()))
	}
	for _, name := range Reasons() {
		text := reasonTexts[name]
		places := strings.Count(text, "{")
		if places > 2 || places > 0 && !strings.Contains(text, "{1}") || places > 1 && !strings.Contains(text, "{2}") {
			t.Errorf("%s: %q", name, text)
		}
	}
}
