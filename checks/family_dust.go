package checks

// dustFamily asks what wood dust and metal can do in one system.
var dustFamily = &Family{ID: "dust", Name: say("finding-family.dust"), Checks: []*Check{
	metalOnWood, dustScope, hazardAnalysis, areaClassification, settledDust, dustCleaning, flameNearDust,
}}
