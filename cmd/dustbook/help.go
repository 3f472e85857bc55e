package main

import (
	"fmt"
	"slices"
	"strings"
)

const purpose = `dustbook: the dust control of a small shop, from one file to a book

One file, shop.toml, describes the machines, ducts, gates and collector of a
wood or fabrication shop. dustbook reckons the air in every use, checks it and
writes a book of sheets to browse, print and hand over.

  dustbook start my-shop      a starter folder; edit my-shop/shop.toml
  dustbook inspect my-shop    what to mend, with file and line
  dustbook publish my-shop    the book in my-shop/book

verbs`

const closing = `
SHOP is a folder with a shop.toml in it, or a shop file. Left out, it is
./shop.toml; where there is none, the example that the program carries (never
for measure).

exit status  0 done, 1 a stop finding stands or the folder differs,
             2 wrong use or a file with errors, 3 the tool or the disk failed
more         dustbook help VERB`

// help prints help on the program, or on one verb.
func (p *program) help(args []string) error {
	switch {
	case len(args) > 1:
		return wrongUse{"help takes one verb", "write dustbook help VERB"}
	case len(args) == 0 || isHelp(args[0]) || args[0] == "help":
		p.lines(overview())
		return nil
	}
	v := findVerb(args[0])
	if v == nil {
		return unknownVerb(args[0])
	}
	p.lines(v.help())
	return nil
}

// lines prints a text of several lines.
func (p *program) lines(text string) {
	for line := range strings.SplitSeq(text, "\n") {
		p.print("%s", line)
	}
}

func overview() string {
	var b strings.Builder
	b.WriteString(purpose + "\n")
	for _, v := range verbs {
		fmt.Fprintf(&b, "  %-18s%s\n", v.name+" "+v.takes, v.does)
	}
	b.WriteString(closing)
	return b.String()
}

// help is the help on one verb.
func (v *verb) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "dustbook %s %s\n\n%s\n\nexample\n  %s\n\nflags, before or after %s\n", v.name, v.takes, v.about, v.tries, strings.Trim(v.takes, "[]"))
	var t columns
	for _, f := range append(slices.Clone(v.flags), flag{name: "help", does: "this text"}) {
		t.add(strings.TrimSpace("--"+f.name+" "+f.value), f.does)
	}
	b.WriteString(strings.Join(t.lines("  "), "\n") + "\n")
	b.WriteString("\nexit status\n  " + strings.Join(strings.Split(v.exits, ", "), "\n  "))
	return b.String()
}
