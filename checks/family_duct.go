package checks

// ductFamily asks what the pipe is made of and how it hangs.
var ductFamily = &Family{ID: "duct", Name: say("finding-family.duct"), Checks: []*Check{
	ductCollapse, ductThickness, ductMaterial, ductSupports, ductCleanOuts, ductClearance, hoseSlack,
}}
