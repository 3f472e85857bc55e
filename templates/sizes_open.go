package templates

import (
	"strings"

	"dustbook/checks"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// sizesPath is the sheet of the sizes to choose.
const sizesPath = "sizes.html"

// unsized reports whether a collector has ducts whose size is still to be
// chosen, so that nothing is known of its air; any collector, where it is nil.
func (b *Book) unsized(c *shop.Collector) bool { return len(b.Plan.Shop.Unsized(c)) > 0 }

// unsizedNames are the names of those ducts.
func (b *Book) unsizedNames(c *shop.Collector) []string {
	return namesIn(b.Plan.Shop.Unsized(c), func(d *shop.Duct) string { return d.Name })
}

// openSizes is the verdict of a sheet that waits for the sizes of a collector's
// ducts, or of any where it is nil.
func (b *Book) openSizes(c *shop.Collector) Verdict {
	return Verdict{Words: []Word{{"blank", b.words.Text("sizes.word.open")}}, Says: b.words.Text("sizes.open.says", b.few(b.unsizedNames(c))), Do: b.words.Text("sizes.open.do"), Sizes: sizesPath}
}

// openSizes is the verdict of two layouts side by side while one of them waits
// for sizes: nobody can tell which serves more.
func (v *beside) openSizes() Verdict {
	out := Verdict{Words: []Word{{"blank", v.words.Text("sizes.word.open")}}, Do: v.words.Text("sizes.open.beside-do")}
	var says []string
	if v.this.unsized(nil) {
		says, out.Sizes = append(says, v.words.Text("sizes.open.this", v.this.few(v.this.unsizedNames(nil)))), sizesPath
	}
	if v.other.unsized(nil) {
		says = append(says, v.words.Text("sizes.open.other", v.this.few(v.other.unsizedNames(nil))))
	}
	out.Says = strings.Join(says, " ")
	return out
}

// waitsForSizes is the path of the sheet of sizes where a finding waits for those.
func waitsForSizes(f *checks.Finding) string {
	if f.Sizes {
		return sizesPath
	}
	return ""
}

// sizeWords is a size, or that it is still to be chosen.
func (b *Book) sizeWords(size unit.Length) string {
	if size == 0 {
		return b.words.Text("sizes.open.size")
	}
	return unit.Size.Print(b.units, size)
}
