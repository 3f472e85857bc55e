package main

import (
	"context"
	"testing"

	"github.com/chromedp/chromedp"
)

// scrolled is where a sheet stands when it has been opened.
type scrolled struct {
	Top    float64 `json:"top"`    // by how much the page is scrolled
	Tab    bool    `json:"tab"`    // the tab of its part is in sight
	Target bool    `json:"target"` // what its address names is in sight; false where it names nothing
}

const scrolledScript = `(() => {
	const seen = e => {
		if (!e) return false;
		const r = e.getBoundingClientRect();
		return r.left >= -1 && r.right <= innerWidth + 1 && r.bottom > 0 && r.top < innerHeight;
	};
	const target = location.hash && document.getElementById(location.hash.slice(1));
	return {top: scrollY, tab: seen(document.querySelector(".tabs [aria-current]")), target: !!target && seen(target.firstElementChild)};
})()`

// A sheet opens at its head, or at what its address names; the tab of its part
// is in sight, on a phone too, where the tabs are a strip.
func TestSheetsOpenAtTheirHead(t *testing.T) {
	ctx := browser(t)
	sheets := publishedSheets(t, "example")
	for _, c := range []struct {
		name   string
		target bool
	}{{"findings.html", false}, {"first-day.html", false}, {"note-emptying.html", false}, {"ducts.html", false}, {"ducts.html#gate-saw-gate", true}, {"triggers.html#trigger-lathe-switch", true}} {
		for _, width := range widths {
			var got scrolled
			v := view{shop: "example", name: c.name, home: diskHome(sheets[0].folder), width: width}
			said, err := open(ctx, v, func(ctx context.Context) (faults []string, err error) {
				got, err = chromedp.Run(ctx, chromedp.Evaluate[scrolled](scrolledScript))
				return nil, err
			})
			switch {
			case err != nil || len(said) > 0:
				t.Errorf("%s: %v %v", v, err, said)
			case !c.target && (got.Top != 0 || !got.Tab):
				t.Errorf("%s: %+v, want its head and its tab", v, got)
			case c.target && (got.Top == 0 || !got.Target):
				t.Errorf("%s: %+v, want what the address names", v, got)
			}
		}
	}
}
