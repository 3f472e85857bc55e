// Package drawing knows how a shop is drawn: the floor plan with its ducts,
// each collector's ducts in isometric and, in a use, as a single-line diagram,
// the fan's chart and the pressure along a run, as SVG. Key lists the marks of
// all drawings with a sample, and every class.
//
// Every drawing is one complete <svg> element for a page, with a title and a
// description that say in words what it shows. Colours are class names (see
// Classes); each shape, or the group of shapes drawn alike that it stands in,
// also carries plain black-and-white attributes, so that a drawing reads
// without a style sheet and in print. State is told by shape,
// hatch and line weight: a gate's blade is drawn out or across, an open way is
// filled, edged heavily and marked with arrows, a machine in use has a heavy
// outline. There is no style attribute, no style element and no script.
//
// The plan keeps the file's own coordinates: x to the right, y down the
// sheet. A shop much deeper than wide is turned a quarter to the left, so
// that it fills a landscape sheet; the drawing then says so. Nothing says
// where north is, and no arrow is drawn for it.
//
// A duct runs as its route does, seen from above; a run straight up or down is
// a mark. Of two that cross without joining the upper one is drawn through. A
// gate stands on its own stretch, as near to its place as it can be seen: on a
// drop inside a machine's box, just outside it. The file gives a point for a
// machine, so its box is as large as a common footprint or as its name. Ducts
// without a route stand below as a tree in order, to no scale.
//
// The isometric is true, 30 degrees, from the corner of the shop from which
// least of the ducts is hidden; lengths along the three axes are to one
// scale. Stretches are numbered from the collector outwards (see InOrder).
//
// Sizes are in drawing units. A drawing shown one to one has a unit of one
// CSS pixel, and no text smaller than 13 units; its width and height
// attributes give that size. A page that is narrower scrolls it.
//
// Positions are whole tenths of a unit, made once from the shop's metres
// (unit.Six, then one decimal); what follows is reckoned from those whole
// numbers, so that every machine draws the same bytes. Labels are placed by
// rule with the widths in widths.csv; none lies on another. Where space is
// short the drawing grows; where that would be much, it leaves out what the
// machine beside a label or the table below it says, and says so.
//
// It reckons no air: flows, speeds and pressures come from plan/duct.
package drawing

// SVG is one complete <svg> element, escaped and ready to stand in a page.
type SVG string
