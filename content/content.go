// Package content knows the texts that ship with the program: the example
// shops, the starter file, the texts of the pages and the prose of every check, and how Markdown
// becomes HTML. It knows nothing of a plan.
package content

import (
	"embed"
	"fmt"
	"io/fs"
)

//go:embed example/school.toml example/small.toml starter/shop.toml
//go:embed example/notes/emptying.md example/notes/who-to-ask.md
//go:embed example/school-records/2026-10-16-commissioning-1.toml example/school-records/2026-11-06-service-1.toml
//go:embed example/school-records/2026-11-10-letter-1.toml example/school-records/2026-11-20-inspection-1.toml
//go:embed checks/air-captured.md checks/dust-carried.md checks/fan-on-curve.md checks/motor-power.md
//go:embed checks/metal-on-wood-main.md checks/conductive-duct.md checks/open-flue.md checks/garage-separation.md
//go:embed checks/gate-stops.md checks/start-delay.md checks/run-on.md checks/starts-per-hour.md
//go:embed checks/trigger-path.md checks/trigger-opens.md checks/threshold.md checks/power-cut.md checks/blow-back.md
//go:embed checks/duct-collapse.md checks/bonded-duct.md checks/bin-filling.md checks/filter-load.md
//go:embed checks/make-up-air.md checks/return-path.md
//go:embed checks/motor-circuit.md checks/starter-kind.md
//go:embed checks/chain-volts.md checks/supply-margin.md checks/sensor-levels.md
//go:embed checks/chain-devices.md checks/shared-hose.md checks/stop-on-way-out.md checks/fine-dust-in-bin.md checks/open-bag-indoors.md
//go:embed checks/duct-material.md checks/duct-thickness.md checks/duct-supports.md checks/duct-clean-outs.md
//go:embed checks/duct-clearance.md checks/hose-slack.md checks/control-box.md checks/panel-space.md
//go:embed checks/noise-dose.md checks/dust-exposure.md checks/unexpected-start.md checks/training-record.md checks/hood-labels.md
//go:embed checks/drawing-complete.md checks/commissioning-record.md checks/last-test.md checks/calibrated-instruments.md
//go:embed checks/letters-answered.md checks/papers-in-hand.md
//go:embed checks/dust-scope.md checks/dust-hazard-analysis.md checks/area-classification.md checks/settled-dust.md checks/dust-cleaning.md checks/flame-near-dust.md
//go:embed checks/collector-place.md checks/explosion-protection.md checks/extractor-type.md checks/returned-air-filter.md checks/returned-air-residue.md
//go:embed checks/garage-door.md checks/garage-board.md checks/rated-wall.md checks/way-out.md checks/aisle-width.md checks/duct-headroom.md
//go:embed checks/extinguisher-reach.md checks/extinguisher-rating.md checks/extinguisher-finish.md checks/extinguisher-metal.md checks/extinguisher-service.md
//go:embed checks/sprinkler-area.md checks/outlet-property.md checks/outlet-openings.md
var files embed.FS

// Example is the shop file of the embedded example, a school.
func Example() []byte { return read("example/school.toml") }

// ExampleNotes is the folder of notes of the embedded example. It lies beside
// both example shops, so its links hold for both.
func ExampleNotes() fs.FS { return folder("example/notes") }

// ExampleRecords is the folder of records of the embedded example. They are
// those of the school alone: the small example has none.
func ExampleRecords() fs.FS { return folder("example/school-records") }

// Small is the shop file of the smallest example: three machines.
func Small() []byte { return read("example/small.toml") }

// Starter is the commented shop file that a new folder starts with.
func Starter() []byte { return read("starter/shop.toml") }

// CheckProse is the Markdown prose of a check; empty where there is none.
func CheckProse(id string) []byte {
	data, err := files.ReadFile("checks/" + id + ".md")
	if err != nil {
		return nil
	}
	return data
}

func folder(name string) fs.FS {
	found, err := fs.Sub(files, name)
	if err != nil {
		panic(fmt.Sprintf("content: %v", err))
	}
	return found
}

func read(name string) []byte {
	data, err := files.ReadFile(name)
	if err != nil {
		panic(fmt.Sprintf("content: %v", err))
	}
	return data
}
