package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// Collector is a fan with its separator, filter and outlet.
type Collector struct {
	Name  string
	At    entry.Place
	Place Field[Point]
	Room  *Room
	Inlet unit.Length

	Curve        []CurvePoint // in order of flow; empty where only claims are given
	CurveAt      entry.Place
	CurveDensity Field[unit.Density]
	Includes     []string // what the curve was measured with
	Claims       *Claims
	FanPower     []PowerPoint
	Efficiency   Field[float64]
	Wheel        Field[string]
	Motor        *Motor
	Circuit      *Circuit
	WheelInertia Field[unit.Inertia]
	StartsHour   Field[float64]
	Starter      Field[string]
	RunUp        Field[unit.Time]

	Separator *Separator
	Filter    *Filter
	Bin       *Bin
	Outlet    *Outlet

	Exhaust       Field[string]
	ReturnsTo     *Room
	ReturnOpening Field[unit.Area]
	Enclosure     Field[string]
	DirtyVolume   Field[unit.Volume]
	ToCombustible Field[unit.Length] // outdoors, to the nearest that burns or opens
	Labelled      Field[bool]
	Bonded        Field[unit.Resistance]
}

// CurvePoint is one point of a fan curve: flow and fan static pressure.
type CurvePoint struct {
	Flow   unit.Flow
	Static unit.Pressure
}

// PowerPoint is one point of a power curve: flow and shaft power.
type PowerPoint struct {
	Flow  unit.Flow
	Power unit.Power
}

// Claims are the two figures a maker prints; no fan delivers both at once.
type Claims struct {
	Flow    unit.Flow
	Suction unit.Pressure
	At      entry.Place
}

// Separator takes chips out before the filter; its loss grows with the
// square of the flow and with density.
type Separator struct {
	Kind string
	Loss unit.Pressure
	Flow unit.Flow
}

// Filter loses pressure in proportion to flow, whatever the density.
type Filter struct {
	Area          Field[unit.Area]
	Clean, Change unit.Pressure
	Flow          unit.Flow
	Side          Field[string]
	Removes       Field[float64]     // share of particles held back
	RemovesAt     Field[unit.Length] // the particle size it holds for
	Residual      Field[unit.Density]
}

// Bin is what the dust falls into.
type Bin struct {
	Size     unit.Volume
	Called   string
	Material Field[string]
}

// Outlet is the pipe from the fan to the open.
type Outlet struct {
	Size, Length, Roughness unit.Length
	Elbows                  []unit.Angle
	Loss                    float64

	ToProperty, ToOpening, AboveGround Field[unit.Length]
}

// Charged reports whether a part named by a word of curve_includes still has
// to be charged, because the curve was measured without it.
func (c *Collector) Charged(part string) bool {
	for _, included := range c.Includes {
		if included == part {
			return false
		}
	}
	return true
}
