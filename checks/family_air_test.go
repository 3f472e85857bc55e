package checks_test

// airStates are shops and what the checks of this family find in them.
var airStates = []stateCase{}

// airRules are the figures that the checks of this family compare with.
var airRules = []ruleCase{}
