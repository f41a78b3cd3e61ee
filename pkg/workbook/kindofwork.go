package workbook

import (
	"strings"

	"ledgerboard/pkg/pricebook"
)

// A kind is where work stands in a breakdown: a category of the lender's and an element of
// NISTIR 6389.
type kind struct{ category, element string }

// other is the kind of what no word tells.
var other = kind{"Miscellaneous", "none"}

// byWords are the kinds of lines that the deal file names in its own words, by parts of words.
// The first that fits decides, so what is narrower stands first.
var byWords = []struct {
	words string
	kind
}{
	{"demolition tear-out", kind{"Miscellaneous", "F2010"}},
	{"dumpster container hauling cleaning cleanup clean-up", kind{"Cleanup", "none"}},
	{"permit inspection survey engineer architect", other},
	{"driveway", kind{"Driveways", "G2020"}},
	{"landscap yard lawn tree plant grading", kind{"Grading and landscaping", "G2050"}},
	{"fence", kind{"Fencing", "G2040"}},
	{"walkway sidewalk", kind{"Walks", "G2030"}},
	{"gutter downspout", kind{"Gutters and downspouts", "B2010"}},
	{"chimney masonry brick mortar", kind{"Masonry", "B2010"}},
	{"siding", kind{"Siding", "B2010"}},
	{"shutter", kind{"Shutters", "B2010"}},
	{"weatherstrip", kind{"Weatherstripping", "B2030"}},
	{"roof shingle", kind{"Roof", "B3010"}},
	{"deck porch exterior outside", kind{"Exteriors", "B1010"}},
	{"basement foundation crawlspace", kind{"Basements", "A2020"}},
	{"window", kind{"Windows", "B2020"}},
	{"door", kind{"Doors (interior)", "C1020"}},
	{"framing partition wall-out", kind{"Partition walls", "C1010"}},
	{"structur beam sill", kind{"Miscellaneous", "B1010"}},
	{"drywall plaster", kind{"Plaster/drywall", "C3010"}},
	{"paint wallpaper decorat", kind{"Decorating", "C3010"}},
	{"trim casing baseboard carpentry", kind{"Wood trim", "C3010"}},
	{"stair", kind{"Stairs", "C2010"}},
	{"closet", kind{"Closets", "C1030"}},
	{"hardwood oak", kind{"Wood floors", "C3020"}},
	{"tile", kind{"Ceramic tile", "C3020"}},
	{"floor carpet", kind{"Finished floors", "C3020"}},
	{"sewer plumb pipe septic well", kind{"Plumbing", "D2020"}},
	{"electric wiring panel", kind{"Electrical", "D5020"}},
	{"heating cooling furnace hvac duct boiler", kind{"Heating", "D3020"}},
	{"insulation", kind{"Insulation", "B2010"}},
	{"cabinet counter", kind{"Cabinetry", "E2010"}},
	{"appliance", kind{"Appliances", "E1090"}},
	{"caulk", kind{"Caulking", "B2010"}},
}

// kindOf is the kind of a line by its words: those of its trade first, then all of them.
func kindOf(label string) kind {
	trade, _, _ := strings.Cut(label, ": ")
	for _, text := range []string{trade, label} {
		text = strings.ToLower(text)
		for _, t := range byWords {
			for _, w := range strings.Fields(t.words) {
				if strings.Contains(text, w) {
					return t.kind
				}
			}
		}
	}
	return other
}

// kindIn is the kind of an item of the price book.
func kindIn(it *pricebook.Item) kind {
	if it.Category == "" {
		return kind{other.category, it.Element}
	}
	return kind{it.Category, it.Element}
}
