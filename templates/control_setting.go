package templates

import (
	"dustbook/plan/control"
	"dustbook/plan/unit"
)

// settingView is the sheet on setting powered gates.
type settingView struct {
	Steps []settingStep
	Gates []settingGate
	Odd   []settingSign
}

type settingStep struct{ Name, Do, Right string }

type settingGate struct {
	tagged
	Duct, DuctPath                      string
	OpenStop, ShutStop, Travel, Arrives string
}

type settingSign struct{ Seen, Means, Then string }

// The steps in the order of the work, and the signs, the commonest first.
var (
	settingSteps = []string{"free", "line", "open", "shut", "time", "arrive", "leak", "marks"}
	settingSigns = []string{"hum", "hunt", "twitch", "late", "drift", "wrong", "whistle", "trip"}
)

// addSetting adds the sheet on setting powered gates; none where no gate moves
// by power.
func (b *Book) addSetting() {
	n := len(b.Plan.Control.Powered())
	if n == 0 {
		return
	}
	b.add(&Sheet{Part: partControl, Path: "setting.html", Title: b.words.Text("setting.title"), Kind: "table", Lede: b.words.Text("setting.lede"),
		Verdict: Verdict{Words: []Word{{"blank", b.words.Text("setting.verdict")}}, Says: b.words.Count("setting.says", n), Do: b.words.Text("setting.verdict-do")},
		name:    "control-setting.html", view: func() any { return b.settingView() }})
}

func (b *Book) settingView() settingView {
	var v settingView
	least, most := control.TimeOut()
	figures := map[string][]string{"time": {unit.Short(least), unit.Short(most)}, "leak": {unit.Percent(control.LeakOfASetGate())}}
	for _, step := range settingSteps {
		say := func(part string, about ...string) string {
			return b.words.Text("setting.step."+step+part, about...)
		}
		v.Steps = append(v.Steps, settingStep{say(""), say("-do"), say("-right", figures[step]...)})
	}
	for _, g := range b.Plan.Control.Powered() {
		row := settingGate{tagged: b.tagged(g), Duct: g.On.Name, DuctPath: b.Path("duct", g.On.Name), OpenStop: b.given(g.OpenStop), ShutStop: b.given(g.ShutStop), Travel: b.notGiven(), Arrives: b.given(g.Proves)}
		if g.Travel.Known() {
			row.Travel = unit.Seconds.Print(b.units, g.Travel.V)
		}
		v.Gates = append(v.Gates, row)
	}
	for _, sign := range settingSigns {
		say := func(part string) string { return b.words.Text("setting.sign." + sign + part) }
		v.Odd = append(v.Odd, settingSign{say("-seen"), say("-means"), say("-then")})
	}
	return v
}
