package checks

// paperFamily asks which drawings, records and answers are in hand.
var paperFamily = &Family{ID: "paper", Name: say("finding-family.paper"), Checks: []*Check{
	drawingComplete, commissioningRecord, lastTest, calibratedInstruments, lettersAnswered, papersInHand,
}}
