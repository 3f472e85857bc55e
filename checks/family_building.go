package checks

// buildingFamily asks about fire, walls, ways out and extinguishers.
var buildingFamily = &Family{ID: "building", Name: say("finding-family.building"), Checks: []*Check{
	garageSeparation, garageDoor, garageBoard, ratedWall,
	wayOut, aisleWidth, ductHeadroom,
	extinguisherReach, extinguisherRating, extinguisherFinish, extinguisherMetal, extinguisherService,
	sprinklerArea, outletProperty, outletNear,
}}
