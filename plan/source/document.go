package source

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
)

// Document is a published text that figures of the program come from.
type Document struct {
	ID      string
	Title   string
	Short   string // for the last column of a working
	Edition string
	Note    string // what a reader should know before relying on it
}

//go:embed documents.csv
var documentsData []byte

var documents, documentByID = mustDocuments(documentsData)

func mustDocuments(data []byte) ([]Document, map[string]Document) {
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		panic("source: documents.csv: " + err.Error())
	}
	var list []Document
	byID := map[string]Document{}
	for _, r := range records[1:] {
		d := Document{ID: r[0], Title: r[1], Short: r[2], Edition: r[3], Note: r[4]}
		if _, twice := byID[d.ID]; twice || d.ID == "" || d.Title == "" || d.Short == "" {
			panic(fmt.Sprintf("source: documents.csv: %q is empty or stands twice", d.ID))
		}
		list = append(list, d)
		byID[d.ID] = d
	}
	return list, byID
}

// Documents is the list of documents, in the order of the data file.
func Documents() []Document { return documents }

// FindDocument finds a document by its id.
func FindDocument(id string) (Document, bool) {
	d, ok := documentByID[id]
	return d, ok
}
