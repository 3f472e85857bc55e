package checks_test

// tapped gives the whole shop its test point.
const tapped = `[[tap]]
name = "Main tap"
on = "Main"
at = "9 ft"
`

// heldPapers are the papers of the whole shop, besides those that a check of
// their own looks at.
const heldPapers = `[[document]]
kind = "thorough examination"
held = true
date = 2026-08-20
[[document]]
kind = "commissioning report"
held = true
[[document]]
kind = "pitot readings"
held = true
[[document]]
kind = "collector's manual"
held = true
[[document]]
kind = "log book"
held = true
[[document]]
kind = "risk assessment"
held = true
[[document]]
kind = "dust programme"
held = true
[[document]]
kind = "housekeeping plan"
held = true
[[document]]
kind = "bonding record"
held = true
[[document]]
kind = "circuit list"
held = true
[[document]]
kind = "fire rating letter"
held = true
[[document]]
kind = "filter certificate"
held = true
[[document]]
kind = "lockout procedure"
held = true
[[document]]
kind = "emptying rule"
held = true
[[document]]
kind = "training list"
held = true
[[document]]
kind = "yearly review"
held = true
[[document]]
kind = "extinguisher tags"
held = true
[[document]]
kind = "emergency plan"
held = true
`
