package unit

// The scales of the book. Each says what it prints and with how many
// figures; trim leaves out noughts that say nothing.
var (
	// Size is for pipe, hose and port sizes.
	Size = Scale[Length]{in("in", upTo(2)), in("mm", upTo(1))}
	// Run is for lengths of duct, cable and wall.
	Run = Scale[Length]{in("ft", upTo(1)), in("m", upTo(2))}
	// Thin is for roughness and wall thickness.
	Thin = both[Length](in("mm", upTo(4)))
	// Depth is for the depth of a cut.
	Depth = Scale[Length]{in("in", upTo(4)), in("mm", upTo(2))}
	// Grain is for the size of particles.
	Grain = both[Length](in("µm", threeUpTo(2)))
	// Floor is for areas of floor, filter and opening.
	Floor = Scale[Area]{in("sq ft", upTo(1)), in("m²", upTo(2))}
	// Bin is for what a bin or drum holds.
	Bin = Scale[Volume]{in("gal", fixed(0)), in("L", fixed(0))}
	// Heap is for small heaps of chips.
	Heap = Scale[Volume]{in("gal", threeUpTo(2)), in("L", threeUpTo(2))}
	// Room is for the air of a room.
	Room = Scale[Volume]{in("cu ft", fixed(0)), in("m³", upTo(1))}
	// Air is for air flows.
	Air = Scale[Flow]{in("cfm", three(0)), in("m³/h", three(0))}
	// Speed is for air velocities.
	Speed = Scale[Velocity]{in("fpm", three(0)), in("m/s", fixed(1))}
	// Feed is for how fast stock is fed.
	Feed = Scale[Velocity]{in("ft/min", upTo(1)), in("m/min", upTo(1))}
	// Press is for pressures and losses.
	Press = Scale[Pressure]{in("in wg", fixed(2)), in("Pa", three(0))}
	// Draft is for how far a room lies below the outdoors.
	Draft = both[Pressure](in("Pa", upTo(1)))
	// Warmth is for heat that leaves with air.
	Warmth = both[Power](in("kW", upTo(1)))
	// Weight is for the density of air.
	Weight = Scale[Density]{in("lb/ft³", fixed(4)), in("kg/m³", fixed(3))}
	// Trace is for dust in air.
	Trace = both[Density](in("mg/m³", threeUpTo(3)))
	// Viscous is for the viscosity of air.
	Viscous = both[Viscosity](in("cP", fixed(4)))
	// Heat is for temperatures.
	Heat = Scale[Temperature]{in("°F", fixed(0)), in("°C", fixed(0))}
	// Watts is for the power of low-voltage supplies and what they feed.
	Watts = both[Power](in("W", threeUpTo(2)))
	// Shaft is for motor and shaft power.
	Shaft = Scale[Power]{in("hp", upTo(2)), in("kW", fixed(2))}
	// Amps is for currents.
	Amps = both[Current](in("A", threeUpTo(3)))
	// Volts is for voltages.
	Volts = both[Voltage](in("V", upTo(2)))
	// Ohms is for resistances.
	Ohms = both[Resistance](in("ohm", threeUpTo(4)).upward("Mohm", "kohm"))
	// Seconds is for times of gates, fans and air.
	Seconds = both[Time](in("s", threeUpTo(2)))
	// Minutes is for filling times.
	Minutes = both[Time](in("min", threeUpTo(1)))
	// Hours is for service lives.
	Hours = both[Time](in("h", threeUpTo(1)))
	// Degrees is for angles.
	Degrees = both[Angle](in("°", upTo(1)))
	// Loud is for sound levels.
	Loud = both[Sound](in("dBA", upTo(1)))
	// Wheel is for the inertia of a fan wheel.
	Wheel = Scale[Inertia]{in("lb·ft²", upTo(2)), in("kg·m²", upTo(4))}
	// Conductor is for conductor areas.
	Conductor = both[Wire](in("mm²", threeUpTo(3)))
)

// fixed prints just this many decimals.
func fixed(decimals int) format { return format{decimals: decimals} }

// upTo prints this many decimals at most.
func upTo(decimals int) format { return format{decimals: decimals, trim: true} }

// three prints three significant digits, with this many decimals at most.
func three(decimals int) format { return format{digits: 3, decimals: decimals} }

// threeUpTo is three without noughts that say nothing.
func threeUpTo(decimals int) format { return format{digits: 3, decimals: decimals, trim: true} }
