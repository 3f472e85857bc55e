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
//go:embed checks/air-captured.md checks/dust-carried.md checks/fan-on-curve.md checks/motor-power.md
//go:embed checks/metal-on-wood-main.md checks/conductive-duct.md checks/open-flue.md checks/garage-separation.md
//go:embed checks/gate-stops.md checks/start-delay.md checks/run-on.md checks/starts-per-hour.md
//go:embed checks/trigger-path.md checks/trigger-opens.md checks/threshold.md checks/power-cut.md checks/blow-back.md
//go:embed checks/duct-collapse.md checks/bonded-duct.md checks/bin-filling.md checks/filter-load.md
//go:embed checks/make-up-air.md checks/return-path.md
//go:embed checks/motor-circuit.md checks/starter-kind.md
//go:embed checks/chain-volts.md checks/supply-margin.md checks/sensor-levels.md
//go:embed checks/chain-devices.md checks/shared-hose.md checks/stop-on-way-out.md checks/fine-dust-in-bin.md checks/open-bag-indoors.md
var files embed.FS

// Example is the shop file of the embedded example, a school.
func Example() []byte { return read("example/school.toml") }

// ExampleNotes is the folder of notes of the embedded example. It lies beside
// both example shops, so its links hold for both.
func ExampleNotes() fs.FS {
	folder, err := fs.Sub(files, "example/notes")
	if err != nil {
		panic(fmt.Sprintf("content: %v", err))
	}
	return folder
}

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

func read(name string) []byte {
	data, err := files.ReadFile(name)
	if err != nil {
		panic(fmt.Sprintf("content: %v", err))
	}
	return data
}
