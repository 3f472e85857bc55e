package unit

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"math/big"
	"strings"
)

//go:embed units.csv
var unitRows []byte

// Definition is one unit as the table defines it, for the sheet of sources.
// A value of the unit is (number + Offset) × Factor in the SI base unit;
// Factor is a decimal or a ratio of two, or "gauge" for a wire gauge.
type Definition struct {
	Kind                   Kind
	Spellings              []string // the first is the one messages use
	Factor, Offset         string
	Document, Clause, Mark string // id in the list of documents, place in it, and how it was read
	Text                   string

	factor, offset *big.Rat // nil factor: a wire gauge
}

// units is the table of units and the spellings it knows.
var units = mustUnits(unitRows)

type unitTable struct {
	all    []*Definition
	exact  map[string]*Definition // by spelling
	folded map[string]*Definition // by spelling in small letters, where case says nothing
}

// Definitions is the table of units, in its order.
func Definitions() []Definition {
	list := make([]Definition, len(units.all))
	for i, d := range units.all {
		list[i] = *d
		list[i].Spellings = append([]string(nil), d.Spellings...)
	}
	return list
}

// mustUnits reads the embedded table; a malformed one is a fault of the
// program, found by its first test.
func mustUnits(data []byte) unitTable {
	t, err := readUnits(data)
	if err != nil {
		panic("unit: " + err.Error())
	}
	return t
}

func readUnits(data []byte) (unitTable, error) {
	t := unitTable{exact: map[string]*Definition{}, folded: map[string]*Definition{}}
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		return t, fmt.Errorf("units: %w", err)
	}
	kinds := map[string]Kind{}
	for _, k := range Kinds() {
		kinds[tableName(k)] = k
	}
	for i, r := range records[1:] {
		d := &Definition{
			Kind: kinds[r[0]], Factor: r[1], Offset: r[2],
			Document: r[4], Clause: r[5], Mark: r[6], Text: r[7],
		}
		if d.Kind == 0 {
			return t, fmt.Errorf("units: row %d: unknown kind %q", i+1, r[0])
		}
		if err := d.readFactor(); err != nil {
			return t, fmt.Errorf("units: row %d: %w", i+1, err)
		}
		for _, s := range strings.Split(r[3], "|") {
			if err := t.add(d, s); err != nil {
				return t, fmt.Errorf("units: row %d: %w", i+1, err)
			}
		}
		t.all = append(t.all, d)
	}
	return t, nil
}

// tableName is a kind's name in the table: its type's name in small letters.
func tableName(k Kind) string {
	switch k {
	case KindFlow:
		return "flow"
	case KindSound:
		return "sound"
	case KindInertia:
		return "inertia"
	case KindWire:
		return "wire"
	}
	return k.String()
}

func (d *Definition) readFactor() error {
	d.offset = new(big.Rat)
	if d.Offset != "" {
		if _, ok := d.offset.SetString(d.Offset); !ok {
			return fmt.Errorf("offset %q is no number", d.Offset)
		}
	}
	if d.Factor == "gauge" {
		return nil
	}
	over, under, divided := strings.Cut(d.Factor, "/")
	d.factor = new(big.Rat)
	if _, ok := d.factor.SetString(over); !ok || d.factor.Sign() <= 0 {
		return fmt.Errorf("factor %q is no number above zero", d.Factor)
	}
	if divided {
		by, ok := new(big.Rat).SetString(under)
		if !ok || by.Sign() <= 0 {
			return fmt.Errorf("factor %q divides by no number above zero", d.Factor)
		}
		d.factor.Quo(d.factor, by)
	}
	return nil
}

// add enters one spelling; "=" before it says that its letter case matters.
func (t *unitTable) add(d *Definition, spelling string) error {
	s, exact := strings.CutPrefix(spelling, "=")
	if s == "" || tidyUnit(s) != s {
		return fmt.Errorf("spelling %q would never be found: write it %q", s, tidyUnit(s))
	}
	if other := t.exact[s]; other != nil {
		return fmt.Errorf("spelling %q stands twice", s)
	}
	t.exact[s] = d
	d.Spellings = append(d.Spellings, s)
	if exact {
		return nil
	}
	if other := t.folded[fold(s)]; other != nil && other != d {
		return fmt.Errorf("spelling %q differs from one of another unit by case alone", s)
	}
	t.folded[fold(s)] = d
	return nil
}

// find looks a unit up as it is spelled, then in any letter case where case
// says nothing.
func (t unitTable) find(text string) *Definition {
	s := tidyUnit(text)
	if d := t.exact[s]; d != nil {
		return d
	}
	return t.folded[fold(s)]
}

// of lists the units of a kind, in the table's order.
func (t unitTable) of(k Kind) []*Definition {
	var list []*Definition
	for _, d := range t.all {
		if d.Kind == k {
			list = append(list, d)
		}
	}
	return list
}

// fold is a spelling in small letters.
func fold(s string) string { return strings.ToLower(s) }

// sameUnit maps characters that stand for one another in units.
var sameUnit = strings.NewReplacer(
	"²", "2", "³", "3", "₂", "2", "^2", "2", "^3", "3",
	"·", " ", "⋅", " ", "•", " ", "*", " ", ".", " ",
	"-", " ", "\u2010", " ", "\u2011", " ",
	"μ", "µ", "\u2126", "Ω", "\u212a", "K", "º", "°", "℃", "°C", "℉", "°F",
	"′", "'", "’", "'", "″", `"`, "”", `"`,
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\u2007", " ", "\t", " ",
)

// tidyUnit writes a unit the way the table spells it: plain figures for
// exponents, one space for a product, none around a slash.
func tidyUnit(text string) string {
	s := strings.Join(strings.Fields(sameUnit.Replace(text)), " ")
	s = strings.ReplaceAll(s, " /", "/")
	s = strings.ReplaceAll(s, "/ ", "/")
	return strings.ReplaceAll(s, "° ", "°")
}
