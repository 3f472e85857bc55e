package templates

import (
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
)

// The questions of the packet are what the findings ask, each once for each
// person asked, with every check and thing that asks it.
func TestPacketAsksWhatTheFindingsAsk(t *testing.T) {
	b := newBook(t, string(content.Example()))
	wanted := map[[2]string]bool{}
	for _, f := range b.Findings {
		if f.Asks != "" {
			wanted[[2]string{f.Whom.Says(), f.Asks}] = true
		}
	}
	if len(wanted) < 5 {
		t.Fatalf("only %d questions", len(wanted))
	}
	number := 0
	for _, person := range b.questions() {
		for _, q := range person.Questions {
			number++
			key := [2]string{person.Whom, q.Asks}
			if !wanted[key] {
				t.Errorf("asked twice, or by no finding: %v", key)
			}
			delete(wanted, key)
			if q.Number != number || len(q.Checks) == 0 {
				t.Errorf("number %d, want %d; asked by %v", q.Number, number, q.Checks)
			}
		}
	}
	for key := range wanted {
		t.Errorf("left out: %v", key)
	}
	page, words := b.sheet(t, packetPath)
	for _, person := range b.questions() {
		for _, q := range person.Questions {
			if !strings.Contains(words, strings.Join(strings.Fields(q.Asks), " ")) {
				t.Errorf("the page does not ask %q", q.Asks)
			}
		}
	}
	if rooms := strings.Count(page, "Name, day:"); rooms != number {
		t.Errorf("%d questions have room for an answer, of %d", rooms, number)
	}
}

// The same question of two findings is one question; of two persons it is two.
func TestPacketMergesQuestions(t *testing.T) {
	b := newBook(t, string(content.Small()))
	b.Findings = []checks.Finding{
		{Check: "open-flue", Asks: "May it?", Whom: checks.Engineer, About: "Saw", Kind: "machine"},
		{Check: "motor-power", Asks: "May it?", Whom: checks.Authority, About: "Saw", Kind: "machine"},
		{Check: "motor-power", Asks: "May it?", Whom: checks.Engineer, About: "Planer", Kind: "machine"},
		{Check: "motor-power", Asks: "Where?", Whom: checks.Engineer, About: "Planer", Kind: "machine"},
		{Check: "motor-power", Says: "nothing asked"},
	}
	got := b.questions()
	if len(got) != 2 || got[0].Whom != checks.Authority.Says() || got[1].Whom != checks.Engineer.Says() {
		t.Fatalf("%+v", got)
	}
	if n := len(got[1].Questions); n != 2 {
		t.Fatalf("the engineer is asked %d questions", n)
	}
	q := got[1].Questions[0]
	if len(q.Checks) != 2 || len(q.About) != 2 || q.Number != 2 {
		t.Errorf("%+v", q)
	}
}

// Every finding that says stop or mend stands in the packet with its text,
// what is met is counted alone, and who accepted what is told.
func TestPacketShowsWhatStands(t *testing.T) {
	b := newBook(t, string(content.Example()))
	_, words := b.sheet(t, packetPath)
	met, accepted := 0, 0
	for _, f := range b.Findings {
		says := strings.Join(strings.Fields(content.Settled(f.Says)), " ")
		switch {
		case f.State == checks.Met:
			met++
		case f.Accepted != nil:
			accepted++
			if !strings.Contains(words, f.Accepted.Reason) {
				t.Errorf("the reason of %s is left out", f.Check)
			}
		case f.Weight != checks.Know && !strings.Contains(words, says):
			t.Errorf("%s about %s is left out: %s", f.Check, f.About, says)
		}
	}
	if accepted == 0 || met == 0 {
		t.Fatal("the example has nothing accepted, or nothing met")
	}
	v := b.packetView()
	if v.Met != met || len(v.Accepted) != accepted {
		t.Errorf("%d met of %d, %d accepted of %d", v.Met, met, len(v.Accepted), accepted)
	}
	inOrder(t, "the packet", words, "The authority having jurisdiction decides", "The shop and its dust", "Machines and what they need", "What was checked", "Stop: do not run until settled", "To mend", "Questions", "Texts compared with", "Papers", "Letters", "Signatures")
}

// Past the room of the packet what is to know is named and no more; what says
// stop or mend never is.
func TestPacketRoom(t *testing.T) {
	b := newBook(t, string(content.Small()))
	long := strings.Repeat("word ", roomToKnow/5)
	b.Findings = []checks.Finding{
		{Check: "air-captured", State: checks.NotMet, Weight: checks.Mend, About: "Saw", Says: long},
		{Check: "dust-carried", State: checks.NotMet, Weight: checks.Mend, About: "Saw", Says: long},
		{Check: "motor-power", State: checks.Thin, Weight: checks.Know, About: "Fan", Says: "short"},
		{Check: "filter-load", State: checks.NotGiven, Weight: checks.Know, About: "Fan", Says: "no area"},
		{Check: "bonded-duct", State: checks.NotGiven, Weight: checks.Know, About: "Trunk", Says: long},
	}
	var v packetView
	b.packetFindings(&v)
	if len(v.Weights) != 2 || len(v.Weights[0].Checks) != 2 || len(v.Weights[0].Brief) != 0 {
		t.Fatalf("%d weights", len(v.Weights))
	}
	if know := v.Weights[1]; len(know.Checks) != 0 || len(know.Brief) != 1 || !slices.Equal(know.Brief[0].Abouts(), []string{"Fan"}) {
		t.Errorf("%+v", know)
	}
	if len(v.Unknown) != 1 || v.Unknown[0].Rows[0].Says != "no area" || len(v.Waiting) != 1 {
		t.Errorf("%+v, waiting %+v", v.Unknown, v.Waiting)
	}
	b.Findings = b.Findings[2:3]
	v = packetView{}
	if b.packetFindings(&v); len(v.Weights) != 1 || len(v.Weights[0].Checks) != 1 || len(v.Weights[0].Brief) != 0 {
		t.Errorf("with room: %+v", v.Weights)
	}
}

// Two things of which the same is so stand in one line.
func TestPacketMergesFindings(t *testing.T) {
	b := newBook(t, string(content.Small()))
	list := b.packetChecks([]checks.Finding{
		{Check: "motor-power", State: checks.Thin, About: "A", Says: "same", Do: "this"},
		{Check: "motor-power", State: checks.Thin, About: "B", Says: "same", Do: "this"},
		{Check: "motor-power", State: checks.Ask, About: "C", Says: "same", Do: "this"},
	})
	if len(list) != 1 || list[0].Do != "this" || len(list[0].Rows) != 2 || !slices.Equal(list[0].Rows[0].About, []string{"A", "B"}) {
		t.Errorf("%+v", list)
	}
	list = b.packetChecks([]checks.Finding{
		{Check: "motor-power", State: checks.Thin, About: "A", Says: "same", Do: "this"},
		{Check: "motor-power", State: checks.Thin, About: "B", Says: "same", Do: "that"},
	})
	if list[0].Do != "" || len(list[0].Rows) != 2 || list[0].Rows[1].Do != "that" {
		t.Errorf("%+v", list)
	}
}

// The packet says of every paper whether it is in hand, printed or missing, and
// names the documents that belong to none.
func TestPacketPapers(t *testing.T) {
	b := newBook(t, string(content.Example())+"\n[[document]]\nkind = \"crystal ball reading\"\nheld = true\ndate = 2026-11-01\nby = \"the teller\"\n")
	_, words := b.sheet(t, packetPath)
	for _, paper := range checks.Papers(b.Plan) {
		if shown := strings.Contains(words, capital(paper.Name)); shown != (paper.State != checks.NotAsked) {
			t.Errorf("%s (%s): shown %v", paper.Name, paper.State, shown)
		}
	}
	inOrder(t, "the papers", words, "In hand", "Printed by this book", "Missing", "Other documents of the file", "crystal ball reading in hand, of 2026-11-01, by the teller")
}

// Findings are counted by family, each once.
func TestFamilyRows(t *testing.T) {
	b := newBook(t, string(content.Example()))
	_, words := b.sheet(t, findingsPath)
	for _, row := range b.familyRows() {
		if row.Checks == 0 || !strings.Contains(words, row.Name) {
			t.Errorf("%+v", row)
		}
	}
	met := 0
	for _, group := range b.metByFamily(b.Findings) {
		for _, c := range group.Checks {
			for _, r := range c.Rows {
				met += max(1, len(r.About))
			}
		}
	}
	if met < len(b.Findings)*9/10 || met > len(b.Findings) {
		t.Errorf("%d of %d findings stand in families", met, len(b.Findings))
	}
	_, contents := b.sheet(t, "contents.html")
	inOrder(t, "the contents", contents, "Findings", "Packet", checks.Families[0].Name, checks.Families[0].Checks[0].Name, "Assumptions")
}

// A verdict leads with what its finding is about, and with nothing where that
// is the whole shop.
func TestVerdictAboutTheShop(t *testing.T) {
	b := newBook(t, string(content.Small()))
	for _, weight := range []checks.Weight{checks.Stop, checks.Mend} {
		for about, want := range map[string]string{"": "Do this.", "Fan": "Fan: Do this."} {
			b.Findings = []checks.Finding{{Check: "motor-power", State: checks.NotMet, Weight: weight, About: about, Do: "Do this."}}
			v := b.overall()
			if got := v.Says + " " + v.Do; !strings.HasSuffix(got, ". "+want) && !strings.HasSuffix(got, "settled. "+want) {
				t.Errorf("%s about %q: %s", weight, about, got)
			}
		}
	}
}
