package drawing_test

import (
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/control/trace"
	"dustbook/templates/drawing"
)

func means(mark string) string {
	return content.WordsIn(content.English).Text("drawing.means." + mark)
}

// A timing diagram has a lane for everything that changes and none for what
// does not, the time of every change once, and a mark for what is not proven.
func TestLanes(t *testing.T) {
	svg := drawing.Lanes(drawing.Story(), drawing.StoryNames, "Saw & cut", "l")
	checkForm(t, "lanes", svg, knownClasses())
	checkTexts(t, "lanes", svg)
	for _, text := range []string{"Power", "T1 Saw running", "Z1 Zone gate", "G1 Saw gate", "Cyclone", "Signal", ">3.8<", ">36.0<", "Saw &amp; cut", means("lane-unproven"), means("lane-coasts"), means("lane-waits")} {
		if !strings.Contains(string(svg), text) {
			t.Errorf("it does not say %q", text)
		}
	}
	for _, text := range []string{"T2 Planer running", "G2 Other gate", "Lockout"} {
		if strings.Contains(string(svg), text) {
			t.Errorf("%s has a lane, and nothing changes in it", text)
		}
	}
	if n := strings.Count(string(svg), ">3.8<"); n != 1 {
		t.Errorf("3.8 s stands %d times", n)
	}
}

// What does not happen is not in the key.
func TestLanesOfAProvenRun(t *testing.T) {
	s := drawing.Story()
	s.Records, s.End = s.Records[:5], 4000
	svg := string(drawing.Lanes(s, drawing.StoryNames, "Short", "l"))
	for _, mark := range []string{"lane-unproven", "lane-coasts", "lane-waits"} {
		if strings.Contains(svg, means(mark)) {
			t.Errorf("the key says %q of a run without it", means(mark))
		}
	}
	if !strings.Contains(svg, means("lane-moves")) {
		t.Error("the key is not there")
	}
}

// However close things happen and however long a run lasts, no text of it lies
// on another, whatever the names.
func TestTimesStandApart(t *testing.T) {
	for step, end := range map[trace.Time]trace.Time{1: 700, 30: 60000, 900: 4000000} {
		s := drawing.Story()
		for i := range s.Records {
			s.Records[i].At = 500 + step*trace.Time(i)
		}
		s.End = end
		names := drawing.LaneNames{Triggers: []string{strings.Repeat("W", 70), "<b>"}, Gates: []string{"\u202eevil", "木 gate with a long name that goes on", "G2"}, Collectors: []string{"&amp;"}}
		svg := drawing.Lanes(s, names, "Close", "l")
		checkForm(t, "close", svg, knownClasses())
		checkTexts(t, "close", svg)
	}
}

// A story in which nothing happens is drawn all the same.
func TestEmptyLanes(t *testing.T) {
	checkForm(t, "empty", drawing.Lanes(&trace.Trace{Head: &trace.Head{}}, drawing.LaneNames{}, "Nothing", "l"), knownClasses())
}
