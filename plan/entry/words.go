package entry

import (
	"strconv"
	"strings"
	"unicode"
)

// Quote returns the text in double quotes for a message: control characters,
// direction marks and odd spaces escaped, cut to 60 characters.
func Quote(s string) string {
	return strconv.Quote(shorten(s, 60))
}

// shorten cuts a text to that many characters, the last of them … when
// something was cut.
func shorten(s string, most int) string {
	count := 0
	last := 0
	for i := range s {
		count++
		if count == most {
			last = i
		}
		if count > most {
			return s[:last] + "…"
		}
	}
	return s
}

// plain puts a text on one line: a line end or tab becomes a space, with the
// white space round it, and characters that cannot be seen are escaped.
func plain(s string) string {
	var b strings.Builder
	spaces, folded := 0, false
	for _, r := range strings.Trim(s, " \t\r\n") {
		switch r {
		case ' ':
			spaces++
			continue
		case '\t', '\r', '\n':
			folded = true
			continue
		}
		if folded {
			spaces = 1
		}
		b.WriteString(strings.Repeat(" ", spaces))
		spaces, folded = 0, false
		if unicode.IsPrint(r) {
			b.WriteRune(r)
			continue
		}
		b.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
	}
	return b.String()
}

// excerpt returns the start of a text for a message: on one line, at most that
// many characters.
func excerpt(s string, most int) string {
	if limit := most * 8; len(s) > limit { // enough for the characters shown, whatever their width
		s = strings.ToValidUTF8(s[:limit], "") + "…"
	}
	return shorten(plain(s), most)
}

// Words writes a path as people read it, counting from 1: machine[3].port[0].flow
// is machine 4, port 1, flow.
func Words(path string) string {
	var parts []string
	for path != "" {
		name := path
		if quoted, err := strconv.QuotedPrefix(path); err == nil {
			name = quoted
		} else if end := strings.IndexAny(path, ".["); end >= 0 {
			name = path[:end]
		}
		path = path[len(name):]
		indexes, rest := leadingIndexes(path)
		path = strings.TrimPrefix(rest, ".")
		for i, index := range indexes {
			if i == 0 {
				name += " " + index
				continue
			}
			name += ", item " + index
		}
		parts = append(parts, name)
	}
	return strings.Join(parts, ", ")
}

// leadingIndexes takes the [3][1] at the start of a path and counts them from 1.
func leadingIndexes(path string) (indexes []string, rest string) {
	for strings.HasPrefix(path, "[") {
		end := strings.IndexByte(path, ']')
		if end < 0 {
			return indexes, ""
		}
		index, err := strconv.Atoi(path[1:end])
		if err != nil {
			return indexes, ""
		}
		indexes = append(indexes, strconv.Itoa(index+1))
		path = path[end+1:]
	}
	return indexes, path
}

// pathName writes one name of a path: bare where TOML allows it, else quoted.
func pathName(name string) string {
	if isBare(name) {
		return name
	}
	return strconv.Quote(name)
}

// pathOf writes the path of a name within a table.
func pathOf(table, name string) string {
	if table == "" {
		return pathName(name)
	}
	return table + "." + pathName(name)
}
