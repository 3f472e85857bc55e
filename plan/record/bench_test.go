package record

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

func BenchmarkReadFolder(b *testing.B) {
	text := "kind = \"commissioning\"\ndate = 2026-11-24\n" + strings.Repeat("\n[[reading]]\nof = \"hood pressure\"\nat = \"Planer/hood\"\nvalue = \"2.1 inwg\"\nexpected = \"2 inwg\"\n", 40)
	files := fstest.MapFS{}
	for i := range 100 {
		files[fmt.Sprintf("2026-11-24-commissioning-%d.toml", i+1)] = &fstest.MapFile{Data: []byte(text)}
	}
	for b.Loop() {
		if records, problems := ReadFolder(files); len(records) != 100 {
			b.Fatal(problems)
		}
	}
}
