// Package importgraph holds one test: that imports point down. It has no code.
package importgraph
