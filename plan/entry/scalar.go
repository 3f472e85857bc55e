package entry

import (
	"regexp"
	"strconv"
	"strings"
	"time"
)

// The ways TOML writes numbers, dates and times.
var (
	decimalDigits = `[0-9](?:_?[0-9])*`
	wholeDigits   = `[+-]?(?:0|[1-9](?:_?[0-9])*)`
	integerLike   = regexp.MustCompile(`^(?:` + wholeDigits + `|0x[0-9A-Fa-f](?:_?[0-9A-Fa-f])*|0o[0-7](?:_?[0-7])*|0b[01](?:_?[01])*)$`)
	floatLike     = regexp.MustCompile(`^(?:` + wholeDigits + `(?:\.` + decimalDigits + `)?(?:[eE][+-]?` + decimalDigits + `)?)$`)
	endless       = regexp.MustCompile(`^[+-]?(?:inf|nan)$`)
	timeLike      = regexp.MustCompile(`^(?:[0-9]{4}-[0-9]{2}-[0-9]{2}(?:[Tt ]` + clockDigits + `(?:[Zz]|[+-][0-9]{2}:[0-9]{2})?)?|` + clockDigits + `)$`)
)

// clockDigits is a time of day.
const clockDigits = `[0-9]{2}:[0-9]{2}(?::[0-9]{2}(?:\.[0-9]+)?)?`

// timeLayouts are the forms of dates and times in the terms of package time.
var timeLayouts = []string{
	"2006-01-02", "15:04:05", "15:04",
	"2006-01-02T15:04:05", "2006-01-02T15:04",
	time.RFC3339Nano, "2006-01-02T15:04Z07:00",
}

// verdict is what is found about a word outside quotes.
type verdict int

const (
	sound    verdict = iota
	tooWide          // a number that no computer number holds
	noDay            // a date or time that does not exist
	nonsense         // nothing TOML knows
)

// judge tells whether a word outside quotes is a value.
func judge(word string) verdict {
	switch {
	case word == "true" || word == "false":
		return sound
	case integerLike.MatchString(word):
		if _, err := strconv.ParseInt(word, 0, 64); err != nil {
			return tooWide
		}
		return sound
	case endless.MatchString(word): // refused later, as numbers
		return sound
	case floatLike.MatchString(word):
		if _, err := strconv.ParseFloat(strings.ReplaceAll(word, "_", ""), 64); err != nil {
			return tooWide
		}
		return sound
	case timeLike.MatchString(word):
		written := strings.NewReplacer("t", "T", "z", "Z", " ", "T").Replace(word)
		for _, layout := range timeLayouts {
			if _, err := time.Parse(layout, written); err == nil {
				return sound
			}
		}
		return noDay
	}
	return nonsense
}

// scalar reads a value that is not in quotes or brackets.
func (s *scanner) scalar() bool {
	start := s.at
	word := s.word()
	s.at += len(word)
	found := judge(word)
	if found == sound {
		return true
	}
	s.broken = true
	return s.wordTrouble(start, word, found)
}

// word returns what stands outside quotes up to the end of the value: the end
// of the line or a remark, within brackets also a comma or a closing bracket.
func (s *scanner) word() string {
	rest := s.body[s.at:]
	ends := "\n#"
	if len(s.brackets) > 0 {
		ends = "\n#,]}"
	}
	if end := strings.IndexAny(rest, ends); end >= 0 {
		rest = rest[:end]
	}
	return strings.TrimRight(rest, " \t\r")
}
