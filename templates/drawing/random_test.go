package drawing

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
)

// Seeds is how many shops made by a seed a test draws: a few, half of these in
// a short run, all of them where DUSTBOOK_WHOLE is set.
func Seeds(few, all uint64) uint64 {
	switch {
	case os.Getenv("DUSTBOOK_WHOLE") == "1":
		return all
	case testing.Short():
		return few / 2
	}
	return few
}

// HardNames are names that are hard to set: long, unbroken, of other scripts,
// hostile. They are for the tests outside the package as well.
var HardNames = []string{
	"The very long bandsaw that stands beside the lumber rack under the second window",
	"Unbrechbarerabsaugungsschlauchadapterzwischenflanschmitsicherungsringundschraube",
	"<script>alert(1)</script>", `Saw "A" & 'B' <b>`, "集塵機つきの大きなかんな盤をここに置く", "🪚🪵 saw 👩🏽‍🔧",
	"منشار الشريط الكبير", "W\u202eedih\u202c saw", "Ё-станок фрезерный", "Kehlmaschine größer als die große daneben",
	"WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
}

var shortNames = []string{"Table saw", "Planer", "Jointer", "Lathe", "Band saw", "Router table", "Drum sander", "Mitre saw", "Shaper", "Drill press", "Mortiser", "Scroll saw"}

// RandomShop writes a shop file by a seed: rooms in a row, mains with drops
// on both sides, gates, hoses, movable ends, leaks, some ducts without a
// route, and names of every kind.
func RandomShop(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 42))
	var b strings.Builder
	used := map[string]bool{}
	name := func(kind string, n int) string {
		base := shortNames[r.IntN(len(shortNames))]
		if r.IntN(6) == 0 {
			base = HardNames[r.IntN(len(HardNames))]
		}
		runes := []rune(fmt.Sprintf("%s%d %s", kind, n, base))
		if r.IntN(3) > 0 {
			runes = []rune(fmt.Sprintf("%s%d", kind, n))
		}
		v := strings.TrimSpace(string(runes[:min(len(runes), 80)]))
		v = strings.ReplaceAll(v, "/", "|") // a name has no stroke
		for used[v] {
			v = fmt.Sprintf("%s%d again", kind, n)
		}
		used[v] = true
		return v
	}
	quote := func(v string) string { return fmt.Sprintf("%q", v) }
	wide, deep := 12+r.IntN(50), 10+r.IntN(40)
	fmt.Fprintf(&b, "[shop]\nname = %q\n", HardNames[r.IntN(len(HardNames))])
	rooms := 1 + r.IntN(3)
	for i := range rooms {
		x0, x1 := wide*i/rooms, wide*(i+1)/rooms
		fmt.Fprintf(&b, "[[room]]\nname = %s\noutline = [[%d,0],[%d,0],[%d,%d],[%d,%d]]\nheight = \"9 ft\"\nexits = [[%d,%d],[%d,0]]\n", quote(name("Room", i)), x0, x1, x1, deep, x0, deep, (x0+x1)/2, deep, x0+1)
		if i > 0 {
			fmt.Fprintf(&b, "[[wall]]\nfrom = [%d,0]\nto = [%d,%d]\nrating = \"%d h\"\n", x0, x0, deep, i)
		}
	}
	var gates []string
	machines := 1 + r.IntN(16)
	collectors := 1 + r.IntN(2)
	var ports []string
	for i := range machines {
		n := name("M", i)
		kind := []string{"table saw", "planer", "drum sander", "lathe"}[r.IntN(4)]
		fmt.Fprintf(&b, "[[machine]]\nname = %s\nkind = %q\n", quote(n), kind)
		x, y := r.IntN(wide), r.IntN(deep)
		if r.IntN(8) > 0 {
			fmt.Fprintf(&b, "at = [%d,%d]\n", x, y)
		}
		ports = append(ports, n)
	}
	var mains []string
	mid := deep / 2
	for i := range collectors {
		c := name("C", i)
		fmt.Fprintf(&b, "[[collector]]\nname = %s\ninlet = \"8 in\"\nfan_curve = [[\"0 cfm\",\"12 inwg\"],[\"1000 cfm\",\"9 inwg\"],[\"2500 cfm\",\"2 inwg\"]]\n", quote(c))
		y := mid + 3*i
		if r.IntN(2) == 0 {
			fmt.Fprintf(&b, "at = [-5,%d]\n", y)
		}
		m := name("Main", i)
		fmt.Fprintf(&b, "[[duct]]\nname = %s\nto = %s\nsize = \"%d in\"\nroute = [[%d,%d,9],[-5,%d,9]]\n", quote(m), quote(c), 6+r.IntN(4), wide-1, y, y)
		mains = append(mains, m)
		if r.IntN(2) == 0 {
			fmt.Fprintf(&b, "[[leak]]\non = %s\nhole = \"1 in\"\nat = \"%d ft\"\n", quote(m), 1+r.IntN(wide-1))
		}
		for range r.IntN(3) {
			g := name("Zone", len(gates))
			fmt.Fprintf(&b, "[[gate]]\nname = %s\non = %s\nat = \"%d ft\"\n", quote(g), quote(m), r.IntN(wide))
			gates = append(gates, g)
		}
	}
	for i := 0; i < machines; i++ {
		at := r.IntN(collectors)
		d := name("Drop", i)
		serves := quote(ports[i])
		if r.IntN(6) == 0 && i+1 < machines {
			i++
			serves += ", " + quote(ports[i])
		}
		fmt.Fprintf(&b, "[[duct]]\nname = %s\nto = %s\nsize = \"%d in\"\nserves = [%s]\n", quote(d), quote(mains[at]), 3+r.IntN(4), serves)
		if r.IntN(3) == 0 {
			fmt.Fprintf(&b, "hose = { length = \"%d ft\" }\n", 1+r.IntN(6))
		}
		y, x := mid+3*at, r.IntN(wide-2)
		if r.IntN(7) == 0 {
			fmt.Fprintf(&b, "length = \"%d ft\"\njoins = \"%d ft\"\n", 3+r.IntN(20), r.IntN(wide))
		} else {
			from := r.IntN(deep)
			for from == y {
				from = r.IntN(deep)
			}
			turn := y + 1
			if from < y {
				turn = y - 1
			}
			fmt.Fprintf(&b, "route = [[%d,%d,2],[%d,%d,9],[%d,%d,9],[%d,%d,9]]\n", x+1, from, x+1, from, x+1, turn, x, y)
			if turn == from { // no run between
				text := b.String()
				b.Reset()
				b.WriteString(strings.Replace(text, fmt.Sprintf("[%d,%d,9],[%d,%d,9],[%d,%d,9]", x+1, from, x+1, turn, x, y), fmt.Sprintf("[%d,%d,9],[%d,%d,9]", x+1, from, x, y), 1))
			}
		}
		for range r.IntN(3) {
			g := name("G", len(gates))
			fmt.Fprintf(&b, "[[gate]]\nname = %s\non = %s\n", quote(g), quote(d))
			if r.IntN(2) == 0 {
				fmt.Fprintf(&b, "at = \"%d ft\"\n", r.IntN(3))
			}
			gates = append(gates, g)
		}
	}
	fmt.Fprintf(&b, "[[use]]\nname = \"Two at once\"\nmachines = [%s", quote(ports[0]))
	if machines > 1 {
		fmt.Fprintf(&b, ", %s", quote(ports[machines-1]))
	}
	b.WriteString("]\n")
	return b.String()
}
