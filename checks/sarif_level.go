package checks

// sarifLevel and sarifKind are words of the standard (its sections 3.27.9 and
// 3.27.10).
type (
	sarifLevel string
	sarifKind  string
)

const (
	levelError   sarifLevel = "error"
	levelWarning sarifLevel = "warning"
	levelNote    sarifLevel = "note"
	levelNone    sarifLevel = "none"

	kindFail          sarifKind = "fail"
	kindPass          sarifKind = "pass"
	kindOpen          sarifKind = "open"   // too little is known to decide
	kindReview        sarifKind = "review" // a person has to decide
	kindInformational sarifKind = "informational"

	inSource   string = "inSource"
	isAccepted string = "accepted"
)

// kindOf is the kind and the level of a finding. What is to be done is a
// failure whatever its state: a stop an error, a thing to mend a warning. The
// rest goes by its state; the standard wants the level none with every kind
// but fail. Nothing is notApplicable: a check that does not apply finds
// nothing.
func kindOf(f Finding) (sarifKind, sarifLevel) {
	switch {
	case f.Weight == Stop:
		return kindFail, levelError
	case f.State == Met:
		return kindPass, levelNone
	case f.Weight == Mend:
		return kindFail, levelWarning
	}
	switch f.State {
	case NotMet:
		return kindFail, levelNote
	case Thin, NotGiven:
		return kindOpen, levelNone
	case Ask:
		return kindReview, levelNone
	}
	return kindInformational, levelNone // in play, advice
}

// defaultLevel is the level of a check where a result names none: error where
// it can say stop, else the standard's own, warning.
func defaultLevel(c *Check) sarifLevel {
	if c.Stops {
		return levelError
	}
	return levelWarning
}
