package book

import (
	"errors"
	"fmt"
	"maps"
	"net/url"
	"slices"
	"strings"
)

// page is what a page links to and the ids it has.
type page struct {
	links []string
	shows []string // what it shows: pictures and styles
	ids   map[string]int
	refs  []string // ids that attributes of the page refer to
}

// checkLinks reports every link of the pages that leads to no file of the
// book, or to no place on it, every id that stands twice, and every address
// outside the book that its sheet may not link to.
func checkLinks(files map[string][]byte, pages map[string]page, outside map[string][]string) error {
	var faults []error
	checked := map[string]string{} // links to other sheets, which most sheets share
	check := func(link, from string) string {
		if strings.HasPrefix(link, "#") || strings.HasPrefix(link, "?") || link == "" {
			return checkLink(link, from, files, pages)
		}
		fault, done := checked[link]
		if !done {
			fault = checkLink(link, from, files, pages)
			checked[link] = fault
		}
		return fault
	}
	for _, path := range slices.Sorted(maps.Keys(pages)) {
		p := pages[path]
		for _, id := range slices.Sorted(maps.Keys(p.ids)) {
			if p.ids[id] > 1 {
				faults = append(faults, fmt.Errorf("%s: the id %q stands %d times", path, id, p.ids[id]))
			}
		}
		for _, id := range p.refs {
			if p.ids[id] == 0 {
				faults = append(faults, fmt.Errorf("%s: nothing has the id %q", path, id))
			}
		}
		for _, link := range p.links {
			if slices.Contains(outside[path], link) {
				continue
			}
			if fault := check(link, path); fault != "" {
				faults = append(faults, fmt.Errorf("%s: the link %q %s", path, link, fault))
			}
		}
		for _, link := range p.shows {
			if fault := check(link, path); fault != "" {
				faults = append(faults, fmt.Errorf("%s: what it shows, %q, %s", path, link, fault))
			}
		}
	}
	return errors.Join(faults...)
}

// checkLink says what is wrong with a link; empty when nothing is.
func checkLink(link, from string, files map[string][]byte, pages map[string]page) string {
	if link == "data:," {
		return "" // the empty icon, so that no browser asks for one
	}
	u, err := url.Parse(link)
	if err != nil {
		return "cannot be read"
	}
	if u.IsAbs() || u.Host != "" || strings.HasPrefix(u.Path, "/") {
		return "leaves the book"
	}
	target := u.Path
	if target == "" {
		target = from
	}
	if _, ok := files[target]; !ok {
		return "leads to no file"
	}
	if u.Fragment != "" && pages[target].ids[u.Fragment] == 0 {
		return "leads to no place on its sheet"
	}
	return ""
}
