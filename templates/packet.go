package templates

import "html/template"

// packetPath is the sheet that is handed in.
const packetPath = "packet.html"

// packetView is the packet for the inspector, the insurer and the landlord: one
// sheet that is one print job.
type packetView struct {
	Story     []*passage
	Drawing   template.HTML
	Machines  []packetMachine
	Units     packetUnits
	Ducts     []packetDuct
	MoreDucts int // where they are too many for paper
	Fans      []collectorRow
	Triggers  []packetTrigger
	Families  []familyRow
	Weights   []packetWeight
	Unknown   []packetCheck // that wait for what the file does not say
	Waiting   []packetCheck // more of these, for which there is no room
	Accepted  []findingRow
	Met       int
	Questions []packetPerson
	Asked     int
	Rules     packetRules
	Papers    []paperGroup
	Letters   []letterRow
	Signs     []string // the keys of the roles that sign
}

// packetUnits stand once in the heads of the schedules.
type packetUnits struct{ Air, Run, Size string }

// signing are the keys of the roles that sign the packet.
var signing = []string{"packet.sign-owner", "packet.sign-drawn", "packet.sign-installer", "packet.sign-electrician", "packet.sign-authority", "packet.sign-insurer", "packet.sign-landlord"}

// addPacket adds the packet.
func (b *Book) addPacket() {
	b.add(&Sheet{Part: partFindings, Path: packetPath, Title: b.words.Text("packet.title"), Kind: "table", Lede: b.words.Text("packet.lede"), Scale: b.words.Text("block.by-bar"),
		Verdict: b.overall(), name: "packet.html", view: func() any { return b.packetView() }})
}

func (b *Book) packetView() packetView {
	v := packetView{Story: b.story(), Drawing: trusted(b.board.Plan(nil, "plan")), Machines: b.packetMachines(), Units: b.packetUnits(), Triggers: b.packetTriggers(),
		Families: b.familyRows(), Questions: b.questions(), Rules: b.packetRules(), Papers: b.paperGroups(), Letters: b.letterRows(), Signs: signing}
	v.Ducts, v.MoreDucts = b.packetDucts()
	for _, c := range b.Plan.Shop.Collectors {
		v.Fans = append(v.Fans, b.collectorRow(c))
	}
	b.packetFindings(&v)
	for _, q := range v.Questions {
		v.Asked += len(q.Questions)
	}
	return v
}
