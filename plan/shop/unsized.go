package shop

// Unsized are the ducts whose size is still to be chosen, in file order: those
// of one collector, or all where it is nil. Until their sizes are written in,
// nothing is known of the air of their collector.
func (s *Shop) Unsized(of *Collector) []*Duct {
	var list []*Duct
	for _, d := range s.Ducts {
		if d.Choose && (of == nil || d.Collector == of) {
			list = append(list, d)
		}
	}
	return list
}
