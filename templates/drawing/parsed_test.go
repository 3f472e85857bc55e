package drawing_test

import (
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"dustbook/templates/drawing"
)

// node is an element of a drawing read back.
type node struct {
	name  string
	attr  map[string]string
	text  string // its own text and that of its tspans, bold or not
	bold  []part // the text in parts
	title string
	inner []*node
}

type part struct {
	text string
	bold bool
}

// parse reads a drawing back; it fails where it is not well formed.
func parse(t testing.TB, svg drawing.SVG) *node {
	t.Helper()
	in := xml.NewDecoder(strings.NewReader(string(svg)))
	root := &node{}
	stack := []*node{root}
	for {
		token, err := in.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("not well formed: %v", err)
		}
		top := stack[len(stack)-1]
		switch v := token.(type) {
		case xml.StartElement:
			n := &node{name: v.Name.Local, attr: map[string]string{}}
			for _, a := range v.Attr {
				if _, twice := n.attr[a.Name.Local]; twice {
					t.Errorf("%s has %s twice", n.name, a.Name.Local)
				}
				n.attr[a.Name.Local] = a.Value
			}
			if top.name == "g" { // what a group says holds for all in it
				for name, value := range top.attr {
					if _, own := n.attr[name]; !own && name != "id" {
						n.attr[name] = value
					}
				}
			}
			top.inner = append(top.inner, n)
			stack = append(stack, n)
		case xml.EndElement:
			stack = stack[:len(stack)-1]
			above := stack[len(stack)-1]
			switch top.name {
			case "title":
				above.title = top.text
			case "tspan", "a":
				if above.name != "text" && above.name != "a" {
					break
				}
				above.text += top.text
				heavy := top.attr["font-weight"] == "700" || above.attr["font-weight"] == "700"
				if top.name == "a" {
					for _, one := range top.bold {
						above.bold = append(above.bold, part{one.text, one.bold || heavy})
					}
					break
				}
				above.bold = append(above.bold, part{top.text, heavy})
			}
		case xml.CharData:
			top.text += string(v)
			if top.name == "text" || top.name == "a" {
				top.bold = append(top.bold, part{string(v), top.attr["font-weight"] == "700"})
			}
		}
	}
	if len(root.inner) != 1 || root.inner[0].name != "svg" {
		t.Fatal("not one svg element")
	}
	return root.inner[0]
}

// size is the font size of a text: what it says, else the drawing's own.
func (n *node) size(t testing.TB) float64 {
	t.Helper()
	if own := n.attr["font-size"]; own != "" {
		return number(t, own)
	}
	return 13
}

// each visits a node and all in it.
func (n *node) each(visit func(*node)) {
	visit(n)
	for _, in := range n.inner {
		in.each(visit)
	}
}

// number reads a number of the drawing.
func number(t testing.TB, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("not a number: %q", text)
	}
	return v
}

var (
	pathStep = regexp.MustCompile(`[A-Za-z][^A-Za-z]*`)
	figures  = regexp.MustCompile(`-?[0-9.]+`)
)

// points reads the spots of a path of straight lines.
func points(t testing.TB, d string) [][2]float64 {
	t.Helper()
	var list [][2]float64
	for _, step := range pathStep.FindAllString(d, -1) {
		at := [2]float64{}
		if len(list) > 0 {
			at = list[len(list)-1]
		}
		var by []float64
		for _, one := range figures.FindAllString(step, -1) {
			by = append(by, number(t, one))
		}
		switch {
		case step == "Z":
			continue
		case step[0] == 'M' && len(by) == 2:
			at = [2]float64{by[0], by[1]}
		case step[0] == 'l' && len(by) == 2:
			at = [2]float64{at[0] + by[0], at[1] + by[1]}
		case step[0] == 'h' && len(by) == 1:
			at[0] += by[0]
		case step[0] == 'v' && len(by) == 1:
			at[1] += by[0]
		default:
			t.Fatalf("no path of straight lines: %q in %q", step, d)
		}
		list = append(list, [2]float64{math.Round(at[0]*10) / 10, math.Round(at[1]*10) / 10})
	}
	return list
}
