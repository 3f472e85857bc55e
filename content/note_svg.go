package content

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// A drawing is shown as a picture, where a browser runs nothing of it; but its
// file can be opened by itself. So nothing in it may run or ask for anything.

const (
	svgSpace  = "http://www.w3.org/2000/svg"
	htmlSpace = "http://www.w3.org/1999/xhtml"
)

// drawn are the elements that only draw.
var drawn = strings.Fields(`svg g defs symbol use title desc metadata style path rect circle ellipse line polyline polygon
 text tspan textPath linearGradient radialGradient stop clipPath mask marker pattern image switch view
 filter feBlend feColorMatrix feComponentTransfer feFuncR feFuncG feFuncB feFuncA feComposite feConvolveMatrix feDiffuseLighting
 feDisplacementMap feDistantLight feDropShadow feFlood feGaussianBlur feMerge feMergeNode feMorphology feOffset fePointLight
 feSpecularLighting feSpotLight feTile feTurbulence`)

var (
	askedFor = regexp.MustCompile(`(?i)@import|image(?:-set)?\(|url\(\s*["']?\s*[^#"'\s)]|expression\(|\\`) // in styles
	pictured = regexp.MustCompile(`(?i)^data:image/(png|jpeg|gif|webp);base64,`)
	lengths  = regexp.MustCompile(`^\s*([0-9]*\.?[0-9]+(?:[eE][+-]?[0-9]+)?)\s*(px|pt|pc|mm|cm|in|)\s*$`)
)

// pixels in each unit of length, as the standard for styles fixes them.
var pixels = map[string]float64{"": 1, "px": 1, "pt": 96.0 / 72, "pc": 16, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96}

// measureSVG reads the size of a drawing, and refuses one that does more than
// draw.
func measureSVG(data []byte) (ending string, width, height int, fault string) {
	refuse := func(why string) (string, int, int, string) { return "", 0, 0, why }
	in := xml.NewDecoder(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	inside, began := 0, false
	var styles []byte // the text of every element together, as remarks may part it
	for {
		token, err := in.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			if !began {
				return refuse("a file that is no picture")
			}
			return refuse("a drawing that cannot be read")
		}
		switch token := token.(type) {
		case xml.StartElement:
			if !began && (token.Name.Space != svgSpace || token.Name.Local != "svg") {
				return refuse("a file that is no picture")
			}
			if !began {
				began = true
				width, height = sizeOfSVG(token)
			}
			if why := active(token); why != "" {
				return refuse(why)
			}
			inside++
		case xml.EndElement:
			inside--
		case xml.CharData:
			styles = append(styles, token...)
		case xml.ProcInst:
			if token.Target != "xml" {
				return refuse("a drawing with an instruction to the reader: <?" + shortened(token.Target, 20))
			}
		case xml.Directive:
			if bytes.ContainsAny(token, "[]") {
				return refuse("a drawing that declares entities")
			}
		}
	}
	switch {
	case !began || inside != 0:
		return refuse("a file that is no picture")
	case asks(string(styles)):
		return refuse(asksForMore)
	case width == 0 || height == 0:
		return refuse("a drawing that does not say its size")
	}
	return ".svg", width, height, ""
}

const asksForMore = "a drawing with a style that asks for another file"

// asks reports whether a text, as a style, would ask for another file. Where
// a backslash could spell such a word, it is taken to do so.
func asks(text string) bool { return strings.ContainsAny(text, "(@") && askedFor.MatchString(text) }

// active says what an element of a drawing does beside drawing; empty where
// it only draws. Elements of other languages are notes of drawing programs,
// but for those of HTML.
func active(element xml.StartElement) string {
	name := element.Name.Local
	if element.Name.Space == htmlSpace || element.Name.Space == svgSpace && !slices.Contains(drawn, name) {
		return "a drawing with the element <" + shortened(name, 20) + ">"
	}
	for _, a := range element.Attr {
		key := strings.ToLower(a.Name.Local)
		value := strings.TrimSpace(a.Value)
		switch {
		case a.Name.Space == "" && strings.HasPrefix(key, "on"):
			return "a drawing that acts: " + shortened(key, 20)
		case key == "base" || (key == "href" || key == "src") && !strings.HasPrefix(value, "#") && !(name == "image" && pictured.MatchString(value)):
			return "a drawing that leads to another file: " + shortened(value, 40)
		case asks(value):
			return asksForMore
		}
	}
	return ""
}

// sizeOfSVG is the size of a drawing in pixels, from its width and height, or
// from the window it draws in. Zero where it says neither.
func sizeOfSVG(root xml.StartElement) (width, height int) {
	var w, h, boxW, boxH float64
	for _, a := range root.Attr {
		if a.Name.Space != "" {
			continue
		}
		switch a.Name.Local {
		case "width":
			w = lengthOf(a.Value)
		case "height":
			h = lengthOf(a.Value)
		case "viewBox":
			if parts := strings.FieldsFunc(a.Value, func(c rune) bool { return c == ' ' || c == ',' || c == '\n' || c == '\t' }); len(parts) == 4 {
				boxW, boxH = lengthOf(parts[2]), lengthOf(parts[3])
			}
		}
	}
	if boxW > 0 && boxH > 0 {
		switch {
		case w == 0 && h == 0:
			w, h = boxW, boxH
		case w == 0:
			w = h * boxW / boxH
		case h == 0:
			h = w * boxH / boxW
		}
	}
	return whole(w), whole(h)
}

// lengthOf reads a length in pixels; 0 where it is none, as "100%".
func lengthOf(text string) float64 {
	parts := lengths.FindStringSubmatch(text)
	if parts == nil {
		return 0
	}
	n, err := strconv.ParseFloat(parts[1], 64)
	if err != nil || math.IsInf(n, 0) {
		return 0
	}
	return n * pixels[parts[2]]
}

// whole is a length in whole pixels, at least one.
func whole(n float64) int {
	switch {
	case n <= 0 || math.IsNaN(n):
		return 0
	case n > mostPixels:
		return mostPixels + 1
	}
	return max(1, int(math.Round(n)))
}
