package entry

import (
	"regexp"
	"strings"
)

// misreading is one way in which a value outside quotes goes wrong.
type misreading struct {
	like     *regexp.Regexp
	expected string
	do       func(s *scanner, word string) string
}

// misreadings are tried in this order.
var misreadings = []misreading{
	{regexp.MustCompile(`^(?i:yes|on)$|^(?i:true)$`), "true or false in small letters",
		func(s *scanner, word string) string { return s.write("true") }},
	{regexp.MustCompile(`^(?i:no|off)$|^(?i:false)$`), "true or false in small letters",
		func(s *scanner, word string) string { return s.write("false") }},
	{regexp.MustCompile(`^(?i:none|null|nil|n/a|-)$`), "a value",
		func(s *scanner, word string) string {
			return `take the line away if there is nothing to say, or put the word in quotes: ` + s.given(inQuotes(word))
		}},
	{regexp.MustCompile(`^=|^>`), "one = and then the value",
		func(s *scanner, word string) string {
			return "take the second sign away"
		}},
	{regexp.MustCompile(`^[+-]?\.[0-9]+$`), "a digit before the point",
		func(s *scanner, word string) string { return s.write(strings.Replace(word, ".", "0.", 1)) }},
	{regexp.MustCompile(`^[+-]?[0-9]+\.$`), "a digit after the point",
		func(s *scanner, word string) string { return s.write(word + "0") }},
	{regexp.MustCompile(`^[+-]?0[0-9]+(\.[0-9]+)?$`), "a number without zeros in front",
		func(s *scanner, word string) string { return s.write(withoutZeros(word)) }},
	{regexp.MustCompile(`^[+-]?[0-9]{1,3}([, ][0-9]{3})+(\.[0-9]+)?$`), "a number without commas or spaces",
		func(s *scanner, word string) string {
			return s.write(strings.NewReplacer(",", "", " ", "").Replace(word))
		}},
	{regexp.MustCompile(`^[+-]?[0-9]+,[0-9]+$`), "a decimal point",
		func(s *scanner, word string) string { return s.write(strings.Replace(word, ",", ".", 1)) }},
	{regexp.MustCompile(`^[0-9]{1,4}[-/.][0-9]{1,2}[-/.][0-9]{1,4}$`), "a date as year, month and day with two digits each: 2026-11-24",
		func(s *scanner, word string) string { return "write the date in that way" }},
	{regexp.MustCompile(`^[+-]?[0-9][0-9_.]*$`), "a number such as 1200 or 0.5",
		func(s *scanner, word string) string {
			return "write the digits with at most one point, and nothing between them"
		}},
	{regexp.MustCompile(`^\(`), "square brackets round a list",
		func(s *scanner, word string) string { return "write [ ] in place of ( )" }},
	{regexp.MustCompile(`^[^"]*[^"0-9 ]"$`), "a quote at each end of a text",
		func(s *scanner, word string) string { return s.write(`"` + word) }},
}

// wordTrouble reports a word outside quotes that is no value. It returns false
// when what follows cannot be read on.
func (s *scanner) wordTrouble(start int, word string, found verdict) bool {
	at := s.place(start)
	read := excerpt(word, sourceLength)
	switch {
	case word == "":
		s.nothingGiven(at)
		return true
	case found == tooWide:
		s.report(at, read, "a number of a size that can be used", "check the digits")
		return true
	case found == noDay:
		s.report(at, read, "a date or time that exists, such as 2026-11-24", "check the month, the day and the time")
		return true
	case s.newEntry(start):
		return s.unclosedBracket()
	case strings.TrimSpace(word) != word:
		s.report(at, read, ordinarySpace, oddSpaceAdvice)
		return true
	case strings.ContainsAny(firstRune(word), smartQuotes):
		s.smartText(start, at)
		return true
	case s.closing() == ']' && pairLike.MatchString(word):
		return s.pairInList(start, at)
	}
	if next := pairWithin.FindStringIndex(word); next != nil && judge(word[:next[0]]) == sound {
		s.at = start + next[0] // the value ends there, and what follows it is the trouble
		return true
	}
	if clean, rest, ok := remarkAfter(word); ok {
		s.report(at, read, "# before a remark", s.write(clean+" # "+rest))
		return true
	}
	if bare := strings.TrimRight(word, ",; "); bare != word && judge(bare) == sound {
		s.report(at, read, "the end of the line after the value", s.write(bare))
		return true
	}
	if values := values(word); len(values) > 1 && s.closing() == ']' {
		s.report(at, read, "a comma between two values", "put commas between them: "+excerpt(strings.Join(values, ", "), longestAdvice))
		return true
	}
	for _, m := range misreadings {
		if m.like.MatchString(word) {
			s.report(at, read, m.expected, m.do(s, word))
			return true
		}
	}
	s.report(at, read, "text in quotes, a plain number, true, false or a date", "put it in quotes: "+s.given(inQuotes(word)))
	return true
}

// nothingGiven reports a key without a value.
func (s *scanner) nothingGiven(at Place) {
	if s.label == "" {
		s.report(at, "nothing", "a value", "write a value or take the comma away")
		return
	}
	s.report(at, "nothing after "+excerpt(s.label, 60)+" =", "a value", "write a value after the =, or take the line away")
}

// pairInList reports key = value straight in a list, and reads on after the =.
func (s *scanner) pairInList(start int, at Place) bool {
	equals := strings.IndexByte(s.body[start:], '=')
	if !s.bareList {
		s.report(at, excerpt(s.body[start:start+equals+1], 60)+" in a list", "a value, or { name = value }", "put braces round what belongs together: [ { … } ]")
	}
	s.bareList = true
	s.at = start + equals + 1
	s.skipSpace()
	return s.value(&Node{}, nil)
}

// smartQuotes are the curled and angled quotes of print.
const (
	doubleSmart = "“”„‟«»"
	smartQuotes = doubleSmart + "‘’‚‛"
)

// smartText reports a text in curled quotes and passes to its end.
func (s *scanner) smartText(start int, at Place) {
	rest := s.body[start:s.lineEnd(start)]
	opening := firstRune(rest)
	closing := "‘’‚‛'"
	if strings.Contains(doubleSmart, opening) {
		closing = doubleSmart + `"`
	}
	if end := strings.IndexAny(rest[len(opening):], closing); end >= 0 {
		end += len(opening)
		s.at = max(s.at, start+end+len(firstRune(rest[end:])))
	}
	read := s.body[start:s.at]
	s.report(at, excerpt(read, sourceLength), `straight quotes " "`, s.write(inQuotes(strings.Trim(read, smartQuotes+`"'`))))
}

// values splits a word into the values in it that have no comma between them,
// none when a part of it is no value.
func values(word string) []string {
	parts := strings.FieldsFunc(word, func(r rune) bool { return r == ' ' || r == '\t' || r == ';' })
	for _, part := range parts {
		if judge(part) != sound {
			return nil
		}
	}
	return parts
}

// pairWithin finds name = after a space.
var pairWithin = regexp.MustCompile(`[ \t]+` + bareKey + `[ \t]*=`)

// remarkAfter splits a value from a remark written the way of other languages.
func remarkAfter(word string) (clean, rest string, ok bool) {
	for _, mark := range []string{" //", " ;", " --"} {
		before, after, found := strings.Cut(word, mark)
		before = strings.TrimRight(before, " \t")
		if found && judge(before) == sound {
			return before, strings.TrimSpace(after), true
		}
	}
	return "", "", false
}

// withoutZeros takes the zeros from the front of a number.
func withoutZeros(number string) string {
	digits := strings.TrimLeft(number, "+-")
	sign := number[:len(number)-len(digits)]
	digits = strings.TrimLeft(digits, "0")
	if digits == "" || digits[0] == '.' {
		digits = "0" + digits
	}
	return sign + digits
}
