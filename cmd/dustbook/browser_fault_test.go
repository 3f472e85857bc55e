package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// soundHead begins a page that has everything a sheet needs.
const soundHead = `<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><link rel="icon" href="data:,"><title>t</title>`

// page writes a page into a folder of its own.
func page(t *testing.T, name, body string) published {
	t.Helper()
	at := published{"trial", t.TempDir(), name + ".html"}
	if err := os.WriteFile(filepath.Join(at.folder, at.name), []byte(soundHead+body), 0o666); err != nil {
		t.Fatal(err)
	}
	return at
}

// The look at a sheet finds what it is there to find.
func TestALookFindsFaults(t *testing.T) {
	ctx := browser(t)
	for name, c := range map[string]struct{ body, want string }{
		"sound":     {`<h1>Sheet</h1><p>words`, ""},
		"console":   {`<h1>Sheet</h1><script>console.error("broken")</script>`, "broken"},
		"mutter":    {`<h1>Sheet</h1><script>console.log("just so")</script>`, "just so"},
		"exception": {`<h1>Sheet</h1><script>nothing.at.all()</script>`, "nothing is not defined"},
		"missing":   {`<h1>Sheet</h1><img src="gone.png" alt="">`, "gone.png"},
		"request":   {`<h1>Sheet</h1><img src="http://127.0.0.1:9/x.png" alt="">`, "asks for http://127.0.0.1:9/x.png"},
		"above":     {`<h1>Sheet</h1><img src="../above.png" alt="">`, "above.png"},
		"root":      {`<h1>Sheet</h1><img src="/root.png" alt="">`, "root.png"},
		"wide":      {`<h1>Sheet</h1><div id="broad" style="width:1500px">wide</div>`, "sideways scroll"},
		"headless":  {`<h2>Sheet</h2>`, "h1"},
	} {
		for v := range page(t, name, c.body).views(t) {
			_, faults := lookAt(ctx, v)
			said := strings.Join(faults, "; ")
			if c.want == "" && said != "" || !strings.Contains(said, c.want) {
				t.Errorf("%s: %q, want %q", v, said, c.want)
			}
		}
	}
}

// A look sees the colours it asks for.
func TestALookIsLightOrDark(t *testing.T) {
	ctx := browser(t)
	const body = `<style>@media (prefers-color-scheme: dark) { div { width: 1500px } }</style><h1>Sheet</h1><div>words</div>`
	for v := range page(t, "scheme", body).views(t) {
		_, faults := lookAt(ctx, v)
		if wide := strings.Contains(strings.Join(faults, "; "), "sideways scroll"); wide != v.dark {
			t.Errorf("%s: %q", v, faults)
		}
	}
}
