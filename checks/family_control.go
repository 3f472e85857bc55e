package checks

// controlFamily asks what opens, starts and stops, when, and on which wire.
var controlFamily = &Family{ID: "control", Name: say("finding-family.control"), Checks: []*Check{
	triggerPath, triggerOpens, threshold, startDelay, runOn, blowBack, chainDevices, chainVolts, gateStops, sensorLevels,
}}
