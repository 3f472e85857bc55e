package content

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

const svgHead = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="30" height="20">`

// showing reads a note that shows one picture.
func showing(name, data string) (*Notes, []Fault) {
	return ReadNotes(fstest.MapFS{"a.md": {Data: []byte("![it](<" + name + ">)")}, name: {Data: []byte(data)}}, testGuide())
}

// A picture goes into the book by the kind that its bytes are, with its size.
func TestPictures(t *testing.T) {
	for _, c := range []struct{ name, data, path, size string }{
		{"The Drum.PNG", pictureOf("a.png"), "note-the-drum.png", `width="3" height="2"`},
		{"p.jpeg", pictureOf("a.jpg"), "note-p.jpg", `width="3" height="2"`},
		{"wrong-ending.png", pictureOf("a.jpg"), "note-wrong-ending.jpg", `width="3" height="2"`},
		{"s.svg", pictureOf("a.svg"), "note-s.svg", `width="30" height="20"`},
		{"turned.jpg", turnedJPEG(6), "note-turned.jpg", `width="2" height="3"`},
		{"upside.jpg", turnedJPEG(3), "note-upside.jpg", `width="3" height="2"`},
		{"w.webp", "RIFF\x1a\x00\x00\x00WEBPVP8X\x0a\x00\x00\x00\x00\x00\x00\x00\x02\x00\x00\x01\x00\x00", "note-w.webp", `width="3" height="2"`},
	} {
		notes, faults := showing(c.name, c.data)
		if len(faults) > 0 {
			t.Errorf("%s: %+v", c.name, faults)
			continue
		}
		page, err := notes.Pages[0].HTML()
		if want := fmt.Sprintf(`<img src="%s" alt="it" %s>`, c.path, c.size); err != nil || !strings.Contains(page, want) {
			t.Errorf("%s: %q lacks %q (%v)", c.name, page, want, err)
		}
		if !bytes.Equal(notes.Pictures[c.path], []byte(c.data)) || len(notes.Pictures) != 1 {
			t.Errorf("%s: not in the book as it was", c.name)
		}
	}
}

// turnedJPEG is a picture of 3 by 2 pixels with an orientation in its Exif
// block, laid out as the standard for cameras has it (from memory).
func turnedJPEG(orientation uint16) string {
	exif := []byte("Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01")
	exif = binary.BigEndian.AppendUint16(exif, orientation)
	exif = append(exif, 0, 0, 0, 0, 0, 0)
	plain := pictureOf("a.jpg")
	block := binary.BigEndian.AppendUint16([]byte{0xff, 0xe1}, uint16(len(exif)+2))
	return plain[:2] + string(block) + string(exif) + plain[2:]
}

func TestPicturesRefused(t *testing.T) {
	inside := func(text string) string { return svgHead + text + "</svg>" }
	for _, c := range []struct{ name, data, said string }{
		{"a.png", "text", "a file that is no picture"},
		{"a.png", pictureOf("a.png")[:20], "a picture that cannot be read"},
		{"a.webp", "RIFF\x1a\x00\x00\x00WEBPVP9 ", "a webp picture that cannot be read"},
		{"a.png", "<html><script>alert(1)</script></html>", "a file that is no picture"},
		{"a.svg", "", "a file that is no picture"},
		{"a.svg", svgHead, "a drawing that cannot be read"},
		{"a.svg", `<svg width="1" height="1"></svg>`, "a file that is no picture"},
		{"a.svg", strings.Replace(svgHead, `width="30"`, "", 1) + "</svg>", "a drawing that does not say its size"},
		{"a.svg", strings.Replace(svgHead, `"30"`, `"30000"`, 1) + "</svg>", "a picture of 20001 by 20 pixels"},
		{"a.svg", inside("<script>alert(1)</script>"), "the element <script>"},
		{"a.svg", inside(`<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">a</p></foreignObject>`), "the element <foreignObject>"},
		{"a.svg", inside(`<x:iframe xmlns:x="http://www.w3.org/1999/xhtml"/>`), "the element <iframe>"},
		{"a.svg", inside(`<animate attributeName="href" values="javascript:alert(1)"/>`), "the element <animate>"},
		{"a.svg", inside(`<set attributeName="onload" to="alert(1)"/>`), "the element <set>"},
		{"a.svg", inside(`<a href="javascript:alert(1)"/>`), "the element <a>"},
		{"a.svg", inside(`<rect onclick="alert(1)"/>`), "a drawing that acts: onclick"},
		{"a.svg", inside(`<rect ONLOAD="alert(1)"/>`), "a drawing that acts: onload"},
		{"a.svg", inside(`<use href="https://example.org/a.svg#b"/>`), "a drawing that leads to another file"},
		{"a.svg", inside(`<use xlink:href="b.svg#c"/>`), "a drawing that leads to another file"},
		{"a.svg", inside(`<image href="data:image/svg+xml;base64,AAAA"/>`), "a drawing that leads to another file"},
		{"a.svg", inside(`<rect fill="url(https://example.org/x)"/>`), asksForMore},
		{"a.svg", inside(`<style>@import "x.css";</style>`), asksForMore},
		{"a.svg", inside(`<style>rect{fill:u<!-- -->rl(//example.org)}</style>`), asksForMore},
		{"a.svg", inside(`<style>@\69mport "x"</style>`), asksForMore},
		{"a.svg", `<?xml-stylesheet href="x.css"?>` + svgHead + "</svg>", "a drawing with an instruction to the reader"},
		{"a.svg", `<!DOCTYPE svg [<!ENTITY a "b">]>` + inside("&a;"), "a drawing that declares entities"},
	} {
		_, faults := showing(c.name, c.data)
		if len(faults) != 1 || faults[0].File != c.name || !strings.Contains(faults[0].Read, c.said) {
			t.Errorf("%.90q: %+v, want %q", c.data, faults, c.said)
		}
	}
}

// What drawing programs write into a drawing passes.
func TestDrawingsPass(t *testing.T) {
	for _, text := range []string{
		`<use href="#a"/><g id="a" style="fill:url(#b)"/>`, `<image href="data:image/png;base64,AAAA"/>`, `<x:view xmlns:x="urn:x" x:on="1"/>`, `<style>rect { fill: red }</style>`,
		`<title>a &amp; b</title><text x="1" y="2">(url) @ 5</text>`, `<!-- remark -->`,
	} {
		if _, faults := showing("a.svg", svgHead+text+"</svg>"); len(faults) > 0 {
			t.Errorf("%s: %+v", text, faults)
		}
	}
	for _, head := range []string{`<?xml version="1.0"?><!DOCTYPE svg PUBLIC "-" "x.dtd">` + svgHead, strings.Replace(svgHead, `width="30" height="20"`, `viewBox="0 0 30 20"`, 1), strings.Replace(svgHead, `width="30" height="20"`, `width="1in" viewBox="0 0 30 20"`, 1)} {
		if _, faults := showing("a.svg", head+"</svg>"); len(faults) > 0 {
			t.Errorf("%s: %+v", head, faults)
		}
	}
}

// Pictures are bounded in size, alone and together; only those shown are read.
func TestPictureBounds(t *testing.T) {
	pad := func(to int) string {
		plain := pictureOf("a.png")
		return plain + strings.Repeat("\x00", to-len(plain))
	}
	if _, faults := showing("a.png", pad(mostPictureBytes)); len(faults) > 0 {
		t.Errorf("within: %+v", faults)
	}
	if _, faults := showing("a.png", pad(mostPictureBytes+1)); len(faults) != 1 || faults[0].Read != "more than 8 MiB" {
		t.Errorf("beyond: %+v", faults)
	}
	big, folder := []byte(pad(mostPictureBytes)), fstest.MapFS{}
	var text strings.Builder
	for i := range 1 + mostPicturesBytes/mostPictureBytes {
		name := fmt.Sprintf("p%d.png", i)
		folder[name] = &fstest.MapFile{Data: big}
		fmt.Fprintf(&text, "![a](%s)\n", name)
	}
	folder["a.md"] = &fstest.MapFile{Data: []byte(text.String())}
	if _, faults := ReadNotes(folder, testGuide()); len(faults) != 1 || !strings.Contains(faults[0].Read, "more than 64 MiB together") {
		t.Errorf("together: %+v", faults)
	}
	folder["a.md"] = &fstest.MapFile{Data: []byte("![a](p0.png) ![b](p0.png)")}
	if notes, faults := ReadNotes(folder, testGuide()); len(faults) > 0 || len(notes.Pictures) != 1 {
		t.Errorf("one of them: %+v", faults)
	}
	if _, faults := ReadNotes(fstest.MapFS{"a.md": {Data: []byte("![a](A.png) ![b](a.png)")}, "A.png": {Data: []byte(pictureOf("a.png"))}, "a.png": {Data: []byte(pictureOf("a.png"))}}, testGuide()); len(faults) != 1 || !strings.Contains(faults[0].Read, "makes the same file") {
		t.Errorf("the same name: %+v", faults)
	}
}
