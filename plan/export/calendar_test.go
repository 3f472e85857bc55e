package export

import "testing"

// What a text of RFC 5545 cannot hold as it is.
func TestCalendarEscapes(t *testing.T) {
	if got := calendarEscapes.Replace("a\\b;c,d\ne\r\x00f"); got != `a\\b\;c\,d\nef` {
		t.Errorf("%q", got)
	}
}
