package control

import "strconv"

// Act is what a cause does to an effect.
type Act uint8

// The acts, in the order of the key.
const (
	Nothing Act = iota
	Opens
	MayShut
	Starts
	RunsOn
	Stops
	NoStart
	Stays
	Homes
	InTurn
	GivesUp
	Barred
	Waits
	Signals
)

// acts are the sign of each act in the matrix and its name, by which its words
// are found.
var acts = [...]struct{ letter, name string }{
	Opens:   {"O", "opens"},
	MayShut: {"S", "may-shut"},
	Starts:  {"R", "runs"},
	RunsOn:  {"L", "lingers"},
	Stops:   {"X", "stops"},
	NoStart: {"N", "no-start"},
	Stays:   {"K", "keeps"},
	Homes:   {"H", "homes"},
	InTurn:  {"T", "in-turn"},
	GivesUp: {"D", "drive-off"},
	Barred:  {"B", "barred"},
	Waits:   {"W", "waits"},
	Signals: {"!", "signals"},
}

// Letter is the act's sign in the matrix; empty for nothing.
func (a Act) Letter() string { return acts[a].letter }

// Name is the stable name of the act; empty for nothing.
func (a Act) Name() string { return acts[a].name }

// Cell is what a cause does to one effect.
type Cell struct {
	Act  Act
	Turn int // in which move, from 1; nought where all move at once
}

// String is the cell's sign with its turn: "O2".
func (c Cell) String() string {
	if c.Turn == 0 {
		return c.Act.Letter()
	}
	return c.Act.Letter() + strconv.Itoa(c.Turn)
}
