package checks

// collectorFamily asks what fan, filter and bin do, and where they stand.
var collectorFamily = &Family{ID: "collector", Name: say("finding-family.collector"), Checks: []*Check{
	fanOnCurve, motorPower, filterLoad, returnedFilter, returnedResidue, binFilling,
	openBag, collectorPlace, explosionProtection, extractorType,
}}
