package checks_test

// captureStates are shops and what the checks of this family find in them.
var captureStates = []stateCase{}

// captureRules are the figures that the checks of this family compare with.
var captureRules = []ruleCase{}
