package deal_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// What is done elsewhere takes nothing of what comes along, and what comes along by two ways in one place
// comes once: by hand, of 168 sq ft of floor and the base run of each room.
func TestWhatComesAlongLiesWhereThatLiesWhichBringsIt(t *testing.T) {
	const (
		old     = walked + "house: {year built: 1940}\nrooms: {den: {size: 12' x 14', "
		late    = walked + "house: {year built: 2000}\nrooms: {den: {size: 12' x 14', doors: 2'8\" x 6'8\", windows: 2, "
		bath    = walked + "house: {year built: 2000}\nrooms: {bath: {size: 8' x 10', doors: 2'8\" x 6'8\", fixed: {toilet: 1}, "
		papered = "repair wall cracks 208" // of 416 sq ft
	)
	for _, c := range []struct{ place, work, want string }{
		// 8% of the half under new oak, whatever of the rest is sanded
		{old + "layers: [vinyl], ", "nail-down oak floor: {part: 50%}, refinish wood floor: hired", "subfloor repair 6.72"},
		{old + "layers: [vinyl], ", "nail-down oak floor: {part: 50%}, refinish wood floor: {part: 75%}", "subfloor repair 6.72"},
		{old + "layers: [vinyl], ", "nail-down oak floor: {part: 25%}, resilient plank floor: {part: 25%}, refinish wood floor: {part: 75%}", "subfloor repair 6.72"},
		{old + "layers: [vinyl], ", "nail-down oak floor: {part: 50%}, coat wood floor: hired", "subfloor repair 6.72"},
		// a new subfloor under one half, a mended one under the other
		{old, "strip mortar bed floor tile: {part: 50%}, strip sheet vinyl: {part: 50%}, tile floor: hired", "subfloor replacement 84, subfloor repair 6.72"},
		{old, "strip mortar bed floor tile: {part: 25%}, strip sheet vinyl: {part: 75%}, tile floor: hired", "subfloor replacement 42, subfloor repair 10.08"},
		// two layers of one sort, one of them named
		{old + "layers: [vinyl, vinyl], ", "resilient plank floor: {part: 50%}, strip sheet vinyl: {part: 50%}", "strip sheet vinyl 168, subfloor repair 6.72"},
		// carpet that comes up only with the underlayment
		{old + "layers: [carpet], ", "thin plywood underlayment: hired, refinish wood floor: {part: 50%}", "strip carpet 168, subfloor repair 6.72"},
		// 33 1/3 ft of base, half of it tiled and the other half new
		{bath, "hang bath wall board: hired, tile wainscot: {part: 50%}, tile floor: hired, toilet: hired", "baseboard 16.67, strip base 33.33, base off and on 0, paint trim 16.67, caulk base 16.67"},
		{bath, "hang bath wall board: hired, tile wainscot: {part: 25%}, tile floor: hired, toilet: hired", "baseboard 25, strip base 33.33, base off and on 0"},
		// 49 1/3 ft, half of it tiled: the base of the other half is painted once
		{late, "tile base: {part: 50%}, resilient plank floor: hired, replacement window: hired", "base off and on 24.67, paint trim 24.67, paint base 0, caulk base 24.67"},
		{late, "tile base: {part: 50%}, baseboard: {part: 50%}, replacement window: hired", "paint trim 24.67, caulk base 24.67"},
		{late, "tile base: {part: 50%}, baseboard: {part: 50%}, casing: hired", "paint trim 24.67, caulk base 24.67"},
		// a membrane lies under the tile, not under the planks beside it
		{late, "tile floor: {part: 40%}, uncoupling membrane under tile: {part: 40%}, resilient plank floor: {part: 60%}", "floor backer board 0, screw down subfloor 67.2"},
		{late, "tile floor: {part: 40%}, crack isolation on slab: {part: 40%}, resilient plank floor: {part: 60%}", "floor backer board 0, screw down subfloor 0"},
		{late, "tile floor: {part: 60%}, crack isolation on slab: {part: 40%}, resilient plank floor: {part: 40%}", "floor backer board 33.6"},
		// paper stripped off the half that is not boarded, whoever finishes the boards and in however many colours it is painted
		{late, "hang wall board: {part: 50%}, strip wallpaper: {part: 50%}, white: {item: paint walls, part: 75%}, blue: {item: paint walls, part: 25%}", papered},
		{late, "hang wall board: {part: 50%}, strip wallpaper: {part: 50%}, paint walls: {part: 50%}, hang wallpaper: {part: 50%}", papered},
		{late, "hang wall board: {part: 50%}, strip wallpaper: {part: 50%}, finish wall board: {by: own hands, part: 50%}", papered},
		{late, "hang wall board: {part: 50%}, strip wallpaper: {part: 50%}, outside wall insulation: {by: own hands, part: 50%}", papered},
		// counts that go beside each other on walls less large openings, 416 sq ft, and not on walls less all of them
		{late, "strip wallpaper: {count: 100 sq ft}, paint walls: {count: 300 sq ft}", "repair wall cracks 100"},
		{late, "hang wall board: {count: 100 sq ft}, hang garage fire board: {count: 300 sq ft}", "outside wall insulation 100"},
		// levelled under the planks, backer board under the tile
		{late, "tile floor: {part: 30%}, resilient plank floor: {part: 70%}, self-levelled floor: {part: 70%}", "flatten floor spots 0, screw down subfloor 168"},
		{late, "tile floor: {part: 50%}, prefinished wood floor: {part: 50%}, floor backer board: {by: own hands, part: 50%}", "screw down subfloor 168"},
		{late, "tile floor: {part: 50%}, refinish wood floor: {part: 50%}, uncoupling membrane under tile: {part: 50%}", "floor backer board 0"},
		// panelling comes off elsewhere than the plaster that makes way for board
		{late, "strip wall plaster: {part: 50%}, hang wall board: {part: 50%}, strip panelling: {by: own hands, part: 50%}", "finish wall board 208, repair wall cracks 208"},
		// what is named of what others bring lies with these, and moves none of them
		{late, "strip textured ceiling: {part: 60%}, hang ceiling board: {part: 40%}, prime new ceiling board: {by: own hands, part: 25%}", "skim ceiling 100.8, seal ceiling before skim 100.8"},
		{late, "strip wallpaper: {part: 25%}, hang wall board: {part: 35%}, repair wall cracks: {by: own hands, part: 25%}, paint walls: {part: 90%}", "wash off paste 93.56"},
		{late, "shoe moulding: {part: 40%}, baseboard: {part: 25%}, caulk base: {by: own hands, part: 10%}", "paint trim 32.07"},
		{old, "nail-down oak floor: {part: 60%}, strip sheet vinyl: hired, coat wood floor: {part: 60%}", "subfloor repair 13.44"},
		// texture comes off what is not boarded over
		{late, "strip textured ceiling: {part: 50%}, hang ceiling board: {part: 50%}", "skim ceiling 84"},
	} {
		of := quantities(t, c.place+"work: {"+c.work+"}}}\n")
		for _, x := range strings.Split(c.want, ", ") {
			i := strings.LastIndex(x, " ")
			require.Equal(t, x[i+1:], of[x[:i]].Round(2).String(), "%s of %s", x[:i], c.work)
		}
	}
}

// However many ways lead to what comes along, it is worked out once: of forty steps of two items each, of which
// each brings both of the next, at half and a quarter of the floor, or five in all.
func TestManyWaysLeadToOneThing(t *testing.T) {
	const steps = 40
	for measure, c := range map[string]struct{ work, want string }{
		"measure: floor, hired: $1 per sq ft":         {"za0: {by: hired, part: 50%}, zb0: {by: hired, part: 25%}", "126"},
		"measure: one, hired: $1 each":                {"za0: {by: hired, count: 3}, zb0: {by: hired, count: 2}", "3"},
		"measure: one, for each: yes, hired: $1 each": {"za0: {by: hired, count: 3}, zb0: {by: hired, count: 2}", "5"},
	} {
		var items strings.Builder
		for i := range steps {
			brings := fmt.Sprintf("[za%d, zb%d]", i+1, i+1)
			if i == steps-1 {
				brings = "none"
			}
			for _, of := range []string{"a", "b"} {
				fmt.Fprintf(&items, "  z%s%d: {trade: z, %s, hours: none, materials: none, brings: %s, source: x}\n", of, i, measure, brings)
			}
		}
		d := ownBook(t, deal.Options{}, items.String(), "rooms: {den: {size: 12' x 14', work: {"+c.work+"}}}\n")
		require.Equal(t, c.want, quantitiesOf(t, d)["zb39"].String(), measure)
	}
}

// Own items by hand: tub walls of 60 sq ft and shower walls of 63 lie apart among the wet walls; pieces of one
// item lie behind each other in whatever order the file names them; each that brings a companion makes way for its
// own; of two that take each other's place one is done; and what goes by the age
// of a house, 2% of 58.5 sq ft of open floor, brings as much.
func TestWhatComesAlongByAnOwnBook(t *testing.T) {
	const items = `
  foam panel: {trade: z, measure: wet walls, hours: none, hired: $1 per sq ft, materials: none, brings: none, source: x}
  cement panel: {trade: z, measure: wet walls, hours: none, hired: $1 per sq ft, materials: none, brings: none, source: x}
  tub mosaic: {trade: z, measure: tub walls, makes: tub walls, hours: none, hired: $1 per sq ft, materials: none, brings: [cement panel unless foam panel], source: x}
  shower mosaic: {trade: z, measure: shower walls, hours: none, hired: $1 per sq ft, materials: none, brings: [cement panel unless foam panel], source: x}
  tub stripped: {trade: demolition, measure: tub walls, hours: none, hired: $1 per sq ft, materials: none, brings: [cement panel], source: x}
  fa: {trade: z, measure: one, hours: none, hired: $1 each, materials: none, brings: [ff unless ua], source: x}
  fb: {trade: z, measure: one, hours: none, hired: $1 each, materials: none, brings: [ff unless ub], source: x}
  ff: {trade: z, measure: one, for each: yes, hours: none, hired: $1 each, materials: none, brings: none, source: x}
  ua: {trade: z, measure: one, hours: none, hired: $1 each, materials: none, brings: none, source: x}
  ub: {trade: z, measure: one, hours: none, hired: $1 each, materials: none, brings: none, source: x}
  ra: {trade: z, measure: ceiling, makes: ra, hours: none, hired: $1 per sq ft, materials: none, brings: [xa unless xb], source: x}
  rb: {trade: z, measure: ceiling, makes: rb, hours: none, hired: $1 per sq ft, materials: none, brings: [xb unless xa], source: x}
  xa: {trade: z, measure: ceiling, hours: none, hired: $1 per sq ft, materials: none, brings: none, source: x}
  xb: {trade: z, measure: ceiling, hours: none, hired: $1 per sq ft, materials: none, brings: none, source: x}
  pad: {trade: z, measure: open floor, share by age: subfloor, hours: none, hired: $1 per sq ft, materials: none, brings: [pad seal], source: x}
  pad seal: {trade: z, measure: open floor, hours: none, hired: $1 per sq ft, materials: none, brings: none, source: x}
  pad maker: {trade: z, measure: open floor, hours: none, hired: $1 per sq ft, materials: none, brings: [pad], source: x}
`
	for work, want := range map[string]string{
		"tub mosaic, shower mosaic, foam panel: {part: 25%}":       "cement panel 92.25",
		"tub mosaic, shower mosaic, foam panel: {part: 50%}":       "cement panel 61.5",
		"tub mosaic, shower mosaic, foam panel: {count: 30 sq ft}": "cement panel 93",
		"tub stripped, tub mosaic":                                 "cement panel 60",
		"tub stripped: {part: 50%}, tub mosaic: {part: 50%}":       "cement panel 30",
		"fa, fb, ua: {part: 50%}":                                  "ff 1.5",
		"fa, fb, ua: {part: 50%}, ub: {part: 50%}":                 "ff 1",
		"fa, fb, ua, ub: {part: 50%}":                              "ff 0.5",
		"ra: {part: 30%}, rb: {part: 60%}":                         "xa 24, xb 24",
		"ra: {part: 50%}, rb":                                      "xa 40, xb 40",
		"pad":                                                      "pad 1.17, pad seal 1.17",
		"pad: {part: 50%}":                                         "pad 29.25, pad seal 29.25",
		"pad: {part: 100%}":                                        "pad 58.5, pad seal 58.5",
		"pad maker: {part: 50%}":                                   "pad 0.585, pad seal 0.585",
		"pad maker: {count: 20 sq ft}":                             "pad 0.4, pad seal 0.4",
	} {
		of := quantitiesOf(t, ownBook(t, deal.Options{}, items, "house: {year built: 2001}\nrooms: {bath: {size: 8' x 10', fixed: {tub: 5' x 2'6\", shower: 3' x 3'}, work: {"+worksOf(work)+"}}}\n"))
		for _, x := range strings.Split(want, ", ") {
			i := strings.LastIndex(x, " ")
			require.Equal(t, x[i+1:], of[x[:i]].Round(6).String(), "%s of %s", x[:i], work)
		}
	}
}

// Which of two halves is done by own hands and which in a quote, and which stands first, changes nothing; nor does
// one piece that is named as two.
func TestPiecesOfOneItemLieBehindEachOther(t *testing.T) {
	cooked := strings.Replace(walled, "layers: [carpet]", "kind: kitchen, fixed: {base cabinets: 9' x 2'}", 1)
	inEitherOrder(t, []amountOf{
		{walled, "tile floor: {by: own hands, part: 50%}, uncoupling membrane under tile: {part: 30%}", "other half: {item: tile floor, quote: $820, part: 50%}", "floor backer board", "24"},
		{walled, "paint walls: {by: own hands, part: 50%}, hang wall board: {part: 30%}", "other half: {item: paint walls, quote: $820, part: 50%}", "prepare walls", "70.4"},
		{walled, "strip wallpaper: {part: 50%}", "skim walls: {part: 60%}, hang wall board: {part: 40%}", "wash off paste", "176"},
		{walled, "circuit: hired", "dishwasher circuit: {item: circuit, by: hired}, disposer circuit: {item: circuit, by: hired}", "wall patching after trades", "3"},
		{walled, "circuit: {by: hired, count: 2}", "range circuit: {item: circuit, quote: $650}", "wall patching after trades", "3"},
		{walled, "light fixture: {by: own hands, count: 1}", "vanity light: {item: light fixture, by: hired, count: 1}", "switch", "2"},
		{cooked, "kitchen cabinets: {by: hired, part: 50%}", "rest: {item: kitchen cabinets, by: hired, part: 50%}", "circuit", "1"},
		{cooked, "kitchen cabinets: {by: hired, part: 50%}", "rest: {item: kitchen cabinets, by: hired, part: 50%}", "firestopping", "1"},
		{walled, "strip wallpaper: {part: 30%}, rest: {item: strip wallpaper, part: 20%}", "skim walls: {part: 60%}, hang wall board: {part: 40%}", "wash off paste", "176"},
	})
}

// Coats on tub walls that make way for panels on wet walls, and panels that lie beside what is done on tub walls,
// ask each other no end: panels on a fifth of the wet walls leave four fifths of 60 sq ft of tub walls.
func TestWorkOnAPartMakesWayForWorkOnTheWhole(t *testing.T) {
	var items, coats strings.Builder
	for i := range 14 {
		fmt.Fprintf(&items, "  coat %d: {trade: z, measure: tub walls, hours: none, hired: $1 per sq ft, materials: none, brings: none, source: x}\n", i)
		fmt.Fprintf(&coats, "%scoat %d unless foam panel", map[bool]string{true: ", "}[i > 0], i)
	}
	fmt.Fprintf(&items, "  tub job: {trade: z, measure: tubs, hours: none, hired: $1 each, materials: none, brings: [%s], source: x}\n", coats.String())
	items.WriteString(`
  foam panel: {trade: z, measure: wet walls, hours: none, hired: $1 per sq ft, materials: none, brings: none, source: x}
  plain tub: {trade: z, measure: tub walls, hours: none, hired: $1 per sq ft, materials: none, brings: none, source: x}
`)
	d := ownBook(t, deal.Options{}, items.String(), "rooms: {bath: {size: 8' x 10', fixed: {tub: 5' x 2'6\", shower: 3' x 3'}, work: {plain tub: {by: hired, part: 50%}, tub job: hired, foam panel: {by: hired, part: 20%}}}}\n")
	of := quantitiesOf(t, d)
	require.Equal(t, "24.6", of["foam panel"].String())
	for i := range 14 {
		require.Equal(t, "48", of[fmt.Sprintf("coat %d", i)].String())
	}
}
