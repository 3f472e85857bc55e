package checks_test

// controlStates are shops and what the checks of this family find in them.
var controlStates = []stateCase{}

// controlRules are the figures that the checks of this family compare with.
var controlRules = []ruleCase{}
