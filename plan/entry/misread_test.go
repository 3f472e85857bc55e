package entry

// wrongValues are about a value outside quotes that is none.
var wrongValues = []refused{
	{"size = 4 in", []string{
		`1:8: read 4 in; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: size = "4 in"`,
	}},
	{"kind = table saw", []string{
		`1:8: read table saw; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: kind = "table saw"`,
	}},
	{"at = 1/2", []string{
		`1:6: read 1/2; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: at = "1/2"`,
	}},
	{`size = 4"`, []string{
		`1:8: read 4"; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: size = '4"'`,
	}},
	{"share = 50%", []string{
		`1:9: read 50%; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: share = "50%"`,
	}},
	{`name = Saw"`, []string{
		`1:8: read Saw"; expected a quote at each end of a text; do: write name = "Saw"`,
	}},
	{`name = the "big" one`, []string{
		`1:8: read the "big" one; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: name = 'the "big" one'`,
	}},
	{`name = a"b'c\d`, []string{
		`1:8: read a"b'c\d; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: name = "a\"b'c\\d"`,
	}},
	{"held = yes", []string{
		"1:8: read yes; expected true or false in small letters; do: write held = true",
	}},
	{"held = Off", []string{
		"1:8: read Off; expected true or false in small letters; do: write held = false",
	}},
	{"held = TRUE", []string{
		"1:8: read TRUE; expected true or false in small letters; do: write held = true",
	}},
	{"held = False", []string{
		"1:8: read False; expected true or false in small letters; do: write held = false",
	}},
	{"note = null", []string{
		`1:8: read null; expected a value; do: take the line away if there is nothing to say, or put the word in quotes: note = "null"`,
	}},
	{"name = “Table saw”", []string{
		`1:8: read “Table saw”; expected straight quotes " "; do: write name = "Table saw"`,
	}},
	{"name = ‘Table saw’ # a remark", []string{
		`1:8: read ‘Table saw’; expected straight quotes " "; do: write name = "Table saw"`,
	}},
	{"opens = [“Saw, gate”, “East”]", []string{
		`1:10: read “Saw, gate”; expected straight quotes " "; do: write "Saw, gate"`,
		`1:23: read “East”; expected straight quotes " "; do: write "East"`,
	}},
	{`name = “Saw"`, []string{
		`1:8: read “Saw"; expected straight quotes " "; do: write name = "Saw"`,
	}},
	{`name = "Saw”`, []string{
		`1:8: read "Saw”; expected a closing " on the same line; do: put a " where the text ends; the curled quotes of print do not count`,
	}},
	{"name = “Saw", []string{
		`1:8: read “Saw; expected straight quotes " "; do: write name = "Saw"`,
	}},
	{"n = 1,200", []string{
		"1:5: read 1,200; expected a number without commas or spaces; do: write n = 1200",
	}},
	{"n = 1 200.5", []string{
		"1:5: read 1 200.5; expected a number without commas or spaces; do: write n = 1200.5",
	}},
	{"n = 1,5", []string{
		"1:5: read 1,5; expected a decimal point; do: write n = 1.5",
	}},
	{"n = .5", []string{
		"1:5: read .5; expected a digit before the point; do: write n = 0.5",
	}},
	{"n = -.5", []string{
		"1:5: read -.5; expected a digit before the point; do: write n = -0.5",
	}},
	{"n = 5.", []string{
		"1:5: read 5.; expected a digit after the point; do: write n = 5.0",
	}},
	{"n = 007", []string{
		"1:5: read 007; expected a number without zeros in front; do: write n = 7",
	}},
	{"n = -00.5", []string{
		"1:5: read -00.5; expected a number without zeros in front; do: write n = -0.5",
	}},
	{"n = 1__0", []string{
		"1:5: read 1__0; expected a number such as 1200 or 0.5; do: write the digits with at most one point, and nothing between them",
	}},
	{"n = 1.2.3.4", []string{
		"1:5: read 1.2.3.4; expected a number such as 1200 or 0.5; do: write the digits with at most one point, and nothing between them",
	}},
	{"n = 0x", []string{
		`1:5: read 0x; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: n = "0x"`,
	}},
	{"n = 99999999999999999999", []string{
		"1:5: read 99999999999999999999; expected a number of a size that can be used; do: check the digits",
	}},
	{"n = 1e999", []string{
		"1:5: read 1e999; expected a number of a size that can be used; do: check the digits",
	}},
	{"date = 11/24/2026", []string{
		"1:8: read 11/24/2026; expected a date as year, month and day with two digits each: 2026-11-24; do: write the date in that way",
	}},
	{"date = 2026-1-5", []string{
		"1:8: read 2026-1-5; expected a date as year, month and day with two digits each: 2026-11-24; do: write the date in that way",
	}},
	{"date = 2026-13-01", []string{
		"1:8: read 2026-13-01; expected a date or time that exists, such as 2026-11-24; do: check the month, the day and the time",
	}},
	{"date = 24.11.2026", []string{
		"1:8: read 24.11.2026; expected a date as year, month and day with two digits each: 2026-11-24; do: write the date in that way",
	}},
	{"time = 25:00", []string{
		"1:8: read 25:00; expected a date or time that exists, such as 2026-11-24; do: check the month, the day and the time",
	}},
	{"n = == 4", []string{
		"1:5: read == 4; expected one = and then the value; do: take the second sign away",
	}},
	{"n => 4", []string{
		"1:4: read > 4; expected one = and then the value; do: take the second sign away",
	}},
	{"n := 4", []string{
		"1:1: read n := 4; expected = between a name and its value; do: write n = 4",
	}},
	{"n = (0, 0)", []string{
		"1:5: read (0, 0); expected square brackets round a list; do: write [ ] in place of ( )",
	}},
	{"n = 5 // five", []string{
		"1:5: read 5 // five; expected # before a remark; do: write n = 5 # five",
	}},
	{"n = 5 ; five", []string{
		"1:5: read 5 ; five; expected # before a remark; do: write n = 5 # five",
	}},
	{"n = 5,", []string{
		"1:5: read 5,; expected the end of the line after the value; do: write n = 5",
	}},
	{"n = 5 m = 6", []string{
		"1:7: read m = 6; expected the end of the line; do: put it on a line of its own",
	}},
	{"n = m = 6", []string{
		`1:5: read m = 6; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: n = "m = 6"`,
	}},
	{"n =", []string{
		"1:4: read nothing after n =; expected a value; do: write a value after the =, or take the line away",
	}},
	{"m = { n = }", []string{
		"1:11: read nothing after n =; expected a value; do: write a value after the =, or take the line away",
	}},
	{"m = { n = , k = 1 }", []string{
		"1:11: read nothing after n =; expected a value; do: write a value after the =, or take the line away",
	}},
	{"n =\u00a05", []string{
		`1:4: read \u00a05; expected ordinary spaces; do: take away the character shown as a code, or type a space for it`,
	}},
	{"\u00a0n = 5\nair\u2009flow = 5\nn\u3000= 6\nm\u00a06\ntable saw\u00a0= 7", []string{
		`1:1: read \u00a0n = 5; expected ordinary spaces; do: take away the character shown as a code, or type a space for it`,
		`2:4: read air\u2009flow = 5; expected ordinary spaces; do: take away the character shown as a code, or type a space for it`,
		`3:2: read n\u3000= 6; expected ordinary spaces; do: take away the character shown as a code, or type a space for it`,
		`4:2: read m\u00a06; expected ordinary spaces; do: take away the character shown as a code, or type a space for it`,
		`5:10: read table saw\u00a0; expected ordinary spaces; do: take away the character shown as a code, or type a space for it`,
	}},
	{"name = `Saw`", []string{
		"1:8: read `Saw`; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: name = \"`Saw`\"",
	}},
}

// wrongTexts are about quotes that do not close, and what stands behind them.
var wrongTexts = []refused{
	{"name = \"Saw\nsize = 5 in", []string{
		`1:8: read "Saw; expected a closing " on the same line; do: put a " where the text ends`,
		`2:8: read 5 in; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: size = "5 in"`,
	}},
	{"name = 'Saw", []string{
		"1:8: read 'Saw; expected a closing ' on the same line; do: put a ' where the text ends",
	}},
	{`"name = 5`, []string{
		`1:1: read "name = 5; expected a closing " on the same line; do: put a " where the text ends`,
	}},
	{"note = \"\"\"\none\ntwo\n", []string{
		`1:8: read """ and no other """ after it; expected """ where the text ends; do: put """ after the last line of the text`,
	}},
	{"note = '''one", []string{
		"1:8: read ''' and no other ''' after it; expected ''' where the text ends; do: put ''' after the last line of the text",
	}},
	{`path = "C:\shop\book"`, []string{
		`1:11: read \s in a text in double quotes; expected \\ for a backslash, \" for a quote, \n for a new line; do: write \\, or put the text in single quotes, where a backslash is only itself`,
	}},
	{`path = "a\u12G4"`, []string{
		`1:10: read \u in a text in double quotes; expected 4 hexadecimal digits of a character after \u; do: write \\, or put the text in single quotes, where a backslash is only itself`,
	}},
	{`path = "\uD800"`, []string{
		`1:9: read \u in a text in double quotes; expected 4 hexadecimal digits of a character after \u; do: write \\, or put the text in single quotes, where a backslash is only itself`,
	}},
	{"note = \"\"\"\na \\q\n\"\"\"", []string{
		`2:3: read \q in a text in double quotes; expected \\ for a backslash, \" for a quote, \n for a new line; do: write \\, or put the text in single quotes, where a backslash is only itself`,
	}},
	{`name = "Saw\`, []string{
		`1:8: read "Saw\; expected a closing " on the same line; do: put a " where the text ends`,
	}},
	{`size = "4""`, []string{
		`1:10: read ""; expected nothing more on the line after the closing quote; do: write \" for a quote within the text, or put the whole text in single quotes`,
	}},
	{`note = "the "best" saw"`, []string{
		`1:13: read "best" saw"; expected nothing more on the line after the closing quote; do: write \" for a quote within the text, or put the whole text in single quotes`,
	}},
	{"note = 'it's'", []string{
		"1:11: read 's'; expected nothing more on the line after the closing quote; do: put the whole text in double quotes, so that it may hold a single one",
	}},
	{`note = """a""""""`, []string{
		"1:12: read a row of six quotes or more; expected three quotes where the text ends; do: take the others away",
	}},
	{`name = "Saw" x`, []string{
		"1:14: read x; expected the end of the line; do: put the whole value in one pair of quotes, or write # before a remark",
	}},
	{`name = "Saw",`, []string{
		"1:13: read ,; expected the end of the line; do: take it away: entries of a table need no comma",
	}},
	{`name = "Saw";`, []string{
		"1:13: read ;; expected the end of the line; do: take it away: entries of a table need no comma",
	}},
	{`name = "Saw" // mine`, []string{
		"1:14: read // mine; expected # before a remark; do: write # in front of it",
	}},
	{`name = "Saw" size = 4`, []string{
		"1:14: read size = 4; expected the end of the line; do: put it on a line of its own",
	}},
	{`name = "Saw"]`, []string{
		"1:13: read ]; expected the end of the line; do: take the bracket away, or open one before the value",
	}},
	{`name = "Saw" [shop]`, []string{
		"1:14: read [shop]; expected the end of the line; do: put it on a line of its own",
	}},
	{`a = ["4"", "5""]`, []string{
		`1:8: read "", "5""]; expected nothing more on the line after the closing quote; do: write \" for a quote within the text, or put the whole text in single quotes`,
	}},
}

// wrongBytes are about bytes that are no text.
var wrongBytes = []refused{
	{"a = 1\nb = \"\xff\"", []string{
		"2:6: read the byte 0xFF, which is not UTF-8; expected text saved as UTF-8; do: save the file again with the encoding UTF-8",
	}},
	{"\xff\xfea\x00", []string{
		"1:1: read text saved as UTF-16; expected text saved as UTF-8; do: save the file again with the encoding UTF-8",
	}},
	{"\xfe\xff\x00a", []string{
		"1:1: read text saved as UTF-16; expected text saved as UTF-8; do: save the file again with the encoding UTF-8",
	}},
	{"a = 1\x00\nb = \a", []string{
		"1:6: read the control character 0x00; expected text without control characters; do: take the character away, or save the file as UTF-8 if it was saved as UTF-16",
		"2:5: read the control character 0x07; expected text without control characters; do: take the character away",
	}},
	{"a = 1\rb = 2", []string{
		"1:6: read a carriage return without a line feed; expected text without control characters; do: save the file with ordinary line endings",
	}},
	{"# \x7f", []string{
		"1:3: read the control character 0x7F; expected text without control characters; do: take the character away",
	}},
	{"\ufeffa = x", []string{
		`1:5: read x; expected text in quotes, a plain number, true, false or a date; do: put it in quotes: a = "x"`,
	}},
	{"\ufeff\ufeffa = 1", []string{
		`1:1: read \ufeffa = 1; expected ordinary spaces; do: take away the character shown as a code, or type a space for it`,
	}},
	{"é = 1\n\xc3(", []string{
		"2:1: read the byte 0xC3, which is not UTF-8; expected text saved as UTF-8; do: save the file again with the encoding UTF-8",
	}},
}

// wrongNumbers are about numbers that are none.
var wrongNumbers = []refused{
	{"a = nan\nb = [1, -inf]\nc = { d = +inf }", []string{
		"1:5: read nan; expected a finite number; do: write the number, or take the line away",
		"2:9: read -inf; expected a finite number; do: write the number, or take the line away",
		"3:11: read +inf; expected a finite number; do: write the number, or take the line away",
	}},
}
