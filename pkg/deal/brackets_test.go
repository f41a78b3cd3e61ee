package deal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// Where brackets, braces or the word for a joint were left out, the hint says how it is written.
func TestListsWithoutTheirBrackets(t *testing.T) {
	const room = "rooms:\n  den:\n    size: 12' x 14'\n    work: {carpet: hired}\n"
	for text, want := range map[string]string{
		room + "    layers: vinyl, vinyl\n":                                                 "layers: [vinyl, vinyl]",
		room + "    layers: carpet and vinyl\n":                                             "layers: [carpet, vinyl]",
		"rooms: {den: {size: 12' x 11' x 8', work: {carpet: hired}}}\n":                     "how high it is as   ceiling: 8'",
		room + "    layers: 2 vinyl\n":                                                      "layers: [carpet, vinyl, vinyl]",
		room + "    without: register covers, delivery\n":                                   "without: [register covers, delivery]",
		"rooms: {den: {size: 12' x 14', work: {carpet: hired}}}\nscope: light, den: full\n": "scope: {all rooms: light, den: full}",
		"rooms:\n  den:\n    size: 12' x 14', 5' x 6' sharing 5'\n":                         "as a list in brackets",
		"rooms:\n  den:\n    size: [12' x 14', 5' x 6' shared 5']\n":                        "behind the word sharing",
	} {
		_, found := deal.Read("a.yaml", []byte(walked+text))
		require.True(t, found.HasErrors(), text)
		require.Contains(t, fmt.Sprint(found.Errors()[0].Hint), want, text)
	}
}
