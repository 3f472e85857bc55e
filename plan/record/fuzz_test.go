package record

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
)

// FuzzRead reads any bytes. Nothing panics; problems are whole; what is read
// survives being written and read again, and has the same text from then on.
func FuzzRead(f *testing.F) {
	f.Add([]byte(whole))
	for _, c := range wrong {
		f.Add([]byte(c.text))
	}
	for _, piece := range hostile {
		f.Add([]byte("kind = \"service\"\ndate = 2026-11-24\nnote = " + quote(piece) + "\n"))
	}
	names := Names{Ports: []string{"Planer/hood"}, Gates: []string{"Saw gate"}, Uses: []string{"Planer"}}
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 1<<14 {
			return
		}
		r, problems := Read("f", data)
		if (r == nil) == (len(problems) == 0) {
			t.Fatalf("record %v beside %v", r != nil, problems)
		}
		for _, p := range problems {
			if line := p.Error(); p.Read == "" || p.Expected == "" || p.Do == "" || strings.ContainsAny(line, "\n\r\x00") {
				t.Fatalf("problem %q", line)
			}
		}
		if r == nil {
			return
		}
		for _, p := range r.Check(names) {
			if p.Read == "" || p.Expected == "" || p.Do == "" || !p.Known() {
				t.Fatalf("problem %q", p.Error())
			}
		}
		text := r.TOML()
		again, problems := Read("f", text)
		if len(problems) > 0 || !reflect.DeepEqual(plain(again), plain(r)) {
			t.Fatalf("%v\nread  %+v\nagain %+v\n%s", problems, r, again, text)
		}
		if twice := again.TOML(); !bytes.Equal(twice, text) {
			t.Fatalf("%s\nbecomes\n%s", text, twice)
		}
	})
}
