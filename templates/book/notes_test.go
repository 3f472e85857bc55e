package book_test

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"strings"
	"testing"
	"testing/fstest"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/entry"
	"dustbook/templates/book"
)

func notesFolder(t testing.TB, files map[string]string) fstest.MapFS {
	t.Helper()
	var picture bytes.Buffer
	if err := png.Encode(&picture, image.NewRGBA(image.Rect(0, 0, 3, 2))); err != nil {
		t.Fatal(err)
	}
	folder := fstest.MapFS{"gate.png": {Data: picture.Bytes()}, "unused.png": {Data: []byte("no picture")}}
	for name, text := range files {
		folder[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return folder
}

// The example's notes are sheets of its book, of both example shops since they
// lie beside both.
func TestExampleNotes(t *testing.T) {
	for _, text := range [][]byte{content.Example(), content.Small()} {
		files := bookWith(t, text, content.ExampleNotes(), 2)
		for _, path := range []string{"note-emptying.html", "note-who-to-ask.html"} {
			checkPage(t, path, files[path])
			if !strings.Contains(string(files["contents.html"]), `href="`+path+`"`) || !strings.Contains(string(files[book.Manifest]), "  "+path+"\n") {
				t.Errorf("%s is not in the contents, or not in the manifest", path)
			}
		}
		for _, want := range []string{`href="use-planer.html"`, `href="ducts.html#gate-planer-gate"`, `href="check-fine-dust-in-bin.html"`, `href="note-who-to-ask.html"`} {
			if !strings.Contains(string(files["note-emptying.html"]), want) {
				t.Errorf("the note lacks %s", want)
			}
		}
	}
}

// Every kind of link leads to a sheet; what is shown is in the book.
func TestNotesInBook(t *testing.T) {
	notes := notesFolder(t, map[string]string{"a.md": `# Ours

[a](machine:Planer) [b](card:Planer) [c](<gate:Saw gate>) [d](duct:Trunk) [e](collector:Cyclone) [f](<room:Machine hall>) [g](<use:Both sanders>) [h](use:Lathe)
[i](<trigger:Saw running>) [j](<chain:East chain>) [k](check:open-flue) [l](sheet:findings) [the pipe][Trunk] [m](https://example.org/?a=1&b=2) <https://example.org/b> [n](mailto:shop@example.org) [o](tel:+15550100)

![the gate](gate.png "The gate, open")
`})
	files := bookWith(t, content.Example(), notes, 2)
	page := string(files["note-a.html"])
	for _, want := range []string{"use-planer.html", "card-planer.html", "ducts.html#gate-saw-gate", "ducts.html#duct-trunk", "collector-cyclone.html", "plan.html#room-machine-hall", "use-both-sanders.html", "use-lathe.html",
		"wiring-east-chain.html", "check-open-flue.html", "findings.html", "https://example.org/?a=1&amp;b=2", "mailto:shop@example.org", "tel:+15550100"} {
		if !strings.Contains(page, `href="`+want) {
			t.Errorf("no link to %s", want)
		}
	}
	if !strings.Contains(page, `src="note-gate.png"`) || !bytes.Equal(files["note-gate.png"], notes["gate.png"].Data) {
		t.Error("the picture is not in the book as it was")
	}
	if !strings.Contains(string(files[book.Manifest]), "  note-gate.png\n") {
		t.Error("the manifest lacks the picture")
	}
	for path := range files {
		if strings.Contains(path, "unused") {
			t.Errorf("%s is shown nowhere", path)
		}
	}
	if first := sums(files); first != sums(bookWith(t, content.Example(), notes, 1)) || first != sums(bookWith(t, content.Example(), notes, 7)) {
		t.Error("another count of workers makes another book")
	}
	delete(notes, "a.md")
	if sums(bookWith(t, content.Example(), notes, 2)) != sums(bookOf(t, content.Example(), 2)) {
		t.Error("a folder without notes changes the book")
	}
}

// Faults of notes are problems with their places, and there is no book.
func TestNotesWithFaults(t *testing.T) {
	p := planOf(t, content.Small())
	files, err := book.Make(p, checks.Run(p), notesFolder(t, map[string]string{"a.md": "# A\n\n[a](machine:Plane)\n\n[b](<gate:Saw gates>) [c](sheet:index)", "b.md": "<b>"}), 2)
	var problems entry.Problems
	if files != nil || !errors.As(err, &problems) {
		t.Fatal(err)
	}
	want := `notes/a.md:3:1: read machine:Plane; expected a machine of the shop; do: write machine:Planer
notes/a.md:5:1: read <gate:Saw gates>; expected a gate of the shop; do: write <gate:Saw gate>
notes/b.md:1:1: read "<b>"; expected Markdown without HTML; do: write it in Markdown; for the sign itself, write \<`
	if got := problems.Error(); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// Notes whose text does what it may to a page give whole pages in which
// nothing runs.
func TestHostileNotesInBook(t *testing.T) {
	files := bookWith(t, content.Small(), notesFolder(t, map[string]string{
		"a.md": "# \u202eevil & `<script>`\n\n" + strings.Repeat("W", 10000) + " 🪚 \u2066x `<script>alert(1)</script>` {{.}} ../../etc\n\n    <img src=x onerror=alert(1)>\n\n![\"onerror=\"x](gate.png \"'><b\")\n\n- [ ] [\"onclick=\"x](machine:Planer '\"onclick=\"x')\n",
		"..md": "hidden <script>", "..": "hidden", "'><img src=x>.md": "text of a note whose name is markup", "日本.md": "text",
	}), 2)
	pages := 0
	for path, data := range files {
		if !strings.HasPrefix(path, "note-") || !strings.HasSuffix(path, ".html") {
			continue
		}
		pages++
		text, elements := readText(t, path, data)
		if elements["script"] > 0 || path != "note-a.html" && elements["img"] > 0 || elements["img"] > 1 {
			t.Errorf("%s holds markup of the note", path)
		}
		if bytes.Contains(data, []byte(" onerror=\"")) || bytes.Contains(data, []byte(" onclick=\"")) || strings.Contains(text, "<no value>") {
			t.Errorf("%s holds code of the note", path)
		}
		if path == "note-a.html" && !strings.Contains(text, "{{.}}") {
			t.Errorf("%s took the text for a template", path)
		}
	}
	if pages != 3 {
		t.Errorf("%d pages", pages)
	}
}
