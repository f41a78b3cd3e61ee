// Package deal reads the deal file: YAML written by hand, in the words of the
// trade, into the inputs of the model, each with its text and its place.
//
//	d, found := deal.Read("juniper.yaml", text, deal.Set{Path: "purchase.price", Value: "$205k"})
//	if found.HasErrors() {
//		diag.Render(os.Stderr, found, deal.Sources("juniper.yaml", text, sets...))
//	}
//
// One table of fields says which keys there are, what each takes, which line of
// the model it feeds and what is refused or doubted; the reader, the suggestions
// for misspelled keys, the JSON schema and the docs all come from it. Every
// mistake of a file is reported at once.
//
// The package never writes a file and holds no arithmetic of a deal.
package deal
