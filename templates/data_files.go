package templates

import (
	"maps"
	"slices"

	"dustbook/checks"
	"dustbook/plan/export"
)

// The results of the book for other programs.
const (
	sizeFile     = "size.json"
	findingsFile = "findings.json"
)

// dataFile is a file of the book that people open with another program.
type dataFile struct{ Path, Means string }

// addData adds the results of the book for other programs, the same that the
// verbs size and inspect print.
func (b *Book) addData() error {
	size, err := export.JSON(export.MakeSize(b.Plan))
	if err != nil {
		return err
	}
	findings, err := checks.JSON(b.Plan, b.Findings)
	if err != nil {
		return err
	}
	b.file(sizeFile, size)
	b.file(findingsFile, findings)
	return nil
}

// file adds a file that is no sheet.
func (b *Book) file(path string, data []byte) {
	if b.Tables == nil {
		b.Tables = map[string][]byte{}
	}
	b.Tables[path] = data
}

// dataFiles lists the files that are no sheets, for the contents.
func (b *Book) dataFiles() []dataFile {
	var list []dataFile
	for _, path := range slices.Sorted(maps.Keys(b.Tables)) {
		list = append(list, dataFile{path, b.words.Text("contents.file." + path)})
	}
	return list
}
