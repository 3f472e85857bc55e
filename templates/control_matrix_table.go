package templates

import "dustbook/plan/export"

// matrixFile is the matrix as a table for a spreadsheet, beside its sheet.
const matrixFile = "cause-and-effect.csv"

// matrixTable is the matrix as rows of text: what comes, what it says, the
// gates a person opens first, then a cell for every effect.
func (b *Book) matrixTable() []byte {
	v := b.matrixView()
	head := []string{b.words.Text("matrix.cause"), b.words.Text("matrix.table-comes"), b.words.Text("matrix.table-says"), b.words.Text("matrix.table-by-hand")}
	for _, c := range v.Columns {
		head = append(head, c.label())
	}
	rows := [][]string{head}
	for _, g := range v.Groups {
		for _, r := range g.Rows {
			row := []string{r.label(), r.Comes, r.Says, b.list(labels(r.Hand))}
			for _, c := range r.Cells {
				row = append(row, c.Sign)
			}
			rows = append(rows, row)
		}
	}
	rows = append(rows, make([]string, len(head)))
	for _, k := range v.Key {
		row := make([]string, len(head))
		row[0], row[1], row[2] = k.Sign, k.Word, k.Means
		rows = append(rows, row)
	}
	return export.Table(rows)
}

// label is a device's tag and name in one.
func (t tagged) label() string {
	if t.Tag == "" {
		return t.Name
	}
	return t.Tag + " " + t.Name
}

func labels(list []tagged) []string {
	var texts []string
	for _, t := range list {
		texts = append(texts, t.label())
	}
	return texts
}
