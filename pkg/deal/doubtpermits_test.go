package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// A permit that names another trade than the work that brings one is let stand; what may be the same is
// asked for, until the file says that it is apart. A container may be for other work too. The house is
// invented.
func TestAPermitForOtherWork(t *testing.T) {
	const (
		tub  = "  bath: {size: 8' x 5', fixed: {tub: 5' x 2'6\"}, work: {tub: hired}}\n" // brings a plumbing permit
		roof = "outside: {roof: [{size: 38' x 26', pitch: 5/12}], work: {shingle roof gable: hired}}\n"
		deck = "outside: {deck: 12' x 16', deck footings: 4, work: {deck frame: hired}}\n"
	)
	for _, c := range []struct {
		keys, outside string
		told          int
	}{
		{"general: {roof permit: $400}", "", 0},
		{"general: {roofing permits: $400}", deck, 0},
		{"general: {roof permit: $400}", roof, 1},
		{"general: {hvac permit: $400}", roof, 0},
		{"general: {electrician permit: $400}", "", 0},
		{"general: {building permit: $400}", "", 0},
		{"general: {building and roof permits: $400}", deck, 1},
		{"general: {roof and plumbing permits: $400}", "", 1},
		{"general: {permits: $400}", "", 1},
		{"general: {city permit fee: $400}", "", 1},
		{"general: {general permits: $400}", "", 1},
		{"lines: [{work: street permit, amount: $400}]", "", 1},
		{"lines: [{work: street permit, amount: $400, apart: yes}]", "", 0},
		{"lines: [{trade: roof, work: second permit, amount: $400, apart: yes}]", roof, 0},
	} {
		require.Len(t, toldOf(t, "permits-twice", tub, c.outside+"renovation: {"+c.keys+"}\n"), c.told, "%s with %q", c.keys, c.outside)
	}
	for line, want := range map[string]int{"work: container": 1, "work: yard container, apart: yes": 0, "work: dumpster and permit": 1, "work: dumpster permit": 0} {
		require.Len(t, toldOf(t, "containers-twice", tub, "renovation: {lines: [{"+line+", amount: $480}]}\n"), want, line)
	}
	for line, want := range map[string]int{"dumpster permit": 0, "street permit for dumpster": 0, "container, permits": 1, "dumpster and permits": 1} {
		require.Len(t, toldOf(t, "permits-twice", tub, "renovation: {lines: [{work: \""+line+"\", amount: $75}]}\n"), want, line)
	}
}

// A line that names some of the permits brought along is beside those alone.
func TestALineNamesThePermitThatItIs(t *testing.T) {
	const wet = "  bath: {size: 8' x 5', fixed: {tub: 5' x 2'6\"}, work: {tub: hired, circuit: hired}}\n"
	for line, names := range map[string]string{
		"plumbing permit: $190":                               "plumbing permit",
		"Plumbing permit fee: $190":                           "plumbing permit",
		"electrical & plumbing permits: $190":                 "electrical permit, plumbing permit",
		"plumbing permit: $190, electrical permit: $90":       "electrical permit, plumbing permit",
		"permits: $190":                                       "electrical permit, plumbing permit",
		"plumbing and gas permits: $190":                      "electrical permit, plumbing permit",
		"plumbing permit: $190, permits: $90":                 "electrical permit, plumbing permit",
		"plumbing permit: $190, dumpster permit: $75":         "plumbing permit",
		"electrical permit: $190, plumbing: {amount: $9,000}": "electrical permit",
	} {
		_, found := deal.Read("a.yaml", []byte(walked+"renovation: {general: {"+line+"}}\nrooms:\n"+wet))
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "permits-twice" })
		require.GreaterOrEqual(t, i, 0, line)
		require.True(t, strings.HasSuffix(found[i].Message, "beside what the work brings along: "+names), "%s: %s", line, found[i].Message)
		require.Contains(t, found[i].Hint, "without: ["+names+"]", line)
	}
}
