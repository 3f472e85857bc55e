package duct

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Block is why no stock size fits a duct: it must be as wide as what empties
// into it, and no wider than what it empties into.
type Block struct {
	Duct     *shop.Duct
	Above    *shop.Duct // whose given size it must have at least; nil where there is none
	Below    *shop.Duct // whose given size it may have at most; nil where it is the collector's inlet
	From, To unit.Length
	Stock    unit.Length // the smallest size that is stocked
}

// block is the first duct to be chosen, in file order, that no stock size fits;
// nil where each has one.
func (c *chooser) block() *Block {
	for _, at := range c.inFile {
		b := &Block{Duct: c.ducts[at], Stock: c.sizes[at][0].nominal}
		b.Below, b.To = c.ceiling(b.Duct)
		b.Above, b.From = c.floor(b.Duct)
		fits := false
		for _, size := range c.sizes[at] {
			fits = fits || unit.AtLeast(float64(size.nominal), float64(b.From)) && unit.AtLeast(float64(b.To), float64(size.nominal))
		}
		if !fits {
			return b
		}
	}
	return nil
}

// ceiling is the first given size on a duct's way, and the duct that has
// it; none for the collector's inlet.
func (c *chooser) ceiling(d *shop.Duct) (of *shop.Duct, size unit.Length) {
	size = c.tree.Collector.Inlet
	for into := d.Into; into != nil; into = into.Into {
		if _, chosen := c.place[into]; !chosen {
			return into, into.Size
		}
	}
	return nil, size
}

// floor is the widest given size of what empties into a duct, through ducts to
// be chosen, and the duct that has it.
func (c *chooser) floor(d *shop.Duct) (of *shop.Duct, size unit.Length) {
	for _, other := range d.Joined {
		at, own := other, other.Size
		if _, chosen := c.place[other]; chosen {
			at, own = c.floor(other)
		}
		if unit.Compare(float64(own), float64(size)) > 0 {
			of, size = at, own
		}
	}
	return of, size
}
