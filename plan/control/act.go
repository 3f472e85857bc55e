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
	GivesUp
	Waits
	Signals
)

// acts are the sign of each act in the matrix, a word for it and what it
// means in full.
var acts = [...]struct{ letter, word, means string }{
	Opens:   {"O", "opens", "opens. A figure says in which move where only so many gates move at once; a zone gate goes first."},
	MayShut: {"S", "may shut", "may shut after the run-on, once nothing else asks for it. A zone gate goes last. The last open gate never shuts while the fan turns."},
	Starts:  {"R", "runs", "starts after its delay, once every powered gate on a whole way is known to be open."},
	RunsOn:  {"L", "lingers", "runs on, then stops, unless something else asks for it."},
	Stops:   {"X", "stops", "stops at once. Only a new request starts it again."},
	NoStart: {"N", "no start", "does not start. What already runs goes on until its own cause ends."},
	Stays:   {"K", "keeps", "keeps its place: it neither opens nor shuts."},
	Homes:   {"H", "homes", "finds its stops again with the collector off. Requests from before are forgotten: a trigger counts only after it was seen off."},
	GivesUp: {"D", "drive off", "drive off if this is the gate that did not arrive; all others keep their places."},
	Waits:   {"W", "if it waits", "signals while the request waits, because opening would leave a running machine short of air."},
	Signals: {"!", "signals", "lamp or buzzer, until someone has seen to it."},
}

// Letter is the act's sign in the matrix; empty for nothing.
func (a Act) Letter() string { return acts[a].letter }

// Word is the act in a word or two.
func (a Act) Word() string { return acts[a].word }

// Means is the act in full, for the key.
func (a Act) Means() string { return acts[a].means }

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
