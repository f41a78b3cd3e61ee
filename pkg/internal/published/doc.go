// Package published holds tests only: figures that others published, each reached
// the way a reader reaches them, from the text of a deal file to a result. What
// cannot be said in a deal file is named in the test that leaves it out. The
// figures stand in testdata/published, with their sources.
package published
