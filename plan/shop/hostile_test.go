package shop

import (
	"fmt"
	"strings"
	"testing"

	"dustbook/plan/entry"
)

// hostile are files of about a mebibyte that ask for much work. Each is read
// or refused in a time that grows with its length: what took the square of it
// would not end before the tests are stopped.
var hostile = map[string]func(i int) string{
	"empty ducts":          func(int) string { return "[[duct]]\n" },
	"empty tables in line": func(int) string { return "[[machine.port]]\n" },
	"ducts into one": func(i int) string {
		return fmt.Sprintf("[[duct]]\nname=\"d%d\"\nto=\"d0\"\nsize=\"4 in\"\nlength=\"9 ft\"\njoins=\"%d mm\"\n", i, i%2743)
	},
	"routes into one": func(i int) string {
		if i == 0 {
			return "[[duct]]\nname=\"d0\"\nto=\"Fan\"\nsize=\"4 in\"\nroute=[" + strings.Repeat("[0,0,9],[1,0,9],", 99) + "[0,0,9],[0,0,0]]\n"
		}
		return fmt.Sprintf("[[duct]]\nname=\"d%d\"\nto=\"d0\"\nsize=\"4 in\"\nroute=[[0,%d,9],[%v,0,9]]\n", i, 1+i%9, float64(i%1000)/1000)
	},
	"a chain of ducts": func(i int) string {
		return fmt.Sprintf("[[duct]]\nname=\"d%d\"\nto=\"d%d\"\nsize=\"4 in\"\nlength=\"1 ft\"\n", i, i+1)
	},
	"a chain of ducts, end to end": func(i int) string {
		return fmt.Sprintf("[[duct]]\nname=\"d%d\"\nto=\"%s\"\nsize=\"4 in\"\nlength=\"1 ft\"\njoins=\"1 ft\"\n", i+1, map[bool]string{true: "d0", false: fmt.Sprintf("d%d", i)}[i == 0])
	},
	"a great loop": func(i int) string {
		return fmt.Sprintf("[[duct]]\nname=\"d%d\"\nto=\"d%d\"\nsize=\"4 in\"\nlength=\"1 ft\"\n", i, (i+1)%5000)
	},
	"gates on nothing": func(i int) string { return fmt.Sprintf("[[gate]]\nname=\"gate %d\"\non=\"duct %d\"\n", i, i) },
	"gates on one": func(i int) string {
		return fmt.Sprintf("[[gate]]\nname=\"g%d\"\non=\"d0\"\nat=\"%d mm\"\n", i, i%2743)
	},
	"leaks on one": func(i int) string { return fmt.Sprintf("[[leak]]\non=\"d0\"\nhole=\"1 in\"\nat=\"%d mm\"\n", i%2743) },
	"rooms and machines": func(i int) string {
		return fmt.Sprintf("[[room]]\nname=\"r%d\"\noutline=[[%d,9],[%d,9],[%d,5]]\n[[machine]]\nname=\"m%d\"\nkind=\"planer\"\nat=[1,1]\n", i, i%999, i%999+2, i%999+1, i)
	},
	"triggers of unknown gates": func(i int) string {
		return fmt.Sprintf("[[trigger]]\nname=\"t%d\"\nsenses=\"contact\"\nopens=[\"g%d\",\"g%d\"]\n", i, i, i+1)
	},
	"chains of triggers": func(i int) string {
		return fmt.Sprintf("[[trigger]]\nname=\"t%d\"\nsenses=\"contact\"\nopens=[]\n[[chain]]\nname=\"c%d\"\ncable=\"18 AWG\"\nstops=[{device=\"t%d\",cable=\"1 ft\"},{device=\"t0\",cable=\"1 ft\"}]\n", i, i, i)
	},
	"unknown keys":     func(i int) string { return fmt.Sprintf("[[duct]]\nkey%d=1\n", i) },
	"unknown tables":   func(i int) string { return fmt.Sprintf("[table%d]\n", i) },
	"unknown words":    func(i int) string { return fmt.Sprintf("[[machine]]\nname=\"m%d\"\nkind=\"kind%d\"\n", i, i) },
	"one name":         func(i int) string { return "[[room]]\nname=\"one\"\noutline=[[0,0],[9,0],[9,9]]\n" },
	"serves one port":  func(i int) string { return fmt.Sprintf("[[duct]]\nname=\"d%d\"\nserves=[\"M/hood\"]\n", i+1) },
	"serves no port":   func(i int) string { return fmt.Sprintf("[[duct]]\nname=\"d%d\"\nserves=[\"M/hood%d\"]\n", i+1, i) },
	"machines at once": func(i int) string { return fmt.Sprintf("[[machine]]\nname=\"m%d\"\nkind=\"planer\"\n", i) },
}

const hostileHead = `[shop]
name = "Hostile"
[[collector]]
name = "Fan"
inlet = "8 in"
claims = { flow = "1600 cfm", suction = "11 inwg" }
`

// hostileText repeats a piece up to a size.
func hostileText(name string, size int) string {
	var b strings.Builder
	b.WriteString(hostileHead)
	switch {
	case strings.HasSuffix(name, "on one"), name == "ducts into one", strings.HasSuffix(name, "end to end"):
		b.WriteString("[[duct]]\nname=\"d0\"\nto=\"Fan\"\nsize=\"4 in\"\nlength=\"9 ft\"\n")
	case strings.HasPrefix(name, "serves"):
		b.WriteString("[[machine]]\nname=\"M\"\nkind=\"planer\"\n")
	}
	first := 0
	if name == "ducts into one" {
		first = 1
	}
	for i := first; b.Len() < size; i++ {
		b.WriteString(hostile[name](i))
	}
	if text := b.String(); name == "a chain of ducts" {
		last := strings.LastIndex(text, "to=\"")
		end := last + strings.Index(text[last:], "\n")
		return text[:last] + "to=\"Fan\"" + text[end:]
	}
	return b.String()
}

// TestHostile reads each kind of hostile file at a fair size.
func TestHostile(t *testing.T) {
	size := entry.MaxBytes / 4
	if testing.Short() {
		size /= 8
	}
	for name := range hostile {
		t.Run(name, func(t *testing.T) {
			text := hostileText(name, size)
			s, problems := Read("shop.toml", []byte(text))
			if (s == nil) == (len(problems) == 0) {
				t.Errorf("a shop: %v, and %d problems", s != nil, len(problems))
			}
			if s != nil {
				checkShop(t, s)
			} else if len(problems) > 0 {
				t.Log(len(problems), problems[0])
			}
		})
	}
}
