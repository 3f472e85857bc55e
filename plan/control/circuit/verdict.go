package circuit

// Verdict is what the circuit of a motor comes to.
type Verdict uint8

const (
	Unknown       Verdict = iota // the file leaves out what Missing names
	OffTable                     // no table has the motor; Why says why
	Fails                        // at least one of Faults, for sure
	Doubtful                     // Doubts says why it may fail
	Elsewhere                    // the shop's rules are not those of the US: its tables do not compare
	NotComparable                // conductors are metric; nothing else fails
	WithOverload                 // it holds if an overload protects the conductors: the breaker alone does not
	Holds
)

// Fault is one thing that does not hold.
type Fault uint8

const (
	BreakerLarge   Fault = iota // larger than the greatest breaker of the motor
	BreakerSmall                // smaller than the current the motor runs at
	WireBelowMotor              // the conductors carry less than the motor draws
	WireSmall                   // the conductors carry less than they have to
)

// Doubt is why a figure may fail or hold.
type Doubt uint8

const (
	ByTerminals Doubt = iota // what the terminals are rated is not given
	ByPower                  // the motor's power is between two rows of the table
	ByNameplate              // the nameplate's current is over that of the table, as with slow motors
	ByAir                    // the air is hotter than the table of factors goes
)

// Fields of the shop file that a circuit can wait for.
const (
	NeedsMotor   = "motor"
	NeedsVolts   = "motor.volts"
	NeedsPhase   = "motor.phase"
	NeedsBreaker = "circuit.breaker"
	NeedsWire    = "circuit.wire"
)
