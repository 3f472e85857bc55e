package main

import (
	"strings"
	"time"

	"dustbook/plan/entry"
)

// flag is one flag of a verb.
type flag struct {
	name  string // without its dashes
	value string // what its value is called; empty where it takes none
	does  string
	many  bool // it may be given several times
}

// call is a verb with the arguments it was given.
type call struct {
	verb  *verb
	shop  string // SHOP or DIR; empty where none was given
	flags map[string]string
	many  map[string][]string // the values of flags that may be given several times
}

func (c *call) has(flag string) bool { _, given := c.flags[flag]; return given }

// isHelp reports whether an argument asks for help.
func isHelp(arg string) bool { return arg == "--help" || arg == "-h" }

// readCall reads the arguments behind a verb. Flags stand before or after
// SHOP; behind "--" everything is SHOP.
func readCall(v *verb, args []string) (*call, error) {
	c := &call{verb: v, flags: map[string]string{}, many: map[string][]string{}}
	var plain []string
	for i := 0; i < len(args); i++ {
		arg := args[i]
		switch {
		case arg == "--":
			plain = append(plain, args[i+1:]...)
			i = len(args)
		case isHelp(arg):
			c.flags["help"] = ""
		case strings.HasPrefix(arg, "-") && arg != "-":
			used, err := c.readFlag(arg, args[i+1:])
			if err != nil {
				return nil, err
			}
			i += used
		default:
			plain = append(plain, arg)
		}
	}
	if c.has("help") {
		return c, nil
	}
	return c, c.takePlain(plain)
}

// readFlag reads one flag and says how many arguments behind it are its
// value.
func (c *call) readFlag(arg string, rest []string) (used int, err error) {
	name, value, joined := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	f := c.verb.flag(name)
	dashes := len(arg) - len(strings.TrimLeft(arg, "-"))
	switch {
	case f == nil || dashes != 2:
		return 0, c.verb.unknownFlag(arg)
	case f.value == "" && joined:
		return 0, wrongUse{"--" + name + " takes no value", "write --" + name + " alone"}
	case f.value != "" && !joined:
		if len(rest) == 0 || strings.HasPrefix(rest[0], "--") {
			return 0, wrongUse{"--" + name + " lacks its " + f.value, "write --" + name + " " + f.value}
		}
		value, used = rest[0], 1
	}
	if c.has(name) && !f.many {
		return 0, wrongUse{"--" + name + " is given twice", "leave one out"}
	}
	if f.value != "" && value == "" {
		return 0, wrongUse{"--" + name + " lacks its " + f.value, "write --" + name + " " + f.value}
	}
	c.flags[name] = value
	if f.many {
		c.many[name] = append(c.many[name], value)
	}
	return used, nil
}

// takePlain takes what is no flag: SHOP or DIR.
func (c *call) takePlain(plain []string) error {
	v := c.verb
	word := strings.Trim(v.takes, "[]")
	switch {
	case len(plain) > 1:
		return wrongUse{v.name + " takes one " + word + " and was given " + entry.Quote(plain[0]) + " and " + entry.Quote(plain[1]), "give one, or put a name with spaces in quotes"}
	case len(plain) == 1 && plain[0] == "":
		return wrongUse{v.name + " was given an empty name", "name the " + word + ", or leave it out"}
	case len(plain) == 0 && !strings.HasPrefix(v.takes, "["):
		return wrongUse{v.name + " lacks its " + word, "write dustbook " + v.name + " " + word}
	case len(plain) == 1:
		c.shop = plain[0]
	}
	return nil
}

// asOf reads --as-of, or stands in for it.
func (c *call) asOf(otherwise entry.Date) (entry.Date, error) {
	text, given := c.flags["as-of"]
	if !given {
		return otherwise, nil
	}
	day, ok := readDay(text)
	if !ok {
		return entry.Date{}, wrongUse{"--as-of was given " + entry.Quote(text), "write a day that exists as year, month and day: --as-of 2026-11-24"}
	}
	return day, nil
}

// readDay reads a day that exists.
func readDay(text string) (entry.Date, bool) {
	t, err := time.Parse("2006-01-02", text)
	if err != nil || t.Year() < 1 {
		return entry.Date{}, false
	}
	return dateOf(t), true
}

func dateOf(t time.Time) entry.Date {
	return entry.Date{Year: t.Year(), Month: int(t.Month()), Day: t.Day()}
}
