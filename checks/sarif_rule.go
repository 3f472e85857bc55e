package checks

import (
	"regexp"
	"strings"

	"dustbook/content"
)

// rules are the checks as rules, in the order of the book.
func rules() []sarifRule {
	var list []sarifRule
	for _, c := range All {
		markdown := withoutLinks(string(content.CheckProse(c.ID)))
		r := sarifRule{ID: c.ID, Name: c.Name}
		r.Short.Text = messageText(c.Title + "?")
		r.Help = sarifText{messageText(plainProse(markdown)), messageText(markdown)}
		r.Default.Level = defaultLevel(c)
		list = append(list, r)
	}
	return list
}

// The Markdown that the prose of checks has.
const (
	linkOf     string = `\[([^\]]*)\]\(<?[^)>]*>?\)`
	headOf     string = `(?m)^#+ +`
	emphasisOf string = `\*\*?([^*\n]+)\*\*?`
)

var proseLink, proseHead, proseEmphasis = regexp.MustCompile(linkOf), regexp.MustCompile(headOf), regexp.MustCompile(emphasisOf)

// withoutLinks takes the links out of the prose of a check: they lead to
// sheets of a book, which a reader of findings does not have at hand.
func withoutLinks(markdown string) string {
	return strings.TrimSpace(proseLink.ReplaceAllString(markdown, "$1")) + "\n"
}

// plainProse is the prose of a check without its Markdown.
func plainProse(markdown string) string {
	text := proseHead.ReplaceAllString(markdown, "")
	text = proseEmphasis.ReplaceAllString(text, "$1")
	return strings.ReplaceAll(text, "`", "")
}
