package templates

import "strconv"

// notGiven says that the shop file does not say.
func (b *Book) notGiven() string { return b.words.Text("common.not-given") }

// notKnown says that the plan cannot tell.
func (b *Book) notKnown() string { return b.words.Text("common.not-known") }

// between are the two ends of a range.
func (b *Book) between(low, high string) string { return b.words.Text("common.between", low, high) }

// countWith is the text of a number of things, {1}, about something else, {2}:
// that of key.one for 1, else that of key.many.
func (b *Book) countWith(key string, n int, about string) string {
	if n == 1 {
		return b.words.Text(key+".one", "1", about)
	}
	return b.words.Text(key+".many", strconv.Itoa(n), about)
}
