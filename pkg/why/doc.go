// Package why explains figures: how a line came out, as a tree that goes down to
// the place in the deal file each input came from.
//
// A tree is a formula with its values: every node can be worked out again from
// the nodes below it by its operator's exact rule, and Check does so. A line's
// formula is laid out when it is first looked at, so a tree costs what is read
// of it. The package knows a model and exact values, and changes neither; the
// values must be those of the deal as bound, without changed inputs.
//
//	t := why.Explain(m, values, m.Find(m.Root, "profit"), 0)
//	err := t.Write(os.Stdout, why.Options{Depth: 2})
package why
