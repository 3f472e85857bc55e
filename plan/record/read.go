package record

import (
	"path"

	"dustbook/plan/entry"
)

// Read reads a record file. The name is used in messages and gives the
// record's File. On any problem the record is nil and the problems are all
// that were found, in file order.
func Read(file string, data []byte) (*Record, entry.Problems) {
	rec, _, problems := read(file, data)
	return rec, problems
}

// heads are the places of what the file's name repeats.
type heads struct{ kind, date *entry.Node }

func read(file string, data []byte) (*Record, heads, entry.Problems) {
	root, problems := entry.Read(file, data)
	if len(problems) > 0 {
		return nil, heads{}, problems
	}
	r := &reader{file: file}
	top := &scope{r, root, "record"}
	rec := &Record{Kind: top.word("kind"), Date: top.date("date"), Role: top.text("role"), Note: top.text("note"), Done: top.words("done")}
	if file != "" {
		rec.File = path.Base(file)
	}
	top.readReadings(rec)
	top.readItems(rec)
	top.close()
	if len(r.problems) > 0 {
		r.problems.Sort()
		return nil, heads{}, r.problems
	}
	return rec, heads{root.Get("kind"), root.Get("date")}, nil
}

// readReadings reads every [[reading]].
func (s *scope) readReadings(rec *Record) {
	for _, t := range s.tables("reading") {
		if t.r.full() {
			return
		}
		m, _ := FindMeasure(t.word("of"))
		reading := Reading{
			Of: m.Word, At: t.text("at"), Value: t.quantity("value", m), Expected: t.quantity("expected", m),
			Use: t.text("use"), Filter: t.word("filter"), With: t.text("with"), Calibrated: t.date("calibrated"),
			Place: t.t.At, AtPlace: t.placeOf("at"), UsePlace: t.placeOf("use"),
		}
		if after(reading.Calibrated, rec.Date) {
			t.wrong(t.t.Get("calibrated"), "a day not after that of the record, "+rec.Date.String(), "check both dates")
		}
		t.close()
		rec.Readings = append(rec.Readings, reading)
	}
}

// after reports whether a day that is given comes after another.
func after(day, than entry.Date) bool {
	none := entry.Date{}
	return day != none && than != none && day.String() > than.String()
}

// placeOf is where the value of a field stands.
func (s *scope) placeOf(field string) entry.Place {
	if node := s.t.Get(field); node != nil {
		return node.At
	}
	return entry.Place{}
}

// kindWithItems is the kind of record that has points to answer.
const kindWithItems = "letter"

// readItems reads every [[item]].
func (s *scope) readItems(rec *Record) {
	for i, t := range s.tables("item") {
		if t.r.full() {
			return
		}
		if i == 0 && rec.Kind != "" && rec.Kind != kindWithItems {
			s.problem(t.t.At, "[[item]] in a record of the kind "+entry.Quote(rec.Kind), "[[item]] in a letter only",
				`write kind = "`+kindWithItems+`", or put what it says into the note`)
		}
		rec.Items = append(rec.Items, Item{
			Asks: t.text("asks"), Rule: t.text("rule"), State: t.word("state"), Gap: t.text("gap"),
			Answered: t.answer("answered"), Evidence: t.text("evidence"), Place: t.t.At,
		})
		t.close()
	}
}
