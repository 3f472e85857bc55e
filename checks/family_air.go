package checks

// airFamily asks where the air comes from that a fan blows out.
var airFamily = &Family{ID: "air", Name: say("finding-family.air"), Checks: []*Check{
	openFlue, makeUpAir, returnPath,
}}
