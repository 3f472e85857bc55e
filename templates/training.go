package templates

import (
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// selfCheckView is a short self-check for whoever is new: questions to answer on
// paper, and this shop's own answers behind them.
type selfCheckView struct{ Questions []question }

// question is one of them with its answer, a line for each part.
type question struct {
	Number  int
	Asks    string
	Answers []answer
	Order   bool   // the answers are steps in order
	Note    string // that belongs to them; empty for most
}

type answer struct{ Of, Path, Says string }

// trainingView is the matrix of who has learned what: machines across, people
// down.
type trainingView struct {
	Halted []dayMachine   // that nobody may run now
	Tables [][]dayMachine // the machines across, a table each
	People []int          // numbers of the blank rows
	Levels []string
}

// How the matrix is laid out, and how many machines the self-check asks of.
const (
	machinesAcross = 8
	peopleDown     = 12
	machinesAsked  = 4
)

// addTraining adds the self-check and the training matrix; neither for a shop
// without machines.
func (b *Book) addTraining() {
	if len(b.Plan.Shop.Machines) == 0 {
		return
	}
	b.add(&Sheet{Part: partPeople, Path: "self-check.html", Title: b.words.Text("self.title"), Kind: "list", Lede: b.words.Text("self.lede"),
		name: "self-check.html", view: func() any { return b.selfCheck() }})
	b.add(&Sheet{Part: partPeople, Path: "training.html", Title: b.words.Text("training.title"), Kind: "table", Lede: b.words.Text("training.lede"),
		name: "training.html", view: func() any { return b.trainingView() }})
}

// selfCheck asks what a new user has to know here.
func (b *Book) selfCheck() selfCheckView {
	var v selfCheckView
	day := b.firstDayView()
	ask := func(key string, order bool, answers ...answer) {
		if len(answers) > 0 {
			v.Questions = append(v.Questions, question{Number: len(v.Questions) + 1, Asks: b.words.Text("self." + key), Answers: answers, Order: order})
		}
	}
	ask("stop", false, b.stopAnswers()...)
	ask("smoke", true, b.smokeAnswers()...)
	v.Questions[len(v.Questions)-1].Note = b.words.Text("smoke.leave")
	ask("gates", false, b.gateAnswers(day)...)
	ask("at-once", false, b.atOnceAnswers(day)...)
	ask("shut", false, b.shutAnswers()...)
	ask("never", false, neverAnswers(day)...)
	ask("weak", false, answer{Says: b.words.Text("self.weak-answer")})
	ask("bin", false, b.binAnswers()...)
	return v
}

func (b *Book) stopAnswers() (list []answer) {
	place := b.dayStops()
	for _, item := range place.Items {
		says := item.Says
		if item.Room != "" {
			says = b.words.Text("self.in-room", item.Room, item.Says)
		}
		list = append(list, answer{item.Which, item.Path, says})
	}
	if place.Missing != "" {
		list = append(list, answer{Says: b.words.Text("self.not-given", place.Missing)})
	}
	return list
}

func (b *Book) smokeAnswers() (list []answer) {
	for _, key := range []string{"smoke.let-go", "smoke.hit-stop", "smoke.alarm", "smoke.out", "smoke.call"} {
		list = append(list, answer{Says: b.words.Text(key)})
	}
	return list
}

// gateAnswers are the gates of the first machines, those that move by
// themselves and those that are opened by hand.
func (b *Book) gateAnswers(day firstDayView) (list []answer) {
	for _, m := range day.Machines[:min(len(day.Machines), machinesAsked)] {
		says := b.words.Text("self.no-gate")
		switch {
		case len(m.ByItself) > 0 && len(m.Open) > 0:
			says = b.words.Text("self.both", b.list(m.ByItself), b.list(m.Open))
		case len(m.ByItself) > 0:
			says = b.words.Text("self.itself", b.list(m.ByItself))
		case len(m.Open) > 0:
			says = b.words.Text("self.hand", b.list(m.Open))
		}
		list = append(list, answer{m.Name, m.Path, says})
	}
	if len(day.Machines) > machinesAsked {
		list = append(list, answer{Says: b.words.Text("self.others")})
	}
	return list
}

func (b *Book) atOnceAnswers(day firstDayView) (list []answer) {
	for _, most := range day.Most {
		list = append(list, answer{Says: most})
	}
	for _, use := range day.Together {
		list = append(list, answer{use.Name, use.Path, b.words.Text("self.together", use.Machines)})
	}
	for _, use := range day.Not {
		list = append(list, answer{use.Name, use.Path, b.words.Text("self.not-together", use.Machines)})
	}
	return list
}

func (b *Book) shutAnswers() (list []answer) {
	for _, c := range b.Plan.Shop.Collectors {
		if shut, _ := b.shutAndOne(c); shut != nil && len(b.gatesOf(c)) > 0 {
			list = append(list, answer{c.Name, b.Path("collector", c.Name), b.words.Text("self.shut-answer", unit.Press.Print(b.units, shut.Inlet))})
		}
	}
	return list
}

func neverAnswers(day firstDayView) (list []answer) {
	for _, never := range day.Never {
		list = append(list, answer{Of: never.Of, Says: strings.Join(never.Into, ", ")})
	}
	return list
}

func (b *Book) binAnswers() (list []answer) {
	for _, c := range b.Plan.Shop.Collectors {
		says := b.words.Text("self.bin-unknown")
		if f := b.Plan.Takeoff.Bin(c); f != nil && f.Fastest != nil {
			says = b.words.Text("self.bin-answer", f.Fastest.Machine.Name, unit.Minutes.Print(b.units, f.Fastest.Until))
		}
		list = append(list, answer{c.Name, b.Path("collector", c.Name), says})
	}
	return list
}

// trainingView lays the machines out over as many tables as they need.
func (b *Book) trainingView() trainingView {
	var v trainingView
	for n := range peopleDown {
		v.People = append(v.People, n+1)
	}
	for _, key := range []string{"shown", "watched", "alone", "teaches"} {
		v.Levels = append(v.Levels, b.words.Text("training.level."+key))
	}
	var all []dayMachine
	for _, u := range b.Plan.Air.Uses {
		if u.Kind == duct.OneMachine {
			m := u.Machines[0]
			row := dayMachine{Name: m.Name, Path: b.Path("card", m.Name), Halted: b.cardView(m, u).Stop != ""}
			if all = append(all, row); row.Halted {
				v.Halted = append(v.Halted, row)
			}
		}
	}
	for tables := (len(all) + machinesAcross - 1) / machinesAcross; tables > 0; tables-- {
		n := (len(all) + tables - 1) / tables // as many in each, not a last one of one
		v.Tables = append(v.Tables, all[:n])
		all = all[n:]
	}
	return v
}
