package templates

import (
	"errors"
	"html/template"
	"strconv"

	"dustbook/plan/control/sequence"
	"dustbook/plan/control/timing"
	"dustbook/plan/shop"
)

// triggerStoryView is the sheet of one trigger: what follows when it comes on
// and goes off.
type triggerStoryView struct {
	Story   storyView
	About   string        // where its facts stand
	Card    string        // of its machine
	Others  string        // the sheet of what happens when two run
	NotTold template.HTML // why there is no story
}

// sequenceView is the sheet of what happens when two triggers overlap and when
// the power fails.
type sequenceView struct {
	Stories  []storyView
	Triggers []tagged
	Early    string
	NotTold  template.HTML
}

// told is the control half as it is run, shared by the sheets that tell it.
type told struct {
	works *sequence.Works
	air   sequence.Air
	fault template.HTML
}

// addStories adds a sheet for each trigger, and one for what happens when two
// overlap and when the power fails; none for a shop without triggers.
func (b *Book) addStories() {
	triggers := b.Plan.Shop.Triggers
	if len(triggers) == 0 {
		return
	}
	run := &told{}
	var err error
	if run.works, run.air, err = b.Plan.Sequence(); err != nil {
		run.fault = b.notTold(err)
	}
	b.add(&Sheet{Part: partControl, Path: "sequence.html", Title: b.words.Text("lanes.sheet"), Kind: "table", Lede: b.words.Text("lanes.lede"),
		Verdict: b.sequenceVerdict(), name: "control-sequence.html", view: func() any { return b.sequenceView(run) }})
	for i, t := range triggers {
		b.add(&Sheet{Part: partControl, Path: storyPath(t), Title: b.words.Text("lanes.of-trigger", b.tagged(t).label()), Kind: "table", Lede: b.words.Text("lanes.of-trigger-lede", b.sensing(t)),
			Verdict: b.triggerVerdict(t), name: "control-trigger.html", view: func() any { return b.triggerStoryView(run, i) }})
	}
}

// notTold says why there is no story, and what to do.
func (b *Book) notTold(err error) template.HTML {
	fault, is := errors.AsType[*sequence.Fault](err)
	switch {
	case !is:
		return ""
	case fault.Kind == sequence.StrayGate:
		return trusted(b.words.HTML("lanes.not-told."+fault.Kind.Name(), fault.Name))
	}
	return trusted(b.words.HTML("lanes.not-told."+fault.Kind.Name(), strconv.Itoa(fault.Count), strconv.Itoa(fault.Most)))
}

// storyPath is the sheet of a trigger's story.
func storyPath(t *shop.Trigger) string { return "trigger-" + shop.Slug(t.Name) + ".html" }

// sequenceVerdict says what of the sequence is not proven; where all is, to
// watch it.
func (b *Book) sequenceVerdict() Verdict {
	powered := b.Plan.Control.Powered()
	if len(powered) == 0 {
		return Verdict{Words: []Word{{"blank", b.words.Text("lanes.no-power-word")}}, Says: b.words.Text("lanes.no-power-says"), Do: b.words.Text("lanes.verdict-do")}
	}
	blind := 0
	for _, g := range powered {
		if timing.ByTimeAlone(g) {
			blind++
		}
	}
	if blind > 0 {
		return Verdict{Words: []Word{{"thin", b.words.Text("lanes.unproven-word")}}, Says: b.words.Count("lanes.unproven-says", blind), Do: b.words.Text("lanes.unproven-do")}
	}
	return Verdict{Words: []Word{{"blank", b.words.Text("lanes.verdict")}}, Says: b.words.Text("lanes.all-proven"), Do: b.words.Text("lanes.verdict-do")}
}

// triggerVerdict is the heaviest finding about a trigger; without one that is
// not met, to watch it.
func (b *Book) triggerVerdict(t *shop.Trigger) Verdict {
	if rows := b.rowsAbout("trigger", t.Name); len(rows) > 0 {
		return b.worstOf(rows)
	}
	return Verdict{Words: []Word{{"blank", b.words.Text("lanes.verdict")}}, Says: b.words.Text("lanes.one-says"), Do: b.words.Text("lanes.verdict-do")}
}

func (b *Book) triggerStoryView(run *told, i int) triggerStoryView {
	t := b.Plan.Shop.Triggers[i]
	v := triggerStoryView{About: b.Path("trigger", t.Name), Others: "sequence.html", NotTold: run.fault}
	if t.Machine != nil {
		v.Card = b.Path("card", t.Machine.Name)
	}
	if run.works != nil {
		v.Story = b.storyView(sequence.One(run.works, run.air, i), b.words.Text("lanes.one", b.tagged(t).label()), b.words.Text("lanes.one-says"), "one")
	}
	return v
}

func (b *Book) sequenceView(run *told) sequenceView {
	v := sequenceView{NotTold: run.fault}
	for _, t := range b.Plan.Shop.Triggers {
		at := b.tagged(t)
		at.Path = storyPath(t)
		v.Triggers = append(v.Triggers, at)
	}
	if run.works == nil {
		return v
	}
	both, apart := sequence.Pairs(run.works, run.air)
	v.Stories = append(b.pairStory(both, "lanes.two-says", "both"), b.pairStory(apart, "lanes.two-wait-says", "waits")...)
	cut := sequence.Unpressed(run.works)
	t := b.Plan.Shop.Triggers[cut]
	v.Stories = append(v.Stories, b.storyView(sequence.Cut(run.works, run.air, cut), b.words.Text("lanes.cut", b.tagged(t).label()), b.cutSays(), "cut"))
	return v
}

// pairStory tells of two triggers that overlap; nothing where there are none.
func (b *Book) pairStory(p *sequence.Pair, says, id string) []storyView {
	if p == nil {
		return nil
	}
	first, second := b.Plan.Shop.Triggers[p.First], b.Plan.Shop.Triggers[p.Second]
	return []storyView{b.storyView(p.Story, b.words.Text("lanes.two", b.tagged(first).label(), b.tagged(second).label()), b.words.Text(says), id)}
}

// cutSays leads the story of a power cut in.
func (b *Book) cutSays() string {
	if b.Plan.Control.RestartsByItself() {
		return b.words.Text("lanes.cut-says-but")
	}
	return b.words.Text("lanes.cut-says")
}
