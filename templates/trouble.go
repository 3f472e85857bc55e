package templates

import "html/template"

// troublePath is where the fault finder stands.
const troublePath = "trouble.html"

// troubleView is the fault finder: what one notices with the causes in the
// order to look, and what the gauges of this shop say.
type troubleView struct {
	Press    string // unit
	Symptoms []symptom
	Taps     []gaugeTable
	Filters  []gaugeTable
	Agree    string // the share within which a reading agrees, in percent
}

// symptom is what one notices.
type symptom struct {
	ID, Name string
	Steps    []troubleStep
}

// troubleStep is one likely cause: what it is, what to look at and what to do,
// with the shop's own things and figures.
type troubleStep struct {
	Cause, Look, Do template.HTML
	Things          []troubleThing
}

// troubleThing is one thing of the shop with its figures.
type troubleThing struct{ Name, Path, Says string }

// addTrouble adds the fault finder; none for a shop without a collector.
func (b *Book) addTrouble() {
	if len(b.Plan.Shop.Collectors) == 0 {
		return
	}
	b.add(&Sheet{Part: partUpkeep, Path: troublePath, Title: b.words.Text("trouble.title"), Kind: "table", Lede: b.words.Text("trouble.lede"),
		Verdict: Verdict{Words: []Word{{"advice", b.words.Text("trouble.word")}}, Says: b.words.Text("trouble.says"), Do: b.words.Text("trouble.do")},
		name:    "trouble.html", view: func() any { return b.troubleView() }})
}

func (b *Book) troubleView() troubleView {
	at := b.findersOf()
	return troubleView{Press: b.pressUnit(), Symptoms: b.symptoms(), Taps: b.tapTables(at), Filters: b.filterTables(at), Agree: agreeShare()}
}

// symptoms lists what one notices. Which causes stand there, and with which
// things and figures, follows from the shop.
func (b *Book) symptoms() []symptom {
	at := func(id string, steps ...[]troubleStep) symptom {
		s := symptom{ID: "seen-" + id, Name: b.words.Text("trouble.seen." + id)}
		for _, list := range steps {
			s.Steps = append(s.Steps, list...)
		}
		return s
	}
	short := b.shortThings()
	return []symptom{
		at("everywhere", b.openSteps(), b.stepOf("filter", b.filterThings()), b.stepOf("bin", b.binThings()), b.step("main", b.mainThings()), b.step("fan", nil), b.stepOf("plan", short)),
		at("one", b.stepOf("own-gate", b.gateThings()), b.step("hood", nil), b.stepOf("hose", b.hoseThings()), b.step("drop", nil), b.stepOf("plan", short)),
		at("beyond", b.stepOf("zone", b.zoneThings()), b.stepOf("branch-leak", b.branchThings()), b.step("beyond-plug", nil)),
		at("back", b.step("way", nil), b.stepOf("blower", b.blowerThings()), b.step("run-on", nil), b.step("back-plug", nil)),
		at("fan", b.step("rattle", nil), b.step("starved", b.shutThings()), b.step("too-open", nil), b.stepOf("surge", b.surgeThings())),
		at("behind", b.stepOf("torn", b.filterThings()), b.stepOf("overfull", b.binThings()), b.stepOf("bin-air", b.separatorThings()), b.stepOf("return", b.returnThings()), b.step("let-by", short)),
		at("trips", b.step("reset", nil), b.step("load", b.loadThings()), b.step("supply", nil), b.step("starts", nil)),
		at("packed", b.step("clear", b.cleanOutThings()), b.stepOf("settles", b.slowThings()), b.step("stolen", nil), b.step("chips", nil)),
	}
}

// step is one cause, with what of the shop belongs to it.
func (b *Book) step(key string, things []troubleThing, about ...string) []troubleStep {
	return []troubleStep{{
		Cause: trusted(b.words.HTML("trouble.cause."+key, about...)),
		Look:  trusted(b.words.HTML("trouble.look."+key, about...)),
		Do:    trusted(b.words.HTML("trouble.mend."+key, about...)), Things: things,
	}}
}

// stepOf is a cause that stands only where the shop has things that it is
// about.
func (b *Book) stepOf(key string, things []troubleThing) []troubleStep {
	if len(things) == 0 {
		return nil
	}
	return b.step(key, things)
}
