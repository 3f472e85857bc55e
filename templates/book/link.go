package book

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"net/url"
	"slices"
	"strings"

	"golang.org/x/net/html"
)

// page is what a page links to and the ids it has.
type page struct {
	links []string
	shows []string // what it shows: pictures and styles
	ids   map[string]int
	refs  []string // ids that attributes of the page refer to
}

// checkLinks reports every link that leads nowhere, every id that stands
// twice, and every address outside the book that its sheet may not link to.
func checkLinks(files map[string][]byte, outside map[string][]string) error {
	pages := map[string]page{}
	var faults []error
	for _, path := range slices.Sorted(maps.Keys(files)) {
		if strings.HasSuffix(path, ".html") {
			pages[path] = readPage(files[path])
		}
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
			if fault := checkLink(link, path, files, pages); fault != "" {
				faults = append(faults, fmt.Errorf("%s: the link %q %s", path, link, fault))
			}
		}
		for _, link := range p.shows {
			if fault := checkLink(link, path, files, pages); fault != "" {
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

// readPage collects links and ids of a page.
func readPage(data []byte) page {
	p := page{ids: map[string]int{}}
	tokens := html.NewTokenizer(bytes.NewReader(data))
	for {
		switch tokens.Next() {
		case html.ErrorToken:
			return p
		case html.StartTagToken, html.SelfClosingTagToken:
			token := tokens.Token()
			for _, a := range token.Attr {
				switch {
				case a.Key == "href" && token.Data == "a":
					p.links = append(p.links, a.Val)
				case a.Key == "href" || a.Key == "src" || a.Key == "xlink:href":
					p.shows = append(p.shows, a.Val)
				}
				switch a.Key {
				case "id":
					p.ids[a.Val]++
				case "aria-labelledby", "aria-describedby", "for", "headers":
					p.refs = append(p.refs, strings.Fields(a.Val)...)
				}
			}
		}
	}
}
