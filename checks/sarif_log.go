package checks

// The parts of a log, as the standard names them; only those that are used.

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool struct {
		Driver sarifDriver `json:"driver"`
	} `json:"tool"`
	ColumnKind string        `json:"columnKind"`
	Results    []sarifResult `json:"results"`
	Properties runProperties `json:"properties"`
}

// runProperties are not of the standard, which leaves the bag to the tool.
type runProperties struct {
	Shop string `json:"shop"`
	AsOf string `json:"as_of"`
}

type sarifDriver struct {
	Name    string      `json:"name"`
	Version string      `json:"version"`
	Rules   []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID      string       `json:"id"`
	Name    string       `json:"name"`
	Short   sarifMessage `json:"shortDescription"`
	Help    sarifText    `json:"help"`
	Default struct {
		Level sarifLevel `json:"level"`
	} `json:"defaultConfiguration"`
}

type sarifMessage struct {
	Text string `json:"text"`
}

type sarifText struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown"`
}

type sarifResult struct {
	RuleID       string          `json:"ruleId"`
	RuleIndex    int             `json:"ruleIndex"`
	Kind         sarifKind       `json:"kind"`
	Level        sarifLevel      `json:"level"`
	Message      sarifMessage    `json:"message"`
	Locations    []sarifLocation `json:"locations"`
	Fingerprints struct {
		CheckThing string `json:"checkThing/v1"`
	} `json:"partialFingerprints"`
	Suppressions []sarifSuppression `json:"suppressions"`
	Properties   resultProperties   `json:"properties"`
}

// resultProperties are the words of the finding as inspect --json has them.
type resultProperties struct {
	Weight  Weight `json:"weight"`
	State   State  `json:"state"`
	By      By     `json:"by"`
	Asks    string `json:"asks,omitempty"`
	Whom    Person `json:"whom,omitempty"`
	Settled string `json:"settled_by,omitempty"`
}

type sarifSuppression struct {
	Kind          string `json:"kind"`
	Status        string `json:"status"`
	Justification string `json:"justification"`
	Properties    struct {
		Role  string `json:"role,omitempty"`
		Until string `json:"until,omitempty"`
	} `json:"properties"`
}

type sarifLocation struct {
	Physical struct {
		Artifact struct {
			URI string `json:"uri"`
		} `json:"artifactLocation"`
		Region *sarifRegion `json:"region,omitempty"`
	} `json:"physicalLocation"`
	Logical []sarifLogical `json:"logicalLocations"`
}

type sarifRegion struct {
	Line   int `json:"startLine"`
	Column int `json:"startColumn,omitempty"`
}

type sarifLogical struct {
	Name string `json:"name"`
	Full string `json:"fullyQualifiedName"`
	Kind string `json:"kind"`
}
