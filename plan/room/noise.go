package room

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Rate is one published way to add up noise over a day.
type Rate struct {
	Name         string
	Criterion    unit.Sound // the level that a full day may have
	Exchange     unit.Sound // so much more halves the time
	Threshold    unit.Sound // levels below it do not count
	HasThreshold bool
	Hours        float64    // of a full day
	Factor       float64    // of the average, as the document prints it
	Limit        unit.Sound // the level of a full day that calls for something
	Called       string     // what the document calls it: "action level"
	Reached      bool       // the figure itself is on its far side
	About        string
	Basis        source.Basis // of the formula
	LimitBasis   source.Basis // of the limit
}

// Rates lists the rates of the data.
func Rates() []Rate { return rates }

// Exposure is a level at the user's ear for a time.
type Exposure struct {
	Level unit.Sound
	Hours float64
}

// Allowed is the time a level may last, in hours: T = 8/2^((L − Lc)/q).
func (r Rate) Allowed(l unit.Sound) float64 {
	return r.Hours / math.Exp2(float64(l-r.Criterion)/float64(r.Exchange))
}

// Counts reports whether a level counts.
func (r Rate) Counts(l unit.Sound) bool {
	return !r.HasThreshold || unit.AtLeast(float64(l), float64(r.Threshold))
}

// Dose is the dose of a day as a share of the full one: Σ C/T over the levels
// that count.
func (r Rate) Dose(day []Exposure) float64 {
	sum := 0.0
	for _, e := range day {
		if r.Counts(e.Level) {
			sum += e.Hours / r.Allowed(e.Level)
		}
	}
	return unit.Six(sum)
}

// Beyond reports whether a dose has come to the limit of the rate: reached it
// where the document speaks from there on, else passed it.
func (r Rate) Beyond(dose float64) bool {
	if r.Reached {
		return unit.AtLeast(dose, r.LimitDose())
	}
	return unit.Compare(dose, r.LimitDose()) > 0
}

// Full reports whether a dose is more than a full one.
func Full(dose float64) bool { return unit.Compare(dose, 1) > 0 }

// Average is the steady level that gives the same dose in a full day: the
// factor by log10 of the dose, plus the criterion. There is none for a dose of
// nought.
func (r Rate) Average(dose float64) Figure[unit.Sound] {
	if dose <= 0 {
		return lacking[unit.Sound](Missing{Thing: r.Name, Why: source.Because("no-noise")})
	}
	return known(unit.Sound(r.Factor*math.Log10(dose)) + r.Criterion)
}

// Together is the level of several at once, by their energies:
// 10 log10 Σ 10^(L/10).
func Together(levels ...unit.Sound) unit.Sound {
	sum := 0.0
	for _, l := range levels {
		sum += math.Pow(10, float64(l)/10)
	}
	return unit.Sound(unit.Six(10 * math.Log10(sum)))
}

// Daily is the steady level of eight hours that brings as much energy to the ear
// as a day does: 10 log10 Σ (C/8) 10^(L/10).
func Daily(day []Exposure) unit.Sound {
	var levels []unit.Sound
	for _, e := range day {
		if e.Hours > 0 {
			levels = append(levels, e.Level+unit.Sound(10*math.Log10(e.Hours/8)))
		}
	}
	if len(levels) == 0 {
		return 0
	}
	return Together(levels...)
}

// Dose is the noise of a use by the levels and hours that the file gives. The
// machines of a use are added up as if each stood at the user's ear, so that
// the figure is the most it can be; the collector's own noise is not in it.
type Dose struct {
	Use     string     // empty where it is of every machine alone for its hours
	Day     []Exposure // none where something is missing
	Missing []Missing
	By      []RateDose // in the order of the rates; none where something is missing
}

// RateDose is a dose by one rate.
type RateDose struct {
	Rate    Rate
	Share   float64            // of the full dose
	Average Figure[unit.Sound] // the steady level of a full day with the same dose
}

// Known reports whether the dose is reckoned.
func (d *Dose) Known() bool { return len(d.Missing) == 0 }

// doseOf is the dose of a use.
func doseOf(u Use) *Dose {
	d := &Dose{Use: u.Name}
	var levels []unit.Sound
	for _, m := range u.Machines {
		if !m.Noise.Known() {
			d.Missing = append(d.Missing, Missing{Thing: m.Name, Field: "machine.noise"})
		}
		levels = append(levels, m.Noise.V)
	}
	hours, wanted := hoursOf(u)
	if !hours.Known() {
		d.Missing = append(d.Missing, wanted)
	}
	if d.Known() {
		d.Day = []Exposure{{Together(levels...), hours.V}}
		d.rate()
	}
	return d
}

// hoursOf is how long a use runs in a day, with the field that says so.
func hoursOf(u Use) (shop.Field[float64], Missing) {
	if u.Stated != nil {
		return u.Stated.Hours, Missing{Thing: u.Name, Field: "use.hours"}
	}
	return u.Machines[0].Hours, Missing{Thing: u.Machines[0].Name, Field: "machine.hours"}
}

// dayOf is the dose of one person who runs every machine alone for its hours.
func dayOf(s *shop.Shop) *Dose {
	d := &Dose{}
	if len(s.Machines) == 0 {
		d.Missing = []Missing{{Field: "machine"}}
	}
	for _, m := range s.Machines {
		if !m.Noise.Known() {
			d.Missing = append(d.Missing, Missing{Thing: m.Name, Field: "machine.noise"})
		}
		if !m.Hours.Known() {
			d.Missing = append(d.Missing, Missing{Thing: m.Name, Field: "machine.hours"})
		}
		d.Day = append(d.Day, Exposure{m.Noise.V, m.Hours.V})
	}
	if !d.Known() {
		d.Day = nil
		return d
	}
	d.rate()
	return d
}

// rate reckons the dose of a day by every rate.
func (d *Dose) rate() {
	for _, r := range rates {
		share := r.Dose(d.Day)
		d.By = append(d.By, RateDose{r, share, r.Average(share)})
	}
}

// LimitDose is the share of a full dose that a day at the limit gives.
func (r Rate) LimitDose() float64 { return unit.Six(r.Dose([]Exposure{{r.Limit, r.Hours}})) }
