package book

import (
	"bytes"
	"html"
	"strings"
)

// readPage collects links and ids of a page. It reads what the squeezer
// writes, where every attribute's value stands in quotes.
func readPage(data []byte) page {
	p := page{ids: map[string]int{}}
	for len(data) > 0 {
		at := bytes.IndexByte(data, '<')
		if at < 0 {
			break
		}
		if data = data[at+1:]; len(data) == 0 {
			break
		}
		switch first := data[0]; {
		case bytes.HasPrefix(data, []byte("!--")):
			data = after(data, "-->")
		case first|0x20 >= 'a' && first|0x20 <= 'z':
			var name []byte
			name, data = p.readTag(data)
			if name := string(name); name == "script" || name == "style" { // their text is no markup
				data = after(data, "</"+name)
			}
		}
	}
	return p
}

// after is what stands behind a text.
func after(data []byte, text string) []byte {
	if at := bytes.Index(data, []byte(text)); at >= 0 {
		return data[at+len(text):]
	}
	return nil
}

// blank reports whether a sign stands between attributes.
func blank(c byte) bool { return c == ' ' || c == '\n' || c == '\t' || c == '\r' || c == '/' }

// word is the length of what stands before a blank, a ">" or another sign.
func word(data []byte, or byte) int {
	for i, c := range data {
		if c == '>' || c == or || blank(c) {
			return i
		}
	}
	return len(data)
}

// readTag reads a tag from its name on, and returns the name and what stands
// behind the tag.
func (p *page) readTag(data []byte) (name, rest []byte) {
	end := word(data, '>')
	name, data = data[:end], data[end:]
	for {
		for len(data) > 0 && blank(data[0]) {
			data = data[1:]
		}
		if len(data) == 0 || data[0] == '>' {
			return name, data
		}
		end := word(data, '=')
		key := data[:end]
		if data = data[end:]; len(data) < 2 || data[0] != '=' {
			if end == 0 {
				return name, data // a "=" is no name: no page has that
			}
			continue
		}
		quote := data[1]
		if quote != '"' && quote != '\'' {
			end = word(data[1:], '>')
			p.take(name, key, data[1:1+end])
			data = data[1+end:]
			continue
		}
		data = data[2:]
		if end = bytes.IndexByte(data, quote); end < 0 {
			return name, nil
		}
		p.take(name, key, data[:end])
		data = data[end+1:]
	}
}

// take takes up an attribute.
func (p *page) take(tag, key, value []byte) {
	switch string(key) {
	case "href":
		if string(tag) == "a" {
			p.links = append(p.links, html.UnescapeString(string(value)))
			return
		}
		p.shows = append(p.shows, html.UnescapeString(string(value)))
	case "src", "xlink:href":
		p.shows = append(p.shows, html.UnescapeString(string(value)))
	case "id":
		p.ids[html.UnescapeString(string(value))]++
	case "aria-labelledby", "aria-describedby", "for", "headers":
		p.refs = append(p.refs, strings.Fields(html.UnescapeString(string(value)))...)
	}
}
