package checks

// peopleFamily asks what keeps those well who work here.
var peopleFamily = &Family{ID: "people", Name: say("finding-family.people"), Checks: []*Check{
	stopOnTheWay, unexpectedStart, hoodLabels, trainingRecord, noiseDose, dustExposure,
}}
