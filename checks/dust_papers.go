package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/source"
)

var areaClassification = &Check{
	ID:    "area-classification",
	Name:  say("check.area-classification.name"),
	Title: say("check.area-classification.title"),
	Needs: "document.kind, document.held, document.date, document.by, shop.setting",
	Whom:  Authority,
	Run: func(p *plan.Plan, report func(Finding)) {
		onPaper(p, classificationPaper, classificationTexts, report)
	},
}

var hazardAnalysis = &Check{
	ID:    "dust-hazard-analysis",
	Name:  say("check.dust-hazard-analysis.name"),
	Title: say("check.dust-hazard-analysis.title"),
	Needs: "document.kind, document.held, document.date, document.by, shop.setting",
	Whom:  Authority,
	Run: func(p *plan.Plan, report func(Finding)) {
		onPaper(p, analysisPaper, analysisTexts, report)
	},
}

// The papers that the two checks look for, by their ids in papers.csv.
const (
	classificationPaper string = "area-classification"
	analysisPaper       string = "hazard-analysis"
)

// paperTexts are what a finding says about a paper that is open and about one
// that is held, and the texts that it asks by.
type paperTexts struct {
	open, do, asks, held, keep string
	basis                      []source.Basis
}

var classificationTexts = paperTexts{
	open: "finding-area-classification.open.says", do: "finding-area-classification.open.do", asks: "finding-area-classification.open.asks",
	held: "finding-area-classification.held.says", keep: "finding-area-classification.held.do", basis: basesOf("area-classification"),
}

var analysisTexts = paperTexts{
	open: "finding-dust-hazard-analysis.open.says", do: "finding-dust-hazard-analysis.open.do", asks: "finding-dust-hazard-analysis.open.asks",
	held: "finding-dust-hazard-analysis.held.says", keep: "finding-dust-hazard-analysis.held.do", basis: basesOf("dust-hazard-analysis"),
}

// onPaper tells how far a question that no sum can answer is answered on paper.
// Met means no more than that a dated paper by somebody named is in hand.
func onPaper(p *plan.Plan, id string, texts paperTexts, report func(Finding)) {
	papers := Papers(p)
	i := slices.IndexFunc(papers, func(paper Paper) bool { return paper.ID == id })
	if i < 0 || papers[i].State == NotAsked || sizeOf(p.Shop).machines == 0 {
		return
	}
	f := Finding{By: ByGiven, Weight: Know, Basis: texts.basis}
	d := papers[i].Document
	if d != nil {
		f.At = d.At
	}
	switch {
	case d == nil || !d.Held.V:
		f.State, f.Says, f.Do, f.Asks = Ask, say(texts.open), say(texts.do), say(texts.asks, p.Shop.Name)
	case d.Date == (entry.Date{}) || !d.By.Known():
		f.State, f.Says, f.Do = NotGiven, say("finding-dust-paper.unsigned.says", d.Kind), say("finding-dust-paper.unsigned.do")
	default:
		f.State, f.Says, f.Do = Met, say(texts.held, d.By.V, d.Date.String()), say(texts.keep)
	}
	report(f)
}
