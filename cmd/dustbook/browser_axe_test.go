package main

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// axe-core is a general library of checks drawn from the Web Content
// Accessibility Guidelines. No sheet may break one of them. A plain run asks the
// sheets of the server on a phone only: they are the same bytes.
func TestSheetsHoldNoBarriers(t *testing.T) {
	axe := axeScript(t)
	ctx := browser(t)
	all := os.Getenv("DUSTBOOK_SHEETS") == "all"
	for _, at := range lookedAt(t) {
		for v := range at.views(t) {
			if !all && strings.HasPrefix(v.home, "http:") && v.width != widths[0] {
				continue
			}
			for _, fault := range barriers(t, ctx, axe, v) {
				t.Errorf("%s: %s", v, fault)
			}
		}
	}
}

// The look for barriers finds some where there are some.
func TestBarriersAreFound(t *testing.T) {
	axe := axeScript(t)
	ctx := browser(t)
	for name, c := range map[string]struct {
		body string
		want string // as it is found in light, and in dark
		dark string
	}{
		"sound":    {body: `<main><h1>Sheet</h1><p>words</main>`},
		"picture":  {`<main><h1>Sheet</h1><img src="data:,"></main>`, "image-alt", "image-alt"},
		"contrast": {`<main><h1>Sheet</h1><p style="color:#ccc">words</main>`, "color-contrast", "color-contrast"},
		"dark":     {`<style>@media (prefers-color-scheme: dark) { p { color: #ccc } }</style><main><h1>Sheet</h1><p>words</main>`, "", "color-contrast"},
	} {
		for v := range page(t, name, c.body).views(t) {
			want := c.want
			if v.dark {
				want = c.dark
			}
			var found []string
			for _, fault := range barriers(t, ctx, axe, v) {
				if rule, is := strings.CutPrefix(fault, "barrier "); is {
					rule, _, _ = strings.Cut(rule, ":")
					found = append(found, rule)
				}
			}
			if want == "" && len(found) > 0 || want != "" && !slices.Equal(found, []string{want}) {
				t.Errorf("%s: found %q, want %q", v, found, want)
			}
		}
	}
}

// axeScript reads axe-core, or skips the test where there is none and none is
// asked for.
func axeScript(t *testing.T) string {
	t.Helper()
	file := os.Getenv("DUSTBOOK_AXE")
	wish := os.Getenv("DUSTBOOK_BROWSER")
	switch {
	case wish == "skip":
		t.Skip("DUSTBOOK_BROWSER=skip")
	case file == "" && wish == "required":
		t.Fatal("DUSTBOOK_AXE names no file, and axe-core is required")
	case file == "":
		t.Skip("DUSTBOOK_AXE names no file: barriers are not looked for")
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("DUSTBOOK_AXE: %v", err)
	}
	return string(data)
}

// barrier is a rule of axe-core that a sheet breaks.
type barrier struct {
	ID    string   `json:"id"`
	Help  string   `json:"help"`
	Where []string `json:"where"`
}

// axeRun asks every rule. axe-core is kept from loading the style sheet again,
// which a sheet from the disk may not do.
const axeRun = `axe.run(document, {preload: false, resultTypes: ["violations"]}).then(said => said.violations.map(v =>
	({id: v.id, help: v.help, where: v.nodes.map(n => n.target.join(" "))})))`

// barriers looks for barriers in a sheet.
func barriers(t *testing.T, parent context.Context, axe string, v view) []string {
	t.Helper()
	faults, err := open(parent, v, func(ctx context.Context) ([]string, error) {
		kind, err := chromedp.Run(ctx, chromedp.Evaluate[string](axe+"; typeof axe.run"))
		if err == nil && kind != "function" {
			err = fmt.Errorf("DUSTBOOK_AXE is not axe-core: axe.run is %q, want a function", kind)
		}
		if err != nil {
			return nil, err
		}
		broken, err := chromedp.Run(ctx, chromedp.Evaluate[[]barrier](axeRun, chromedp.EvalAwaitPromise))
		var list []string
		for _, b := range broken {
			list = append(list, fmt.Sprintf("barrier %s: %s: %d places, first %s", b.ID, b.Help, len(b.Where), strings.Join(b.Where[:min(3, len(b.Where))], ", ")))
		}
		return list, err
	})
	if err != nil {
		t.Errorf("%s: %v", v, err)
	}
	return faults
}
