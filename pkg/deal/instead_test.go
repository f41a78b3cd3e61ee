package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// Where work is done that takes the place of other work, that other work is not brought
// along: one pan to a shower, one counter to strip, one primer under the paint.
func TestWorkInPlaceOfAnotherIsNotBrought(t *testing.T) {
	places := map[string]string{
		"bath":    "rooms: {bath: {size: 9' x 8', dark walls: yes, doors: 1, windows: 1, fixed: {tub: 5' x 2.5', shower: 3' x 3', vanity: 3' x 2', toilet: 1}, work: {WORK}}}\n",
		"kitchen": "rooms: {kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 10' x 2', sink: 1}, work: {WORK}}}\n",
		"den":     "rooms: {den: {size: 12' x 13', dark walls: yes, doors: 1, windows: 1, closets: 4' x 2', work: {WORK}}}\n",
		"outside": "outside: {roof: [{size: 40' x 28', pitch: 6/12}], around: 136', doors: 1, windows: 8, deck: 12' x 10', soffit: 90 sq ft, work: {WORK}}\n",
	}
	for _, c := range []struct{ place, work, not, but string }{
		{"bath", "shower base, tile shower walls", "shower wall panels, shower pan mortar bed, tile shower floor", "wall backer board, glass door"},
		{"bath", "tile shower walls", "shower wall panels", "shower pan mortar bed, tile shower floor"},
		{"bath", "shower base", "tile shower floor", "shower wall panels"},
		{"bath", "tile shower walls, shower pan foam tray", "shower pan mortar bed", "tile shower floor"},
		{"bath", "tub, tub wall panels", "tub surround tile, wall backer board", "take out tub"},
		{"bath", "tub, tile shower walls", "shower wall panels", "tub surround tile, wall backer board"},
		{"bath", "tub", "tub wall panels", "tub surround tile, wall backer board, take out tub"},
		{"bath", "tub, take out cast iron tub", "take out tub", ""},
		{"bath", "vanity, paint walls", "paint bath walls", "mirror"},
		{"bath", "vanity, medicine cabinet fitted", "mirror", "paint bath walls"},
		{"bath", "vanity, tile wall", "paint bath walls", ""},
		{"bath", "tile floor, uncoupling membrane under tile", "floor backer board", "screw down subfloor"},
		{"bath", "tile floor, crack isolation on slab", "floor backer board, screw down subfloor", ""},
		{"bath", "tile floor, subfloor replacement", "screw down subfloor", "floor backer board"},
		{"bath", "tile floor, tile base", "base off and on", "strip base"},
		{"bath", "tile wainscot, hang bath wall board", "baseboard, base off and on", "strip base"},
		{"kitchen", "kitchen cabinets, hang wallpaper", "paint walls, paint bath walls", "prepare walls"},
		{"kitchen", "kitchen cabinets, electrical rough room", "circuit", ""},
		{"kitchen", "kitchen cabinets", "", "paint walls, circuit, strip counter"},
		{"kitchen", "stone counter, strip heavy counter", "strip counter", ""},
		{"kitchen", "range electric, microwave over range", "range hood fitted", "range hood duct"},
		{"den", "hang wall board, paint walls", "prime dark walls, prepare walls", "prime new wall board, baseboard, casing"},
		{"den", "skim walls, paint walls", "prime dark walls, prepare walls", "prime new wall board"},
		{"den", "stain-block walls, paint walls", "prime dark walls", "prepare walls"},
		{"den", "paint walls", "", "prime dark walls, prepare walls"},
		{"den", "overlay wall board, paint walls", "prime dark walls, prepare walls", "prime new wall board, base off and on"},
		{"den", "hang wall board, resilient plank floor", "base off and on", "baseboard"},
		{"den", "hang wall board, wall batts", "outside wall insulation", ""},
		{"den", "hang wall board, tall baseboard", "baseboard", ""},
		{"den", "wainscot, tall baseboard", "baseboard", ""},
		{"den", "hang wall board, circuit", "wall patching after trades", ""},
		{"den", "recessed light: {count: 4}, hang ceiling board", "wall patching after trades", ""},
		{"den", "strip wallpaper, skim walls", "repair wall cracks, seal after wallpaper", "wash off paste, seal walls before skim"},
		{"den", "strip wallpaper, overlay wall board", "repair wall cracks, seal after wallpaper, wash off paste", ""},
		{"den", "strip wallpaper", "", "repair wall cracks, seal after wallpaper, wash off paste"},
		{"den", "skim walls, baseboard", "drywall patch", "paint trim"},
		{"den", "plaster wall on lath, casing", "drywall patch", "prime old plaster"},
		{"den", "plaster two coats, circuit", "wall patching after trades", ""},
		{"den", "hang garage fire board, paint walls", "prepare walls, prime dark walls", "prime new wall board"},
		{"den", "recessed light: {count: 4}, skim ceiling", "wall patching after trades", ""},
		{"den", "repair ceiling stain, stain-block ceiling", "stain-block ceiling spots", ""},
		{"den", "repair ceiling cracks, hang ceiling board", "stain-block ceiling spots", ""},
		{"den", "laminate floor, subfloor replacement", "flatten floor spots, subfloor repair", ""},
		{"bath", "paint bath walls", "", "wash walls, prepare walls"},
		{"bath", "paint bath walls, skim walls", "wash walls, prepare walls", "seal walls before skim"},
		{"bath", "stain-block walls, plaster two coats", "wash walls", "prime old plaster"},
		{"kitchen", "kitchen cabinets, plaster wall on lath", "wash walls, drywall patch", "paint walls"},
		{"kitchen", "kitchen cabinets, tile wall", "paint walls", ""},
		{"outside", "composite deck boards, deck stain", "pressure wash deck", ""},
		{"den", "strip textured ceiling, overlay ceiling board", "skim ceiling", ""},
		{"den", "paint ceiling, hang ceiling board", "stain-block ceiling spots", ""},
		{"den", "laminate floor, self-levelled floor", "flatten floor spots", "screw down subfloor"},
		{"den", "laminate floor", "paint trim, paint casing", "base off and on, paint base, caulk base"},
		{"den", "laminate floor, paint trim", "paint base", "base off and on, paint casing"},
		{"den", "prehung inside door, varnish doors", "paint doors", "door casing"},
		{"den", "prehung inside door, casing", "door casing", ""},
		{"den", "new window, hang wall board", "window casing", "casing"},
		{"outside", "outside wall paint", "", "pressure wash, scrape and fill"},
		{"outside", "fibre cement siding", "pressure wash, scrape and fill, prime bare wood", "outside wall paint"},
		{"outside", "fascia, gutters", "gutters off and on, fascia soundness check", ""},
		{"outside", "soffit, fascia covered", "fascia", "gutters off and on"},
		{"outside", "deck boards", "pressure wash deck", "deck stain"},
		{"outside", "shingle roof gable, roof deck overlay", "roof deck repair", "roof tear-off"},
	} {
		t.Run(c.place+": "+c.work, func(t *testing.T) {
			d := readDeal(t, walked+strings.Replace(places[c.place], "WORK", worksOf(c.work), 1))
			var items []string
			for _, w := range d.Work {
				items = append(items, w.Item.Name)
			}
			for _, name := range strings.Split(c.not, ", ") {
				require.NotContains(t, items, name)
			}
			for _, name := range strings.Split(c.but, ", ") {
				if name != "" {
					require.Contains(t, items, name)
				}
			}
		})
	}
}

// worksOf is work of a file, hired where nothing is said.
func worksOf(names string) string {
	var out []string
	for _, w := range strings.Split(names, ", ") {
		if !strings.Contains(w, ":") {
			w += ": hired"
		}
		out = append(out, w)
	}
	return strings.Join(out, ", ")
}

// Work that makes one thing is doubted where both make all of it.
func TestThingsMadeTwiceAreDoubted(t *testing.T) {
	for place, work := range map[string]string{
		"rooms: {den: {size: 12' x 13', doors: 2, closets: 4' x 2', work: {WORK}}}\n": "prehung inside door: hired, double inside door: hired; bifold door: hired, sliding closet doors: hired; plaster two coats: hired, hang wall board: hired; " +
			"wainscot: hired, tile wainscot: hired; uncoupling membrane under tile: hired, crack isolation on slab: hired",
		"outside: {doors: 2, driveway: 300 sq ft}\nwhole house: {work: {WORK}}\n": "outside door: hired, double outside door: hired; air conditioner: hired, heat pump: hired",
		"outside: {driveway: 300 sq ft, work: {WORK}}\n":                          "driveway concrete: hired, driveway patched: hired",
	} {
		for _, two := range strings.Split(work, "; ") {
			_, found := deal.Read("house.yaml", []byte(walked+strings.Replace(place, "WORK", two, 1)))
			require.Contains(t, found.Error(), "both make all of the", two)
		}
	}
}

// What is in place of other work, or has it in it, is doubted beside it where both are done
// to all; not where one of them makes way, or each is for a part.
func TestWorkBesideWhatTakesItsPlaceIsDoubted(t *testing.T) {
	const bath = "rooms: {bath: {size: 9' x 8', doors: 1, windows: 1, fixed: {toilet: 1}, work: {WORK}}}\n"
	for work, twice := range map[string]string{
		"paint trim, paint base":                                      `"paint trim" is in place of "paint base"`,
		"baseboard, paint base":                                       `"paint trim" is in place of "paint base"`,
		"paint base, baseboard":                                       `"paint trim" is in place of "paint base"`,
		"baseboard, base off and on":                                  `"baseboard" is in place of "base off and on"`,
		"strip base, base off and on":                                 `"strip base" is in place of "base off and on"`,
		"casing, door casing":                                         `"casing" is in place of "door casing"`,
		"window casing, casing":                                       `"casing" is in place of "window casing"`,
		"toilet, toilet off and on":                                   `"toilet" is in place of "toilet off and on"`,
		"door casing, window casing":                                  "",
		"baseboard, resilient plank floor":                            "",
		"toilet, tile floor":                                          "",
		"prehung inside door, casing":                                 "",
		"paint trim, resilient plank floor":                           "",
		"baseboard: {part: 50%}, base off and on: {part: 50%}":        "",
		"baseboard: {count: 12 ft}, base off and on":                  "",
		"paint trim: {part: 30%}, paint base: {by: hired, part: 70%}": "",
	} {
		_, found := deal.Read("house.yaml", []byte(walked+strings.Replace(bath, "WORK", worksOf(work), 1)))
		if twice == "" {
			require.NotContains(t, found.Error(), "is in place of", work)
		} else {
			require.Contains(t, found.Error(), twice, work)
		}
	}
}

// Work that together is more than all of one thing is doubted once for the thing; what is
// counted, or each its own piece, is not.
func TestMoreThanAllOfOneThingIsDoubted(t *testing.T) {
	for work, says := range map[string]string{
		"crown: hired, c2: {item: crown, by: hired}":                                                                    `"crown" and "c2" are both crown, all of it, in bath`,
		"toilet: hired, t2: {item: toilet, by: hired}":                                                                  `"toilet" and "t2" both make all of the toilet of bath`,
		"paint trim: hired, p2: {item: paint trim, by: hired}":                                                          `"paint trim" and "p2" are both paint trim, all of it, in bath`,
		"tile floor: hired, carpet: {by: hired, part: 30%}":                                                             `"tile floor", "carpet" are together 130% of the floor of bath`,
		"tile floor: {by: hired, part: 70%}, carpet: {by: hired, part: 40%}":                                            `"tile floor", "carpet" are together 110% of the floor of bath`,
		"crown: {by: hired, part: 60%}, c2: {item: crown, by: own hands, part: 50%}":                                    `"crown", "c2" are together 110% of the crown of bath`,
		"paint trim: hired, paint base: {by: hired, part: 50%}":                                                         `"paint trim" is in place of "paint base" in bath, and they are done to 150% together`,
		"carpet: hired, refinish wood floor: own hands":                                                                 `"carpet" is in place of "refinish wood floor" in bath, and both are done to all of it`,
		"nail-down oak floor: hired, refinish wood floor: own hands":                                                    "",
		"refinish wood floor: {quote: $650}, coat wood floor: own hands":                                                "",
		"nail-down oak floor: hired, refinish wood floor: own hands, coat wood floor: own hands":                        "",
		"tile floor: {by: hired, part: 70%}, refinish wood floor: {by: own hands, part: 30%}":                           "",
		"tile floor: {by: hired, part: 70%}, carpet: {by: hired, part: 30%}":                                            "",
		"tile floor: {by: hired, part: 40%}, carpet: {by: hired, part: 30%}, sheet vinyl floor: {by: hired, part: 30%}": "",
		"crown: {by: hired, part: 60%}, c2: {item: crown, by: own hands, part: 40%}":                                    "",
		"toilet: hired, t2: {item: toilet, by: hired, count: 1}":                                                        "",
		"circuit: hired, c2: {item: circuit, by: hired}":                                                                "",
		"paint trim: {by: hired, part: 50%}, paint base: {by: hired, part: 50%}":                                        "",
	} {
		room := "rooms: {bath: {size: 10' x 9', doors: 1, fixed: {toilet: 1}, work: {" + work + "}}}\n"
		_, found := deal.Read("a.yaml", []byte(minimal+room))
		require.False(t, found.HasErrors(), "%s: %v", work, found)
		var got []string
		for _, d := range found {
			if d.Code == "done-twice" {
				got = append(got, d.Message)
			}
		}
		require.Equal(t, says, strings.Join(got, "; "), work)
	}
}
