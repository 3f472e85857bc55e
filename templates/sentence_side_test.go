package templates

import (
	"strings"
	"testing"
)

// The far side: what must be found in code, and what must not.
func TestSentencesAreFound(t *testing.T) {
	for _, c := range []struct {
		code  string
		found int
	}{
		{`s.Lede = "Every trigger and what it opens."`, 1},
		{`return "Signal"`, 1},
		{`v.Says += " and " + name`, 1},
		{`text := name + ", listing: " + word`, 1},
		{`text := "off " + amps`, 1},
		{`return "not given"`, 1},
		{`row.Comes = "pressed"`, 1},
		{`return Verdict{Words: []Word{{"blank", "begun"}}}`, 1},
		{`return Word{"met", "fine"}`, 1},
		{`return Sheet{Path: "plan.html", Title: "plan"}`, 1},
		{`return fmt.Sprintf("%d of %s measured", n, s)`, 1},
		{`return fmt.Sprintf("%d older:", n)`, 1},
		{`return trusted("<b>Stop</b>")`, 1},
		{`return trusted("<p class=\"note\">no figures here</p>")`, 1},
		{`b.words.Text("plan.title", "The plan")`, 1},
		{`return count(n, "gate moves", "gates move")`, 2},
		{`return [2]string{"Sensor", turns}`, 1},
		{`switch s { case "off the way": return "Off the way" }`, 1},
		{`out.begin("svg", "aria-label", "Plan of the shop")`, 1},
		{`return word["a key"] + "A text"`, 1},
		{`return "¿Humo u olor?"`, 1},
		{"add(` aria-label=\"plan\"`)", 1},
		{"add(`\" class=\"a\">Stop now</p>`)", 1},
		{`return watts + " W"`, 0},
		{`return width + " mm"`, 1},

		{`return b.words.Text("plan.title")`, 0},
		{`return b.words.Count("isometric.stretches", n)`, 0},
		{`s.Path = "plan.html"`, 0},
		{`return "use-" + slug + ".html"`, 0},
		{`return Word{"met", b.words.Text("records.agrees")}`, 0},
		{`s.Kind = "plan"`, 0},
		{`panic("content: there is no text " + key)`, 0},
		{`return fmt.Errorf("the prose of %s: %w", id, err)`, 0},
		{`return senses == "a word of the file" || "Another" != senses`, 0},
		{`switch s { case "off the way": return "" }`, 0},
		{`one, other, two := strings.Cut(text, " from ")`, 0},
		{`return b.Path("gate card", name)`, 0},
		{`return trusted("<a href=\"" + path + "\">" + name + "</a>")`, 0},
		{`out.begin("svg", "class", "drawn fill-ink", "font-family", "Arial, sans-serif")`, 0},
		{`return word["Some key"]`, 0},
		{`return of == "hood pressure" || find("hood pressure")`, 0},
		{`return "2 × " + cable`, 0},
		{`return strings.Join(list, ", ")`, 0},
		{`return "M20 32h200"`, 0},
		{"add(`\" stroke-linejoin=\"round\" stroke=\"`, ink)", 0},
		{"add(` class=\"drawn fill-ink\"/>`)", 0},
	} {
		found, err := spoken("sample.go", "package sample\n\nimport \"some path/with words\"\n\nfunc f() any {\n"+c.code+"\n}\n")
		if err != nil {
			t.Fatalf("%s: %v", c.code, err)
		}
		if len(found) != c.found {
			t.Errorf("%s: found %q, want %d", c.code, found, c.found)
		}
	}
	if vocabulary()["not given"] || !vocabulary()["floor sweep"] {
		t.Error("the words of shop files are not as they were")
	}
}

// The far side: what must be found in a template, and what must not.
func TestSentencesOfPagesAreFound(t *testing.T) {
	for _, c := range []struct {
		page  string
		found int
	}{
		{`<p>No figures: {{.Why}}.</p>`, 1},
		{`<h2>{{if .A}}Of{{else}}{{say "plan.title"}}{{end}}</h2>`, 1},
		{`<p>{{.Low}} to {{.High}}</p>`, 1},
		{`<div aria-label="Fields of {{.Name}}"></div>`, 1},
		{`<img alt="the plan"><a title='{{.Name}}: more'>{{.Name}}</a>`, 2},
		{`<input placeholder="{{if .A}}name{{end}}">`, 1},
		{`{{define "part"}}<td>none</td>{{end}}{{template "part" .}}`, 1},
		{`{{template "state.html" (word "met" "all well")}}`, 1},
		{`{{with .A}}{{or .B "not given"}}{{end}}`, 1},
		{`<code>[[tap]]</code>`, 1},
		{`<title>Plan</title>`, 1},
		{`<p>&eacute;t&eacute;</p>`, 1},

		{`<h2>{{say "plan.title"}}</h2><p>{{count "isometric.stretches" .N}}</p>`, 0},
		{`<div class="scroll wide" role="region" aria-label="{{say "plan.title"}}" tabindex="0"></div>`, 0},
		{`<th scope="col">f</th><th>{{.Sign}} %, {{.B}}; “{{.C}}” K</th>`, 0},
		{`{{if eq .Kind "some words"}}<hr>{{end}}{{join .List " · "}}`, 0},
		{`<p{{with .Language}} lang="{{.}}"{{end}} class="a{{if .First}} edge{{end}}">{{.Says}}</p>`, 0},
		{`{{define "a part"}}<br>{{end}}{{template "a part" .}}`, 0},
		{`<!-- a note for who reads the source --><meta name="viewport" content="width=device-width">`, 0},
	} {
		found, err := spokenPage("sample.html", c.page)
		if err != nil {
			t.Fatalf("%s: %v", c.page, err)
		}
		if len(found) != c.found {
			t.Errorf("%s: found %q, want %d", c.page, strings.Join(found, "; "), c.found)
		}
	}
}
