package entry

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// listed writes every node of a table with the places of its key and value, one
// a line, in the order of the file.
func listed(table *Table) string {
	var lines []string
	var visit func(n *Node)
	visit = func(n *Node) {
		lines = append(lines, fmt.Sprintf("%s %d:%d %d:%d", n.Path, n.Key.Line, n.Key.Column, n.At.Line, n.At.Column))
		switch v := n.Value.(type) {
		case *Table:
			for _, inner := range v.Nodes {
				visit(inner)
			}
		case []*Node:
			for _, item := range v {
				visit(item)
			}
		}
	}
	for _, n := range table.Nodes {
		visit(n)
	}
	return strings.Join(lines, "\n")
}

// TestPlaces compares every key and value of a text with the line and column
// counted by hand: first the key's, then the value's.
func TestPlaces(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"keys and a table", "units = \"us\"\n\n[shop]\n  name = \"Q\"\nemployees=2\n", `
units 1:1 1:9
shop 3:2 3:1
shop.name 4:3 4:10
shop.employees 5:1 5:11`},
		{"several elements of arrays of tables", "[[machine]]\nname = \"a\"\n[[machine]]\nname = \"b\"\nkind = \"saw\"\n[[duct]]\nname = \"c\"\n[[machine]]\nname = \"d\"\n", `
machine 1:3 1:1
machine[0] 1:3 1:1
machine[0].name 2:1 2:8
machine[1] 3:3 3:1
machine[1].name 4:1 4:8
machine[1].kind 5:1 5:8
machine[2] 8:3 8:1
machine[2].name 9:1 9:8
duct 6:3 6:1
duct[0] 6:3 6:1
duct[0].name 7:1 7:8`},
		{"arrays of tables within elements", "[[machine]]\n[[machine.port]]\nflow = 1\n[[machine.port]]\nflow = 2\n[[machine]]\n [[ machine . port ]]\n flow = 3\n[machine.motor]\npower = 4\n", `
machine 1:3 1:1
machine[0] 1:3 1:1
machine[0].port 2:11 2:1
machine[0].port[0] 2:11 2:1
machine[0].port[0].flow 3:1 3:8
machine[0].port[1] 4:11 4:1
machine[0].port[1].flow 5:1 5:8
machine[1] 6:3 6:1
machine[1].port 7:15 7:2
machine[1].port[0] 7:15 7:2
machine[1].port[0].flow 8:2 8:9
machine[1].motor 9:10 9:1
machine[1].motor.power 10:1 10:9`},
		{"braces", "stops = [ { device = \"E\", cable = { a.b = 1 } }, {} ]\nmotor = { power = 3,\n  volts = 230, # late\n}\n", `
stops 1:1 1:9
stops[0] 1:11 1:11
stops[0].device 1:13 1:22
stops[0].cable 1:27 1:35
stops[0].cable.a 1:37 1:37
stops[0].cable.a.b 1:39 1:43
stops[1] 1:50 1:50
motor 2:1 2:9
motor.power 2:11 2:19
motor.volts 3:3 3:11`},
		{"arrays of arrays", "outline = [[0,0],\n  [40, -2.5],\n\n  # [9,9]\n  []]\n", `
outline 1:1 1:11
outline[0] 1:12 1:12
outline[0][0] 1:13 1:13
outline[0][1] 1:15 1:15
outline[1] 2:3 2:3
outline[1][0] 2:4 2:4
outline[1][1] 2:8 2:8
outline[2] 5:3 5:3`},
		{"texts over lines", "a = \"\"\"\nx = 1\n[b]\n\"\" # \"\"\"\nc = '''\n' ''' # '''\nd = [\"\"\"\n\"\"\"\"\", 1]\n", `
a 1:1 1:5
c 5:1 5:5
d 7:1 7:5
d[0] 7:6 7:6
d[1] 8:8 8:8`},
		{"carriage returns", "a = 1\r\n[b]\r\nc = [\r\n2,\r\n 3]\r\n", `
a 1:1 1:5
b 2:2 2:1
b.c 3:1 3:5
b.c[0] 4:1 4:1
b.c[1] 5:2 5:2`},
		{"a byte order mark", "\ufeffa = 1\nb = 2", `
a 1:1 1:5
b 2:1 2:5`},
		{"characters of several bytes before a key", "a = { \"größe\" = \"日本\", b = \"😀é\", c = 1 } # ü\nd = ['ß', 2]", `
a 1:1 1:5
a."größe" 1:7 1:17
a.b 1:23 1:27
a.c 1:33 1:37
d 2:1 2:5
d[0] 2:6 2:6
d[1] 2:11 2:11`},
		{"quoted keys with points", "editions = { \"NFPA 664.1\" = \"2012\", 'a.b'.c = 1 }\n[\"x.y\".\"z]\" ]\n\"\\\"\\u00e9\" = 2\n\"\" = 3\n", `
editions 1:1 1:12
editions."NFPA 664.1" 1:14 1:29
editions."a.b" 1:37 1:37
editions."a.b".c 1:43 1:47
"x.y" 2:2 2:2
"x.y"."z]" 2:8 2:1
"x.y"."z]"."\"é" 3:1 3:14
"x.y"."z]"."" 4:1 4:6`},
		{"dotted keys", "air.density = 1\nair . viscosity=2\n[a]\nb.c.d = 3\nb.e = 4\n[a.f.g]\n[a.f]\nh = 5\n", `
air 1:1 1:1
air.density 1:5 1:15
air.viscosity 2:7 2:17
a 3:2 3:1
a.b 4:1 4:1
a.b.c 4:3 4:3
a.b.c.d 4:5 4:9
a.b.e 5:3 5:7
a.f 7:4 7:1
a.f.g 6:6 6:1
a.f.h 8:1 8:5`},
		{"remarks with brackets and quotes", "# [[no]] \"\"\"\na = [ # ] ' }\n  1, # \"\n] # [x]\n[b] # ''' {\nc = {} # }", `
a 2:1 2:5
a[0] 3:3 3:3
b 5:2 5:1
b.c 6:1 6:5`},
		{"dates with a space, and signs", "a = [1979-05-27 07:32:00, +1,  07:32]\n", `
a 1:1 1:5
a[0] 1:6 1:6
a[1] 1:27 1:27
a[2] 1:32 1:32`},
	} {
		t.Run(c.name, func(t *testing.T) {
			table, problems := Read("f", []byte(c.text))
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			if got := listed(table); got != strings.TrimPrefix(c.want, "\n") {
				t.Errorf("got\n%s\nwant%s", got, c.want)
			}
		})
	}
}

// TestPlacesAreDroppedWhereTheDecoderDisagrees hands join another list of keys,
// and values of another shape, than the outline has.
func TestPlacesAreDroppedWhereTheDecoderDisagrees(t *testing.T) {
	const body = "b = \"x\"\na = [{ d = 1, c = 2026-11-24 }]\n[[e]]\nf = true\n"
	want := "b 0:0 0:0\na 0:0 0:0\na[0] 0:0 0:0\na[0].d 0:0 0:0\na[0].c 0:0 0:0\ne 0:0 0:0\ne[0] 0:0 0:0\ne[0].f 0:0 0:0"
	whole := newText("f", body)
	values, keys, problems := decode(whole, len(body))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if got := listed(join(scan(whole), values, keys)); !strings.HasPrefix(got, "b 1:1 1:5\n") {
		t.Errorf("places lost without a reason:\n%s", got)
	}
	swapped := slices.Clone(keys)
	swapped[0], swapped[1] = swapped[1], swapped[0]
	if got := listed(join(scan(whole), values, swapped)); !strings.HasPrefix(got, "a 0:0 0:0\n") || !strings.Contains(got, "b 0:0 0:0") {
		t.Errorf("keys in another order: got\n%s", got)
	}
	fewer := newText("f", strings.Replace(body, "d = 1, ", "", 1))
	if got := listed(join(scan(fewer), values, keys)); got != want {
		t.Errorf("other keys: got\n%s\nwant\n%s", got, want)
	}
	longer := newText("f", strings.Replace(body, "}]", "}, 5]", 1))
	table := join(scan(longer), values, keys)
	if got := listed(table); got != want {
		t.Errorf("other shape: got\n%s\nwant\n%s", got, want)
	}
	first := table.Get("a").Value.([]*Node)[0].Value.(*Table)
	if got := first.Get("c").Value; got != (Date{2026, 11, 24}) {
		t.Errorf("value without a place: %v", got)
	}
	if got := table.Get("b").Source + " " + first.Get("c").Source; got != `"x" 2026-11-24` {
		t.Errorf("source without a place: %s", got)
	}
}
