package pricebook_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// entire is an item with all that is needed, for a change to one of its keys.
const entire = "items:\n  hang door:\n    trade: carpentry\n    measure: doors\n    hours: 1 each\n    hired: $9 each\n    materials: {oak strip: {takes: 2}}\n    brings: [oak transition]\n    source: mine\n"

// mistakes are texts of a book over the small one with what is said, its place and hint.
var mistakes = []struct{ code, text, place, says, hint string }{
	{"book-syntax", "products: {a: [}", "1:16", "not YAML", "brackets"},
	{"book-syntax", "products: {}\n---\nitems: {}\n", "2:1", "more than one document", "line"},
	{"book-want-group", "- a\n", "1:1", "the price book is not a group", "write keys"},
	{"book-want-group", "products: [a]\n", "1:11", "products is not a group", "write keys"},
	{"book-want-group", "products:\n  oak strip: $5\n", "2:14", "the product is not a group", "write keys"},
	{"book-want-group", "items:\n  lay oak: {materials: {oak strip: 5}}\n", "2:36", "the material is not a group", "write keys"},
	{"book-want-group", "products: {oak base: {sticks: [8 ft, 12 ft]}}\n", "1:31", "sticks is not a group", "sticks: {8 ft: $8.40, 12 ft: $12.60}"},
	{"book-want-group", "products: {oak base: {sticks: $9}}\n", "1:31", "sticks is not a group", "sticks: {8 ft: $8.40, 12 ft: $12.60}"},
	{"book-twice", "products:\n  oak strip: {price: $5}\n  oak strip: {price: $6}\n", "3:3", `"oak strip" is given twice`, "keep one"},
	{"book-twice", "products:\n  oak strip: {price: $5}\n  Oak strip: {price: $6}\n", "3:3", `"oak strip" is given twice, as "Oak strip"`, "keep one"},
	{"book-unknown-key", "product: {}\n", "1:1", `no key "product"`, `did you mean "products"?`},
	{"book-unknown-key", "products: {oak strip: {prise: $5}}\n", "1:24", `no key "prise"`, `did you mean "price"?`},
	{"book-unknown-key", "products: {oak strip: {xylophone: $5}}\n", "1:24", `no key "xylophone"`, "its keys are: aisle,"},
	{"book-unknown-key", "products: {oak strip: {price: $1,200}}\n", "1:34", `no key "200"`, "write an amount without it"},
	{"book-want-value", "products: {oak strip: {price: [5]}}\n", "1:31", "a single value", "behind the colon"},
	{"book-want-value", "products: {oak strip: {price: }}\n", "1:31", "a single value", "behind the colon"},
	{"book-want-value", "products: {oak base: {sticks: {}}}\n", "1:31", "no stick", "sticks: {8 ft"},
	{"book-want-list", "items: {lay oak: {brings: oak transition}}\n", "1:27", "a list belongs here", "[one, another]"},
	{"book-bad-value", "products: {oak strip: {price: cheap}}\n", "1:31", `"cheap"`, "write an amount"},
	{"book-bad-value", "products: {oak strip: {price: -$5}}\n", "1:31", `"-$5": it is below zero`, "what it costs"},
	{"book-bad-value", "products: {oak strip: {dated: 14/5/2026}}\n", "1:31", `"14/5/2026"`, "5/14/2026"},
	{"book-bad-value", "products: {oak base: {sticks: {0 ft: $5}}}\n", "1:32", `"0 ft"`, "a length above 0"},
	{"book-bad-value", "products: {oak base: {sticks: {8: $5}}}\n", "1:32", `"8"`, "8 ft"},
	{"book-bad-value", "products: {saw rental: {tax: maybe}}\n", "1:30", `"maybe"`, "yes or no"},
	{"book-bad-value", "items: {lay oak: {materials: {oak strip: {waste: 100%}}}}\n", "1:50", `"100%": it is no waste`, "10%"},
	{"book-bad-value", "items: {lay oak: {materials: {oak strip: {takes: 0}}}}\n", "1:50", `"0": it is not above 0`, "3.6"},
	{"book-bad-value", "items: {lay oak: {materials: {oak strip: {one for: many}}}}\n", "1:52", `"many"`, "80 sq ft"},
	{"book-bad-value", "items: {lay oak: {waits: 2}}\n", "1:26", `"2": it is no number with its unit`, "15 days"},
	{"book-bad-value", "items: {lay oak: {coats: 0}}\n", "1:26", `"0": it is not a number of coats`, "1 to 9"},
	{"book-missing", "products: {elm strip: {price: $5}}\n", "1:12", `"elm strip" has no pack`, "pack: box of 10 sq ft"},
	{"book-missing", "products: {oak stripe: {price: $5}}\n", "1:12", `"oak stripe" has no pack`, `did you mean "oak strip"?`},
	{"book-missing", "products: {elm strip: {pack: each}}\n", "1:12", `"elm strip" has no price`, "price: $24.90"},
	{"book-missing", "products: {oak strip: {pack: box of 5 sq ft}}\n", "1:12", `"oak strip" has no price`, "a pack has the price"},
	{"book-missing", "products: {oak base: {price: $5}}\n", "1:12", "no price for each stick", "sticks: {8 ft: $8.40}"},
	{"book-missing", "products: {elm strip: {pack: each, repeat: 2 ft, price: $5}}\n", "1:12", "no roll of any size", "roll: 20.5 in x 33 ft"},
	{"book-missing", strings.Replace(entire, "    trade: carpentry\n", "", 1), "2:3", `"hang door" has no trade`, "trade: tile"},
	{"book-missing", strings.Replace(entire, "    brings: [oak transition]\n", "", 1), "2:3", "no brings", "brings: none"},
	{"book-missing", strings.Replace(entire, "    source: mine\n", "", 1), "2:3", "no source", "common practice, no source"},
	{"book-two-ways", "products: {elm base: {sticks: {8 ft: $5}, price: $4}}\n", "1:12", `"elm base" is sold in two ways`, "keep one"},
	{"book-two-ways", "items: {lay oak: {materials: {oak strip: {takes: 2, one for: 5 sq ft}}}}\n", "1:31", "said in two ways", "keep one of"},
	{"book-two-ways", "items: {saw dust: {trade: flooring, measure: one, hours: none, hired: none, materials: none, brings: none, source: mine, once: yes, for each: yes}}\n", "1:19", `how often "saw dust" comes along is said in two ways`, "keep one of"},
	{"book-not-by-one", "items: {lay oak: {for each: yes}}\n", "1:29", `"lay oak" is measured by open floor`, "measure: one"},
	{"book-not-by-one", "items: {lay oak: {once: yes}}\n", "1:25", `"lay oak" is measured by open floor`, "measure: one"},
	{"book-bad-unit", "products: {oak strip: {pack: bag of 5 lb, price: $5}}\n", "1:12", "sold by the lb, but by the sq ft in the book below", "a name of its own"},
	{"book-bad-unit", "products: {oak base: {pack: bundle of 20 sq ft, price: $5}}\n", "1:12", "sold by the sq ft, but by the ft", "a name of its own"},
	{"book-bad-unit", "products: {vine paper: {pack: roll of 56 sq ft, price: $5}}\n", "1:12", "sold by the sq ft, but by the roll", "a name of its own"},
	{"book-bad-unit", "items: {lay oak: {hours: 2 each}}\n", "1:26", `"2 each" is not for each sq ft`, "0.12 per sq ft"},
	{"book-bad-unit", "items: {lay oak: {hired: 2 per sq ft}}\n", "1:26", `"2 per sq ft" has no dollar sign`, "$2 per sq ft"},
	{"book-bad-unit", "items: {lay oak: {debris: 2 lb per sq ft}}\n", "1:27", `"2 lb per sq ft"`, "write it like"},
	{"book-bad-unit", "items: {lay oak: {materials: {oak strip: {one for: 5 ft}}}}\n", "1:52", `"5 ft" is not in sq ft`, "one for: 80 sq ft"},
	{"book-bad-unit", "items: {oak transition: {hours: 2 per ft}}\n", "1:33", `"2 per ft" is not for each piece`, "1.5 each"},
	{"book-bad-unit", "items: {oak transition: {hired: $2 per ft}}\n", "1:33", `is not for each piece`, "$9.50 each"},
	{"book-bad-unit", "items: {oak transition: {hired: 9.50}}\n", "1:33", `"9.50" does not say that it is for each piece`, "$9.50 each"},
	{"book-bad-unit", "items: {lay oak: {hours: 2}}\n", "1:26", `"2" does not say that it is for each sq ft`, "2 per sq ft"},
	{"book-bad-value", "products: {oak strip: {price: $3.12 per sq ft}}\n", "1:31", "has a unit; the price is that of one pack", "price: $"},
	{"book-bad-value", "products: {oak strip: {price: $31 each}}\n", "1:31", "has a unit", "price: $31.00   for the "},
	{"book-bad-value", "products: {oak strip: {price: $31 per lb}}\n", "1:31", "has a unit", "what one pack costs"},
	{"book-bad-value", "products: {oak strip: {price: cheap}}\n", "1:31", `"cheap"`, "$24.90"},
	{"book-missing", "items: {hang lamp: {trade: electrical, measure: one}}\n", "1:9", `"hang lamp" has no hired`, "hired: $9.50 each"},
	{"book-missing", "items: {hang lamp: {trade: electrical, measure: one}}\n", "1:9", `"hang lamp" has no hours`, "hours: 1.5 each"},
	{"book-unknown-measure", "items: {lay oak: {measure: opne floor}}\n", "1:28", `"opne floor"`, `did you mean "open floor"?`},
	{"book-unknown-measure", "items: {lay oak: {measure: wals}}\n", "1:28", `"wals"`, `did you mean "walls"?`},
	{"book-unknown-measure", "items: {lay oak: {measure: happiness}}\n", "1:28", `"happiness"`, "docs/price-book.md"},
	{"book-unknown-measure", "items: {lay oak: {materials: {oak strip: {along: the way}}}}\n", "1:50", `"the way"`, "docs/price-book.md"},
	{"book-unknown-condition", "items: {lay oak: {brings: [oak transition if bth]}}\n", "1:28", `"bth" is no condition`, `did you mean "bath"?`},
	{"book-unknown-condition", "items: {lay oak: {brings: [oak transition if it rains]}}\n", "1:28", `"it rains" is no condition`, "if before 1978"},
	{"book-unknown-caution", "items: {lay oak: {cautions: [leed]}}\n", "1:30", `"leed" is no caution`, `did you mean "lead"?`},
	{"book-unknown-caution", "items: {lay oak: {cautions: [dragons]}}\n", "1:30", `"dragons" is no caution`, "lead, asbestos"},
	{"book-unknown-product", "items: {lay oak: {materials: {oak stripe: {takes: 1}}}}\n", "1:31", `no product called "oak stripe"`, `did you mean "oak strip"?`},
	{"book-unknown-product", "items: {lay oak: {materials: {gold leaf: {takes: 1}}}}\n", "1:31", `no product called "gold leaf"`, "ledgerboard prices"},
	{"book-unknown-item", "items: {lay oak: {brings: [oak transitions]}}\n", "1:28", `no item called "oak transitions"`, `did you mean "oak transition"?`},
	{"book-unknown-item", "items: {lay oak: {brings: [oak transition unless lay oka]}}\n", "1:28", `no item called "lay oka"`, `did you mean "lay oak"?`},
	{"book-house-unless", "items: {oak transition: {brings: [saw dust unless lay oak]}, saw dust: {trade: flooring, measure: doors, hours: 0.3 each, hired: $20 each, materials: none, brings: none, source: mine}, lay oak: {brings: [oak transition in house]}}\n", "1:205", `"oak transition" brings "saw dust" unless there is lay oak`, "in house"},
	{"book-circle", "items: {oak transition: {brings: [lay oak]}}\n", "1:35", `"oak transition" brings "lay oak", which brings it back`, "leave one"},
	{"book-circle", "items: {oak transition: {brings: [oak transition]}}\n", "1:35", "which brings it back", "leave one"},
}

func TestMistakesOfABook(t *testing.T) {
	over := read(t, below, nil)
	for _, m := range mistakes {
		_, found := pricebook.Read("mine.yaml", m.text, over)
		i := slices.IndexFunc(found, func(d diag.Diag) bool {
			return d.Code == m.code && strings.Contains(d.Message, m.says) && strings.Contains(d.Hint, m.hint)
		})
		require.GreaterOrEqual(t, i, 0, "%s\n%v", m.text, found)
		require.Equal(t, "mine.yaml:"+m.place, found[i].Pos.String(), m.text)
		for _, d := range found {
			require.Equal(t, diag.Error, d.Severity)
			require.NotEmpty(t, d.Hint, d.Message)
			require.Equal(t, "mine.yaml", d.Pos.File, d.Message)
		}
	}
}

func TestTheWholeItemIsSound(t *testing.T) { over(t, entire) }

func TestAllMistakesAtOnce(t *testing.T) {
	_, found := pricebook.Read("mine.yaml", "products:\n  oak strip: {price: cheap, pack: heap}\nitems:\n  lay oak: {hours: 1, brings: [nothing at all]}\n", read(t, below, nil))
	require.Len(t, found, 4)
	require.IsNonDecreasing(t, []int{found[0].Pos.Line, found[1].Pos.Line, found[2].Pos.Line, found[3].Pos.Line})
}
