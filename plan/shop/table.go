package shop

import (
	_ "embed"
	"slices"
	"strings"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Kind is a kind of machine and the ports it brings.
type Kind struct {
	Name    string
	Aliases []string
	Makes   string
	Waste   string
	Ports   []KindPort
}

// KindPort is a port that a kind of machine brings by default, for shops in
// either system of units.
type KindPort struct {
	Name     string
	Standard bool // it is there when the file lists no port
	Size     map[unit.System]unit.Length
	Flow     map[unit.System]unit.Flow
	Need     map[unit.System]source.Basis
	HoodLoss float64
	Hood     source.Basis
}

// Material is a pipe material.
type Material struct {
	Name      string
	Conducts  bool
	Roughness unit.Length
	Basis     source.Basis
	About     string
}

// HoseKind is a kind of hose.
type HoseKind struct {
	Name      string
	Conducts  bool
	Roughness unit.Length
	Basis     source.Basis
	About     string
}

// ElbowMake is a make of elbows with the loss coefficient of a 90° turn.
type ElbowMake struct {
	Name  string
	K90   float64
	Basis source.Basis
	About string
}

//go:embed kind.csv
var kindData []byte

//go:embed material.csv
var materialData []byte

//go:embed bore.csv
var boreData []byte

//go:embed hose.csv
var hoseData []byte

//go:embed elbow.csv
var elbowData []byte

//go:embed factor.csv
var factorData []byte

var (
	kinds     = loadKinds()
	materials = loadMaterials()
	bores     = loadBores()
	hoses     = loadHoses()
	elbows    = loadElbows()
	factors   = source.MustRows("factor.csv", factorData, "factor", "value", "unit", "about")
)

func loadKinds() []Kind {
	var list []Kind
	for _, r := range source.MustRows("kind.csv", kindData, "kind", "alias", "makes", "waste", "port", "hood_loss") {
		if len(list) == 0 || list[len(list)-1].Name != r.Text("kind") {
			k := Kind{Name: r.Text("kind"), Makes: r.Text("makes"), Waste: r.Text("waste")}
			if r.Has("alias") {
				k.Aliases = strings.Split(r.Text("alias"), "|")
			}
			list = append(list, k)
		}
		port := KindPort{
			Name: r.Text("port"), Standard: r.Text("standard") == "yes",
			Size: map[unit.System]unit.Length{
				unit.US:     unit.Must[unit.Length](r.Text("size_us_in") + " in"),
				unit.Metric: unit.Must[unit.Length](r.Text("size_metric_mm") + " mm"),
			},
			Flow: map[unit.System]unit.Flow{
				unit.US:     unit.Must[unit.Flow](r.Text("flow_us_cfm") + " cfm"),
				unit.Metric: unit.Must[unit.Flow](r.Text("flow_metric_m3_h") + " m3/h"),
			},
			Need:     map[unit.System]source.Basis{unit.US: r.MustBasis("us_"), unit.Metric: r.MustBasis("metric_")},
			HoodLoss: r.Number("hood_loss"), Hood: r.Basis,
		}
		last := &list[len(list)-1]
		last.Ports = append(last.Ports, port)
	}
	return list
}

func loadMaterials() []Material {
	var list []Material
	for _, r := range source.MustRows("material.csv", materialData, "material", "conducts", "roughness_mm", "about") {
		list = append(list, Material{r.Text("material"), r.Text("conducts") == "yes", unit.Must[unit.Length](r.Text("roughness_mm") + " mm"), r.Basis, r.Text("about")})
	}
	return list
}

func loadHoses() []HoseKind {
	var list []HoseKind
	for _, r := range source.MustRows("hose.csv", hoseData, "hose", "conducts", "roughness_mm", "about") {
		list = append(list, HoseKind{r.Text("hose"), r.Text("conducts") == "yes", unit.Must[unit.Length](r.Text("roughness_mm") + " mm"), r.Basis, r.Text("about")})
	}
	return list
}

func loadElbows() []ElbowMake {
	var list []ElbowMake
	for _, r := range source.MustRows("elbow.csv", elbowData, "elbows", "k90", "about") {
		list = append(list, ElbowMake{r.Text("elbows"), r.Number("k90"), r.Basis, r.Text("about")})
	}
	return list
}

// Kinds lists the kinds of machine.
func Kinds() []Kind { return kinds }

// Materials lists the pipe materials.
func Materials() []Material { return materials }

// Hoses lists the kinds of hose.
func Hoses() []HoseKind { return hoses }

// Elbows lists the makes of elbow.
func Elbows() []ElbowMake { return elbows }

func findKind(name string) *Kind {
	i := slices.IndexFunc(kinds, func(k Kind) bool { return k.Name == name || slices.Contains(k.Aliases, name) })
	if i < 0 {
		return nil
	}
	return &kinds[i]
}

func findMaterial(name string) Material {
	return materials[slices.IndexFunc(materials, func(m Material) bool { return m.Name == name })]
}

func findHose(name string) HoseKind {
	return hoses[slices.IndexFunc(hoses, func(h HoseKind) bool { return h.Name == name })]
}

func findElbow(name string) ElbowMake {
	return elbows[slices.IndexFunc(elbows, func(e ElbowMake) bool { return e.Name == name })]
}

// bore is a row of bore.csv.
type bore struct {
	nominal, inside unit.Length
	basis           source.Basis
}

func loadBores() map[string][]bore {
	bores := map[string][]bore{}
	for _, r := range source.MustRows("bore.csv", boreData, "material", "nominal_in", "inside_mm") {
		row := bore{unit.Must[unit.Length](r.Text("nominal_in") + " in"), unit.Must[unit.Length](r.Text("inside_mm") + " mm"), r.Basis}
		bores[r.Text("material")] = append(bores[r.Text("material")], row)
	}
	return bores
}

// Bore is the inside diameter of a pipe of a nominal size, where the
// material's standard makes it differ; the basis is empty where it does not.
func Bore(material string, nominal unit.Length) (unit.Length, source.Basis) {
	for _, row := range bores[material] {
		if unit.Compare(float64(row.nominal), float64(nominal)) == 0 {
			return row.inside, row.basis
		}
	}
	return nominal, source.Basis{}
}

// factor is a row of factor.csv: a rule of this reader that is a figure.
func factor(name string) source.Row {
	i := slices.IndexFunc(factors, func(r source.Row) bool { return r.Text("factor") == name })
	if i < 0 {
		panic("shop: factor.csv has no row " + name)
	}
	return factors[i]
}

func factorText(name string) string { return factor(name).Measure() }

// DefaultElbow is the make of elbow taken where a file does not say.
func DefaultElbow() ElbowMake { return findElbow(rowOf[[2]string{"duct", "elbows"}].Default) }
