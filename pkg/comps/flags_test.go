package comps

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/quantity"
)

// Terms as deeds, counties and lists put them.
func TestTermsThatSpeakAgainstAnOpenSale(t *testing.T) {
	for _, terms := range []string{
		"Quit Claim", "repo", "repossessed", "contract for deed", "Land Contract", "1/2 int", "quitclaim deed", "QCD", "TD", "nominal", "Q.C.", "Sheriff's Deed", "Deed in lieu", "Love and affection", "Tax Deed", "HUD", "Bank", "bank owned", "REO",
		"Real Estate Owned", "Probate", "Executor's deed", "Administrator", "Inheritance", "Estate sale", "spouse", "interspousal transfer", "divorce", "parent to child",
		"family transfer", "Related parties", "Trustee", "Mother to son", "to daughter", "father", "brother", "sister", "to wife", "husband to wife", "heirs", "half interest", "1/2 interest", "undivided interest",
		"Multiple parcels", "multi-parcel", "2 parcels", "package sale", "bulk sale", "portfolio", "Love & Affection", "transfer on death", "fiduciary deed",
		"QC", "Estates of John and Mary", "not a foreclosure but bank owned", "no; family", "Unqualified", "not arm's length", "not at arms length", "non-arms-length", "U", "no", "invalid sale",
		"Disqualified", "Nonqualified", "non-qualified", "Not a qualified sale", "nonarms length", "arms length: no", "quit claim deed; REO: no", "quit claim - REO: no", "foreclosure: yes", "not a short sale but a foreclosure", "heir John N",
	} {
		l, found := read(t, "sale date,price,deed\n2026-01-05,300000,"+terms+"\n", Options{})
		require.Equal(t, NotOpen, l.Sale(0).Flags, terms)
		require.Len(t, found, 1)
	}
	for _, terms := range []string{"Warranty", "general warranty deed", "Real Estate", "Single Family", "2-family", "3 family", "Unrelated parties", "not related", "Qualified", "arms length", "theodore", "Thompson", "Mason deed", "survivorship deed", "husband and wife", "limited warranty", "one parcel", "non-family", "not a foreclosure", "Parkview Estates", "no auction", "not bank owned", "sold off market listing", "closed listing",
		"not a short sale", "not a foreclosure or short sale", "No short sale", "Not tax sale", "REO: no", "Related parties: No", "Foreclosure? N", "bank owned - no", "Neither a foreclosure nor a gift", "without any family ties",
		"Not inherited / not probate", "standard sale; not an REO or short sale", "never a bank sale", "Bank financing", "conventional; bank loan", "Qualified - not a family sale", "sold; not listed"} {
		l, _ := read(t, "sale date,price,deed\n2026-01-05,300000,"+terms+"\n", Options{})
		require.Zero(t, l.Sale(0).Flags, terms)
	}
}

// What is offered and not sold yet is no sale.
func TestWhatIsNotSoldYet(t *testing.T) {
	for _, terms := range []string{"pending", "Active", "active listing", "listing", "asking price", "list price", "online estimate", "estimated value", "under contract", "Contingent", "expired", "withdrawn", "for sale",
		"pending sale", "now under contract", "active; on the market", "contract pending - not closed", "not yet closed", "sold by builder; not yet closed", "unsold", "not sold", "not sold yet", "listed; not sold yet", "on the market now"} {
		l, found := read(t, "sale date,price,deed\n2026-01-05,300000,"+terms+"\n", Options{})
		require.Equal(t, NotSold, l.Sale(0).Flags, terms)
		require.Contains(t, found[0].Message, "it is said to be offered, not sold")
	}
	for _, head := range []string{"Status", "MLS Status", "Listing Status"} {
		l, _ := read(t, "sale date,price,"+head+"\n2026-01-05,300000,Active\n2026-01-06,310000,Closed\n", Options{})
		require.Equal(t, NotSold, l.Sale(0).Flags, head)
		require.Zero(t, l.Sale(1).Flags, head)
	}
}

// A county's WD is a warranty deed wherever no status stands, and CS a sale for cash.
func TestAWarrantyDeedIsASale(t *testing.T) {
	for _, head := range []string{"deed type", "instrument", "sale type", "terms", "doc code"} {
		for _, code := range []string{"WD", "CS"} {
			l, found := read(t, "sale date,price,"+head+"\n2026-01-05,300000,"+code+"\n", Options{})
			require.Zero(t, l.Sale(0).Flags, head)
			require.Empty(t, found, head)
		}
	}
	l, _ := read(t, "sale date,price,status\n2026-01-05,300000,WD\n", Options{})
	s := l.Sale(0)
	require.Equal(t, NotSold, s.Flags)
	require.Equal(t, `it is said to be offered, not sold ("wd")`, s.Doubts())
}

// A column that is not read and says that a house was only offered is told; one that says anything
// else is not.
func TestAnUnreadColumnThatTellsOfOffers(t *testing.T) {
	const rows = "2026-01-05,300000,%s\n2026-01-06,310000,%s\n2026-01-07,320000,%s\n"
	for cells, want := range map[string]string{
		"Closed Active Pending": `"St" is not read, and 2 rows in it say where a sale stands that may not have closed, as "Active": all count as sold`,
		"Closed Sold ACT":       `"St" is not read, and 1 row in it says where a sale stands that may not have closed, as "ACT": all count as sold`,
		"Closed Sold Closed":    "", "Active OH Closed": "", "OH OH OH": "", "Yes No Yes": "", "Open New Hold": "",
	} {
		c := strings.Fields(cells)
		l, found := read(t, "sale date,price,St\n"+fmt.Sprintf(rows, c[0], c[1], c[2]), Options{})
		require.Equal(t, 3, l.Len(), cells)
		if want == "" {
			require.Empty(t, found, cells)
			continue
		}
		require.Equal(t, want, found[0].Message)
		require.Equal(t, 1, found[0].Pos.Line)
		l, _ = read(t, "sale date,price,St\n"+fmt.Sprintf(rows, c[0], c[1], c[2]), Options{Columns: map[string]string{"status": "St"}})
		require.Equal(t, NotSold, l.Sale(2).Flags)
	}
}

// Of a row that is left out no cell is doubted.
func TestARowThatIsLeftOutIsNotDoubted(t *testing.T) {
	l, found := read(t, "address,sale date,price,status\n1 A St,2026-01-05,300000,Closed\nTotal,,300000,9\n", Options{})
	require.Equal(t, 1, l.Len())
	require.Len(t, found, 1)
	require.Equal(t, "row-of-sums", found[0].Code)
}

// A closed sale may say how it was offered, or that it was not.
func TestWhatWasOfferedAndSold(t *testing.T) {
	for _, terms := range []string{"never listed", "not listed on MLS", "for sale by owner", "cash; no listing", "listed 14 days", "asking price paid", "was contingent", "active adult community", "MLS listing", "Standard listing"} {
		l, _ := read(t, "sale date,price,deed\n2026-01-05,300000,"+terms+"\n", Options{})
		require.Zero(t, l.Sale(0).Flags, terms)
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

// Of two rows of one sale that which is written out counts, whichever stands first by its
// spelling; else that of which more is known.
func TestWhichRowOfASaleCounts(t *testing.T) {
	sale := func(label string, own Origin, h House) Sold {
		return Sold{House: h, Label: label, Origin: own, Date: townDay, Price: usd(268_000)}
	}
	bare, more := House{Area: Known(1310)}, House{Area: Known(1310), Condition: Known(2), Bedrooms: Known(3)}
	for _, c := range []struct {
		a, b Sold
		want string
	}{
		{sale("12 ELM ST", Listed, more), sale("12 Elm Street", Written, bare), "12 Elm Street"},
		{sale("12 ELM STREET", Listed, more), sale("12 Elm St", Written, bare), "12 Elm St"},
		{sale("12 ELM ST", Listed, bare), sale("12 Elm St", Listed, more), "12 Elm St"},
		{sale("12 ELM ST", Listed, more), sale("12 Elm St", Listed, bare), "12 ELM ST"},
		{sale("12 ELM ST", Listed, bare), sale("12 Elm St", Listed, bare), "12 ELM ST"},
		{sale("12 ELM ST", Listed, bare), sale("12 Elm St, Toledo OH 43604", Written, bare), "12 Elm St, Toledo OH 43604"},
		{sale("12 ELM ST", Pasted, more), sale("12 Elm St", Written, bare), "12 Elm St"},
		{sale("12 ELM ST", Pasted, bare), sale("12 Elm St", Listed, more), "12 ELM ST"},
		{sale("12 ELM ST TOLEDO", Listed, bare), sale("12 Elm St", Written, bare), "12 Elm St"},
	} {
		for _, both := range [][]Sold{{c.a, c.b}, {c.b, c.a}} {
			l, _ := NewList(both, quantity.Date{})
			for _, s := range l.Sales() {
				require.Equal(t, s.Label != c.want, s.Flags.Has(Duplicate), "%s of %s and %s", s.Label, c.a.Label, c.b.Label)
			}
		}
	}
	third := sale("12 elm str", Listed, House{Area: Known(1310), Condition: Known(2), Bedrooms: Known(3), Lot: Known(9000)})
	l, _ := NewList([]Sold{sale("12 ELM ST", Listed, bare), sale("12 Elm Street", Listed, more), third}, quantity.Date{})
	kept := 0
	for _, s := range l.Sales() {
		if !s.Flags.Has(Duplicate) {
			kept++
			require.Equal(t, "12 elm str", s.Label)
		}
	}
	require.Equal(t, 1, kept)
}

// A town behind an address is none of another house, nor a kind of street that is left away; a
// unit, another kind, or more of the street's name, is.
func TestSameAddress(t *testing.T) {
	for _, both := range [][2]string{{"12 Elm St", "12 ELM STREET"}, {"12 Elm St", "12 elm st, Toledo OH"}, {"88 Ash Cres", "88 Ash Crescent"}, {"22 Fifth St", "22 5th Street"}, {"22 Tenth Ave", "22 10TH AVE"}, {"12 Elm", "12 Elm Ct"}, {"27 Walnut", "27 WALNUT LN TOLEDO"}, {"12 Broadway", "12 Broadway, Toledo OH"}, {"17 Oak Hill", "17 Oak Hill Dr"}, {"12 Elm St N", "12 Elm Street North, Toledo"}, {"27 Walnut Row", "27 Walnut Row Toledo"}, {"18 Birch St Toledo", "18 Birch Street, Toledo OH 43604"}, {"18 Birch St, Toledo, OH", "18 Birch Street, Toledo OH 43604"}, {"12 N Elm St.", "12 North Elm Street Toledo, Ohio 43604-1234"}} {
		require.True(t, SameAddress(both[0], both[1]), both)
		require.True(t, SameAddress(both[1], both[0]), both)
	}
	for _, both := range [][2]string{{"12 Elm St", "12 Elm St Apt 2"}, {"12 Elm St", "12 Elm St, Unit B"}, {"12 Elm St", "12 Elm St # 4"}, {"12 Elm St", "12 Elm St 4"}, {"12 Elm St", "12 Elm Ct"}, {"12 Elm St Toledo", "12 Elm St Toledo Apt 2"}, {"27 Walnut", "27 Walnut Grove Ln"}, {"17 Oak", "17 Oak Hill Dr"}, {"27 Walnut", "27 Walnut Grove"}, {"12 Elm", "12 Elm St 4"}, {"12 Elm", "12 Elm St Apt 2"}, {"12 Elm", "12 Elm, rear"}, {"12 N", "12 N Elm St"}, {"12 Elm", "12 Elm, Unit 2"}, {"12 St", "12 St Clair Ave"}, {"12 Elm", "12 Elm St N"}, {"12 Elm St", "12 Elm St N"}, {"12 Elm St", "112 Elm St"}, {"12 Elm St", "12 Elm St B"}, {"12", "12 Elm St"}, {"Elm", "Elm Toledo"}, {"", ""}, {"12 Elm St", "12 Elm St, rear"}} {
		require.False(t, SameAddress(both[0], both[1]), both)
		require.False(t, SameAddress(both[1], both[0]), both)
	}
}

// What stands in brackets behind an address may say that the house is only offered.
func TestAnAddressMaySayThatItIsOffered(t *testing.T) {
	for label, want := range map[string]Flags{
		"12 Elm St (active)": NotSold, "12 Elm St (Pending)": NotSold, "12 Elm St (under contract)": NotSold,
		"12 Elm St (unit 3)": 0, "12 Active Way": 0, "12 Elm St (closed)": 0, "12 Elm St (trust)": 0, "(active": 0,
	} {
		l, _ := read(t, "address;sale date;price\n"+label+";2026-01-05;300000\n", Options{})
		require.Equal(t, want, l.Sale(0).Flags, label)
	}
}
