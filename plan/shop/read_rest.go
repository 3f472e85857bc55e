package shop

// restTables are the tables of the contract whose things this package checks
// for form only: other packages will read them when they need them.
var restTables = []string{"extinguisher", "stop", "tap", "trigger", "control", "chain", "sensor", "accepted", "document"}

// readRest checks the form of the tables that hold the control half and the
// paper, so that a mistake in them is found as well.
func (r *reader) readRest(top *scope) {
	for _, table := range restTables {
		if table == "control" {
			if s := top.single(table); s != nil {
				s.checkForm()
			}
			continue
		}
		for _, s := range top.several(table) {
			s.checkForm()
		}
	}
}

// checkForm reads every field of a table by the kind its row names.
func (s *scope) checkForm() {
	for _, row := range rowsOf[s.table] {
		if read := readers[row.Kind]; read != nil {
			read(s, row.Field)
			continue
		}
		panic("shop: no reader for the kind " + row.Kind)
	}
	s.close()
}
