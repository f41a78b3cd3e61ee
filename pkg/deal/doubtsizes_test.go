package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/pricebook"
)

// Rooms that are as they should be are not doubted for their size, and each slip once.
func TestSizesAreDoubtedOnce(t *testing.T) {
	codes := []string{"room-large", "room-narrow", "room-small", "size-in-inches", "size-mixed", "nothing-shared", "closet-large"}
	for _, c := range []struct{ room, code string }{
		{"den: {size: 40' x 20'", ""},
		{"den: {size: 40' 1\" x 10'", "room-large"},
		{"attic bedroom: {size: 81' x 13'", "room-large"},
		{"attic bedroom: {size: 42' x 13'", ""},
		{"den: {size: 29' x 28'", "room-large"},
		{"den: {size: [20' x 20', 21' x 20' sharing 20']", "room-large"},
		{"basement: {size: 50' x 50'", ""},
		{"basement: {size: 51' x 50'", "room-large"},
		{"attic room: {size: 44' x 24'", ""},
		{"hall: {size: 12' x 3'", ""},
		{"hall: {size: 12' x 2' 10\"", ""}, // of an old house or a mobile home
		{"hall: {size: 12' x 2' 5\"", "room-narrow"},
		{"closet: {size: 5' x 2'", ""},
		{"dining room: {size: 3.45' x 4.1'", "room-small"},
		{"bedroom: {walls: [east 5', north 5', west 5', south 5']", "room-small"},
		{"bedroom: {size: 6' x 5'", ""},
		{"dining nook: {size: 5' x 5'", ""},
		{"kitchen pantry: {size: 4' x 3'", ""},
		{"hall: {size: 4' x 4'", ""}, {"stairs: {size: 3' x 9'", ""}, {"laundry: {size: 5' x 3'", ""}, {"mudroom: {size: 5' x 5'", ""},
		{"nook: {size: 5' x 2', kind: closet", ""},
		{"bath: {size: 8' x 5', closets: 3' x 2'", ""},
		{"attic: {size: 22' x 15', closets: 22' x 18'", "closet-large"},
		{"bedroom: {size: 10' x 9', closets: 30' x 2'", "closet-large"},
		{"bedroom: {size: 10' x 9', closets: 10' x 2'", ""},
		{"bedroom: {size: 10' x 9', closets: [2' x 10', 2' x 19' 1\"]", "closet-large"},
		{"attic: {size: 22' x 15', closets: [22' x 15', 5' x 3']", ""},
		{"attic: {walls: [east 22', north 15', west 22', south 15'], closets: 22' x 18'", "closet-large"},
		{"bath: {size: [5' x 2' sharing 5', 8' x 5']", ""},
		{"bath: {size: 97\" x 61\"", ""},
		{"bath: {size: 81\" x 51\"", "size-in-inches"},
		{"bath: {size: 81 x 51 in", "size-in-inches"},
		{"entry: {size: 76\" x 60\"", ""},
		{"bath: {size: 3 x 4 m", ""},
		{"bath: {size: 3 m x 160 in", "size-mixed"},
		{"bath: {size: 8' x 5', fixed: {tub: 5' x 76 cm}", "size-mixed"},
		{"bath: {size: [8' x 5', 4' x 3' sharing 4']", ""},
		{"bath: {size: [8' x 5', 4' x 3']", "nothing-shared"},
	} {
		_, found := deal.Read("den.yaml", []byte(minimal+"rooms:\n  "+c.room+", work: {paint ceiling: hired}}\n"))
		require.False(t, found.HasErrors(), "%s: %v", c.room, found)
		var got []string
		for _, code := range codesIn(found) {
			if slices.Contains(codes, code) {
				got = append(got, code)
			}
		}
		require.Equal(t, strings.Fields(c.code), append([]string{}, got...), c.room)
	}
}

// A narrow bath is doubted as one, and a narrow hall as one.
func TestNarrowRoomsAreToldByTheirKind(t *testing.T) {
	for room, want := range map[string]string{
		"powder room: {size: 2'8\" x 5', fixed: {toilet: 1}, work: {paint bath walls: hired}}": "powder room is 2'8\" wide, and few baths are under 3 ft",
		"nook: {kind: bath, size: 2'8\" x 5', work: {paint bath walls: hired}}":                "nook is 2'8\" wide, and few baths are under 3 ft",
		"hall: {size: 2'4\" x 12', work: {paint walls: hired}}":                                "hall is 2'4\" wide, and even halls of old houses are hardly under 2' 6\"",
	} {
		require.Equal(t, []string{want}, toldOf(t, "room-narrow", "  "+room+"\n", ""))
	}
	require.Empty(t, toldOf(t, "room-narrow", "  hall: {size: 2'8\" x 12', work: {paint walls: hired}}\n", ""))
	require.Empty(t, toldOf(t, "room-narrow", "  powder room: {size: 3' x 5', work: {paint bath walls: hired}}\n", ""))
}

// Feet written for metres make a bath as large as a living room: each kind of room that is small in
// houses has a floor of its own that is large.
func TestSmallKindsOfRoomsAreDoubtedSooner(t *testing.T) {
	for _, c := range []struct {
		room, says string
	}{
		{"main bath: {size: 9 m x 5.4 m", "main bath has a floor of 523 sq ft; usual is at most 200 sq ft"},
		{"bath: {size: 29' x 15' 4\"", "bath has a floor of 445 sq ft"},
		{"powder room: {size: 24' x 24'", "powder room has a floor of 576 sq ft"},
		{"basement bath: {size: 29' x 15' 4\"", "basement bath has a floor of 445 sq ft"},
		{"spare: {size: 29' x 15', kind: bath", "spare has a floor of 435 sq ft"},
		{"primary ensuite: {size: 14' x 14'", ""},
		{"bath: {size: 2.7 m x 1.6 m", ""},
		{"basement with bath: {size: 29' x 15'", ""},
		{"bath and laundry: {size: 20' x 12'", ""},
		{"bath: {size: 29' x 15' 4\", kind: living", ""},
		{"laundry: {size: 24' x 20'", "laundry has a floor of 480 sq ft; usual is at most 300 sq ft"},
		{"basement laundry: {size: 24' x 20'", ""},
		{"pantry: {size: 20' x 20'", "pantry has a floor of 400 sq ft; usual is at most 250 sq ft"},
		{"walk-in closet: {size: 14' x 12'", ""},
		{"entry: {size: [20' x 10', 20' x 9' sharing 20', 20' x 9' sharing 20']", "entry has a floor of 560 sq ft; usual is at most 400 sq ft"},
	} {
		told := toldOf(t, "room-large", "  "+c.room+", work: {paint ceiling: hired}}\n", "")
		if c.says == "" {
			require.Empty(t, told, c.room)
			continue
		}
		require.Len(t, told, 1, c.room)
		require.Contains(t, told[0], c.says, c.room)
	}
}

// What leads through a wall may be wider than high, as doors are not.
func TestWideOpeningsAreLetBe(t *testing.T) {
	for _, keys := range []string{"doorways: 8' x 6'8\"", "cased openings: [8' x 6'8\", 2' x 4']", "windows: 6' x 3'", "doorways: 6' x 6'"} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(den, denSize, denSize+"\n    "+keys, 1)))
		require.False(t, found.HasErrors(), "%s: %v", keys, found)
	}
}

// A room that has the doorway of a door of another room is not told to name the door again.
func TestADoorOfAnotherRoomIsNotNamedTwice(t *testing.T) {
	for keys, says := range map[string]string{
		"doorways: 1":                 "in the other room or outside; or say how much, e.g.   paint doors: {by: hired, count: 1}",
		"windows: 1":                  "say what there is:   doors: 1   , or how much",
		"windows: 1\n    doorways: 2": "in the other room or outside",
	} {
		text := strings.Replace(den, denSize, denSize+"\n    "+keys, 1)
		_, found := deal.Read("den.yaml", []byte(strings.Replace(text, "paint walls", "paint doors", 1)))
		require.Equal(t, []string{"work-of-nothing"}, codesIn(found.Errors()), keys)
		require.Contains(t, found.Errors()[0].Hint, says, keys)
	}
}

// A count of more than there is is doubted as a part of over 100% is, but for a little that a
// tape slips by; where the house is measured by the few rooms of a deal, at three times as much.
func TestCountsOfMoreThanThereIsAreDoubted(t *testing.T) {
	for work, doubt := range map[string]bool{
		"tile floor: {by: hired, count: 132 sq ft}": true, // 110%
		"tile floor: {by: hired, count: 125 sq ft}": false,
		"tile floor: {by: hired, count: 60 sq ft}":  false,
		"baseboard: {by: hired, count: 50 ft}":      true, // of 44
		"rewire: {by: hired, count: 300 sq ft}":     false,
		"rewire: {by: hired, count: 400 sq ft}":     true,
		"circuit: {by: hired, count: 4}":            false,
		"recessed light: {by: hired, count: 6}":     false,
		"outlet: {by: hired, count: 16}":            false, // often more than there were
		"outlet: {by: hired, count: 60}":            true,
	} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(den, "paint walls: hired", work, 1)))
		require.Equal(t, doubt, slices.Contains(codesIn(found), "count-large"), work)
	}
}

// Of some work there is honestly more than its measure tells; a digit too many is doubted all the same.
func TestCountsThatAreOftenMore(t *testing.T) {
	for work, doubt := range map[string]bool{
		"vanity faucet and drain: {by: hired, count: 2}": false,
		"mirror: {by: hired, count: 2}":                  false,
		"vanity rough-in: {by: hired, count: 2}":         false,
		"shower niche: {by: hired, count: 2}":            false,
		"mirror: {by: hired, count: 20}":                 true,
		"vanity: {by: hired, count: 2}":                  true, // of which a second is said where it stands
	} {
		bath := "rooms: {bath: {size: 10' x 9', doors: 1, fixed: {vanity: 6' x 1'10\", shower: 5' x 3', toilet: 1}, work: {" + work + "}}}\n"
		require.Equal(t, doubt, told(t, "count-large", bath) > 0, work)
	}
	for work, doubt := range map[string]bool{
		"pressure wash: {by: hired, count: \"1,900 sq ft\"}":  false, // of 1,050, with the drive
		"pressure wash: {by: hired, count: \"19,000 sq ft\"}": true,
		"fascia: {by: hired, count: 150 ft}":                  false, // of 80 along the eaves
		"fascia: {by: hired, count: 1500 ft}":                 true,
		"outside trim painted: {by: hired, count: 400 ft}":    false, // of windows and corners too
	} {
		out := "house: {levels: 1}\noutside: {around: 130 ft, siding: \"1,050 sq ft\", roof: [{size: 40' x 25', pitch: 6/12}], work: {" + work + "}}\n"
		require.Equal(t, doubt, told(t, "count-large", out) > 0, work)
	}
	for keys, doubt := range map[string]bool{
		"outside: {windows: 7, work: {replacement window: {by: hired, count: 70}}}\n":                 true,
		"outside: {windows: 7, work: {replacement window: {by: hired, count: 7}}}\n":                  false,
		"outside: {work: {replacement window: {by: hired, count: 70}}}\n":                             false, // none listed
		"outside: {windows: 7}\nwhole house: {work: {replacement window: {by: hired, count: 70}}}\n":  true,
		"outside: {windows: 7}\nwhole house: {work: {prehung inside door: {by: hired, count: 12}}}\n": false,
		"outside: {doors: 2}\nwhole house: {work: {replacement window: {by: hired, count: 12}}}\n":    false,
	} {
		require.Equal(t, doubt, told(t, "count-large", keys) > 0, keys)
	}
	closet := "rooms: {bedroom: {size: 12' x 11', doors: 1, closets: [8' x 2'], work: {closet rod and shelf: {by: hired, count: %s}}}}\n"
	require.Zero(t, told(t, "count-large", strings.Replace(closet, "%s", "16 ft", 1)))
	require.Equal(t, 1, told(t, "count-large", strings.Replace(closet, "%s", "160 ft", 1)))
	for name := range deal.OftenMore {
		require.NotNil(t, pricebook.Starter().Item(name), name)
	}
}

// A shower with walls of its own beside a tub has its own tile; cabinets and outsides as they are
// in houses are not doubted.
func TestUsualSizesAreLetBe(t *testing.T) {
	for _, text := range []string{
		"rooms:\n  bath: {size: 10' x 8', ceiling: 8', fixed: {tub: 5' x 2'6\", shower: 3' x 3'}, work: {tub surround tile: hired, tile shower walls: hired}}\n",
		"rooms:\n  kitchen: {size: 14' x 12', ceiling: 20', closets: 2' x 1', fixed: {base cabinets: 1' x 2', island: 5' x 4', bench: 6' x 1'6\"}, work: {paint ceiling: hired}}\n",
		"outside: {around: 128 ft, wall height: 18 ft, siding: 2,100 sq ft, roof: [{size: 40' x 24', pitch: 6/12}], gutters: 80 ft, deck: 12' x 16', deck rail: 44 ft, yard: 4,200 sq ft, work: {shingle roof gable: hired}}\n",
	} {
		_, found := deal.Read("den.yaml", []byte(minimal+text))
		require.False(t, found.HasErrors(), "%s: %v", text, found)
		for _, code := range []string{"done-twice", "cabinet-deep", "fixed-near", "ceiling-high", "size-slight", "outside-size", "roof-flat"} {
			require.NotContains(t, codesIn(found), code, text)
		}
	}
}
