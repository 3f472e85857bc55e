package templates

import (
	"slices"
	"strings"
	"testing"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// The sheet shows, for each use that is short of air, its weakest port and the
// changes of the plan that gain most, the most first.
func TestChangesSheet(t *testing.T) {
	b := roomsBook(t)
	found := b.shortOfAir()
	short, served, shut := found.short, found.served, slices.Concat(found.off, found.shut)
	if len(short) == 0 || len(served) == 0 {
		t.Fatalf("%d short, %d served, %d not known", len(short), len(served), len(shut))
	}
	if got := len(short) + len(served) + len(shut); got < len(b.Plan.Shop.Machines)+len(b.Plan.Shop.Uses) {
		t.Errorf("%d uses of %d", got, len(b.Plan.Shop.Machines)+len(b.Plan.Shop.Uses))
	}
	v := b.changesView(found)
	for i, f := range short {
		gains := b.gaining(f)
		u := v.Uses[i]
		if !strings.Contains(u.Says, f.Port.Full()) || f.Share >= 1 {
			t.Errorf("%s: %q", u.Use, u.Says)
		}
		for k, row := range u.Rows {
			if row.Name != b.changeName(gains[k]) || row.Gain != unit.Air.Figure(b.units, gains[k].Gain) {
				t.Errorf("%s: row %d is %q", u.Use, k, row.Name)
			}
			if k > 0 && gains[k].Gain > gains[k-1].Gain {
				t.Errorf("%s: %q gains more than what stands before it", u.Use, row.Name)
			}
		}
		if len(u.Rows) != len(gains) || (len(u.More) > 0) != (len(gains) < len(f.Changes)) {
			t.Errorf("%s: %d rows of %d that gain and %d tried, more: %q", u.Use, len(u.Rows), len(gains), len(f.Changes), u.More)
		}
	}
	_, words := b.sheet(t, "first.html")
	inOrder(t, "what to change first", words, "change first", "Over all uses", "Lock out machine and collector", "Use by use", "Air gained", "These have all the air they need")
}

// Over all uses: what brings most uses to their full need stands first.
func TestChangesOverAll(t *testing.T) {
	b := roomsBook(t)
	short := b.shortOfAir().short
	last := changesOver{Enough: len(short) + 1, Helps: len(short) + 1}
	for _, row := range b.overAll(short) {
		if row.Enough > last.Enough || row.Enough == last.Enough && row.Helps > last.Helps {
			t.Errorf("%q helps more than %q before it", row.Name, last.Name)
		}
		if row.Helps == 0 || row.Helps > len(short) || row.Enough > row.Helps || row.Best == "" {
			t.Errorf("%+v", row)
		}
		last = row
	}
}

// The verdict: nothing first, change first, nothing gains, not known.
func TestChangesVerdict(t *testing.T) {
	b := roomsBook(t)
	found := b.shortOfAir()
	short, served := found.short, found.served
	bare := *short[0]
	bare.Changes = nil
	for _, c := range []struct {
		found airShort
		word  string
		says  string
	}{
		{airShort{short: short, served: served}, "change first", "What does most for it"},
		{airShort{short: []*duct.First{&bare}, served: served}, "change first", "No single change"},
		{airShort{served: served}, "nothing first", "Every port of every use gets its need"},
		{airShort{served: served, off: []string{"Lathe"}}, "not all known", "leave the fan's curve: Lathe."},
		{airShort{}, "not known", "can be told"},
		{airShort{off: []string{"Lathe"}}, "not known", "can be told"},
	} {
		v := b.changesVerdict(c.found)
		if v.Words[0].Text != c.word || !strings.Contains(v.Says, c.says) || v.Do == "" {
			t.Errorf("%+v, want %q", v, c.word)
		}
	}
}

// The sheet of each collector shows the plan's demands, the short ones marked.
func TestEnoughSheet(t *testing.T) {
	b := roomsBook(t)
	list := b.Plan.Air.BigEnough()
	v := b.enoughView(list)
	for i, e := range list {
		k := 0
		for j := range e.Demands {
			d := &e.Demands[j]
			if d.Port == nil {
				continue
			}
			row := v.Collectors[i].Rows[k]
			k++
			if row.Use != d.Use.Name || row.Short != (d.OnCurve && d.Share < 1) || d.Reachable && row.Static != unit.Press.Figure(b.units, d.Static) {
				t.Errorf("%s: %+v", e.Collector.Name, row)
			}
			if d.InRange && (d.Spare < 0) != (d.Share < 1) {
				t.Errorf("%s, %s: spare %g with a share of %g", d.Use.Name, d.Filter, float64(d.Spare), d.Share)
			}
		}
		if k == 0 {
			t.Errorf("%s has no row", e.Collector.Name)
		}
	}
	_, words := b.sheet(t, "enough.html")
	inOrder(t, "big enough", words, "not enough", "of its need", "Claimed", "Needed at most", "A fan would need", "To spare")
}

func TestEnoughVerdict(t *testing.T) {
	b := roomsBook(t)
	list := b.Plan.Air.BigEnough()
	plenty := *list[0].Worst
	plenty.Share, plenty.Margin = 1.25, 0.25
	for _, c := range []struct {
		list []duct.Enough
		word string
		says string
	}{
		{list, "not enough", "% of its need"},
		{[]duct.Enough{{Worst: &plenty}}, "not all served", "gets no air: another machine of the use has the end of Far drop"},
	} {
		if v := b.enoughVerdict(c.list); v.Words[0].Text != c.word || !strings.Contains(v.Says, c.says) || v.Do == "" {
			t.Errorf("%+v, want %q", v, c.word)
		}
	}
}
