package shop

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
)

//go:embed phrases.csv
var phrasesData []byte

var phrases = loadPhrases()

func loadPhrases() map[string]string {
	records, err := csv.NewReader(bytes.NewReader(phrasesData)).ReadAll()
	if err != nil {
		panic("shop: phrases.csv: " + err.Error())
	}
	texts := map[string]string{}
	for _, r := range records[1:] {
		texts[r[0]] = r[1]
	}
	return texts
}

// phrase is what the list of fields and that of assumptions say, by the name
// of its row, with what it is about in its places. A missing row is a fault of
// the program.
func phrase(name string, about ...string) string {
	text, ok := phrases[name]
	if !ok {
		panic("shop: phrases.csv has no row " + name)
	}
	var places []string
	for i, part := range about {
		places = append(places, "{"+strconv.Itoa(i+1)+"}", part)
	}
	return strings.NewReplacer(places...).Replace(text)
}
