package export_test

import (
	"encoding/json"
	"os"
	"testing"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/export"
	"dustbook/plan/shop"
)

// What size --json writes is read back here by types of its own, as another
// program would. The shop model serves for topology only.

type document struct {
	Format, Shop string
	Uses         []use
}

type use struct {
	Name, Collector, Filter string
	Machines                []string
	Captured, Carried       bool
	Open                    []string `json:"open_gates"`
	Fan                     struct {
		Flow      *float64 `json:"flow_m3_s"`
		Static    *float64 `json:"static_pa"`
		Power     *float64 `json:"power_w"`
		OnCurve   bool     `json:"on_curve"`
		Inlet     *float64 `json:"inlet_suction_pa"`
		Separator *float64 `json:"separator_pa"`
		Filter    *float64 `json:"filter_pa"`
		Outlet    *float64 `json:"outlet_pa"`
	}
	Ports []struct {
		Port     string
		Need     float64  `json:"need_m3_s"`
		NeedFrom string   `json:"need_from"`
		Flow     *float64 `json:"flow_m3_s"`
		Low      *float64 `json:"low_m3_s"`
		High     *float64 `json:"high_m3_s"`
		Captured bool
	}
	Ducts []piece
	Leaks []struct {
		On   string
		Flow *float64 `json:"flow_m3_s"`
	}
}

type piece struct {
	Duct      string
	Stretch   int
	Flow      *float64 `json:"flow_m3_s"`
	Velocity  *float64 `json:"velocity_m_s"`
	Low       *float64 `json:"low_m_s"`
	High      *float64 `json:"high_m_s"`
	Transport *float64 `json:"transport_m_s"`
	Loss      *float64 `json:"loss_pa"`
	Hose      *float64 `json:"hose_velocity_m_s"`
}

// written reads a shop and writes its JSON.
func written(t *testing.T, name string, text []byte) (*shop.Shop, []byte) {
	t.Helper()
	s, problems := shop.Read(name, text)
	if s == nil {
		t.Fatal(problems)
	}
	data, err := export.JSON(export.MakeSize(plan.Make(s, nil, entry.Date{})))
	if err != nil {
		t.Fatal(err)
	}
	return s, data
}

func decoded(t *testing.T, data []byte) document {
	t.Helper()
	var doc document
	if err := json.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	return doc
}

// examples are the two shops that ship with the program.
func examples(t *testing.T, check func(t *testing.T, s *shop.Shop, data []byte)) {
	t.Helper()
	for _, name := range []string{"school.toml", "small.toml"} {
		text, err := os.ReadFile("../../content/example/" + name)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(name, func(t *testing.T) {
			s, data := written(t, name, text)
			check(t, s, data)
		})
	}
}
