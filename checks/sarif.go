package checks

import (
	"crypto/sha256"
	"encoding/hex"
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/export"
)

// What stands in the head of every log: the standard's version and its
// schema, and the tool. Raise driverVersion when checks come or go, or the
// levels and kinds of sarif_level.go change.
const (
	sarifVersion  string = "2.1.0"
	sarifSchema   string = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
	driverName    string = "dustbook"
	driverVersion string = "1.1.0"
	columnsAre    string = "unicodeCodePoints" // as entry.Place counts
	wholeShop     string = "shop"              // what a finding about no single thing is about
)

// SARIF writes findings about a plan as a log of the OASIS standard SARIF
// 2.1.0: one run, a rule for each check, a result for each finding in the
// order given. Path is the shop file as a forge knows it, relative. The same
// findings give the same bytes on every machine.
func SARIF(p *plan.Plan, list []Finding, path string) ([]byte, error) {
	run := sarifRun{ColumnKind: columnsAre, Results: []sarifResult{}, Properties: runProperties{p.Shop.Name, p.AsOf.String()}}
	run.Tool.Driver = sarifDriver{driverName, driverVersion, rules()}
	index := map[string]int{}
	for i, r := range run.Tool.Driver.Rules {
		index[r.ID] = i
	}
	seen := map[string]int{}
	for _, f := range list {
		r := result(p, f, path)
		r.RuleIndex = index[f.Check]
		key := thingKey(f)
		seen[key]++
		r.Fingerprints.CheckThing = fingerprint(key, seen[key])
		run.Results = append(run.Results, r)
	}
	return export.JSON(sarifLog{sarifSchema, sarifVersion, []sarifRun{run}})
}

// result is one finding.
func result(p *plan.Plan, f Finding, uri string) sarifResult {
	kind, level := kindOf(f)
	return sarifResult{
		RuleID: f.Check, Kind: kind, Level: level,
		Message:      sarifMessage{Text: messageText(join(f.Says, f.Do))},
		Locations:    []sarifLocation{locationOf(p, f, uri)},
		Suppressions: suppressions(f),
		Properties:   resultProperties{f.Weight, f.State, f.By, f.Asks, f.Whom, f.Settled},
	}
}

// suppressions are what the shop file says of a finding that someone lives
// with for now. It stands in the file itself, which the standard calls
// inSource. A finding that counts has an empty list, as the standard asks of
// a log in which another has one.
func suppressions(f Finding) []sarifSuppression {
	a := f.Accepted
	if a == nil || f.Weight == Stop {
		return []sarifSuppression{}
	}
	s := sarifSuppression{Kind: inSource, Status: isAccepted, Justification: a.Reason}
	s.Properties.Role = a.Role
	if a.Until != (entry.Date{}) {
		s.Properties.Until = a.Until.String()
	}
	return []sarifSuppression{s}
}

// thingKey is what a finding is known by however the file is ordered: the
// check and the thing.
func thingKey(f Finding) string { return strings.Join([]string{f.Check, f.Kind, f.About}, "\x00") }

// fingerprint is the key of a finding in letters that any program can keep.
// Of several of one check about one thing each has its number.
func fingerprint(key string, number int) string {
	if number > 1 {
		key += "\x00" + strconv.Itoa(number)
	}
	sum := sha256.Sum256([]byte(key))
	return hex.EncodeToString(sum[:])
}
