package pricebook

import "ledgerboard/pkg/diag"

// Audit reads a whole book and returns every mistake in it. Read has done so for an
// owner's book; for the starter, whose entries are read when they are asked for, a test
// does it.
func Audit(b *Book) diag.List {
	var found diag.List
	for l := b; l != nil; l = l.below {
		for _, all := range []map[string]*entry{l.products, l.items} {
			for _, e := range all {
				for _, d := range e.read().found {
					found.Add(d)
				}
			}
		}
		l.check(&found)
	}
	found.Sort()
	return found
}
