package duct

import (
	"context"
	"strings"
	"testing"

	"dustbook/plan/source"
)

// Where a size is still to be chosen, no set is judged by figures.
func TestSetsWaitForSizes(t *testing.T) {
	s := mustRead(t, strings.Replace(oneHood, "[[duct]]\nname = \"Pipe\"\nto = \"Fan\"\nsize = \"100 mm\"", "[[duct]]\nname = \"Pipe\"\nto = \"Fan\"\nsize = \"choose\"", 1))
	sets, err := Reckon(s).RunTogether(context.Background(), s, nil)
	if err != nil {
		t.Fatal(err)
	}
	on := sets.All[0].On
	if len(on) != 1 || on[0].OnCurve || on[0].Why != source.Because("size-open", "Pipe") || sets.All[0].Works {
		t.Errorf("%+v", on)
	}
	s = mustRead(t, oneHood)
	if sets, _ := Reckon(s).RunTogether(context.Background(), s, nil); !sets.All[0].On[0].OnCurve {
		t.Errorf("with its size: %+v", sets.All[0].On)
	}
}
