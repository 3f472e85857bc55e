package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"

	"dustbook/templates/book"
)

// journal is the manifest of a run that is under way: it stands in the folder
// before the first sheet is written and goes when the manifest is in place.
// What a killed run left behind is known by it.
const journal = book.Manifest + ".next"

// listing says which files the tool wrote: for every path the sums that the
// file had when it was written.
type listing map[string][]string

// sum is the sum of a file in a manifest.
func sum(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

// wrote reports whether the tool wrote a file with just these bytes.
func (l listing) wrote(name string, data []byte) bool {
	return slices.Contains(l[name], sum(data))
}

// add takes over the lines of another listing.
func (l listing) add(other listing) {
	for name, sums := range other {
		for _, s := range sums {
			if !slices.Contains(l[name], s) {
				l[name] = append(l[name], s)
			}
		}
	}
}

// lines writes a listing as a manifest: sorted by path, "sum  path".
func (l listing) lines() []byte {
	var out bytes.Buffer
	for _, name := range slices.Sorted(maps.Keys(l)) {
		for _, s := range l[name] {
			fmt.Fprintf(&out, "%s  %s\n", s, name)
		}
	}
	return out.Bytes()
}

// list makes the listing of a book.
func list(pages map[string][]byte) listing {
	l := listing{}
	for name, data := range pages {
		l[name] = []string{sum(data)}
	}
	return l
}

// readListing reads a manifest. Whole is false where a line of it is none.
func readListing(data []byte) (l listing, whole bool) {
	l = listing{}
	rest := string(data)
	for rest != "" {
		line, after, ended := strings.Cut(rest, "\n")
		s, name, parted := strings.Cut(line, "  ")
		if bare, err := hex.DecodeString(s); !ended || !parted || err != nil || len(bare) != sha256.Size || soundPath(name) != nil {
			return l, false
		}
		l[name] = append(l[name], s)
		rest = after
	}
	return l, true
}

// soundPath refuses a path that may lead out of the folder, or that the tool
// keeps for itself.
func soundPath(name string) error {
	switch {
	case !fs.ValidPath(name), name == ".", strings.ContainsAny(name, `\:`), strings.ContainsFunc(name, func(r rune) bool { return r < ' ' }):
		return fmt.Errorf("%q is no path inside the book", name)
	case name == book.Manifest, name == journal:
		return fmt.Errorf("%q is a name that the tool keeps for itself", name)
	}
	for part := range strings.SplitSeq(name, "/") {
		if strings.HasPrefix(part, temporary) {
			return fmt.Errorf("%q is a name that the tool keeps for itself", name)
		}
	}
	return nil
}
