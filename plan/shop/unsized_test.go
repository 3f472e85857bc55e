package shop_test

import (
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// The ducts whose size is to be chosen are those so marked, in file order, and
// each counts for its own collector alone.
func TestUnsized(t *testing.T) {
	const text = `
[shop]
name = "Two fans"
[[collector]]
name = "One"
inlet = "6 in"
claims = { flow = "900 cfm", suction = "9 inwg" }
[[collector]]
name = "Two"
inlet = "6 in"
claims = { flow = "900 cfm", suction = "9 inwg" }
[[duct]]
name = "Main"
to = "One"
size = "SIZE"
length = "10 ft"
[[duct]]
name = "Drop"
to = "Main"
size = "choose"
length = "5 ft"
[[duct]]
name = "Pipe"
to = "Two"
size = "5 in"
length = "5 ft"
`
	for size, want := range map[string]string{"choose": "Main Drop", "6 in": "Drop"} {
		s, problems := shop.Read("shop.toml", []byte(strings.Replace(text, "SIZE", size, 1)))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		names := func(of *shop.Collector) string {
			var list []string
			for _, d := range s.Unsized(of) {
				list = append(list, d.Name)
			}
			return strings.Join(list, " ")
		}
		if all, one, two := names(nil), names(s.Collectors[0]), names(s.Collectors[1]); all != want || one != want || two != "" {
			t.Errorf("size %s: all %q, of One %q, of Two %q", size, all, one, two)
		}
	}
}
