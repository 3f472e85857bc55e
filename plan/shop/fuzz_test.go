package shop

import (
	"testing"
)

// FuzzRead: any bytes give a shop or problems, the same ones each time, and
// no panic.
func FuzzRead(f *testing.F) {
	for _, path := range shops {
		f.Add([]byte(file(f, path)))
	}
	for name := range hostile {
		f.Add([]byte(hostileText(name, 2000)))
	}
	f.Add([]byte(bare))
	f.Add([]byte(yard(side("A", 15, 0, 9), duct("B", "A", `length = "0 ft"`))))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, problems := Read("shop.toml", data)
		if (s == nil) == (len(problems) == 0) {
			t.Fatalf("a shop: %v, and %d problems", s != nil, len(problems))
		}
		if s != nil {
			checkShop(t, s)
			if describe(s) != outcome(string(data)) {
				t.Error("another shop when read again")
			}
			return
		}
		for _, p := range problems {
			if p.Read == "" || p.Expected == "" || p.Do == "" {
				t.Errorf("it does not say all: %+v", p)
			}
		}
		if problems.Error() != outcome(string(data)) {
			t.Error("other problems when read again")
		}
	})
}
