package templates

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// traversePath is where the sheet of traverses is.
const traversePath = "traverse.html"

// traverseView is the sheet of traverses: which points, where, and how the
// readings are averaged.
type traverseView struct {
	Size, Press, Speed        string // units
	Up                        string // the bore up to which six points are enough
	UpBasis, PlaceBasis       string
	RearBasis                 string
	Straight, Behind, FanAway string // in bores
	Again                     string
	Sizes                     []traverseSize
	Drawings                  []traverseDrawing
	Families                  []traverseFamily
	Example                   traverseExample
	Fill                      fillView
}

// traverseSize is one bore of the shop's ducts.
type traverseSize struct {
	Size, Set         string
	Ducts             []string
	Readings          string
	Before, Fan, Rear string // straight pipe
	Points            []traversePoint
	Note              string // what the record's note calls its traverse
}

type traversePoint struct{ Number, From, Note string }

// traverseFamily is the sets of one family, each a table by itself.
type traverseFamily struct {
	Name, Says, Basis string
	Sets              []traverseSet
}

type traverseSet struct {
	Name  string
	Sizes []string
	Rows  []traverseRow
}

type traverseRow struct {
	Number, Share string
	From          []string // for each size
}

// traverseExample is the published example of averaging.
type traverseExample struct {
	Rows                        [][2]string // pressure and its root
	Mean, Speed, Wrong, WrongTo string
	Constant, Unit, Basis       string
}

// addTraverse adds the sheet of traverses.
func (b *Book) addTraverse() {
	b.add(&Sheet{Part: partProof, Path: traversePath, Title: b.words.Text("traverse.title"), Kind: "proof", Lede: b.words.Text("traverse.lede"), Script: fillScript,
		Verdict: Verdict{Words: []Word{{"blank", b.words.Text("traverse.word")}}, Says: b.words.Text("traverse.says"), Do: b.words.Text("traverse.do")},
		name:    "proof-traverse.html", view: func() any { return b.traverseView() }})
}

func (b *Book) traverseView() traverseView {
	_, upBasis := duct.ProofFigure("six points up to")
	_, place := duct.ProofFigure("straight before traverse")
	_, rear := duct.ProofFigure("straight behind traverse")
	v := traverseView{
		Size: unit.Size.Unit(b.units), Press: unit.Press.Unit(b.units), Speed: unit.Speed.Unit(b.units),
		Up: unit.Size.Print(b.units, duct.NarrowBore()), UpBasis: upBasis.In(b.words.Mark), PlaceBasis: place.In(b.words.Mark), RearBasis: rear.In(b.words.Mark),
		Straight: figure("straight before traverse"), Behind: figure("straight behind traverse"), FanAway: figure("straight after fan"), Again: figure("traverse agrees"),
		Example: b.traverseExample(), Fill: b.fillView(traversePath),
	}
	bores := boresOf(b.Plan.Shop)
	for _, bore := range bores {
		v.Sizes = append(v.Sizes, b.traverseSize(bore))
		set := duct.TraverseSetFor(bore)
		if !slices.ContainsFunc(v.Drawings, func(d traverseDrawing) bool { return d.Set == set.Family }) {
			v.Drawings = append(v.Drawings, b.traverseDrawing(set))
		}
	}
	v.Families = b.traverseFamilies(bores)
	return v
}

// boresOf are the bores of a shop's ducts, the narrowest first.
func boresOf(s *shop.Shop) []unit.Length {
	var list []unit.Length
	for _, d := range s.Ducts {
		if !d.Choose && d.Bore > 0 && !slices.Contains(list, d.Bore) {
			list = append(list, d.Bore)
		}
	}
	slices.SortFunc(list, func(a, b unit.Length) int { return cmp.Compare(a, b) })
	return list
}

func (b *Book) traverseSize(bore unit.Length) traverseSize {
	set := duct.TraverseSetFor(bore)
	straight := func(name string) string {
		x, _ := duct.ProofFigure(name)
		return unit.Run.Print(b.units, unit.Length(unit.Six(x*float64(bore))))
	}
	v := traverseSize{
		Size: unit.Size.Print(b.units, bore), Set: set.Family, Readings: strconv.Itoa(2 * len(set.Fractions)),
		Before: straight("straight before traverse"), Fan: straight("straight after fan"), Rear: straight("straight behind traverse"),
	}
	for _, d := range b.Plan.Shop.Ducts {
		if d.Bore == bore && !d.Choose {
			v.Ducts = append(v.Ducts, d.Name)
		}
	}
	v.Note = b.words.Text("traverse.of-bore", v.Size)
	for i, p := range set.Points(bore) {
		n := strconv.Itoa(i + 1)
		v.Points = append(v.Points, traversePoint{n, unit.Size.Figure(b.units, p), b.words.Text("traverse.point-of", v.Size, n)})
	}
	return v
}

// The families of the sets of points, as the data name them.
const (
	logLinear = "log-linear"
	equalArea = "equal-area"
)

// traverseFamilies are the sets of the data by their families, each with its
// places in every bore of the shop.
func (b *Book) traverseFamilies(bores []unit.Length) []traverseFamily {
	var list []traverseFamily
	for _, name := range []string{logLinear, equalArea} {
		family := traverseFamily{Name: b.words.Text("traverse.family." + name), Says: b.words.Text("traverse.about." + name)}
		for _, set := range duct.TraverseSets() {
			if strings.HasPrefix(set.Family, name) {
				family.Sets = append(family.Sets, b.traverseSet(set, bores))
				family.Basis = set.Basis.In(b.words.Mark)
			}
		}
		list = append(list, family)
	}
	return list
}

// traverseSet is one set with its places in every bore.
func (b *Book) traverseSet(set duct.TraverseSet, bores []unit.Length) traverseSet {
	t := traverseSet{Name: set.Family}
	for _, bore := range bores {
		t.Sizes = append(t.Sizes, unit.Size.Print(b.units, bore))
	}
	for i, x := range set.Fractions {
		row := traverseRow{Number: strconv.Itoa(i + 1), Share: unit.Short(x)}
		for _, bore := range bores {
			row.From = append(row.From, unit.Size.Figure(b.units, set.Points(bore)[i]))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func (b *Book) traverseExample() traverseExample {
	pressures, in, constant, basis := duct.TraverseExample()
	right, wrong := duct.MeanRoot(pressures), duct.RootOfMean(pressures)
	v := traverseExample{
		Mean: unit.Fixed(right, 2), Wrong: unit.Fixed(wrong, 3), Speed: unit.Fixed(right*constant, 1), WrongTo: unit.Fixed(wrong*constant, 0),
		Constant: unit.Short(constant), Unit: in, Basis: basis.In(b.words.Mark),
	}
	for _, p := range pressures {
		v.Rows = append(v.Rows, [2]string{unit.Fixed(p, 2), unit.Fixed(duct.MeanRoot([]float64{p}), 2)})
	}
	return v
}
