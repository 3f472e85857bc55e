package duct

import (
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// mustRead reads a shop file that has no fault.
func mustRead(t testing.TB, text string) *shop.Shop {
	t.Helper()
	s, problems := shop.Read("shop.toml", []byte(text))
	if s == nil {
		t.Fatalf("%v\n%s", problems, text)
	}
	return s
}

// theUse finds a use by its name.
func theUse(t testing.TB, k *Reckoning, name string) *Use {
	t.Helper()
	for _, u := range k.Uses {
		if u.Name == name {
			return u
		}
	}
	t.Fatalf("no use %q", name)
	return nil
}

// theResult finds the one result of a use with the filter in one state.
func theResult(t testing.TB, k *Reckoning, name, filter string) *Result {
	t.Helper()
	var found *Result
	for _, r := range theUse(t, k, name).Results {
		if r.Filter == filter {
			if found != nil {
				t.Fatalf("two results of %q with the filter %s", name, filter)
			}
			found = r
		}
	}
	if found == nil {
		t.Fatalf("no result of %q with the filter %s", name, filter)
	}
	return found
}

// replaced is a text with one part of it changed, which must be there.
func replaced(t testing.TB, text, old, new string) string {
	t.Helper()
	if !strings.Contains(text, old) {
		t.Fatalf("no %q in the text", old)
	}
	return strings.ReplaceAll(text, old, new)
}
