package why

import (
	"ledgerboard/pkg/diag"
)

// A Record is a node as JSON; decimals are strings.
type Record struct {
	Kind    string   `json:"kind"`
	Line    string   `json:"line,omitempty"` // the line's ID
	Name    string   `json:"name,omitempty"` // with the member's, as printed
	Month   *int     `json:"month,omitempty"`
	Value   string   `json:"value"`
	Text    string   `json:"text"` // the value for people
	Unit    string   `json:"unit,omitempty"`
	Meaning string   `json:"meaning,omitempty"`
	Source  Source   `json:"source,omitempty"`
	Given   *Said    `json:"given,omitempty"`
	Formula string   `json:"formula,omitempty"`
	Words   string   `json:"words,omitempty"`
	Because []string `json:"because,omitempty"`
	Op      string   `json:"op,omitempty"`
	Decided *int     `json:"decided,omitempty"` // index of the term that settled a min, max, lowest or first_month
	Again   bool     `json:"again,omitempty"`   // laid open elsewhere in the same record
	Sign    int      `json:"sign,omitempty"`    // as a term: 1, or -1 if taken away or dividing
	Role    string   `json:"role,omitempty"`    // as a term: the month or member
	Terms   []Record `json:"terms,omitempty"`
}

// Said is what the deal says for an input, and where.
type Said struct {
	Text string   `json:"text"`
	At   diag.Pos `json:"at,omitzero"`
}

// JSON returns the tree so many lines deep, below 0 all the way; 0 is the line
// alone. A line laid open once is not laid open again.
func (t *Tree) JSON(depth int) Record { return t.record(depth, map[*Tree]bool{}) }

func (t *Tree) record(depth int, seen map[*Tree]bool) Record {
	r := Record{Kind: t.Kind.String(), Value: t.Value.String(), Text: t.Text(), Unit: t.Unit, Formula: t.Formula()}
	if t.Month != NoMonth && t.Kind != Number && t.Kind != Word {
		r.Month = &t.Month
	}
	if t.Kind == Operation {
		r.Op = t.Op.Name
		if t.decider() >= 0 {
			r.Decided = &t.Took
		}
	}
	if t.Kind == Line {
		t.describe(&r)
		if depth == 0 || seen[t] {
			r.Again = seen[t]
			return r
		}
		seen[t] = true
		r.Words, r.Because = t.Words(), t.Because()
		depth--
	}
	for _, x := range t.Terms() {
		sub := x.record(depth, seen)
		sub.Sign, sub.Role = x.Sign, x.Role
		r.Terms = append(r.Terms, sub)
	}
	return r
}

func (t *Tree) describe(r *Record) {
	c := t.Cell
	r.Line, r.Name, r.Meaning, r.Source = c.Line.ID(), c.Name(), t.Meaning(), t.Source()
	if c.Given != nil {
		r.Given = &Said{said(c.Given), c.Given.Pos}
	}
}
