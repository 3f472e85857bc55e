package checks_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"testing"

	"dustbook/checks"
	"dustbook/plan/source"
)

// Every row of the rules can be reached: it is the first of its figure in its
// pack, or the shop can name its edition. A text of one place is among those
// that can be named, for it decides only then.
func TestEveryRowCanBeNamed(t *testing.T) {
	first := map[[2]string]bool{}
	for _, r := range checks.Rules() {
		at := [2]string{r.Rules, r.Figure}
		leads := !first[at]
		first[at] = true
		if leads && r.Place == "" {
			continue
		}
		d, known := source.FindDocument(r.Basis.Document)
		if !known || !slices.Contains(checks.Editions(d.Short), r.Basis.Edition()) {
			t.Errorf("%s under %s: nobody can name %s of %s", r.Figure, r.Rules, r.Basis.Edition(), d.Short)
		}
	}
}

// A text of one place decides nothing for the rest of its pack: no shop that does
// not name it is told met, not met or in play by it.
func TestTextOfOnePlace(t *testing.T) {
	places := 0
	for _, r := range checks.Rules() {
		if r.Place == "" {
			continue
		}
		places++
		c := ruleCases[slices.IndexFunc(ruleCases, func(c ruleCase) bool { return c.figure == r.Figure })]
		pack := change{`rules = "us"`, `rules = "` + r.Rules + `"`}
		for _, changes := range [][]change{c.kept, c.broken} {
			if f := found(t, c, append(slices.Clone(changes), pack)...); f.State != checks.Ask && f.State != checks.Advice {
				t.Errorf("%s under %s, a text of %s: %s: %s", r.Figure, r.Rules, r.Place, f.State, f.Says)
			}
		}
	}
	if places < 3 {
		t.Errorf("%d rows of texts of one place, want three or more", places)
	}
}

// A pack adds figures, never code: nothing in the checks holds the pack of a shop,
// or of a row, against a word.
func TestNoPackInCode(t *testing.T) {
	for name, file := range sourceFiles(t) {
		ast.Inspect(file, func(n ast.Node) bool {
			if word, at := packAgainst(n); word != nil {
				t.Errorf("%s: a pack of rules is held against %s", name, at)
			}
			return true
		})
	}
}

// packAgainst is the word that a comparison or a switch holds a pack against; nil
// where there is none.
func packAgainst(n ast.Node) (word ast.Expr, text string) {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		for _, sides := range [][2]ast.Expr{{n.X, n.Y}, {n.Y, n.X}} {
			if l, is := sides[1].(*ast.BasicLit); is && l.Kind == token.STRING && isPack(sides[0]) {
				return l, l.Value
			}
		}
	case *ast.SwitchStmt:
		if n.Tag != nil && isPack(n.Tag) {
			return n.Tag, "the words of a switch"
		}
	}
	return nil, ""
}

func isPack(x ast.Expr) bool {
	s, is := x.(*ast.SelectorExpr)
	return is && s.Sel.Name == "Rules"
}

// The rule itself: what it catches, and what it lets pass.
func TestRuleOfPacks(t *testing.T) {
	for code, caught := range map[string]bool{
		`s.Rules == "us"`:                      true,
		`"none" != p.Shop.Rules`:               true,
		`func() { switch s.Rules { } }`:        true,
		`r.Rules != s.Rules`:                   false,
		`r.Text("rules") == p.Shop.Rules`:      false,
		`s.Setting.V == "home" && s.Name != r`: false,
	} {
		x, err := parser.ParseExpr(code)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		ast.Inspect(x, func(n ast.Node) bool {
			if word, _ := packAgainst(n); word != nil {
				found = true
			}
			return true
		})
		if found != caught {
			t.Errorf("%s: caught is %v, want %v", code, found, caught)
		}
	}
}
