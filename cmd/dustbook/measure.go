package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/unit"
)

// measured is a reading with what the plan expects of it.
type measured struct {
	record.Reading
	of       record.Measure
	expected plan.Expected
}

// measure writes one new record and says what the plan expected.
func (p *program) measure(c *call) error {
	path, err := find(c.shop)
	if err != nil {
		return err
	}
	if path == "" {
		return wrongUse{"measure needs a shop of your own, and there is no " + shopFile + " here", "name its folder or file: dustbook measure my-shop"}
	}
	p.progress.step("reading")
	l := &loaded{path: path}
	s, problems, err := p.readShop(l)
	if err != nil {
		return err
	}
	if len(problems) > 0 {
		for i := range problems {
			problems[i].File = l.shown()
		}
		return problems
	}
	l.plan = plan.Make(s, nil, p.today())
	o := &order{call: c, plan: l.plan, names: plan.Names(s)}
	rec := o.record()
	if len(o.problems) > 0 {
		return o.problems
	}
	if err := p.halt.begin(); err != nil {
		return err
	}
	file, err := keepRecord(l.folder(), rec)
	if err != nil {
		return err
	}
	if rec.Date.String() > p.today().String() {
		p.say(rec.Date.String() + " is later than today, " + p.today().String() + "; if it is wrong, delete the file and measure again")
	}
	if p.json {
		return p.measuredJSON(file, rec, o.readings)
	}
	p.sayMeasured(s.Units, file, o.readings)
	return nil
}

// order is what the arguments ask to be recorded, while they are read.
type order struct {
	*call
	plan     *plan.Plan // as of today
	names    record.Names
	readings []measured
	problems entry.Problems
}

// wrong notes a problem of a flag.
func (o *order) wrong(flag, read, expected, do string) {
	o.problems = append(o.problems, entry.Problem{File: "--" + flag, Read: read, Expected: expected, Do: do})
}

// record reads the record that the flags describe.
func (o *order) record() *record.Record {
	rec := &record.Record{Kind: o.kind(), Date: o.day("date"), Role: o.flags["role"], Note: o.flags["note"], Done: o.done()}
	if !o.has("date") {
		rec.Date = o.plan.AsOf
	}
	calibrated := o.day("calibrated")
	switch {
	case o.has("calibrated") && !o.has("with"):
		o.wrong("calibrated", "a day without an instrument", "--with, which says what was calibrated", "add --with, or leave --calibrated out")
	case calibrated.String() > rec.Date.String() && rec.Date.Year > 0:
		o.wrong("calibrated", calibrated.String(), "a day not after that of the record, "+rec.Date.String(), "check both dates")
	}
	o.texts(rec)
	lines := o.many["reading"]
	if len(lines) == 0 && strings.TrimSpace(rec.Note) == "" && !o.has("done") {
		o.wrong("reading", "neither a reading nor a job nor a note", record.LineForm, `add --reading "hood pressure at Planer/hood = 4.1 inwg", or --done, or --note`)
	}
	for i, line := range lines {
		r, problems := record.ReadLine(line, o.names)
		if r.With == "" {
			r.With, r.Calibrated = o.flags["with"], calibrated
		}
		if len(problems) == 0 {
			problems = o.expect(&r)
		}
		for _, p := range problems {
			p.File = o.flagOf(i)
			o.problems = append(o.problems, p)
		}
		rec.Readings = append(rec.Readings, r)
	}
	return rec
}

// flagOf names the flag of a reading, with its number where there are several.
func (o *order) flagOf(i int) string {
	if len(o.many["reading"]) == 1 {
		return "--reading"
	}
	return fmt.Sprintf("--reading %d", i+1)
}

// kind reads --kind.
func (o *order) kind() string {
	var kinds []string
	for _, w := range record.Words("record kind") {
		kinds = append(kinds, w.Word)
	}
	kind, given := o.flags["kind"]
	choice := "use one of " + strings.Join(kinds, ", ")
	switch {
	case !given:
		o.wrong("kind", "nothing", "what happened", "add --kind with one of "+strings.Join(kinds, ", "))
	case slices.Contains(kinds, kind):
		return kind
	default:
		if near := entry.Nearest(kind, kinds, 1); len(near) > 0 {
			choice = "write --kind " + near[0]
		}
		o.wrong("kind", entry.Quote(kind), "a kind of record", choice)
	}
	return ""
}

// done reads --done: jobs of upkeep, each once.
func (o *order) done() []string {
	var jobs, list []string
	for _, w := range record.Words("service") {
		jobs = append(jobs, w.Word)
	}
	for _, job := range strings.Split(strings.Join(o.many["done"], ","), ",") {
		job = strings.TrimSpace(job)
		switch {
		case !o.has("done") || slices.Contains(list, job):
		case slices.Contains(jobs, job):
			list = append(list, job)
		default:
			do := "use one of " + strings.Join(jobs, ", ")
			if near := entry.Nearest(job, jobs, 1); len(near) > 0 {
				do = "write " + entry.Quote(near[0])
			}
			o.wrong("done", entry.Quote(job), "a job of upkeep", do)
		}
	}
	return list
}

// day reads a flag that holds a day; the zero day where there is none.
func (o *order) day(flag string) entry.Date {
	text, given := o.flags[flag]
	if !given {
		return entry.Date{}
	}
	day, ok := readDay(text)
	if !ok {
		o.wrong(flag, entry.Quote(text), "a day that exists, as year, month and day", "write it as --"+flag+" 2026-11-24")
	}
	return day
}

// texts checks what is written freely, by reading a record of nothing else.
func (o *order) texts(rec *record.Record) {
	trial := &record.Record{Kind: "service", Date: entry.Date{Year: 2000, Month: 1, Day: 1}, Role: rec.Role, Note: rec.Note,
		Readings: []record.Reading{{Of: "stop", At: "x", Value: record.Quantity{Text: "x"}, With: o.flags["with"]}}}
	_, problems := record.Read("", trial.TOML())
	for _, p := range problems {
		flag, _, _ := strings.Cut(p.Read, " =")
		o.wrong(flag, strings.TrimPrefix(p.Read, flag+" = "), p.Expected, p.Do)
	}
}

// expect finds what the plan expects of a reading, and keeps it in the reading
// where it is one value. A pressure with the wrong sign is a problem.
func (o *order) expect(r *record.Reading) entry.Problems {
	m, _ := record.FindMeasure(r.Of)
	e := o.plan.Expect(*r)
	if m.Suction && r.Value.SI < 0 && e.Known() && e.Low > 0 {
		return entry.Problems{{Read: "value = " + entry.Quote(r.Value.Text), Expected: "suction as a number above nought",
			Do: "leave the sign out; if it blew instead, say so with --note"}}
	}
	switch {
	case e.Known() && e.Text != "":
		r.Expected = record.Quantity{Text: e.Text}
	case e.One():
		r.Expected, _ = m.Read(m.Print(o.plan.Shop.Units, e.Low))
	}
	o.readings = append(o.readings, measured{*r, m, e})
	return nil
}

// keepRecord writes a record into the folder of records beside the shop file,
// and returns its path. What it began is gone again where it fails.
func keepRecord(shopFolder string, rec *record.Record) (string, error) {
	folder := filepath.Join(shopFolder, record.Folder)
	made := os.Mkdir(folder, 0o777)
	if made != nil && !errors.Is(made, fs.ErrExist) {
		return "", fmt.Errorf("cannot make the folder %s: %w; nothing was written", folder, cause(made))
	}
	name, err := writeRecord(folder, rec)
	if err != nil {
		if made == nil {
			_ = os.Remove(folder) // stays where another wrote into it meanwhile
		}
		return "", err
	}
	return filepath.Join(folder, name), nil
}

func writeRecord(folder string, rec *record.Record) (string, error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return "", fmt.Errorf("cannot open %s: %w; nothing was written", folder, cause(err))
	}
	defer root.Close()
	name, err := record.Write(root, rec)
	var problems entry.Problems
	if err != nil && !errors.As(err, &problems) {
		err = fmt.Errorf("%s: %w", filepath.Dir(folder), err)
	}
	return name, err
}

// sayMeasured prints the file and, for each reading, what was expected.
func (p *program) sayMeasured(units unit.System, file string, readings []measured) {
	p.print("%s is written: %s", file, count(len(readings), "reading"))
	if len(readings) == 0 {
		return
	}
	p.print("")
	t := columns{right: map[int]bool{1: true, 2: true, 3: true}}
	t.add("", "measured", "expected", "difference", "")
	for _, m := range readings {
		t.add(m.row(units)...)
	}
	p.rows(t)
	for _, line := range advice(readings) {
		p.print("")
		for _, part := range folded(line, lineWidth) {
			p.print("%s", part)
		}
	}
}
