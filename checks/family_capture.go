package checks

// captureFamily asks whether dust gets into the air and stays in it.
var captureFamily = &Family{ID: "capture", Name: say("finding-family.capture"), Checks: []*Check{
	airCaptured, dustCarried, sharedHose,
}}
