package checks

// Person is whom a question goes to.
type Person string

// Whom the checks ask.
const (
	Authority   Person = "authority" // whoever has jurisdiction over building, fire or work
	Electrician Person = "electrician"
	Engineer    Person = "engineer"
	Technician  Person = "technician" // for what burns
	Hygienist   Person = "hygienist"
	Maker       Person = "maker" // of a machine, a fan, a filter or a pipe
	Insurer     Person = "insurer"
)

// Persons lists whom the checks ask, in the order of the packet.
var Persons = []Person{Authority, Electrician, Engineer, Technician, Hygienist, Maker, Insurer}

// Says is the person in words; nobody where it is empty.
func (p Person) Says() string {
	if p == "" {
		return ""
	}
	return say("finding-person." + string(p))
}
