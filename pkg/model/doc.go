// Package model holds the document of a deal: named lines with their set, unit,
// formula and meaning, as an accountant would write them, and the deal laid over
// it. The rows are in document/*.txt and hold no code.
//
// Parse reads and checks a document: names, sets, units and choices. Bind lays a
// deal over it, which gives one Cell for each line of each member, with every
// name resolved and an order of evaluation derived. Readers know a Model and
// nothing else; the package does no arithmetic on values.
package model
