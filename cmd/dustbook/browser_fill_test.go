package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	cdpbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"dustbook/plan"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// typeInto writes into a field of the page as a person does, or ticks it.
const typeInto = `(() => {
	const field = %s;
	if (!field) return "no field";
	if (field.type === "checkbox") field.checked = true; else field.value = %s;
	field.dispatchEvent(new Event("input", { bubbles: true }));
	return "";
})()`

// holdFile keeps what the page hands to the browser's downloads.
const holdFile = `(() => {
	const make = URL.createObjectURL;
	window.made = [];
	URL.createObjectURL = (blob) => { window.made.push(blob); return make.call(URL, blob); };
	HTMLAnchorElement.prototype.click = function () { window.named = this.download; };
	return "";
})()`

// filling is a sheet in a browser while it is filled in.
type filling struct {
	t   *testing.T
	ctx context.Context
}

// asked is the answer of the page to a script.
func asked[T any](p filling, script string, options ...chromedp.EvaluateOption) T {
	p.t.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](script, options...))
	if err != nil {
		p.t.Fatalf("%s: %v", script, err)
	}
	return v
}

func (p filling) write(field, text string) {
	p.t.Helper()
	if fault := asked[string](p, fmt.Sprintf(typeInto, field, strconv.Quote(text))); fault != "" {
		p.t.Fatalf("%s: %s", field, fault)
	}
}

func (p filling) press(id string) {
	asked[string](p, `(document.getElementById("`+id+`").click(), "")`)
}

func (p filling) says() string {
	return asked[string](p, `document.getElementById("fill-says").textContent`)
}

// file is the text of the file that the page last made.
func (p filling) file() string {
	return asked[string](p, `window.made.at(-1).text()`, chromedp.EvalAwaitPromise)
}

// nth is the n-th field in the row of a reading.
func nth(of, at, use string, n int) string {
	return fmt.Sprintf("document.querySelectorAll(`tr[data-of=%q][data-at=%q][data-use=%q] input`)[%d]", of, at, use, n)
}

// noted is the n-th field in the row of a note.
func noted(note string, n int) string {
	return fmt.Sprintf("document.querySelectorAll(`tr[data-note=%q] input`)[%d]", note, n)
}

// ten are blanks of the sheet of readings with what is typed into them.
var ten = []struct{ field, typed string }{
	{nth("hood pressure", "Table saw/cabinet", "Table saw", 0), "1.31"},
	{nth("hood pressure", "Planer/hood", "Planer", 0), "2.05"},
	{nth("hood pressure", "Planer/hood", "Planer", 1), "500 Pa"},
	{nth("tap pressure", "Main tap", "Planer", 0), "3.4"},
	{nth("tap pressure", "Saw tap", "Table saw", 0), "2.2"},
	{nth("fan pressure", "Cyclone", "Table saw", 0), "6.1"},
	{nth("filter pressure", "Cyclone", "Table saw", 0), "0.9"},
	{`document.querySelector("tr[data-of=velocity] input")`, "3900"},
	{`document.querySelector("tr[data-of=current] input")`, "14.2"},
	{`document.querySelector("tr[data-of='room pressure'] input")`, "-0.01"},
}

// In a browser the blanks are filled in from the disk, stand after a reload,
// and become a record file that the tool reads, with every reading at its
// thing; nothing is asked for beyond the files of the sheet.
func TestFillInABrowser(t *testing.T) {
	ctx := browser(t)
	at := publishedSheets(t, filepath.Join("testdata", "proof"))[0]
	home := diskHome(at.folder)
	var lock sync.Mutex
	var requests []string
	listen := func(event any) {
		if sent, is := event.(*network.EventRequestWillBeSent); is {
			lock.Lock()
			requests = append(requests, sent.Request.URL)
			lock.Unlock()
		}
	}
	if err := chromedp.Listen(ctx, listen); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(home+"commissioning-readings.html")); err != nil {
		t.Fatal(err)
	}
	p := filling{t, ctx}
	for _, blank := range ten {
		p.write(blank.field, blank.typed)
	}
	p.write(`document.getElementById("fill-role")`, `steward "A"`)
	p.write(`document.getElementById("fill-with-pressure")`, `U-tube 3\4`)
	p.write(`document.getElementById("fill-calibrated-pressure")`, "2026-11-01")
	if err := chromedp.Do(ctx, chromedp.Reload()); err != nil {
		t.Fatal(err)
	}
	for _, blank := range ten {
		if value := asked[string](p, blank.field+".value"); value != blank.typed {
			t.Errorf("%s holds %q after the reload, not %q", blank.field, value, blank.typed)
		}
	}
	if label := asked[string](p, ten[1].field+".labels[0].textContent"); !strings.Contains(label, "hood pressure at Planer/hood") || !strings.Contains(label, "in use: Planer") || !strings.Contains(label, "expected: ") || !strings.Contains(label, "in wg") {
		t.Errorf("a field is labelled %q", label)
	}
	asked[string](p, holdFile)
	p.wrongs()
	p.press("fill-keep")
	if name := asked[string](p, "window.named"); name != "2026-11-25-commissioning-2.toml" {
		t.Errorf("the file is called %q: %s", name, p.says())
	}
	checkFilled(t, at.folder, asked[string](p, "window.named"), p.file())
	p.clears()
	lock.Lock()
	defer lock.Unlock()
	for _, address := range requests {
		if !strings.HasPrefix(address, home) && !strings.HasPrefix(address, "data:") {
			t.Errorf("the page asked for %s", address)
		}
	}
	if len(requests) < 3 {
		t.Errorf("only %d requests were seen", len(requests))
	}
}

// wrongs are what the page refuses: no day, a comma for a point, a day of
// calibration after that of the readings.
func (p filling) wrongs() {
	p.t.Helper()
	refused := func(what, says string) {
		p.t.Helper()
		p.press("fill-keep")
		if said := p.says(); !strings.Contains(said, says) || asked[int](p, "window.made.length") != 0 {
			p.t.Errorf("%s: the page says %q", what, said)
		}
	}
	day := `document.getElementById("fill-date")`
	refused("no day", "day of the readings")
	p.write(day, "2026-10-30")
	refused("calibrated later", "calibrated after")
	p.write(day, "2026-11-25")
	p.write(ten[0].field, "1,31")
	refused("a comma", "Write a number")
	if invalid := asked[string](p, ten[0].field+`.getAttribute("aria-invalid")`); invalid != "true" {
		p.t.Error("the field is not marked")
	}
	p.write(ten[0].field, ten[0].typed)
}

// checkFilled holds a file that the page made against what was typed.
func checkFilled(t *testing.T, folder, name, text string) {
	t.Helper()
	rec, problems := record.Read("records/"+name, []byte(text))
	if len(problems) > 0 {
		t.Fatalf("%v\n%s", problems, text)
	}
	if string(rec.TOML()) != text {
		t.Errorf("the tool would write it otherwise:\n%s\n%s", rec.TOML(), text)
	}
	into := t.TempDir()
	if err := os.WriteFile(filepath.Join(into, name), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if list, problems := record.ReadFolder(os.DirFS(into)); len(list) != 1 || len(problems) > 0 {
		t.Errorf("in the folder: %v", problems)
	}
	data, err := os.ReadFile(filepath.Join("testdata", "proof", "shop.toml"))
	if err != nil {
		t.Fatal(err)
	}
	s, problems := shop.Read("shop.toml", data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if problems := rec.Check(plan.Names(s)); len(problems) > 0 {
		t.Error(problems)
	}
	if rec.Kind != "commissioning" || rec.Date.String() != "2026-11-25" || rec.Role != `steward "A"` || len(rec.Readings) != len(ten) {
		t.Fatalf("%+v", rec)
	}
	want := []string{
		"hood pressure|Table saw/cabinet|1.31 in wg|Table saw|clean", "hood pressure|Planer/hood|2.05 in wg|Planer|clean", "hood pressure|Planer/hood|500 Pa|Planer|clean",
		"tap pressure|Main tap|3.4 in wg|Planer|clean", "tap pressure|Saw tap|2.2 in wg|Table saw|clean", "fan pressure|Cyclone|6.1 in wg|Table saw|clean", "filter pressure|Cyclone|0.9 in wg|Table saw|clean",
		"velocity|", "current|Cyclone|14.2 A||", "room pressure|Hall|-0.01 in wg||",
	}
	for i, r := range rec.Readings {
		if got := strings.Join([]string{r.Of, r.At, r.Value.Text, r.Use, r.Filter}, "|"); !strings.HasPrefix(got, want[i]) {
			t.Errorf("reading %d is %s, want %s", i+1, got, want[i])
		}
		if by := r.With == `U-tube 3\4` && r.Calibrated.String() == "2026-11-01"; by != strings.Contains(r.Of, "pressure") {
			t.Errorf("%s was read with %q, calibrated %s", r.Of, r.With, r.Calibrated)
		}
		if expects := r.Of != "current" && r.Of != "room pressure"; r.Expected.Given() != expects {
			t.Errorf("%s at %s: expected %q", r.Of, r.At, r.Expected.Text)
		}
	}
}

// clears empties the sheet, after a question that may be answered with no.
func (p filling) clears() {
	p.t.Helper()
	p.press("fill-clear")
	if !asked[bool](p, `document.getElementById("fill-ask").open`) {
		p.t.Error("there is no question before")
	}
	p.press("fill-no")
	if asked[string](p, ten[0].field+".value") == "" {
		p.t.Error("no clears")
	}
	p.press("fill-clear")
	p.press("fill-yes")
	if asked[string](p, ten[0].field+".value") != "" || asked[int](p, "localStorage.length") != 0 {
		p.t.Error("yes does not clear")
	}
}

// What is no reading stands in the note, a line for a row: ticks of the
// controls, smoke as a reading of what it did, points of a traverse.
func TestFillNotes(t *testing.T) {
	ctx := browser(t)
	at := publishedSheets(t, filepath.Join("testdata", "proof"))[0]
	for _, c := range []struct {
		sheet  string
		fields [][2]string
		note   string
		want   []string
	}{
		{"commissioning-controls.html", [][2]string{{noted("Saw running", 0), ""}, {noted("Saw running", 2), "1.2"}},
			"Saw running. Off: nothing moves: yes", []string{"start delay|Saw running|1.2 s"}},
		{"commissioning.html", [][2]string{{nth("smoke", "Planer/hood", "Planer", 0), ""}, {`document.querySelectorAll(".todo input")[1]`, ""}, {nth("smoke", "Planer/hood", "Planer", 2), "some by the\u202e left"}},
			"1 Before power. 1 of 10 steps ticked", []string{"smoke|Planer/hood|all drawn in, machine standing", "smoke|Planer/hood|some by the\u202e left"}},
		{"traverse.html", [][2]string{{noted("Traverse, bore 7 in, point 1", 0), "0.31"}, {noted("Traverse, bore 7 in, point 1", 1), "2230"}},
			"Traverse, bore 7 in, point 1. First hole, pressure: 0.31 in wg, First hole, speed: 2230 fpm", nil},
	} {
		p := filling{t, ctx}
		if err := chromedp.Do(ctx, chromedp.Navigate(diskHome(at.folder)+c.sheet)); err != nil {
			t.Fatal(err)
		}
		for _, f := range c.fields {
			p.write(f[0], f[1])
		}
		p.write(`document.getElementById("fill-date")`, "2026-11-26")
		asked[string](p, holdFile)
		p.press("fill-keep")
		rec, problems := record.Read("x.toml", []byte(p.file()))
		if len(problems) > 0 || asked[string](p, "window.named") != "2026-11-26-commissioning-1.toml" {
			t.Errorf("%s: %v: %s", c.sheet, problems, p.says())
			continue
		}
		if rec.Note != c.note || len(rec.Readings) != len(c.want) {
			t.Errorf("%s: note %q, %d readings", c.sheet, rec.Note, len(rec.Readings))
			continue
		}
		for i, r := range rec.Readings {
			if got := r.Of + "|" + r.At + "|" + r.Value.Text; got != c.want[i] {
				t.Errorf("%s: %q, want %q", c.sheet, got, c.want[i])
			}
		}
	}
}

var fillShut = regexp.MustCompile(`<section id="?fill"?[^>]* hidden[^>]*>|<section id="?fill-end"?[^>]* hidden[^>]*>`)

// Without the script the blanks are empty cells to write on, and what belongs
// to the script is hidden; its policy lets scripts and styles of the book in
// and no request out.
func TestFillWithoutScript(t *testing.T) {
	at := publishedSheets(t, filepath.Join("testdata", "proof"))[0]
	for _, name := range []string{"commissioning.html", "commissioning-readings.html", "commissioning-controls.html", "traverse.html"} {
		data, err := os.ReadFile(filepath.Join(at.folder, name))
		if err != nil {
			t.Fatal(err)
		}
		text := string(data)
		if n := len(fillShut.FindAllString(text, -1)); n != 2 {
			t.Errorf("%s: %d hidden parts", name, n)
		}
		if outside := fillShut.Split(text, -1)[0] + text[strings.LastIndex(text, "</section>"):]; strings.Contains(outside, "<input") {
			t.Errorf("%s has fields without its script", name)
		}
		if strings.Count(text, "></td>") < 8 {
			t.Errorf("%s has no room to write", name)
		}
		if !strings.Contains(text, "default-src 'none'") || !strings.Contains(text, "script-src 'self';") || strings.Contains(text, "connect-src") {
			t.Errorf("%s: its policy", name)
		}
	}
}

// A click hands the file to the browser's downloads, also from the disk and
// under the policy of the page.
func TestFillIsDownloaded(t *testing.T) {
	ctx := browser(t)
	at := publishedSheets(t, filepath.Join("testdata", "proof"))[0]
	into := t.TempDir()
	allow := chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, cdpbrowser.SetDownloadBehavior, cdpbrowser.SetDownloadBehaviorParams{Behavior: cdpbrowser.SetDownloadBehaviorBehaviorAllow, DownloadPath: into})
		return err
	})
	if err := chromedp.Do(ctx, allow, chromedp.Navigate(diskHome(at.folder)+"commissioning-readings.html")); err != nil {
		t.Fatal(err)
	}
	p := filling{t, ctx}
	p.write(ten[0].field, ten[0].typed)
	p.write(`document.getElementById("fill-date")`, "2026-11-27")
	p.press("fill-keep")
	name := filepath.Join(into, "2026-11-27-commissioning-1.toml")
	for range 200 {
		if data, err := os.ReadFile(name); err == nil && len(data) > 0 {
			if rec, problems := record.Read(name, data); len(problems) > 0 || len(rec.Readings) != 1 {
				t.Errorf("%v: %s", problems, data)
			}
			return
		}
		if err := chromedp.Do(ctx, chromedp.Sleep(50*time.Millisecond)); err != nil {
			t.Fatal(err)
		}
	}
	t.Errorf("no file came: %s", p.says())
}
