package main

import (
	"strings"

	"dustbook/plan/entry"
)

// verb is one thing the program does.
type verb struct {
	name  string
	takes string // DIR, or [SHOP] where it may be left out
	does  string // one line for the list
	about string // what help says about it
	tries string // an example
	exits string // its exit statuses
	flags []flag
	run   func(*program, *call) error
}

var (
	flagJSON = flag{name: "json", does: "print JSON for other programs, in SI units"}
	flagAsOf = flag{name: "as-of", value: "DATE", does: "reckon as of this day, as 2026-11-24"}
)

// verbs lists what the program does, in the order of the work.
var verbs = []*verb{
	{
		name: "start", takes: "DIR", does: "a starter shop folder, with a commented shop file",
		about: `Makes the folder DIR with a commented shop.toml that works as it stands, and
the empty folders records/ and notes/. A file that is there already is never
overwritten.`,
		tries: "dustbook start my-shop",
		exits: "0 done, 2 wrong use or something is in the way, 3 the disk failed",
		run:   (*program).start,
	},
	{
		name: "size", takes: "[SHOP]", does: "the air in every use, on the terminal",
		about: `Reckons every use of the shop with the filter clean and due for change: what
the fan delivers, what each port gets of what it needs, and where the air is
too slow to carry the dust. Numbers are in the shop's own units.

With --choose it looks for the stock sizes of every duct with size = "choose":
those with the least sheet and the fewest gates opened as well with which every
use gets its air and carries its dust. They are printed, not written into the
file. With --sets it tries every set of machines that may run at once.`,
		tries: "dustbook size my-shop",
		exits: "0 done, 2 wrong use or a file with errors, 3 the tool failed or it was stopped",
		flags: []flag{
			{name: "sets", does: "which machines may run together, and which gate to open as well"},
			{name: "choose", does: "sizes for the ducts whose size is to be chosen"},
			flagJSON, flagAsOf.with("; else today"),
		},
		run: (*program).size,
	},
	{
		name: "inspect", takes: "[SHOP]", does: "the findings: what to stop, to mend and to know",
		about: `Asks every check of the shop and lists the findings with their place in the
file, the gravest first. "stop" means: do not run it until that is settled.
A finding never says that a shop is within the law; the authority decides.

With --only or --weight the rest is left out of what is printed and of the exit
status, and the last line counts it. In SARIF a stop is an error, a thing to
mend a warning, one to know that is not met a note. The rest has level none and
its kind: pass (met, with --all), open (thin, not given), review (ask) or
informational (in play, advice). What is accepted is suppressed, with the reason.`,
		tries: "dustbook inspect my-shop",
		exits: "0 done, 1 a stop finding is shown, 2 wrong use or a file with errors, 3 the tool failed",
		flags: []flag{
			{name: "all", does: "list the findings that are met as well"},
			{name: "only", value: "ID", does: "those of this check; several with commas: open-flue,power-cut", many: true},
			{name: "weight", value: "WEIGHT", does: "those that say stop, mend or know; several with commas", many: true},
			{name: "figures", does: "the ids that [[confirmed]] may name, instead of findings"},
			{name: "sarif", does: "print SARIF 2.1.0, for a forge to show on the lines of the file"},
			flagJSON, flagAsOf.with("; else today"),
		},
		run: (*program).inspect,
	},
	{
		name: "publish", takes: "[SHOP]", does: "the book: sheets to browse, print and hand over",
		about: `Makes the whole book first, then brings the folder up to date: it writes the
sheets that changed and removes those it wrote before and no longer makes. It
writes only into a new or empty folder or one it wrote itself, touches no file
that it did not write, and leaves the book as it was when it is stopped. The
book lands in book/ beside the shop file, or in public/ for the example.

Notes of your own, notes/*.md beside the shop file, become sheets as well:
  [Planer], [it](<gate:Saw gate>)  a thing: machine, card, gate, duct, collector,
                                   room, use, trigger, chain, check or sheet
  [emptying](emptying.md#after)    another note, or a heading of it
  ![the window](drum.jpg)          a picture beside the note: png, jpg, gif, webp, svg
HTML and links that lead nowhere or out of the folder are errors of the shop.`,
		tries: "dustbook publish my-shop --to my-shop/book",
		exits: "0 done, 1 the folder differs (--check), 2 wrong use or a file with errors, 3 the tool or the disk failed or it was stopped",
		flags: []flag{
			{name: "to", value: "DIR", does: "the folder of the book"},
			{name: "beside", value: "OTHER", does: "another layout of the shop, set beside this one on a sheet"},
			{name: "check", does: "write nothing, list what differs"},
			flagAsOf.with("; else the latest in the files"),
		},
		run: (*program).publish,
	},
	{
		name: "preview", takes: "[SHOP]", does: "the book in a browser of this machine, new with every change",
		about: `Makes the book in memory and shows it to browsers on this machine alone, at an
address that it prints. When the shop file, a record or a note changes, the
pages in the browser are made anew. While the files have errors they are shown
above the last good sheet. It writes nothing. Ctrl-C ends it.`,
		tries: "dustbook preview my-shop",
		exits: "0 done, 2 wrong use, 3 the tool failed",
		flags: []flag{
			{name: "port", value: "PORT", does: "the port on this machine; else one that is free"},
			{name: "beside", value: "OTHER", does: "another layout of the shop, set beside this one on a sheet"},
			flagAsOf.with("; else the latest in the files"),
		},
		run: (*program).preview,
	},
	{
		name: "measure", takes: "[SHOP]", does: "what was measured, into a new file in records/",
		about: `Writes one new record beside the shop file and changes none. A reading is
  OF at THING [in USE] [filter STATE] [with INSTRUMENT] = VALUE
with OF as in "hood pressure", "tap pressure", "velocity", "current"; suction
counts as positive. It prints what the plan expects beside each reading. Amps
inside the box of a motor or starter are for an electrician to measure.`,
		tries: `dustbook measure my-shop --kind commissioning --role steward --with "U-tube" \
    --reading "hood pressure at Planer/hood in Planer filter clean = 4.1 inwg"`,
		exits: "0 done, 2 wrong use or a file with errors (nothing is written), 3 the disk failed",
		flags: []flag{
			{name: "kind", value: "KIND", does: "commissioning, inspection, service, change, incident, letter"},
			{name: "reading", value: "TEXT", does: "a reading as above; give as many as you have", many: true},
			{name: "done", value: "JOB", does: "a job of upkeep that was done, as \"weekly look\"; several with commas", many: true},
			{name: "date", value: "DATE", does: "the day it was measured; else today"},
			{name: "role", value: "ROLE", does: "who measured, by role"},
			{name: "note", value: "TEXT", does: "what was done or seen"},
			{name: "with", value: "TEXT", does: "the instrument of every reading that names none"},
			{name: "calibrated", value: "DATE", does: "the day that instrument was last calibrated"},
			flagJSON,
		},
		run: (*program).measure,
	},
}

// with is the flag with more said about it.
func (f flag) with(more string) flag {
	f.does += more
	return f
}

// findVerb finds a verb by its name.
func findVerb(name string) *verb {
	for _, v := range verbs {
		if v.name == name {
			return v
		}
	}
	return nil
}

// unknownVerb says which verbs there are.
func unknownVerb(name string) error {
	var names []string
	for _, v := range verbs {
		names = append(names, v.name)
	}
	if strings.HasPrefix(name, "-") {
		return wrongUse{entry.Quote(name) + " stands before a verb", "write the verb first: " + strings.Join(names, ", ")}
	}
	do := "the verbs are " + strings.Join(names, ", ") + ", help"
	if near := entry.Nearest(name, append(names, "help"), 1); len(near) > 0 {
		do = "do you mean " + near[0] + "? " + do
	}
	return wrongUse{"there is no verb " + entry.Quote(name), do}
}

// flag finds a flag of a verb by its name.
func (v *verb) flag(name string) *flag {
	for i := range v.flags {
		if v.flags[i].name == name {
			return &v.flags[i]
		}
	}
	return nil
}

// unknownFlag says which flags a verb has.
func (v *verb) unknownFlag(arg string) error {
	var names []string
	for _, f := range v.flags {
		names = append(names, "--"+f.name)
	}
	name, _, _ := strings.Cut(arg, "=")
	do := v.name + " has no flags but --help"
	if len(names) > 0 {
		do = v.name + " has " + strings.Join(names, ", ") + ", --help"
	}
	if near := entry.Nearest(strings.TrimLeft(name, "-"), v.flagNames(), 1); len(near) > 0 {
		do = "do you mean --" + near[0] + "? " + do
	}
	return wrongUse{v.name + " has no flag " + entry.Quote(name), do}
}

func (v *verb) flagNames() []string {
	names := []string{"help"}
	for _, f := range v.flags {
		names = append(names, f.name)
	}
	return names
}
