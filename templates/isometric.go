package templates

import (
	"html/template"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// isometricView is the sheet of one collector's ducts as the eye sees them,
// with the list its numbers lead to.
type isometricView struct {
	Drawing    template.HTML
	Collector  string
	Path       string
	Stretches  []numberedRow
	LengthUnit string

	promise string // its lede
}

func (v isometricView) lede() string { return v.promise }

// numberedRow is a stretch by its number in the drawing.
type numberedRow struct {
	Number                   int
	Name, Path, Size, Length string
	Gates, From              []string
}

// addIsometric adds the sheet of a collector's ducts, where it has any.
func (b *Book) addIsometric(c *shop.Collector) {
	list := drawing.InOrder(b.Plan.Shop, c)
	if len(list) == 0 {
		return
	}
	says := b.words.Count("isometric.stretches", len(list))
	b.add(&Sheet{Part: partAir, Path: "isometric-" + shop.Slug(c.Name) + ".html", Title: b.words.Text("isometric.title", c.Name), Kind: "plan", Lede: b.words.Text("isometric.lede"),
		Verdict: Verdict{Words: []Word{{"advice", b.words.Text("isometric.word")}}, Says: says, Do: b.words.Text("isometric.do")}, name: "isometric.html", view: func() any { return b.isometricView(c, list) }})
}

// isometricLede promises the lengths in the drawing, less those it has no room
// for.
func (b *Book) isometricLede(bare int) string {
	if bare == 0 {
		return b.words.Text("isometric.lede")
	}
	return b.words.Count("isometric.lede-bare", bare)
}

func (b *Book) isometricView(c *shop.Collector, list []*shop.Stretch) isometricView {
	svg, bare := b.board.IsometricBare(c, "iso")
	v := isometricView{Drawing: trusted(svg), Collector: c.Name, Path: b.Path("collector", c.Name), LengthUnit: unit.Run.Unit(b.units), promise: b.isometricLede(bare)}
	for i, stretch := range list {
		d := stretch.Duct
		row := numberedRow{Number: i + 1, Name: stretch.Name(), Path: b.Path("duct", d.Name), Size: b.words.Text("isometric.choose"), Length: unit.Run.Figure(b.units, unit.Length(unit.Six(float64(stretch.Length()))))}
		if !d.Choose && d.Size > 0 {
			row.Size = unit.Size.Print(b.units, d.Size)
		}
		for _, g := range stretch.Gates {
			row.Gates = append(row.Gates, g.Name)
		}
		if stretch.Number == 1 {
			for _, port := range d.Serves {
				row.From = append(row.From, port.Full())
			}
		}
		v.Stretches = append(v.Stretches, row)
	}
	return v
}
