package chain

import (
	"os"
	"strings"
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/shop"
)

// row is the test shop with pieces replaced; each must stand there once.
func row(t testing.TB, changes ...string) (*shop.Shop, *Reckoning) {
	t.Helper()
	data, err := os.ReadFile("testdata/row.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i+1 < len(changes); i += 2 {
		if n := strings.Count(text, changes[i]); n != 1 {
			t.Fatalf("%q stands %d times in the shop, want once", changes[i], n)
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return s, Reckon(s, control.Reckon(s))
}

// gateOf is the lines of a gate of the test shop up to its holding current.
func gateOf(name, at string) string {
	return "name = \"" + name + "\"\non = \"Drop\"\nat = \"" + at + "\"\ndrive = \"powered\"\nmoving = \"0.5 A\"\nstall = \"1 A\"\nholding = \"20 mA\"\nlowest = \"20 V\"\n"
}

// names are the names of devices on one line.
func names(list []*control.Device) string {
	var all []string
	for _, d := range list {
		all = append(all, d.Name)
	}
	return strings.Join(all, ", ")
}

// gaps are inputs with their devices on one line.
func gaps(list []Gap) string {
	var all []string
	for _, g := range list {
		text := g.Input.String()
		if g.Device != nil {
			text += " " + g.Device.Name
		}
		all = append(all, text)
	}
	return strings.Join(all, "; ")
}

func emptyControl() *control.Reckoning { return control.Reckon(&shop.Shop{}) }
