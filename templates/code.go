package templates

import (
	"net/url"
	"strconv"
	"strings"

	goqr "github.com/piglig/go-qr"
)

// code is a square code that a phone reads: the address of a sheet.
type code struct {
	Address string
	Side    int    // in modules, with the quiet zone
	Path    string // of an SVG with a stroke one module wide
}

// quiet is the empty edge about a code, in modules; its standard asks for
// four.
const quiet = 4

// codeFor is the code of a sheet; nil where the shop has no address that a
// phone could open.
func (b *Book) codeFor(path string) *code {
	base := b.Plan.Shop.Address
	if !base.Known() {
		return nil
	}
	u, err := url.Parse(base.V)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "" {
		return nil
	}
	if strings.HasSuffix(u.Path, ".html") {
		u = u.JoinPath("..")
	}
	u.RawQuery, u.Fragment = "", ""
	u = u.JoinPath(path)
	symbol, err := goqr.EncodeText(u.String(), goqr.Medium)
	if err != nil {
		return nil // longer than a code can hold
	}
	return &code{Address: u.String(), Side: symbol.Size() + 2*quiet, Path: modules(symbol)}
}

// modules draws the dark modules of a symbol row by row, from the end of one
// run to the start of the next.
func modules(symbol *goqr.QrCode) string {
	var out strings.Builder
	for y := range symbol.Size() {
		first, x := true, 0
		for at := 0; at < symbol.Size(); at++ {
			if !symbol.Module(at, y) {
				continue
			}
			long := 1
			for at+long < symbol.Size() && symbol.Module(at+long, y) {
				long++
			}
			if first {
				out.WriteString("M" + strconv.Itoa(at+quiet) + " " + strconv.Itoa(y+quiet) + ".5")
			} else {
				out.WriteString("m" + strconv.Itoa(at-x) + " 0")
			}
			out.WriteString("h" + strconv.Itoa(long))
			first, x = false, at+long
			at = x
		}
	}
	return out.String()
}
