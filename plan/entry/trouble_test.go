package entry

import (
	"strings"
	"testing"
)

// refused is a text that cannot be read, and every problem of it without the
// name of the file, in order.
type refused struct {
	text string
	want []string
}

// TestEveryTroubleIsToldInPlainWords compares the whole list of problems, so
// that a problem too many is found as well as one too few.
func TestEveryTroubleIsToldInPlainWords(t *testing.T) {
	for name, cases := range map[string][]refused{
		"values": wrongValues, "texts": wrongTexts, "keys": wrongKeys, "headers": wrongHeaders,
		"brackets": wrongBrackets, "bytes": wrongBytes, "numbers": wrongNumbers,
	} {
		t.Run(name, func(t *testing.T) {
			for _, c := range cases {
				table, problems := Read("f", []byte(c.text))
				if table != nil {
					t.Errorf("%q: a table beside the problems", c.text)
				}
				got := strings.Split(problems.Error(), "\n")
				if want := "f:" + strings.Join(c.want, "\nf:"); strings.Join(got, "\n") != want {
					t.Errorf("%q:\ngot  %s\nwant %s", c.text, strings.Join(got, "\n     "), want)
				}
			}
		})
	}
}

// wrongKeys are about lines that give no name a value, and names given twice.
var wrongKeys = []refused{
	{`name: "Saw"`, []string{
		`1:1: read name: "Saw"; expected = between a name and its value; do: write name = "Saw"`,
	}},
	{"name : Saw", []string{
		`1:1: read name : Saw; expected = between a name and its value; do: write name = "Saw"`,
	}},
	{`name	"Saw"`, []string{
		`1:1: read name "Saw"; expected = between a name and its value; do: write name = "Saw"`,
	}},
	{`name "Saw"`, []string{
		`1:1: read name "Saw"; expected = between a name and its value; do: write name = "Saw"`,
	}},
	{"name Saw", []string{
		`1:1: read name Saw; expected = between a name and its value; do: write name = "Saw"`,
	}},
	{"name", []string{
		"1:1: read name and nothing after it; expected = and a value; do: write name = and the value, or take it away",
	}},
	{"name # a remark", []string{
		"1:1: read name and nothing after it; expected = and a value; do: write name = and the value, or take it away",
	}},
	{"= 5", []string{
		"1:1: read = 5; expected a name before the =; do: write the name of what is given",
	}},
	{"table saw = 5", []string{
		`1:1: read table saw; expected letters, digits, - and _ in a name, or quotes round it; do: write "table saw" = 5`,
	}},
	{"größe = 5", []string{
		`1:1: read größe; expected letters, digits, - and _ in a name, or quotes round it; do: write "größe" = 5`,
	}},
	{"“name” = 5", []string{
		`1:1: read “name”; expected letters, digits, - and _ in a name, or quotes round it; do: write "name" = 5`,
	}},
	{"a.b! = 5", []string{
		`1:1: read a.b!; expected letters, digits, - and _ in a name, or quotes round it; do: write "a.b!" = 5`,
	}},
	{".name = 5", []string{
		"1:1: read .name = 5; expected a name on each side of a point; do: write the name, or take the point away",
	}},
	{"name. = 5", []string{
		"1:1: read name. = 5; expected a name on each side of a point; do: write the name, or take the point away",
	}},
	{"a..b = 5", []string{
		"1:1: read a..b = 5; expected a name on each side of a point; do: write the name, or take the point away",
	}},
	{"// a remark", []string{
		"1:1: read // a remark; expected # before a remark; do: write # in front of it",
	}},
	{"; a remark", []string{
		"1:1: read ; a remark; expected # before a remark; do: write # in front of it",
	}},
	{"-- a remark", []string{
		"1:1: read -- a remark; expected # before a remark; do: write # in front of it",
	}},
	{"]", []string{
		"1:1: read ]; expected name = value, or a header in [ ]; do: take the bracket away, or look for the line where it should have been opened",
	}},
	{")", []string{
		"1:1: read ); expected name = value, or a header in [ ]; do: take the bracket away, or look for the line where it should have been opened",
	}},
	{`"Saw gate",`, []string{
		`1:1: read "Saw gate",; expected name = value, or a header in [ ]; do: look for the list it belongs to, or take it away`,
	}},
	{"@", []string{
		"1:1: read @; expected name = value, or a header in [ ]; do: write # in front if it is a remark",
	}},
	{`"name" 5`, []string{
		`1:1: read "name" 5; expected = between a name and its value; do: write "name" = 5`,
	}},
	{"a = 1\n\na = 2", []string{
		"3:1: read a again; expected each name once; it is given first at line 1, column 1; do: take one of the two away, or change its name",
	}},
	{"a = 1\n\"a\" = 2", []string{
		"2:1: read a again; expected each name once; it is given first at line 1, column 1; do: take one of the two away, or change its name",
	}},
	{"a.b = 1\na = 2", []string{
		"2:1: read a again; expected each name once; it is given first at line 1, column 1; do: take one of the two away, or change its name",
	}},
	{"a = 1\na.b = 2", []string{
		"2:3: read a name within a; expected a table that may still be added to; a is given in full at line 1, column 1; do: write it where a is given, or use another name",
	}},
	{"a = {}\na.b = 2", []string{
		"2:3: read a name within a; expected a table that may still be added to; a is given in full at line 1, column 1; do: write it where a is given, or use another name",
	}},
	{"m = { a = 1, a = 2 }", []string{
		"1:14: read a again; expected each name once; it is given first at line 1, column 7; do: take one of the two away, or change its name",
	}},
	{`m = { "Saw gate" }`, []string{
		`1:7: read "Saw gate" in braces; expected name = value in braces; do: write the name and = before the value, or use [ ] for a list`,
	}},
	{"m = { a, b }", []string{
		"1:7: read a in braces; expected name = value in braces; do: write the name and = before the value, or use [ ] for a list",
	}},
	{"m = { a = 1, b: 2 }", []string{
		"1:14: read b: 2 }; expected = between a name and its value; do: write b = 2",
	}},
	{"m = { [1] }", []string{
		"1:7: read [1] }; expected name = value in braces; do: write the name and = before the value, or use [ ] for a list",
	}},
	{"m = { größe = 1 }", []string{
		`1:7: read größe; expected letters, digits, - and _ in a name, or quotes round it; do: write "größe" = 1`,
	}},
}

// wrongHeaders are about headers that cannot be read, and names taken already.
var wrongHeaders = []refused{
	{"[[machine]", []string{
		"1:1: read [[machine]; expected the header [[machine]]; do: write the name between [[ and ]], alone on the line",
	}},
	{"[machine]]", []string{
		"1:10: read ]; expected the end of the line; do: write as many brackets behind the name as before it",
	}},
	{"[machine", []string{
		"1:1: read [machine; expected the header [machine]; do: write the name between [ and ], alone on the line",
	}},
	{"[[machine", []string{
		"1:1: read [[machine; expected the header [[machine]]; do: write the name between [[ and ]], alone on the line",
	}},
	{"[ [machine] ]", []string{
		"1:1: read [ [machine] ]; expected the header [machine]; do: write the name between [ and ], alone on the line",
	}},
	{"[[machine] ]", []string{
		"1:1: read [[machine] ]; expected the header [[machine]]; do: write the name between [[ and ]], alone on the line",
	}},
	{"[]", []string{
		"1:1: read []; expected a name in the brackets; do: write a name in them, or take the line away",
	}},
	{"[[]]", []string{
		"1:1: read [[]]; expected a name in the brackets; do: write a name in them, or take the line away",
	}},
	{"[table saw]", []string{
		`1:1: read [table saw]; expected letters, digits, - and _ in a name, or quotes round it; do: write ["table saw"]`,
	}},
	{"[[größe]]", []string{
		`1:1: read [[größe]]; expected letters, digits, - and _ in a name, or quotes round it; do: write [["größe"]]`,
	}},
	{"[a..b]", []string{
		"1:1: read [a..b]; expected a name on each side of a point; do: take the point away, or write the name",
	}},
	{"[a.]", []string{
		"1:1: read [a.]; expected a name on each side of a point; do: take the point away, or write the name",
	}},
	{"[name = 5]", []string{
		"1:1: read [name = 5]; expected a header such as [name] alone on the line; do: write the name between [ and ]",
	}},
	{"[1, 2]", []string{
		"1:1: read [1, 2]; expected a name and = before a list; do: write a name in front: name = [ … ]",
	}},
	{`[shop] name = "x"`, []string{
		`1:8: read name = "x"; expected the end of the line; do: put it on a line of its own`,
	}},
	{"[shop] a shop", []string{
		"1:8: read a shop; expected the end of the line; do: put it on a line of its own, or write # before a remark",
	}},
	{"[shop] // mine", []string{
		"1:8: read // mine; expected # before a remark; do: write # in front of it",
	}},
	{"[a[b]]", []string{
		"1:1: read [a[b]]; expected a header such as [name] alone on the line; do: write the name between [ and ]",
	}},
	{`["shop]`, []string{
		`1:2: read "shop]; expected a closing " on the same line; do: put a " where the text ends`,
	}},
	{"[shop]\n[shop]", []string{
		"2:2: read [shop]; expected each name once; it is given first at line 1, column 2; do: put the entries of both under one header; if there are several of them, write [[ ]] round the name in both places",
	}},
	{"[shop]\n[[shop]]", []string{
		"2:3: read [[shop]]; expected each name once; it is given first at line 1, column 2; do: write [[ ]] round the name there too, if there are several of them",
	}},
	{"[[shop]]\n[shop]", []string{
		"2:2: read [shop]; expected each name once; it is given first at line 1, column 3; do: write [[ ]] round the name as there, for one more of them",
	}},
	{"shop = 5\n[shop]", []string{
		"2:2: read [shop]; expected each name once; it is given first at line 1, column 1; do: use another name, or give all of shop in one place",
	}},
	{"shop = 5\n[[shop]]", []string{
		"2:3: read [[shop]]; expected each name once; it is given first at line 1, column 1; do: use another name, or give all of shop in one place",
	}},
	{"shop = 5\n[shop.air]", []string{
		"2:7: read [shop.air]; expected a table that may still be added to; shop is given in full at line 1, column 1; do: write it where shop is given, or use another name",
	}},
	{"shop = [{}]\n[[shop]]", []string{
		"2:3: read [[shop]]; expected each name once; it is given first at line 1, column 1; do: use another name, or give all of shop in one place",
	}},
	{"[shop.air]\n[[shop]]", []string{
		"2:3: read [[shop]]; expected each name once; it is given first at line 1, column 2; do: give shop before what stands within it",
	}},
	{"[a]\nb.c = 1\n[a.b]", []string{
		"3:4: read [a.b]; expected each name once; it is given first at line 2, column 1; do: use another name, or give all of b in one place",
	}},
	{"[a.b.c]\n[a]\nb.d = 1", []string{
		"3:3: read a name within b; expected a table that may still be added to; b is given in full at line 1, column 4; do: write it where b is given, or use another name",
	}},
}

// wrongBrackets are about lists and braces.
var wrongBrackets = []refused{
	{"a = [1 2]", []string{
		"1:6: read 1 2; expected a comma between two values; do: put commas between them: 1, 2",
	}},
	{"a = [true false]", []string{
		"1:6: read true false; expected a comma between two values; do: put commas between them: true, false",
	}},
	{"a = [1; 2]", []string{
		"1:6: read 1; 2; expected a comma between two values; do: put commas between them: 1, 2",
	}},
	{`a = ["x" "y"]`, []string{
		`1:10: read "y"]; expected a comma, or ]; do: put a comma between the values`,
	}},
	{"a = [\n\"x\"\n\"y\"\n]", []string{
		`3:1: read "y"; expected a comma, or ]; do: put a comma between the values`,
	}},
	{"a = [[0,0] [1,1]]", []string{
		"1:12: read [1,1]]; expected a comma, or ]; do: put a comma between the values",
	}},
	{"a = [1,,2]", []string{
		"1:8: read a comma with no value before it; expected a value; do: take the comma away",
	}},
	{"a = [,1]", []string{
		"1:6: read a comma with no value before it; expected a value; do: take the comma away",
	}},
	{"a = [1}", []string{
		"1:7: read }; expected ] to close the [ of line 1; do: write ]",
	}},
	{"a = [1, {b = 2]]", []string{
		"1:15: read ]; expected } to close the { of line 1; do: write }",
	}},
	{"a = { b = 1 ]", []string{
		"1:13: read ]; expected } to close the { of line 1; do: write }",
	}},
	{"a = { b = 1 c = 2 }", []string{
		"1:13: read c = 2 }; expected a comma, or }; do: put a comma between the values",
	}},
	{`a = { b = "1" c = 2 }`, []string{
		"1:15: read c = 2 }; expected a comma, or }; do: put a comma between the values",
	}},
	{"a = {\n b = 1\n c = 2\n}", []string{
		"3:2: read c = 2; expected a comma, or }; do: put a comma between the values",
	}},
	{"a = { b = 1,, c = 2 }", []string{
		"1:13: read a comma with no value before it; expected a value; do: take the comma away",
	}},
	{`a = [ device = "x", cable = "y" ]`, []string{
		"1:7: read device = in a list; expected a value, or { name = value }; do: put braces round what belongs together: [ { … } ]",
	}},
	{`a = [ "device" = "x" ]`, []string{
		"1:16: read = in a list; expected a value, or { name = value }; do: put braces round what belongs together: [ { … } ]",
	}},
	{"a = [Saw gate, East gate]", []string{
		`1:6: read Saw gate; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: "Saw gate"`,
		`1:16: read East gate; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: "East gate"`,
	}},
	{"a = [{ b = 1 }; { b = 2 }]", []string{
		"1:15: read ;; expected a comma between two values; do: write a comma",
	}},
	{"a = [1, 2\nb = 3", []string{
		"1:5: read [1, 2; expected ] to close the [; do: put ] after the last value",
	}},
	{"a = [1, 2,\nb = 3", []string{
		"1:5: read [1, 2,; expected ] to close the [; do: put ] after the last value",
	}},
	{"a = [[0,0],[1,1]\n[[machine]]\nname = x", []string{
		"1:5: read [[0,0],[1,1]; expected ] to close the [; do: put ] after the last value",
		`3:8: read x; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: name = "x"`,
	}},
	{"a = [[0,0],[1,1],\n[machine.air]\nname = x", []string{
		"1:5: read [[0,0],[1,1],; expected ] to close the [; do: put ] after the last value",
		`3:8: read x; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: name = "x"`,
	}},
	{"a = { b = 1\nc = 2", []string{
		"1:5: read { b = 1; expected } to close the {; do: put } after the last value",
	}},
	{"a = { b = 1,\n[[machine]]\nname = x", []string{
		"1:5: read { b = 1,; expected } to close the {; do: put } after the last value",
		`3:8: read x; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: name = "x"`,
	}},
	{"a = {\nb = 1\nc = 2\n}", []string{
		"3:1: read c = 2; expected a comma, or }; do: put a comma between the values",
	}},
	{"a = [\n  { b: 1,\n    c = 2 },\n]\nd = y", []string{
		"2:5: read b: 1,; expected = between a name and its value; do: write b = 1",
		`5:5: read y; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: d = "y"`,
	}},
	{"a = [x,\ny\nb = 3", []string{
		"1:5: read [x,; expected ] to close the [; do: put ] after the last value",
		`1:6: read x; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: "x"`,
		`2:1: read y; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: "y"`,
	}},
	{"a = [1, 2", []string{
		"1:5: read [1, 2; expected ] to close the [; do: put ] after the last value",
	}},
	{"a = { b = [1", []string{
		"1:11: read [1; expected ] to close the [; do: put ] after the last value",
	}},
	{"a = [", []string{
		"1:5: read [; expected ] to close the [; do: put ] after the last value",
	}},
	{"a = {", []string{
		"1:5: read {; expected } to close the {; do: put } after the last value",
	}},
	{"a = [\n  1 x,\n  2\n]\nb = y", []string{
		`2:3: read 1 x; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: "1 x"`,
		`5:5: read y; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: b = "y"`,
	}},
	{"a = [\n  [\"x\" y],\n  \"z\",\n]\nb = y", []string{
		"2:8: read y],; expected a comma, or ]; do: put a comma between the values",
		`5:5: read y; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: b = "y"`,
	}},
}
