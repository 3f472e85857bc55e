// Package chain knows the low-voltage chains of a control: what volts every
// device gets when the gates that move together hurt it most, what current the
// supply and the fuse of each chain have to stand, what would mend a chain that
// does not hold, and the list of wires to cut, label and pull.
//
// It goes by Ohm's law along a line of two conductors. It judges by figures
// that the shop file gives, and says which it had to assume. What may be wired,
// by whom and how is for local codes and the authority having jurisdiction.
package chain
