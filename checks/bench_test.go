package checks_test

import (
	"fmt"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// rowOf is a shop with this many machines along one main.
func rowOf(machines int) string {
	var text strings.Builder
	text.WriteString("[shop]\nname = \"Row\"\n[[collector]]\nname = \"Fan\"\ninlet = \"8 in\"\nfan_curve = [[\"0 cfm\", \"14 inwg\"], [\"800 cfm\", \"12 inwg\"], [\"1600 cfm\", \"8 inwg\"], [\"2600 cfm\", \"0 inwg\"]]\nfilter = { clean = \"0.5 inwg\", change = \"1.5 inwg\", at = \"1000 cfm\" }\n[[duct]]\nname = \"Main\"\nto = \"Fan\"\nsize = \"7 in\"\nlength = \"100 ft\"\n")
	for i := range machines {
		fmt.Fprintf(&text, "[[machine]]\nname = \"M%d\"\nkind = \"table saw\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[duct]]\nname = \"D%d\"\nto = \"Main\"\njoins = \"%d ft\"\nsize = \"5 in\"\nlength = \"10 ft\"\nserves = [\"M%d\"]\nhose = { length = \"3 ft\" }\n[[gate]]\nname = \"G%d\"\non = \"D%d\"\n", i, i, 4*i, i, i, i)
	}
	return text.String()
}

// The findings of a shop of 24 machines, read, reckoned and judged.
func BenchmarkFindings(b *testing.B) {
	text := []byte(rowOf(24))
	for b.Loop() {
		s, problems := shop.Read("row.toml", text)
		if len(problems) > 0 {
			b.Fatal(problems)
		}
		if len(checks.Run(plan.Make(s, nil, entry.Date{}))) < 48 {
			b.Fatal("too few findings")
		}
	}
}
