package pricebook

import (
	"sync"
	"testing"
)

// BenchmarkStarter is the index of the starter book, which every run of the program
// makes that needs a price.
func BenchmarkStarter(b *testing.B) {
	for b.Loop() {
		index()
	}
}

// BenchmarkOneItem reads one item that is asked for the first time.
func BenchmarkOneItem(b *testing.B) {
	book := index()
	e := book.items["tile floor"]
	for b.Loop() {
		e.once = sync.Once{}
		e.read()
	}
}

// BenchmarkAll reads every entry, as a search does.
func BenchmarkAll(b *testing.B) {
	for b.Loop() {
		index().Search("tile")
	}
}
