package main

import (
	"bytes"
	"io/fs"
	"maps"
	"slices"
	"testing"
)

func TestListingReadsWhatItWrites(t *testing.T) {
	l := list(firstBook)
	l.add(list(secondBook))
	l.add(list(firstBook))
	back, whole := readListing(l.lines())
	if !whole || !maps.EqualFunc(l, back, slices.Equal[[]string]) {
		t.Errorf("read %v, wrote %v", back, l)
	}
	if n := len(l["index.html"]); n != 2 {
		t.Errorf("index.html has %d sums, want both", n)
	}
}

func TestListingRefusesWhatIsNoManifest(t *testing.T) {
	s := sum([]byte("x"))
	for _, text := range []string{
		"no manifest\n", s + "\n", s + " one-space.html\n", s + "  \n", "00  short.html\n", s + "  unfinished.html",
		s + "  ../out.html\n", s + "  /root.html\n", s + "  a/../b.html\n", s + "  .tmp-a.html\n", s + "  a/.tmp-b/c.html\n",
		s + "  dustbook.manifest\n", s + "  back\\slash\n", s + "  c:/x\n", s + "  .\n",
	} {
		if l, whole := readListing([]byte(text)); whole {
			t.Errorf("%q is read as %v", text, l)
		}
	}
	if l, whole := readListing(nil); !whole || len(l) != 0 {
		t.Errorf("an empty manifest: %v %v", l, whole)
	}
	if l, whole := readListing([]byte(s + "  a/b c-ä.html\n")); !whole || len(l) != 1 {
		t.Errorf("a plain path is refused: %v", l)
	}
}

// A manifest is read from a folder that anybody may have written to.
func FuzzReadListing(f *testing.F) {
	f.Add(list(firstBook).lines())
	f.Add([]byte(sum(nil) + "  ../x\n"))
	f.Add([]byte("\n\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		l, whole := readListing(data)
		for name := range l {
			if !fs.ValidPath(name) || name == "." {
				t.Errorf("the path %q was taken", name)
			}
		}
		if !whole {
			return
		}
		again, whole := readListing(l.lines())
		if !whole || !bytes.Equal(again.lines(), l.lines()) {
			t.Errorf("%q reads back otherwise", data)
		}
	})
}
