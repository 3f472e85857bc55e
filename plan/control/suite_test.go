package control_test

import (
	"os"
	"strings"
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/shop"
)

// hall is the test shop with pieces replaced; each must stand there once.
func hall(t *testing.T, changes ...string) (*shop.Shop, *control.Reckoning) {
	t.Helper()
	data, err := os.ReadFile("testdata/hall.toml")
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
	return read(t, text)
}

func read(t *testing.T, text string) (*shop.Shop, *control.Reckoning) {
	t.Helper()
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return s, control.Reckon(s)
}

// gateNames are the names of gates on one line.
func gateNames(gates []*shop.Gate) string {
	var names []string
	for _, g := range gates {
		names = append(names, g.Name)
	}
	return strings.Join(names, ", ")
}

func collectorNames(list []*shop.Collector) string {
	var names []string
	for _, c := range list {
		names = append(names, c.Name)
	}
	return strings.Join(names, ", ")
}

// answerOf is the answer of a trigger by name.
func answerOf(t *testing.T, k *control.Reckoning, name string) *control.Answer {
	t.Helper()
	for _, a := range k.Ways {
		if a.Trigger.Name == name {
			return a
		}
	}
	t.Fatalf("no trigger %q", name)
	return nil
}
