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
		room + "    layers: vinyl, vinyl\n":                                                   "layers: [vinyl, vinyl]",
		room + "    layers: carpet and vinyl\n":                                               "layers: [carpet, vinyl]",
		"rooms: {den: {size: 12' x 11' x 8', work: {carpet: hired}}}\n":                       "how high it is as   ceiling: 8'",
		room + "    layers: 2 vinyl\n":                                                        "layers: [vinyl, vinyl]",
		room + "    layers: vinyl x 2\n":                                                      "layers: [vinyl, vinyl]",
		room + "    layers: two layers of vinyl\n":                                            "layers: [vinyl, vinyl]",
		room + "    layers: carpet over 2 vinyl\n":                                            "layers: [carpet, vinyl, vinyl]",
		room + "    layers: carpet vinyl\n":                                                   "did you mean \"carpet\"? each layer stands by itself, from the top down:   layers: [carpet, vinyl]",
		room + "    layers: carpet, shag\n":                                                   "layers: [carpet, vinyl, vinyl]",
		room + "    closets: 5' x 2', 3' x 2'\n":                                              "closets: [5' x 2', 3' x 2']",
		room + "    closets: 2 of 5' x 2'\n":                                                  "closets: [5' x 2', 5' x 2']",
		room + "    closets: [5' x 2' and 3' x 2', 4' x 2']\n":                                "each by itself:   5' x 2', 3' x 2'",
		room + "    fixed: {tub: 5' x 2'6\" and 3' x 2'}\n":                                   "tub: 5' x 2'6\"   and   second tub: 3' x 2'",
		"rooms: {den: {size: 12' x 14', closets: 5' x 2', 3' x 2', work: {carpet: hired}}}\n": "several sizes of one key stand in brackets",
		"rooms: {den: {size: 12' x 14', layers: carpet, vinyl, work: {carpet: hired}}}\n":     "layers: [carpet, vinyl]",
		"rooms:\n  den:\n    size: [12' x 14', 5' x 6', sharing 5']\n":                        "behind it, without a comma",
		"rooms:\n  den:\n    size: [12' x 14', 5' x 6' sharing]\n":                            "behind the word sharing",
		room + "scope: [light, full]\n":                                                       "scope: {all rooms: light, bath: as it is}",
		room + "scope: [{den: light}, {hall: full}]\n":                                        "scope: {den: light, hall: full}",
		room + "scope: [den, hall]\n":                                                         "write behind each room its option",
		room + "    windows: 3' x 4' and 2' x 3'\n":                                           "windows: [3' x 4', 2' x 3']",
		room + "    doors: 2'8\" x 6'8\"; 2'6\" x 6'8\"\n":                                    "doors: [2'8\" x 6'8\", 2'6\" x 6'8\"]",
		room + "    layers: none\n":                                                           "leave the key out",
		room + "    closets: none\n":                                                          "leave the key out",
		room + "    closets: 2\n":                                                             "write the size of each",
		room + "    closets: [5' x 2', 3' x 2' sharing 5']\n":                                 "no longer than the shorter",
		room + "seen: {plumbing: good}\n":                                                     `"sewer line" or "supply pipes"`,
		room + "seen: {roof: good}\n":                                                         "if it is one of these, write that name",
		room + "    without: register covers, delivery\n":                                     "without: [register covers, delivery]",
		"rooms: {den: {size: 12' x 14', work: {carpet: hired}}}\nscope: light, den: full\n":   "scope: {all rooms: light, den: full}",
		"rooms:\n  den:\n    size: 12' x 14', 5' x 6' sharing 5'\n":                           "size: [12' x 14', 5' x 6' sharing 5']",
		"rooms:\n  den:\n    size: [12' x 14', 5' x 6' shared 5']\n":                          "behind the word sharing",
	} {
		_, found := deal.Read("a.yaml", []byte(walked+text))
		require.True(t, found.HasErrors(), text)
		require.Contains(t, fmt.Sprint(found.Errors()[0].Hint), want, text)
	}
	_, found := deal.Read("a.yaml", []byte(walked+"rooms: {den: {size: [12' x 14', 5' x 6' sharing 5], work: {carpet: hired}}}\n"))
	require.Equal(t, []string{"bad-length"}, codesIn(found)) // and not that they share nothing
}
