package sequence

// rule is one rule that a run keeps. A test can break each of them.
type rule uint8

const (
	unbroken rule = iota
	wholeWay
	lastGate
	cutsNoWay
	keepsCarrying
	starvesNone
	fewAtOnce
	zoneFirst
	zoneLast
	afterPowerCut
	latchCleared
	lockoutHolds
	reliefWith
	startsLimit
	restHeld
	faultHolds
	answered
	wellTold
	oneAtAnEnd
	stopHolds
	holdHolds
	homesStill
	runOnLasts
	delayKept
	deadWithout
	purgeYields
	arrivalTimed
	sentTogether
	looksAgain
)

// ruleNames name each rule as the invariant that watches it is named.
var ruleNames = [...]string{
	wholeWay:      "whole way",
	lastGate:      "last gate",
	cutsNoWay:     "cuts no way",
	keepsCarrying: "keeps carrying",
	starvesNone:   "starves none",
	fewAtOnce:     "few at once",
	zoneFirst:     "zone first",
	zoneLast:      "zone last",
	afterPowerCut: "after a power cut",
	latchCleared:  "latch cleared",
	lockoutHolds:  "lockout",
	reliefWith:    "relief",
	startsLimit:   "starts",
	restHeld:      "rest",
	faultHolds:    "fault",
	answered:      "answered",
	wellTold:      "well told",
	oneAtAnEnd:    "one at an end",
	stopHolds:     "stop",
	holdHolds:     "hold",
	homesStill:    "homes still",
	runOnLasts:    "run-on",
	delayKept:     "start delay",
	deadWithout:   "dead without power",
	purgeYields:   "purge yields",
	arrivalTimed:  "arrival",
	sentTogether:  "together",
	looksAgain:    "waits for cause",
}

// keeps reports whether the run keeps a rule.
func (r *Runner) keeps(one rule) bool { return r.broken != one }
