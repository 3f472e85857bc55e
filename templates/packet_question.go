package templates

import (
	"slices"

	"dustbook/checks"
)

// packetPerson are the questions that go to one person.
type packetPerson struct {
	Whom      string
	Questions []*packetQuestion
}

// packetQuestion is one question, with what it is about and the checks that
// ask it.
type packetQuestion struct {
	Number int
	Asks   string
	About  []aboutLink
	Checks []aboutLink
}

// aboutLink is a name with the place where it is shown.
type aboutLink struct{ Name, Path string }

// questions are what the findings ask, person by person, each once.
func (b *Book) questions() []packetPerson {
	var list []packetPerson
	number := 0
	for _, whom := range b.asked() {
		person := packetPerson{Whom: whom.Says()}
		at := map[string]*packetQuestion{}
		for _, f := range b.Findings {
			if f.Asks == "" || f.Whom != whom {
				continue
			}
			q := at[f.Asks]
			if q == nil {
				number++
				q = &packetQuestion{Number: number, Asks: f.Asks}
				at[f.Asks] = q
				person.Questions = append(person.Questions, q)
			}
			q.from(b, f)
		}
		list = append(list, person)
	}
	return list
}

// from notes a finding that asks a question.
func (q *packetQuestion) from(b *Book, f checks.Finding) {
	if about := (aboutLink{f.About, b.Path(f.Kind, f.About)}); f.About != "" && !slices.Contains(q.About, about) {
		q.About = append(q.About, about)
	}
	if c := checks.Find(f.Check); c != nil {
		if check := (aboutLink{c.Name, b.Path("check", c.ID)}); !slices.Contains(q.Checks, check) {
			q.Checks = append(q.Checks, check)
		}
	}
}

// asked are those whom a finding asks, in the order of the packet.
func (b *Book) asked() []checks.Person {
	return slices.DeleteFunc(slices.Clone(checks.Persons), func(whom checks.Person) bool {
		return !slices.ContainsFunc(b.Findings, func(f checks.Finding) bool { return f.Asks != "" && f.Whom == whom })
	})
}
