package shop

import (
	"os"
	"testing"

	"dustbook/plan/entry"
)

// BenchmarkDuctsIntoOne reads a mebibyte of ducts that join one.
func BenchmarkDuctsIntoOne(b *testing.B) {
	data := []byte(hostileText("ducts into one", entry.MaxBytes-1000))
	for b.Loop() {
		if s, problems := Read("shop.toml", data); s == nil {
			b.Fatal(problems[0])
		}
	}
}

// BenchmarkUnknownNames reads a mebibyte of gates on ducts that are not there.
func BenchmarkUnknownNames(b *testing.B) {
	data := []byte(hostileText("gates on nothing", entry.MaxBytes-1000))
	for b.Loop() {
		if s, _ := Read("shop.toml", data); s != nil {
			b.Fatal("read")
		}
	}
}

// BenchmarkRead reads the embedded school.
func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile("../../content/example/school.toml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if s, problems := Read("shop.toml", data); s == nil {
			b.Fatal(problems)
		}
	}
}
