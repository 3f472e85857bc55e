package export_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// The keys of each object, in the order they are written.
var shape = map[string][]string{
	"":           {"format", "shop", "as_of", "air", "uses"},
	"air":        {"density_kg_m3", "viscosity_pa_s"},
	"uses":       {"name", "machines", "collector", "filter", "captured", "carried", "open_gates", "fan", "ports", "ducts", "leaks"},
	"uses fan":   {"flow_m3_s", "static_pa", "power_w", "on_curve", "claimed", "inlet_suction_pa", "separator_pa", "filter_pa", "outlet_pa"},
	"uses ports": {"port", "need_m3_s", "need_from", "flow_m3_s", "low_m3_s", "high_m3_s", "captured"},
	"uses ducts": {"duct", "stretch", "flow_m3_s", "velocity_m_s", "low_m_s", "high_m_s", "transport_m_s", "loss_pa"},
	"uses leaks": {"on", "flow_m3_s"},
}

// optional are keys that stand only where they mean something.
var optional = map[string]string{"uses ducts": "hose_velocity_m_s"}

// contract are the keys that the contract of size --json names; the rest were
// added beside them.
var contract = map[string]string{
	"":    "format shop air uses",
	"air": "density_kg_m3 viscosity_pa_s", "uses": "name machines collector filter captured carried fan ports ducts",
	"uses fan": "flow_m3_s static_pa power_w on_curve", "uses ports": "port need_m3_s need_from flow_m3_s captured",
	"uses ducts": "duct stretch flow_m3_s velocity_m_s transport_m_s loss_pa",
}

func TestContractHolds(t *testing.T) {
	for object, keys := range contract {
		for _, key := range strings.Fields(keys) {
			if !slices.Contains(shape[object], key) {
				t.Errorf("%q of %q is gone", key, object)
			}
		}
	}
}

func TestShape(t *testing.T) {
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		seen := map[string]bool{}
		walk(t, data, func(path string, keys []string) {
			seen[path] = true
			want := shape[path]
			if extra := optional[path]; extra != "" && slices.Contains(keys, extra) {
				want = append(slices.Clone(want), extra)
				seen[extra] = true
			}
			if !slices.Equal(keys, want) {
				t.Errorf("%q has the keys %v, want %v", path, keys, want)
			}
		})
		for path := range shape {
			if !seen[path] && path != "uses leaks" {
				t.Errorf("no object %q", path)
			}
		}
		if !seen["hose_velocity_m_s"] {
			t.Error("no hose velocity")
		}
		if !bytes.HasPrefix(data, []byte("{\n  \"format\": \"dustbook-size/1\",\n")) || !bytes.HasSuffix(data, []byte("}\n")) || bytes.Contains(data, []byte("[]null")) {
			t.Errorf("starts with %q", data[:40])
		}
	})
}

// walk calls see for every object with its path of array and object keys.
func walk(t *testing.T, data []byte, see func(path string, keys []string)) {
	t.Helper()
	dec := json.NewDecoder(bytes.NewReader(data))
	var value func(path string)
	value = func(path string) {
		token, err := dec.Token()
		if err != nil {
			t.Fatal(err)
		}
		switch token {
		case json.Delim('{'):
			var keys []string
			for dec.More() {
				key, _ := dec.Token()
				keys = append(keys, key.(string))
				value(strings.TrimSpace(path + " " + key.(string)))
			}
			dec.Token()
			see(path, keys)
		case json.Delim('['):
			for dec.More() {
				value(path)
			}
			dec.Token()
		}
	}
	value("")
	if _, err := dec.Token(); err != io.EOF {
		t.Errorf("after the document: %v", err)
	}
}

// Machines alone in file order, then the file's uses, then the three; each on
// the collectors it needs, with its filter clean and at change-out.
func TestUsesInOrder(t *testing.T) {
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		var want []string
		add := func(name string, machines []*shop.Machine) {
			for _, c := range s.Collectors {
				needed := len(machines) == 0
				for _, m := range machines {
					for _, p := range m.Ports {
						needed = needed || p.Duct != nil && p.Duct.Collector == c
					}
				}
				if !needed {
					continue
				}
				states := []string{"clean", "change-out"}
				if c.Filter == nil {
					states = []string{"none"}
				}
				for _, filter := range states {
					want = append(want, fmt.Sprint(name, "|", c.Name, "|", filter))
				}
			}
		}
		for _, m := range s.Machines {
			add(m.Name, []*shop.Machine{m})
		}
		for _, u := range s.Uses {
			add(u.Name, u.Machines)
		}
		for _, name := range []string{"Everything shut", "Everything open", "Duct off"} {
			add(name, nil)
		}
		var got []string
		for _, u := range decoded(t, data).Uses {
			got = append(got, fmt.Sprint(u.Name, "|", u.Collector, "|", u.Filter))
			if u.Machines == nil || u.Open == nil || u.Ports == nil || u.Ducts == nil || u.Leaks == nil {
				t.Errorf("%s: a list is null", u.Name)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("uses\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	})
}

// Numbers stand in shortest form, with six significant digits at most.
func TestNumbersAreShort(t *testing.T) {
	number := regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]*[1-9])?(e-[1-9][0-9]*)?$`)
	value := regexp.MustCompile(`(?m)^ *"[a-z_0-9]+": (-?[0-9][^,\n]*)`)
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		found := value.FindAllSubmatch(data, -1)
		if len(found) < 300 {
			t.Errorf("%d numbers", len(found))
		}
		for _, m := range found {
			text := string(m[1])
			mantissa, _, _ := strings.Cut(strings.TrimPrefix(text, "-"), "e")
			digits := strings.TrimLeft(strings.Replace(mantissa, ".", "", 1), "0")
			if !number.MatchString(text) || len(digits) > 6 && strings.TrimRight(digits[6:], "0") != "" {
				t.Errorf("the number %s", text)
			}
		}
	})
}

// The same shop gives the same bytes.
func TestSameBytes(t *testing.T) {
	examples(t, func(t *testing.T, s *shop.Shop, data []byte) {
		text := readExample(t, s.File)
		for range 3 {
			if _, again := written(t, s.File, text); !bytes.Equal(data, again) {
				t.Fatal("differs from one time to the next")
			}
		}
	})
}
