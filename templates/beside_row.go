package templates

import (
	"strconv"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// besideRow is one figure of both layouts.
type besideRow struct {
	Of, Unit         string
	This, Other, Off string
	Words            bool // they are words, and stand left
}

// figureRow is one figure of both, with its difference.
func figureRow[Q unit.Measure](v *beside, key string, scale unit.Scale[Q], m meeting, of func(*side, *duct.Result) (Q, bool)) besideRow {
	row := besideRow{Of: v.words.Text("beside." + key), Unit: scale.Unit(v.units), This: "—", Other: "—", Off: "—"}
	here, known := of(v.this, m.this)
	there, same := of(v.other, m.other)
	if known {
		row.This = scale.Figure(v.units, here)
	}
	if same {
		row.Other = scale.Figure(v.units, there)
	}
	if known && same {
		row.Off = v.difference(row.This, row.Other)
	}
	return row
}

// difference is what the other layout has more, with its sign: of the figures
// as they are printed, so that it agrees with them.
func (v *beside) difference(here, there string) string {
	text, sign := off(here, there)
	if sign == 0 {
		return v.words.Text("beside.same")
	}
	return text
}

// off is how far a printed figure lies over another, with its sign and with as
// many decimals as they have.
func off(here, there string) (text string, sign int) {
	a, first := strconv.ParseFloat(here, 64)
	b, second := strconv.ParseFloat(there, 64)
	if here == there || first != nil || second != nil {
		return "", 0
	}
	decimals := func(text string) int {
		_, behind, _ := strings.Cut(text, ".")
		return len(behind)
	}
	text = unit.Fixed(b-a, max(decimals(here), decimals(there)))
	if b > a {
		return "+" + text, 1
	}
	return text, -1
}

// wordRow is one word or name of both.
func (v *beside) wordRow(key, here, there string) besideRow {
	row := besideRow{Of: v.words.Text("beside." + key), This: here, Other: there, Words: true, Off: v.words.Text("beside.other-word")}
	if here == there {
		row.Off = v.words.Text("beside.same")
	}
	if here == "" {
		row.This, row.Off = "—", "—"
	}
	if there == "" {
		row.Other, row.Off = "—", "—"
	}
	return row
}
