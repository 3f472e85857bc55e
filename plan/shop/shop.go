// Package shop knows the shop file: its tables and fields, the names in it,
// what stands in for what it leaves out, how routes join and are cut into
// stretches, and everything that can be wrong with it.
//
// Read turns a file into a Shop or into the list of all its problems; a Shop
// is complete and resolved: names have become things, feet have become
// metres. It knows no formula of air and draws no conclusion.
package shop

import "dustbook/plan/entry"

// Read reads a shop file. The name is used in messages. On any problem the
// shop is nil and the problems are all that were found, in file order.
func Read(file string, data []byte) (*Shop, entry.Problems) {
	root, problems := entry.Read(file, data)
	if len(problems) > 0 {
		return nil, problems
	}
	r := newReader(file)
	r.readShop(root)
	if len(r.problems) > 0 {
		r.problems.Sort()
		return nil, r.problems
	}
	return r.shop, nil
}

// readShop reads the tables in an order that lets each refer to the ones
// before it; things that refer to each other are resolved at the end.
func (r *reader) readShop(root *entry.Table) {
	top := r.open(root, "", "the file")
	r.readAbout(top)
	r.readMethod(top)
	r.readRooms(top)
	r.readMachines(top)
	r.readCollectors(top)
	r.readDucts(top)
	r.readGates(top)
	r.readLeaks(top)
	r.readUses(top)
	r.readPaper(top)
	r.readRest(top)
	top.close()
	r.checkNames()
	r.resolve()
}
