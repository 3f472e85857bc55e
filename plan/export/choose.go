package export

import (
	"context"

	"dustbook/plan"
	"dustbook/plan/duct"
)

// Choose is the document that size --choose --json prints: the stock sizes for
// the ducts whose size is to be chosen, one entry for each collector that has
// such ducts.
type Choose struct {
	Format      string            `json:"format"`
	Shop        string            `json:"shop"`
	AsOf        string            `json:"as_of"`
	ReliefPrice Number            `json:"relief_gate_price_m2"` // what one gate opened as well in one use counts, as sheet
	Collectors  []ChooseCollector `json:"collectors"`
}

// ChooseCollector is the choice for the ducts of one collector: what the
// smallest sheet and fewest relief gates do, where met, else the nearest miss.
type ChooseCollector struct {
	Collector string         `json:"collector"`
	Met       bool           `json:"met"`    // every use is captured and carried, those beyond apart
	Proven    bool           `json:"proven"` // the search was complete: there is nothing better
	Tried     int            `json:"tried"`  // choices solved in full
	Score     *Number        `json:"score"`  // the worst share of a need, 1 where all are met; null without sizes, as the next three
	Sheet     *Number        `json:"sheet_m2"`
	Price     *Number        `json:"price_m2"` // sheet and relief gates
	Energy    *Number        `json:"fan_energy_j_day"`
	Ducts     []ChooseDuct   `json:"ducts"` // none where no stock size fits between its neighbours
	Relief    []ChooseRelief `json:"relief"`
	Miss      *ChooseMiss    `json:"miss"`   // the demand that breaks it; null where all are met
	Beyond    []string       `json:"beyond"` // uses that no size meets
}

// ChooseDuct is a duct with the size chosen for it and those stocked next to
// it; null where none is.
type ChooseDuct struct {
	Duct  string      `json:"duct"`
	Size  Number      `json:"size_m"`
	Bore  Number      `json:"bore_m"`
	Sheet Number      `json:"sheet_m2"`
	Down  *ChooseStep `json:"down"`
	Up    *ChooseStep `json:"up"`
}

// ChooseStep is another size in the place of one duct's, with all else as
// chosen.
type ChooseStep struct {
	Size  Number      `json:"size_m"`
	Sheet Number      `json:"sheet_m2"`
	Wider string      `json:"wider"` // the duct that would be wider than what it empties into; empty where the size fits
	Into  string      `json:"into"`  // that
	Met   bool        `json:"met"`
	Miss  *ChooseMiss `json:"miss"`
}

// ChooseMiss is what is missed by most: a port that lacks air, or a stretch or
// its hose where the air is too slow.
type ChooseMiss struct {
	Use     string `json:"use"`
	Filter  string `json:"filter"`
	Share   Number `json:"share"` // of the need
	Port    string `json:"port"`
	Duct    string `json:"duct"`
	Stretch int    `json:"stretch"` // of the duct, from 1; nought where a port is short
	Hose    bool   `json:"hose"`
	Why     string `json:"why"` // why the use is off the fan's curve; empty where it is on it
}

// ChooseRelief are the gates that a use opens as well.
type ChooseRelief struct {
	Use   string   `json:"use"`
	Gates []string `json:"gates"`
}

// MakeChoose makes the document. It stops and returns the context's error when
// that is done.
func MakeChoose(ctx context.Context, p *plan.Plan) (Choose, error) {
	doc := Choose{Format: "dustbook-choose/1", Shop: p.Shop.Name, AsOf: p.AsOf.String(), ReliefPrice: Number(duct.ReliefPrice()), Collectors: []ChooseCollector{}}
	list, err := p.Air.Choose(ctx, p.Shop)
	if err != nil {
		return doc, err
	}
	for _, c := range list {
		steps, err := p.Air.Steps(ctx, p.Shop, c)
		if err != nil {
			return doc, err
		}
		doc.Collectors = append(doc.Collectors, chooseCollector(c, steps))
	}
	return doc, nil
}

func chooseCollector(c *duct.Choice, steps []duct.Stepped) ChooseCollector {
	known := func(x float64) *Number { return number(x, len(c.Sizes) > 0) }
	v := ChooseCollector{
		Collector: c.Collector.Name, Met: c.Met, Proven: c.Proven, Tried: c.Tried,
		Score: known(c.Score), Sheet: known(float64(c.Area)), Price: known(float64(c.Cost)), Energy: known(c.Energy * joules),
		Ducts: []ChooseDuct{}, Relief: []ChooseRelief{}, Miss: chooseMiss(c.Miss), Beyond: []string{},
	}
	for _, at := range steps {
		v.Ducts = append(v.Ducts, ChooseDuct{at.Duct.Name, Number(at.Size), Number(at.Bore), Number(at.Area), chooseStep(at.Down), chooseStep(at.Up)})
	}
	for _, opened := range c.Relief {
		row := ChooseRelief{Use: opened.Use.Name, Gates: []string{}}
		for _, g := range opened.Gates {
			row.Gates = append(row.Gates, g.Name)
		}
		v.Relief = append(v.Relief, row)
	}
	for _, u := range c.Beyond {
		v.Beyond = append(v.Beyond, u.Name)
	}
	return v
}

// joules of a watt hour.
const joules = 3600

func chooseStep(at *duct.Step) *ChooseStep {
	if at == nil {
		return nil
	}
	return &ChooseStep{Number(at.Size), Number(at.Area), at.Wider, at.Into, at.Met, chooseMiss(at.Miss)}
}

func chooseMiss(m *duct.Miss) *ChooseMiss {
	if m == nil {
		return nil
	}
	v := &ChooseMiss{Use: m.Use.Name, Filter: m.Filter, Share: Number(m.Share), Hose: m.Hose, Why: m.Why.String()}
	if m.Port != nil {
		v.Port = m.Port.Full()
	}
	if m.Stretch != nil {
		v.Duct, v.Stretch = m.Stretch.Duct.Name, m.Stretch.Number
	}
	return v
}
