package drawing_test

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/templates/drawing"
)

// load reads a shop of testdata.
func load(t testing.TB, name string) *plan.Plan {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	return read(t, name+".toml", string(data))
}

// read reads a shop from text.
func read(t testing.TB, name, text string) *plan.Plan {
	t.Helper()
	s, problems := shop.Read(name, []byte(text))
	for _, p := range problems {
		t.Error(p)
	}
	if s == nil {
		t.Fatal("not read")
	}
	return plan.Make(s, nil, entry.Date{})
}

// named finds a use's first result.
func named(t testing.TB, p *plan.Plan, use string) *duct.Result {
	t.Helper()
	for _, u := range p.Air.Uses {
		if u.Name == use {
			return u.Results[0]
		}
	}
	t.Fatalf("no use %q", use)
	return nil
}

const lookStyle = `<!doctype html><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><style>
:root{--paper:#fcfbf8;--ink:#1b252d;--soft:#55616b;--rule:#c6ccd0;--tint:#f1f3f2;--air:#0a6a8c;--air-soft:#cfe6ee;--stop:#a8221a}
@media print{:root{--paper:#fff;--ink:#000;--soft:#333;--rule:#999;--air-soft:#ddd;--air:#000;--stop:#000;--tint:#fff}body{margin:0}.box{border:0!important;padding:0!important}.box svg{max-width:100%;max-height:150mm;height:auto}h1{font-size:12px;margin:0}}
body{background:#fcfbf8;font-family:Arial,sans-serif;margin:16px}.box{overflow-x:auto;border:1px solid #ccc;padding:8px;margin:0 0 16px;break-inside:avoid}
@page{size:A4 landscape;margin:10mm}
.fill-ink{fill:var(--ink)}.fill-soft{fill:var(--soft)}.fill-paper{fill:var(--paper)}.fill-tint{fill:var(--tint)}.fill-air{fill:var(--air)}.fill-air-soft{fill:var(--air-soft)}.fill-stop{fill:var(--stop)}
.line-ink{stroke:var(--ink)}.line-soft{stroke:var(--soft)}.line-rule{stroke:var(--rule)}.line-paper{stroke:var(--paper)}.line-air{stroke:var(--air)}.line-air-soft{stroke:var(--air-soft)}.line-stop{stroke:var(--stop)}
</style>`

// TestLook writes pages to look at, where DUSTBOOK_LOOK names a folder.
func TestLook(t *testing.T) {
	dir := os.Getenv("DUSTBOOK_LOOK")
	if dir == "" {
		t.Skip("DUSTBOOK_LOOK names no folder")
	}
	write := func(name string, p *plan.Plan, uses ...string) {
		page := lookStyle
		add := func(title string, svg drawing.SVG) {
			page += "<h1>" + title + `</h1><div class="box">` + string(svg) + "</div>"
		}
		for i, use := range uses {
			if use == "" {
				add("neutral", drawing.Plan(p, nil, "n"))
				continue
			}
			add(use, drawing.Plan(p, named(t, p, use), "u"+string(rune('a'+i))))
		}
		if err := os.WriteFile(filepath.Join(dir, name+".html"), []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("heap", read(t, "heap.toml", heap), "", "A")
	for seed := range uint64(12) {
		p := read(t, "random.toml", drawing.RandomShop(seed))
		write("random"+strconv.Itoa(int(seed)), p, "", "Two at once")
	}
	charts := func(name string, p *plan.Plan, uses ...string) {
		page := lookStyle
		for i, c := range p.Shop.Collectors {
			svg, points := drawing.FanChart(p, c, "f"+string(rune('a'+i)))
			page += `<h1>` + c.Name + `</h1><div class="box">` + string(svg) + "</div>"
			for _, v := range points {
				page += "<p>" + strconv.Itoa(v.Number) + " " + v.Use + " " + v.Filter + " " + v.Why + "</p>"
			}
		}
		for i, use := range uses {
			r := named(t, p, use)
			for j, port := range r.Ports {
				page += `<h1>` + use + `</h1><div class="box">` + string(drawing.Profile(p, r, port.Port, "p"+string(rune('a'+i))+string(rune('a'+j)))) + "</div>"
			}
		}
		if err := os.WriteFile(filepath.Join(dir, name+".html"), []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range append([]string{"works"}, shops...) {
		p, page := load(t, name), lookStyle
		for i, c := range p.Shop.Collectors {
			page += "<h1>" + c.Name + `</h1><div class="box">` + string(drawing.Isometric(p, c, "i"+strconv.Itoa(i))) + "</div>"
		}
		if err := os.WriteFile(filepath.Join(dir, name+"-isometric.html"), []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	key := lookStyle
	for _, row := range drawing.Key("k") {
		key += `<p>` + string(row.Sample) + " <b>" + row.Name + "</b>: " + row.Means + "</p>"
	}
	if err := os.WriteFile(filepath.Join(dir, "key.html"), []byte(key), 0o644); err != nil {
		t.Fatal(err)
	}
	write("works", load(t, "works"), "", "Panel saw")
	charts("hallcharts", load(t, "hall"), "Thicknesser", "Table saw")
	charts("shedcharts", load(t, "shed"), "Band saw")
	write("yard", load(t, "yard"), "", "Wide belt sander", "Mortiser")
	write("hall", load(t, "hall"), "", "Thicknesser", "Thicknesser and table saw", "Sanding beside the lathe")
	write("shed", load(t, "shed"), "", "Band saw", "Thicknesser")
	write("words", load(t, "words"), "", "Planer", "Lathe")
}
