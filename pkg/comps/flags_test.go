package comps

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Terms as deeds, counties and lists put them.
func TestTermsThatSpeakAgainstAnOpenSale(t *testing.T) {
	for _, terms := range []string{
		"Quit Claim", "quitclaim deed", "QCD", "Q.C.", "Sheriff's Deed", "Deed in lieu", "Love and affection", "Tax Deed", "HUD", "Bank", "bank owned", "REO",
		"Real Estate Owned", "Probate", "Executor's deed", "Administrator", "Inheritance", "Estate sale", "spouse", "interspousal transfer", "divorce", "parent to child",
		"family transfer", "Related parties", "Trustee", "Mother to son", "to daughter", "father", "brother", "sister", "to wife", "husband to wife", "heirs", "half interest", "1/2 interest", "undivided interest",
		"Multiple parcels", "multi-parcel", "2 parcels", "package sale", "bulk sale", "portfolio", "Love & Affection", "transfer on death", "fiduciary deed",
		"Unqualified", "not arm's length", "not at arms length", "non-arms-length", "U", "no", "invalid sale",
	} {
		l, found := read(t, "sale date,price,deed\n2026-01-05,300000,"+terms+"\n", Options{})
		require.Equal(t, NotOpen, l.Sale(0).Flags, terms)
		require.Len(t, found, 1)
	}
	for _, terms := range []string{"Warranty", "general warranty deed", "Real Estate", "Single Family", "2-family", "Unrelated parties", "not related", "Qualified", "arms length", "theodore", "Thompson", "Mason deed", "survivorship deed", "husband and wife", "limited warranty", "one parcel", "sold off market listing", "closed listing"} {
		l, _ := read(t, "sale date,price,deed\n2026-01-05,300000,"+terms+"\n", Options{})
		require.Zero(t, l.Sale(0).Flags, terms)
	}
}

// What is offered and not sold yet is no sale.
func TestWhatIsNotSoldYet(t *testing.T) {
	for _, terms := range []string{"pending", "Active", "active listing", "listing", "asking price", "under contract", "Contingent", "expired", "withdrawn", "for sale"} {
		l, found := read(t, "sale date,price,deed\n2026-01-05,300000,"+terms+"\n", Options{})
		require.Equal(t, NotSold, l.Sale(0).Flags, terms)
		require.Contains(t, found[0].Message, "its terms say that it is offered, not sold")
	}
}

// A column of whether the sale was at arm's length holds yes or no in many spellings.
func TestArmsLength(t *testing.T) {
	for _, head := range []string{"arms length", "Arm's Length", "qualified"} {
		for cell, flags := range map[string]Flags{"N": NotOpen, "no": NotOpen, "0": NotOpen, "false": NotOpen, "U": NotOpen, "Unqualified": NotOpen, "Y": 0, "1": 0, "TRUE": 0, "Q": 0, "Qualified": 0} {
			l, _ := read(t, "sale date,price,"+head+"\n2026-01-05,300000,"+cell+"\n", Options{})
			require.Equal(t, flags, l.Sale(0).Flags, "%s: %s", head, cell)
		}
	}
	l, _ := read(t, "sale date,price,deed,arms length\n2026-01-05,300000,Warranty,N\n", Options{})
	require.Equal(t, "warranty; not at arm's length", l.Sale(0).Terms)
	require.Equal(t, NotOpen, l.Sale(0).Flags)
}

// Concessions as large as the price leave none, and are named for it.
func TestConcessionsTakeUpThePrice(t *testing.T) {
	l, found := read(t, "address,sale date,price,concessions\na,2026-01-05,300000,300000\n", Options{})
	require.Equal(t, NoNet, l.Sale(0).Flags)
	require.Equal(t, "a: its concessions take up its price", found[0].Message)
}
