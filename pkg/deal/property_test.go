package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// Shuffling the top-level keys changes neither the members of the deal, nor what is
// given, nor any result.
func TestTheOrderOfKeysDoesNotMatter(t *testing.T) {
	texts := []string{deal.Starter("order"), string(worked(t, "drawn")), string(worked(t, "capped"))}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(texts).Draw(t, "text")
		blocks := rapid.Permutation(topKeys(text)).Draw(t, "order")
		a, _ := deal.Read("a.yaml", []byte(text))
		b, found := deal.Read("a.yaml", []byte(strings.Join(blocks, "")))
		if b == nil {
			t.Fatal(found)
		}
		if x, y := flat(a.Root), flat(b.Root); x != y {
			t.Fatalf("%s\n%s", x, y)
		}
		va, err := exact.Evaluate(a.Model)
		if err != nil {
			t.Fatal(err)
		}
		vb, err := exact.Evaluate(b.Model)
		if err != nil {
			t.Fatal(err)
		}
		for i, c := range a.Model.Cells {
			if !c.Line.Monthly && !va.Of(c).Equal(vb.Of(b.Model.Cells[i])) {
				t.Fatalf("%s: %s and %s", c.Name(), va.Of(c), vb.Of(b.Model.Cells[i]))
			}
		}
	})
}

// topKeys cuts a file in front of every key at the margin.
func topKeys(text string) []string {
	var out []string
	for _, line := range strings.SplitAfter(text, "\n") {
		margin := line != "" && line[0] >= 'a' && line[0] <= 'z'
		if margin || len(out) == 0 {
			out = append(out, "")
		}
		out[len(out)-1] += line
	}
	return out
}

// flat prints members and what they are given, without places.
func flat(m *model.Member) string {
	var b strings.Builder
	b.WriteString(m.Set + " " + m.Kind + " " + m.Label + "{")
	doc, _ := model.Standard()
	for _, l := range doc.Lines {
		if v, ok := m.Given.Look(l.Name); ok && (l.Set == m.Set || l.Set == m.Kind) {
			b.WriteString(l.Name + "=" + v.Number.String() + v.Choice + v.Refers + " ")
		}
	}
	for _, c := range m.Children {
		b.WriteString(flat(c))
	}
	return b.String() + "}"
}

// The day of the sale, needed before the model is bound, is the model's own.
func TestHoldIsTheModels(t *testing.T) {
	for _, days := range []string{"0", "1 day", "59 days", "60 days", "2.5 months", "11 months"} {
		text := strings.Replace(minimal, "{price", "{date: 2026-03-02, price", 1)
		text = strings.Replace(text, "marketing: 1 month", "marketing: "+days, 1)
		d := read(t, text)
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		day := int(v.Of(d.Model.Find(d.Root, "sale_day")).IntPart())
		// rates until the day of the sale are outdated, those until the day after are not
		for more, want := range map[int]bool{0: true, 1: false} {
			until := d.PurchaseDate.AddDays(day + more)
			_, found := deal.Read("a.yaml", []byte(text+"selling: {tax: {tables: [{until: "+until.String()+", amount: 1%}]}}\n"))
			require.Equal(t, want, strings.Contains(found.Error(), "so nothing is charged"), "%s, %d", days, more)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range slices.Concat(slips, rangeSlips, daySlips) {
		if len(s.new) < 10000 {
			f.Add(s.text(), "price", "$5")
		}
	}
	for _, name := range workedFiles {
		f.Add(worked(f, name), "loans.1.rate", "{a: [1,000]}")
	}
	f.Add([]byte(minimal), "a..b[3]", "x\ny")
	f.Fuzz(func(t *testing.T, text []byte, path, value string) {
		for _, sets := range [][]deal.Set{nil, {{Path: path, Value: value}, {Path: "price", Value: value}}} {
			d, found := deal.Read("f.yaml", text, sets...)
			if (d == nil) != found.HasErrors() {
				t.Fatalf("deal %v with %v", d != nil, found)
			}
			for _, x := range found {
				if x.Pos.File == "" || x.Code == "" || x.Message == "" || x.Code == "not-bound" {
					t.Fatalf("%#v", x)
				}
			}
			if d == nil {
				continue
			}
			if _, err := exact.Evaluate(d.Model); err != nil {
				t.Fatalf("%v of %q", err, text)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	text := []byte(deal.Starter("bench"))
	for b.Loop() {
		deal.Read("a.yaml", text)
	}
}
