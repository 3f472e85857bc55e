package trace

import "math/bits"

// Most is how many things of one kind a Set can hold.
const Most = 256

// Set is a set of things of one kind, by their numbers.
type Set [Most / 64]uint64

// SetOf is the set of some numbers.
func SetOf(numbers ...int) Set {
	var s Set
	for _, n := range numbers {
		s.Add(n)
	}
	return s
}

// Has reports whether a number is in the set.
func (s *Set) Has(n int) bool { return s[n>>6]>>(n&63)&1 == 1 }

// Add puts a number into the set.
func (s *Set) Add(n int) { s[n>>6] |= 1 << (n & 63) }

// Drop takes a number out of the set.
func (s *Set) Drop(n int) { s[n>>6] &^= 1 << (n & 63) }

// Or is what is in either set.
func (s Set) Or(other Set) Set {
	for i := range s {
		s[i] |= other[i]
	}
	return s
}

// And is what is in both sets.
func (s Set) And(other Set) Set {
	for i := range s {
		s[i] &= other[i]
	}
	return s
}

// Without is what is in the set and not in the other.
func (s Set) Without(other Set) Set {
	for i := range s {
		s[i] &^= other[i]
	}
	return s
}

// Empty reports whether nothing is in the set.
func (s *Set) Empty() bool { return *s == Set{} }

// Within reports whether all of the set is in the other.
func (s Set) Within(other Set) bool {
	for i := range s {
		if s[i]&^other[i] != 0 {
			return false
		}
	}
	return true
}

// Count is how many are in the set.
func (s *Set) Count() int {
	n := 0
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

// Least is the smallest number in the set, -1 where it is empty.
func (s *Set) Least() int {
	for i, w := range s {
		if w != 0 {
			return i<<6 + bits.TrailingZeros64(w)
		}
	}
	return -1
}

// Numbers are the numbers in the set, rising.
func (s *Set) Numbers() []int {
	var list []int
	for i, w := range s {
		for ; w != 0; w &= w - 1 {
			list = append(list, i<<6+bits.TrailingZeros64(w))
		}
	}
	return list
}
