package source

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"
)

// Reason says why there is no figure: which of the reasons of reasons.csv, and
// the names it speaks of, in the order of their places in its text; and, where
// it is the cause of another, which that is. The zero Reason stands where there
// is a figure. Two reasons that say the same are equal.
type Reason struct {
	name   string
	about  [2]string
	causes string
}

//go:embed reasons.csv
var reasonsData []byte

var reasonTexts, reasonNames = mustReasons(reasonsData)

// mustReasons reads the text of every reason by its name. A malformed row is a
// fault of the program, found when it starts.
func mustReasons(data []byte) (map[string]string, []string) {
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		panic("source: reasons.csv: " + err.Error())
	}
	texts := map[string]string{}
	var names []string
	for _, r := range records[1:] {
		if texts[r[0]] != "" || r[0] == "" || r[1] == "" {
			panic(fmt.Sprintf("source: reasons.csv: %q is empty or stands twice", r[0]))
		}
		texts[r[0]] = r[1]
		names = append(names, r[0])
	}
	return texts, names
}

// Because is the reason of a name, with up to two names that it speaks of. An
// unknown name, and more or fewer names than its text has places for, are
// faults of the program.
func Because(name string, about ...string) Reason {
	r := Reason{name: name}
	if text, known := reasonTexts[name]; !known || len(about) != strings.Count(text, "{") {
		panic(fmt.Sprintf("source: reasons.csv has no reason %s about %d names", name, len(about)))
	}
	copy(r.about[:], about)
	return r
}

// Causing is the reason as the cause of another, whose text has a place for it.
func (r Reason) Causing(other string) Reason {
	r.causes = Because(other, r.name).name
	return r
}

// Reasons lists the name of every reason, in the order of the data file.
func Reasons() []string { return reasonNames }

// Is reports whether there is a reason at all.
func (r Reason) Is() bool { return r.name != "" }

// Because is the name of the reason, the names it speaks of and the reason that
// it is the cause of, for what words it in a language.
func (r Reason) Because() (name string, about []string, causes string) {
	return r.name, r.about[:strings.Count(reasonTexts[r.name], "{")], r.causes
}

// String is the reason in plain English, as the terminal and JSON print it;
// empty where there is none.
func (r Reason) String() string {
	text := strings.NewReplacer("{1}", r.about[0], "{2}", r.about[1]).Replace(reasonTexts[r.name])
	if r.causes != "" {
		text = strings.Replace(reasonTexts[r.causes], "{1}", text, 1)
	}
	return text
}
