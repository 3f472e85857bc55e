package templates

import (
	"html/template"
	"slices"
	"strings"

	"dustbook/checks"
	"dustbook/plan/room"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// roomsView is the sheet on the air of the rooms.
type roomsView struct {
	Drawing  template.HTML
	Flow     string // units
	Draft    string
	Warmth   string
	Floor    string
	Speed    string
	Spaces   []spaceView
	Returns  []returnRow
	Noise    noiseView
	Cleaners [][4]string // space, from, to, times
}

type spaceView struct {
	Name, Volume, Opening string
	Uses                  []balanceRow
	Appliances            []applianceRow
	MakeUp                *makeUpView
	From                  string // what its pressures are reckoned from; empty where none is
	Trade                 string // heat of the worst use by the trade's factor; empty where it is not known
}

type balanceRow struct {
	Use, Path         string
	Drawn, Back, Net  string
	Changes, Pressure string
	Heat, Waits       string // Waits: what is missing
	Out, Above        string // that air is blown in and has to go out, at a pressure above outdoors; empty where it is drawn
}

type applianceRow struct{ Kind, Room, Limit, About string }

type makeUpView struct {
	Use, Speed, Face string
	Chosen           string // the opening for the depressurisation chosen, or why there is none
	Over             string // that it is over the limit of what burns here; empty where it is not
	Rows             []makeUpRow
}

type makeUpRow struct{ Limit, About, Area, Leaks, Source string }

type returnRow struct {
	Collector, Path, Most, From, Need, Given, Speed, Waits string
}

// addRooms adds the sheet on the air of the rooms, where the shop has rooms or
// says how loud its machines are.
func (b *Book) addRooms() {
	if len(b.Plan.Rooms.Spaces) == 0 && !b.loud() {
		return
	}
	b.add(&Sheet{Part: partAir, Path: "rooms.html", Title: b.words.Text("rooms.title"), Kind: "table", Lede: b.words.Text("rooms.lede"), Verdict: b.roomsVerdict(), name: "rooms.html", view: func() any { return b.roomsView() }})
}

// loud reports whether the file says how loud a machine is.
func (b *Book) loud() bool {
	return slices.ContainsFunc(b.Plan.Shop.Machines, func(m *shop.Machine) bool { return m.Noise.Known() })
}

// roomsVerdict puts a flue before everything, then the use that takes most.
func (b *Book) roomsVerdict() Verdict {
	for _, f := range b.Findings {
		if f.Check == "open-flue" && f.State != checks.Met && f.Weight == checks.Stop && f.Settled == "" {
			return Verdict{Words: []Word{stateWord(f.State)}, Says: f.Says, Do: f.Do}
		}
	}
	var worst *room.Balance
	known := false
	for _, s := range b.Plan.Rooms.Spaces {
		at := b.Plan.Rooms.Worst(s)
		if at == nil {
			continue
		}
		known = true
		if at.Net > 0 && (worst == nil || unit.Compare(float64(at.Net), float64(worst.Net)) > 0) {
			worst = at
		}
	}
	say := func(key string, about ...string) string { return b.words.Text("rooms.verdict."+key, about...) }
	switch {
	case len(b.Plan.Rooms.Spaces) == 0:
		return Verdict{Words: []Word{{"blank", say("missing")}}, Says: say("no-rooms"), Do: say("no-rooms-do")}
	case !known && b.unsized(nil):
		return b.openSizes(nil)
	case !known:
		return Verdict{Words: []Word{{"blank", say("nothing")}}, Says: say("silent"), Do: say("silent-do")}
	case worst == nil:
		return Verdict{Words: []Word{{"advice", say("level")}}, Says: say("back"), Do: say("back-do")}
	}
	about := []string{worst.Use, unit.Air.Figure(b.units, worst.Net), unit.Air.Unit(b.units), worst.Space.Name()}
	if !worst.Space.Openings.Known() {
		return Verdict{Words: []Word{{"blank", say("missing")}}, Says: say("opening", about...), Do: say("opening-do")}
	}
	return Verdict{Words: []Word{{"thin", say("estimate")}}, Says: say("takes", about...), Do: say("takes-do")}
}

func (b *Book) roomsView() roomsView {
	k := b.Plan.Rooms
	v := roomsView{Flow: unit.Air.Unit(b.units), Draft: unit.Draft.Unit(b.units), Warmth: unit.Warmth.Unit(b.units), Floor: unit.Floor.Unit(b.units), Speed: unit.Speed.Unit(b.units)}
	var worst []*room.Balance
	for _, s := range k.Spaces {
		v.Spaces = append(v.Spaces, b.spaceView(s))
		if at := k.Worst(s); at != nil {
			worst = append(worst, at)
		}
		if s.CleanerLeast.Known() {
			least, most := room.CleanerChanges()
			v.Cleaners = append(v.Cleaners, [4]string{s.Name(), unit.Air.Print(b.units, s.CleanerLeast.V), unit.Air.Print(b.units, s.CleanerMost.V), b.words.Text("rooms.area-range", unit.Short(least), unit.Short(most))})
		}
	}
	if len(worst) > 0 {
		v.Drawing = trusted(drawing.Balance(b.units, worst, "balance"))
	}
	for _, r := range k.Returns {
		if len(k.Spaces) == 0 {
			break // nothing tells one air from another
		}
		v.Returns = append(v.Returns, b.returnRow(r))
	}
	v.Noise = b.noiseView()
	return v
}

func (b *Book) spaceView(s *room.Space) spaceView {
	v := spaceView{Name: s.Name(), Volume: b.words.Text("rooms.facts-opening"), Opening: b.words.Text("rooms.facts-opening")}
	if s.Volume.Known() {
		v.Volume = unit.Room.Print(b.units, s.Volume.V)
	}
	if s.Openings.Known() {
		v.Opening = unit.Floor.Print(b.units, s.Openings.V)
	}
	for _, at := range b.Plan.Rooms.Of(s) {
		v.Uses = append(v.Uses, b.balanceRow(at))
		if from := at.Pressure.From; from != "" {
			v.From = b.words.Text("rooms.from." + from)
		}
	}
	for _, a := range s.Appliances {
		v.Appliances = append(v.Appliances, b.applianceRow(a))
	}
	if worst := b.Plan.Rooms.Worst(s); worst != nil && worst.Net > 0 {
		v.MakeUp = b.makeUpView(worst)
		if worst.Heat.Known() {
			v.Trade = unit.Warmth.Print(b.units, worst.Heat.Trade)
		}
	}
	return v
}

func (b *Book) balanceRow(at *room.Balance) balanceRow {
	row := balanceRow{Use: at.Use, Drawn: "—", Back: "—", Net: "—", Changes: "—", Pressure: "—", Heat: "—"}
	for _, u := range b.Plan.Air.Uses {
		if u.Name == at.Use && len(u.Machines) > 0 {
			row.Path = b.Path("use", u.Name)
		}
	}
	if !at.Known() {
		row.Waits = b.waits(at.Missing)
		return row
	}
	row.Drawn, row.Back, row.Net = unit.Air.Figure(b.units, at.Drawn), unit.Air.Figure(b.units, at.Returned), unit.Air.Figure(b.units, at.Net)
	if at.Net < 0 {
		row.Net, row.Out = unit.Air.Figure(b.units, -at.Net), b.words.Text("rooms.blown-in")
	}
	missing := at.Changes.Missing
	if at.Changes.Known() {
		row.Changes = unit.Fixed(at.Changes.V, 1)
	}
	if e := at.Pressure; e.Known() {
		figure := func(p unit.Pressure) string { return unit.Draft.Figure(b.units, max(p, -p)) }
		row.Pressure = figure(e.V)
		if e.Low != e.High {
			row.Pressure = b.words.Text("rooms.band", row.Pressure, figure(e.Low), figure(e.High))
		}
		if e.V < 0 {
			row.Above = b.words.Text("rooms.above")
		}
	} else {
		missing = append(missing, e.Missing...)
	}
	if at.Heat.Known() {
		row.Heat = unit.Warmth.Figure(b.units, at.Heat.V)
	} else if at.Net > 0 {
		missing = append(missing, at.Heat.Missing...)
	}
	row.Waits = b.waits(missing)
	return row
}

// waits says what a figure waits for; empty where nothing is missing.
func (b *Book) waits(list []room.Missing) string {
	var names []string
	for _, m := range list {
		names = append(names, b.words.Missing(m.Thing, m.Field, m.Why))
	}
	if len(names) == 0 {
		return ""
	}
	return b.words.Text("rooms.waits", strings.Join(names, "; "))
}

func (b *Book) applianceRow(a *shop.Appliance) applianceRow {
	row := applianceRow{Kind: a.Kind, Room: a.Room.Name, Limit: b.words.Text("rooms.no-limit")}
	for _, l := range room.Limits() {
		for _, kind := range l.Kinds {
			if kind == a.Kind {
				row.Limit, row.About = unit.Draft.Print(b.units, l.Press), l.Name
			}
		}
	}
	return row
}

func (b *Book) makeUpView(at *room.Balance) *makeUpView {
	v := &makeUpView{Use: at.Use, Speed: unit.Speed.Print(b.units, room.InletSpeed()), Face: unit.Floor.Print(b.units, at.Passive.V), Chosen: b.chosen(at)}
	if s := at.Space; s.Chosen > 0 && s.Limit != nil && !unit.AtLeast(float64(s.Limit.Press), float64(s.Chosen)) {
		v.Over = b.words.Text("rooms.chosen-over", unit.Draft.Print(b.units, s.Limit.Press))
	}
	for _, o := range at.MakeUp {
		row := makeUpRow{Limit: unit.Draft.Print(b.units, o.Limit.Press), About: o.Limit.Name, Area: unit.Floor.Figure(b.units, o.Area), Leaks: "—", Source: o.Limit.Basis.BriefIn(b.words.Mark)}
		if o.Smaller.Known() {
			row.Leaks = unit.Floor.Figure(b.units, o.Smaller.V)
		}
		v.Rows = append(v.Rows, row)
	}
	return v
}

// chosen says what opening the depressurisation that the file chooses takes.
func (b *Book) chosen(at *room.Balance) string {
	o := at.Chosen
	if o == nil {
		return b.words.Text("rooms.chosen-none")
	}
	area, press := unit.Floor.Print(b.units, o.Area), unit.Draft.Print(b.units, o.Limit.Press)
	says := b.words.Text("rooms.chosen", press, area)
	if at.Space.Chosen == 0 {
		says = b.words.Text("rooms.chosen-limit", press, area)
	}
	if o.Smaller.Known() {
		says += " " + b.words.Text("rooms.chosen-leaks", unit.Floor.Print(b.units, o.Smaller.V))
	}
	return says
}

func (b *Book) returnRow(r *room.Return) returnRow {
	row := returnRow{Collector: r.Collector.Name, Path: b.Path("collector", r.Collector.Name), Most: "—", From: b.words.Text("rooms.same-air"), Need: b.words.Text("rooms.not-needed"), Given: "—", Speed: "—", Waits: b.waits(r.Missing)}
	if len(r.Missing) > 0 {
		row.From, row.Need = "—", "—"
	}
	if r.Flow.Known() {
		row.Most = unit.Air.Figure(b.units, r.Flow.V)
	}
	if r.Needed {
		var names []string
		for _, s := range r.From {
			names = append(names, s.Name())
		}
		row.From = strings.Join(names, ", ")
		row.Need = b.words.Text("rooms.area-range", unit.Floor.Figure(b.units, r.Least), unit.Floor.Figure(b.units, r.Most))
	}
	if r.Given.Known() {
		row.Given = unit.Floor.Figure(b.units, r.Given.V)
	}
	if r.Speed.Known() {
		row.Speed = unit.Speed.Figure(b.units, r.Speed.V)
	}
	return row
}
