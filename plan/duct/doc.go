// Package duct knows how air shares itself out: a collector's ducts as a tree
// of edges, the fan that draws on it, every use of the shop, and what each
// use means for capture and carrying. It answers which machines may run
// together (RunTogether), whether a collector is big enough (BigEnough), what to
// change first (First), what helps where dust settles (Settles), and which sizes
// to choose (Choose) and how near those come (Margins).
//
// Flow is steady and incompressible at the shop's own air density. Node
// pressures are total gauge pressures. Losses are charged as the method says:
// hood, hose, size change, friction, elbows, gate, extra loss, entry, in the
// order the air meets them. Everything here is in SI units.
package duct
