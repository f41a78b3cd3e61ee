package published

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

const testdata = "../../../testdata/"

// origin is what every published case carries besides its own fields.
type origin struct {
	ID, Source, Section string
	HowObtained         string `json:"how_obtained"`
}

// name is the subtest's name: who published the case, where, and from what it is
// known if that is not the source itself.
func (o origin) name() string {
	n := o.ID + " " + o.Source
	if o.Section != "-" && o.Section != "" {
		n += " " + o.Section
	}
	for _, how := range []string{"from memory", "common practice, no source", "not published"} {
		if strings.Contains(o.HowObtained, how) {
			n += " (" + how + ")"
		}
	}
	return n
}

func (o origin) id() string { return o.ID }

// published reads the cases of a file by their id; numbers stay as written.
func published[T interface{ id() string }](t *testing.T, file string) map[string]T {
	t.Helper()
	text, err := os.ReadFile(testdata + "published/" + file)
	require.NoError(t, err)
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var list []T
	require.NoError(t, d.Decode(&list))
	out := map[string]T{}
	for _, c := range list {
		require.NotContains(t, out, c.id())
		out[c.id()] = c
	}
	return out
}

// bid is a deal file that was read and worked out.
type bid struct {
	*testing.T
	*deal.Deal
	*exact.Values
}

func read(t *testing.T, text string, sets ...deal.Set) bid {
	t.Helper()
	d, found := deal.Read("deal.yaml", []byte(text), sets...)
	require.NotNil(t, d, "%v\n%s", found, text)
	v, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	return bid{t, d, v}
}

// answered works out all that is said about a deal file.
func answered(t *testing.T, text string) *answer.Answer {
	t.Helper()
	d, found := deal.Read("deal.yaml", []byte(text))
	require.NotNil(t, d, "%v\n%s", found, text)
	a, err := answer.Of(d, found)
	require.NoError(t, err)
	return a
}

func (b bid) line(name string) decimal.Decimal { return b.of(b.Root, name) }

func (b bid) of(m *model.Member, name string) decimal.Decimal {
	return b.Of(b.Model.Find(m, name))
}

func (b bid) loan() *model.Member { return b.Root.In("loan")[0] }

// fee finds a charge of a member by its name in the file.
func (b bid) fee(m *model.Member, kind, name string) *model.Member {
	for _, f := range m.In(kind) {
		if f.Label == name {
			return f
		}
	}
	b.Fatalf("no %s is called %q", kind, name)
	return nil
}

// cents asserts an amount to the cent, and that nothing stands behind the cent.
func cents(t *testing.T, want string, got decimal.Decimal, about ...any) {
	t.Helper()
	require.Equal(t, dec(want).StringFixed(2), got.StringFixed(2), about...)
	require.True(t, got.Equal(got.Round(2)), about...)
}

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }

func near(t *testing.T, want, got, within decimal.Decimal) {
	t.Helper()
	require.Truef(t, got.Sub(want).Abs().LessThanOrEqual(within), "got %s, want %s within %s", got, want, within)
}
