package templates

import (
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"
	"text/template/parse"
	"unicode"

	"golang.org/x/net/html"
)

// What a page shows stands as a row: no template holds words of its own.
func TestNoSentenceInTemplates(t *testing.T) {
	files, err := pageFiles.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var looked []string
	for _, f := range files {
		looked = append(looked, f.Name())
		data, err := pageFiles.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		found, err := spokenPage(f.Name(), string(data))
		if err != nil {
			t.Fatal(err)
		}
		judge(t, f.Name(), found)
	}
	if len(looked) < 25 {
		t.Errorf("only %d templates were looked at", len(looked))
	}
	allThere(t, ".html", looked)
}

// spokenPage lists the words that a template shows by itself: in its text, in
// the attributes that people read, and in the literals of its actions.
func spokenPage(name, text string) ([]string, error) {
	first := parse.New(name)
	first.Mode = parse.SkipFuncCheck
	all := map[string]*parse.Tree{}
	if _, err := first.Parse(text, "", "", all); err != nil {
		return nil, err
	}
	var found []string
	for _, tree := range all {
		flat := flatten(tree.Root, func(literal string) {
			if reads(literal) || lower.MatchString(literal) {
				found = append(found, fmt.Sprintf("%s: %q in an action", name, literal))
			}
		})
		found = append(found, words(name, flat)...)
	}
	slices.Sort(found)
	return found, nil
}

// action stands for what an action writes: no letter, and no sign of HTML.
const action = "\ue000"

// flatten is a template's own text with every way through it one behind the
// other, and tells of the literals of its actions.
func flatten(n parse.Node, literal func(string)) string {
	switch n := n.(type) {
	case *parse.ListNode:
		text := ""
		if n != nil {
			for _, one := range n.Nodes {
				text += flatten(one, literal)
			}
		}
		return text
	case *parse.TextNode:
		return string(n.Text)
	case *parse.ActionNode:
		literals(n.Pipe, literal)
		return action
	case *parse.IfNode:
		return branches(&n.BranchNode, literal)
	case *parse.RangeNode:
		return branches(&n.BranchNode, literal)
	case *parse.WithNode:
		return branches(&n.BranchNode, literal)
	case *parse.TemplateNode:
		literals(n.Pipe, literal)
		return action
	}
	return ""
}

func branches(n *parse.BranchNode, literal func(string)) string {
	literals(n.Pipe, literal)
	return flatten(n.List, literal) + flatten(n.ElseList, literal)
}

// quietFunctions take literals that no page shows: keys of rows, and texts to
// compare with.
var quietFunctions = []string{"say", "count", "eq", "ne", "index", "join"}

// literals tells of the literals of a pipeline that a page could show. Of word,
// the first is a class.
func literals(pipe *parse.PipeNode, literal func(string)) {
	if pipe == nil {
		return
	}
	for _, cmd := range pipe.Cmds {
		function := cmd.Args[0].String()
		for i, arg := range cmd.Args {
			switch arg := arg.(type) {
			case *parse.StringNode:
				if !(slices.Contains(quietFunctions, function) || function == "word" && i == 1) {
					literal(arg.Text)
				}
			case *parse.PipeNode:
				literals(arg, literal)
			}
		}
	}
}

// readAttributes are the attributes that people read or hear.
var readAttributes = []string{"alt", "title", "aria-label", "aria-description", "aria-roledescription", "placeholder", "label"}

var twoLetters = regexp.MustCompile(`\pL[\pL\pM'’-]*\pL`)

// words lists what has two letters or more in the text of HTML and in the
// attributes that people read.
func words(name, text string) []string {
	var found []string
	tell := func(where, text string) {
		if twoLetters.MatchString(text) {
			found = append(found, fmt.Sprintf("%s: %q %s", name, strings.TrimFunc(text, unicode.IsSpace), where))
		}
	}
	z := html.NewTokenizer(strings.NewReader(text))
	for z.Next() != html.ErrorToken {
		token := z.Token()
		switch token.Type {
		case html.TextToken:
			tell("in the text", token.Data)
		case html.StartTagToken, html.SelfClosingTagToken:
			for _, a := range token.Attr {
				if slices.Contains(readAttributes, a.Key) {
					tell("in "+a.Key, a.Val)
				}
			}
		}
	}
	if z.Err() != io.EOF {
		found = append(found, fmt.Sprintf("%s: %v", name, z.Err()))
	}
	return found
}
