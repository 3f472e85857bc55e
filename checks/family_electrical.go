package checks

// electricalFamily asks about motors, their circuits and the supply of the control.
var electricalFamily = &Family{ID: "electrical", Name: say("finding-family.electrical"), Checks: []*Check{
	motorCircuit, startsPerHour, starterKind, powerCut, supplyMargin, controlBox, panelSpace,
}}
