package checks

// bondingFamily asks whether charge drains from duct, hose and bin.
var bondingFamily = &Family{ID: "bonding", Name: say("finding-family.bonding"), Checks: []*Check{
	plasticDuct, bondedDuct, plasticBin,
}}
