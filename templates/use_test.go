package templates

import (
	"strings"
	"testing"

	"dustbook/content"
)

// A machine that no duct serves has a sheet of its use and no working, and its
// sheet leads to none; one that a duct serves has both.
func TestUseWithoutADuct(t *testing.T) {
	b := newBook(t, string(content.Example())+"[[machine]]\nname = \"Drill\"\nkind = \"drill press\"\n")
	sheets := map[string]bool{}
	for _, s := range b.Sheets {
		sheets[s.Path] = true
	}
	for name, working := range map[string]bool{"drill": false, "planer": true} {
		link := `href="working-` + name + `.html"`
		if got := strings.Contains(pageOf(t, b, "use-"+name+".html"), link); got != working || sheets["working-"+name+".html"] != working {
			t.Errorf("%s: leads to its working: %v, has one: %v", name, got, sheets["working-"+name+".html"])
		}
	}
}
