package deal_test

import "strings"

// den is a deal with one room; what a slip changes of it brings its codes.
const den = minimal + `renovation: {contingency: 20%}
rooms:
  den:
    size: 12' x 10'
    work: {paint walls: hired}
`

// twoOptions is a deal with two rooms, one of which has one option only.
const twoOptions = minimal + `renovation: {contingency: 20%}
rooms:
  den:
    size: 12' x 10'
    options: {fresh: {work: {paint walls: hired}}, gut: {work: {hang wall board: hired}}}
  office:
    size: 10' x 10'
    options: {fresh: {work: {paint walls: hired}}}
`

const denSize = "size: 12' x 10'"

// inDen is the den with a change.
func inDen(codes, old, new string) slip { return slip{codes, "=", strings.Replace(den, old, new, 1)} }

// besideDen is the den with keys of the deal before it.
func besideDen(codes, keys string) slip { return inDen(codes, "rooms:\n", keys+"\nrooms:\n") }

func inOptions(codes, old, new string) slip {
	return slip{codes, "=", strings.Replace(twoOptions, old, new, 1)}
}

// roomSlips are slips in deals with rooms.
var roomSlips = []slip{
	besideDen("bad-length", "ceiling: tall"),
	inDen("bad-size", denSize, "size: 12'"),
	besideDen("bad-area", "outside: {deck: big}"),
	besideDen("bad-volume", "local prices: {container: {holds: 20}}"),
	besideDen("bad-weight", "local prices: {container: {weight limit: 400 stone}}"),
	besideDen("bad-pitch", "outside: {roof: [{size: 40' x 28', pitch: 25 degrees}]}"),
	besideDen("bad-days", "labour: {waiting: a while}"),
	besideDen("bad-number", "labour: {own pace: slow}"),
	inDen("bad-openings", denSize, denSize+"\n    doors: two"),
	inDen("bad-walk", denSize, "walls: [right 12', north 10', west 12', south 10']"),
	inDen("bad-count", "hired}", "{by: hired, count: most of it}}"),
	inDen("bad-rate", "hired}", "{hired: cheap}}"),
	{"bad-size", "--set den=gut", twoOptions},
	{"bad-size", "--set den=as it is", twoOptions},
	{"bad-size", "--set den=marble", twoOptions},
	inDen("size-zero", denSize, "size: 0' x 10'"),
	inDen("count-zero", "hired}", "{by: hired, count: 0}}"),
	inDen("rate-unit", "hired}", "{hired: $3 per ft}}"),
	inDen("room-without-size", denSize, "doors: 1"),
	inDen("shape-two-ways", denSize, denSize+"\n    walls: [east 12', north 10', west 12', south 10']"),
	inDen("slope-of-walk", denSize, "walls: [east 12', north 10', west 12', south 10']\n    ceiling: 5' to 9'"),
	inDen("walk-open", denSize, "walls: [east 12', north 10', west 11', south 10']"),
	inDen("walk-crosses", denSize, "walls: [east 12', north 10', west 5', south 12', west 2', north 12', west 5', south 10']"),
	inDen("shared-too-long", denSize, "size: [12' x 10', 5' x 4' sharing 6']"),
	inDen("shared-too-long", denSize, "size: [12' x 10' sharing 5', 5' x 4' sharing 4']"),
	inDen("nothing-shared", denSize, "size: [12' x 10', 5' x 4']"),
	inDen("size-mixed", denSize, "size: 4 m x 10'"),
	inDen("size-in-inches", denSize, "size: 81\" x 51\""),
	inDen("room-narrow", denSize, "size: 12' x 10\""),
	inDen("room-large", denSize, "size: 128' x 10'"),
	inDen("room-large", denSize, "size: 32' x 30'"),
	inDen("count-large", "hired}", "{by: hired, count: 1100 sq ft}}"),
	inDen("closet-large", denSize, denSize+"\n    closets: 12' x 18'"),
	inDen("count-in-parts", "paint walls: hired", "toilet: {by: hired, count: 1.5}"),
	inDen("count-in-parts", denSize+"\n    work: {paint walls: hired}", denSize+"\n    doors: 3\n    work: {slab door: {by: hired, part: 33%}}"),
	inDen("count-large", denSize+"\n    work: {paint walls: hired}", denSize+"\n    doors: 3\n    work: {slab door: {by: hired, count: 4}}"),
	inDen("ceiling-low", denSize, denSize+"\n    ceiling: 3'"),
	inDen("ceiling-low", denSize, denSize+"\n    ceiling: 3' to 6'"),
	inDen("layer-stays", denSize+"\n    work: {paint walls: hired}", denSize+"\n    layers: [vinyl, tile]\n    work: {resilient plank floor: hired}\n    without: [strip sheet vinyl]"),
	besideDen("sales-tax-high", "local prices: {sales tax: 25%}"),
	besideDen("own-hours-high", "labour: {own hours a week: 90}"),
	inDen("quote-far", "hired}", "{quote: $94,000}}"),
	inDen("quote-far", "hired}", "hired, vanity: {by: own hands, count: 1, allowance: $16,000}}"),
	inDen("quote-far", "hired}", "$0}"),
	inDen("quote-far", "hired}", "{quote: $0, covers: labour}}"),
	inDen("allowance-beside-quote", "hired}", "{quote: $400, allowance: $90}}"),
	inDen("too-small", denSize, denSize+"\n    fixed: {base cabinets: 15' x 2\"}"),
	inDen("quote-detail", "hired}", "{by: hired, quote: $450, price: $31}}"),
	inDen("quote-detail", "hired}", "{by: hired, quote: $450, hired: $2 per sq ft}}"),
	inDen("tub-deep", denSize, denSize+"\n    fixed: {tub: 2'6\" x 5'}"),
	inDen("done-twice", "paint walls: hired", "resilient plank floor: hired, carpet: hired"),
	inDen("done-twice", "paint walls: hired", "paint walls: hired, hang wallpaper: hired"),
	inDen("layer-stays", denSize+"\n    work: {paint walls: hired}", denSize+"\n    layers: [vinyl]\n    work: {refinish wood floor: hired}"),
	inDen("bad-openings", denSize, denSize+"\n    doors: 2 x 32\""),
	inDen("bad-openings", denSize, denSize+"\n    windows: 3 in x 4 in"),
	inDen("rent-detail", "paint walls: hired}", "paint walls: hired, portable toilet: {by: hired, coats: 2}}"),
	inDen("not-put-back", "paint walls: hired", "strip wall board: hired, paint walls: hired"),
	inDen("not-put-back", "paint walls: hired", "strip ceiling plaster: hired"),
	besideDen("not-put-back", "outside: {roof: [{size: 38' x 26', pitch: 6/12}], work: {roof tear-off: hired}}"),
	besideDen("not-put-back", "outside: {around: 128 ft, work: {siding tear-off: hired}}"),
	besideDen("done-twice", "outside: {around: 128 ft, work: {vinyl siding: hired, outside wall paint: hired}}"),
	inDen("layer-in-part", denSize+"\n    work: {paint walls: hired}", denSize+"\n    layers: [vinyl, vinyl]\n    work: {resilient plank floor: hired, strip sheet vinyl: {by: hired, count: 190 sq ft}}"),
	inDen("part-brings-whole", "paint walls: hired", "hang wall board: {by: hired, count: 8 sq ft}"),
	inDen("part-instead", denSize+"\n    work: {paint walls: hired}", denSize+"\n    doors: 1\n    work: {prehung inside door: hired, casing: {by: hired, part: 50%}}"),
	inDen("price-far", "hired}", "{by: hired, price: $3.10}}"),
	inDen("price-far", "hired}", "{hired: $48 per sq ft}}"),
	inDen("hours-far", "hired}", "{by: own hands, hours: 600}}"),
	inDen("rate-each-coat", "hired}", "{hired: $0.91 per sq ft}}"),
	inDen("coats-unusual", "paint walls: hired}", "vanity: {by: hired, count: 1, coats: 3}}"),
	inDen("part-over", "hired}", "{by: hired, part: 140%}}"),
	inDen("openings-wide", denSize, denSize+"\n    windows: 15 of 3' x 2'"),
	inOptions("adds-small", "{fresh: {work: {paint walls: hired}}, gut", "{fresh: {adds: $15, work: {paint walls: hired}}, gut"),
	inOptions("adds-high", "{fresh: {work: {paint walls: hired}}, gut", "{fresh: {adds: $151k, work: {paint walls: hired}}, gut"),
	inDen("work-beside-options", "work: {paint walls: hired}", "work: {paint walls: hired}\n    options: {gut: {work: {carpet: hired}}}"),
	inDen("room-name-taken", "  den:", "  whole house:"),
	inOptions("option-name-taken", "gut: {", "as it is: {"),
	inDen("adds-nothing", "after-repair value: ", "before work: "),
	{"adds-apart", "=", strings.NewReplacer("value: {", "value: {before work: $240k, ", "{fresh: {work: {paint walls: hired}}}", "{fresh: {adds: $15k, work: {paint walls: hired}}}").Replace(twoOptions)},
	inOptions("adds-missing", "{fresh: {work: {paint walls: hired}}, gut", "{fresh: {adds: $5k, work: {paint walls: hired}}, gut"),
	inOptions("adds-without-work", "{fresh: {work: {paint walls: hired}}, gut", "{fresh: {adds: $5k, work: {}}, gut"),
	{"value-used-up", "--set scope=as it is", strings.Replace(twoOptions, "{fresh: {work: {paint walls: hired}}, gut", "{fresh: {adds: $300k, work: {paint walls: hired}}, gut", 1)},
	inDen("ceiling-order", denSize, denSize+"\n    ceiling: 9' to 5'"),
	inDen("fixed-without-size", denSize, denSize+"\n    fixed: {tub: 1}"),
	inDen("fixed-over-floor", denSize, denSize+"\n    fixed: {island: 12' x 11'}"),
	inDen("opening-over-ceiling", denSize, denSize+"\n    doors: 3' x 9'"),
	inDen("opening-over-ceiling", denSize, denSize+"\n    backsplash height: 9'"),
	inDen("opening-over-ceiling", denSize, denSize+"\n    fixed: {tub: {size: 5' x 2'6\", surround: 9'}}"),
	inDen("fixed-over-wall", denSize, denSize+"\n    fixed: {tub: 19' x 2'}"),
	inDen("fixed-over-wall", denSize, denSize+"\n    fixed: {island: 2' x 30'}"),
	inDen("door-wide", denSize, denSize+"\n    doors: 6' x 3'"),
	inDen("door-wide", denSize, denSize+"\n    doorways: 6'8\" x 2'6\""),
	inDen("door-wide", denSize, denSize+"\n    cased openings: 6'8\" x 3'"),
	inDen("size-zero", denSize, denSize+"\n    doorways: 3' x 0'"),
	inDen("size-zero", denSize, denSize+"\n    windows: [3' x 4', 2 of 0' x 4']"),
	inDen("work-of-nothing", "paint walls", "shower base"),
	inDen("quote-or-count", "paint walls: hired", "paint walls: 450"),
	inDen("quote-and-own", "hired}", "{by: own hands, quote: $450}}"),
	inDen("quote-and-own", "hired}", "{by: own hands, quote: $450, covers: labour}}"),
	inDen("rate-unit", "hired}", "{hired: 2.50 per sq ft}}"),
	inDen("bad-openings", denSize, denSize+"\n    doors: 2/0 x 6/8"),
	inDen("bad-openings", denSize, denSize+"\n    doors: [2 of 2/8 x 6/8]"),
	inDen("opening-over-wall", denSize, denSize+"\n    windows: 60' x 4'"),
	besideDen("opening-over-wall", "outside: {around: 12 ft, windows: 12}"),
	inDen("opening-over-run", denSize, denSize+"\n    cased openings: 16"),
	besideDen("plane-without-size", "outside: {roof: [{pitch: 6/12}]}"),
	inDen("unknown-item", "paint walls", "paint wals"),
	inDen("unknown-item", "paint walls", "gold leaf"),
	inDen("unknown-product", "hired}", "{by: hired, product: wal paint}}"),
	inDen("product-unit", "hired}", "{by: hired, product: resilient plank}}"),
	inOptions("unknown-option", "rooms:", "scope: marble\nrooms:"),
	inOptions("unknown-option", "rooms:", "scope: {all rooms: fresh, den: luxury}\nrooms:"),
	inOptions("unknown-room", "rooms:", "scope: {all rooms: fresh, ballroom: gut}\nrooms:"),
	inDen("unknown-layer", denSize, denSize+"\n    layers: [gravel]"),
	besideDen("unknown-check", "seen: {sewer lines: good}"),
	besideDen("seen-order", "seen: {sewer line: {likely: $900, least: $5k, most: $8k}}"),
	besideDen("seen-order", "seen: {roof deck: {likely: $9k, most: $4k}}"),
	inDen("measure-not-here", "paint walls", "soil raked"),
	besideDen("book-unreadable", "own book: no-such-book.yaml"),
	{"no-cut-list", "=", minimal + "rooms:\n" + manyWindows("a") + manyWindows("b") + manyWindows("c")},

	inOptions("option-missing", "rooms:", "scope: gut\nrooms:"),
	inOptions("without-unneeded", "{fresh: {work: {paint walls: hired}}}", "{fresh: {work: {paint walls: hired}, without: [tile transition]}}"),
	inDen("done-twice", "work: {paint walls: hired}", "work: {electrical rough room: hired}\nwhole house: {work: {rewire: hired}}"),
	inDen("price-beside-allowance", "paint walls: hired", "tile floor: {by: own hands, allowance: $85, price: $24}"),
	inDen("price-beside-allowance", "paint walls: hired", "tile floor: {by: own hands, allowance: $85, waste: 20%}"),
	inDen("price-beside-allowance", "paint walls: hired", "tile floor: {by: own hands, allowance: $85, product: porcelain floor tile}"),
	inDen("quote-detail", "paint walls: hired", "tile floor: {by: own hands, covers: labour}"),
	inDen("quote-detail", "paint walls: hired", "tile floor: {quote: $500, covers: labour, tax on labour: yes}"),
	inDen("part-of-count", "paint walls: hired", "baseboard: {by: hired, part: 50%, count: 30 ft}"),
	{"quick-fewer", "=", "quick: {bedrooms: 0}\n" + strings.Replace(den, denSize, "kind: bedroom\n    "+denSize, 1)},
	besideDen("no-bedroom", "whole house: {work: {rewire: hired}}"),
	inOptions("low-above-options", "value: {after-repair value: $300k}", "value: {before work: $240k, low: $270k}"),
	inDen("price-of-sticks", "paint walls: hired", "baseboard: {by: hired, price: $9}"),
	inDen("rolls-of-walk", denSize+"\n    work: {paint walls: hired}", "walls: [east 12', north 10', west 12', south 10']\n    work: {carpet: hired}"),
	besideDen("outside-alone", "outside: {around: 128 ft}\nwhole house: {work: {crawl vapour barrier: hired}}"),
	inDen("done-twice", denSize+"\n    work: {paint walls: hired}", denSize+"\n    fixed: {tub: 5' x 2'6\"}\n    work: {tub surround tile: hired, tile shower walls: hired}"),
	besideDen("ceiling-high", "ceiling: 9 m"),
	besideDen("ceiling-low", "ceiling: 5 ft"),
	inDen("ceiling-high", denSize, denSize+"\n    ceiling: 25 ft"),
	inDen("size-slight", denSize, denSize+"\n    closets: 6\" x 2' 2\""),
	inDen("size-slight", denSize, "size: [12' x 10', 5' x 4' 2\" sharing 5\"]"),
	inDen("size-slight", denSize, denSize+"\n    fixed: {tub: {size: 5' x 2'6\", surround: 6\"}}"),
	inDen("cabinet-deep", denSize, denSize+"\n    fixed: {base cabinets: 2' x 8'}"),
	inDen("cabinet-deep", denSize, denSize+"\n    fixed: {vanity: 1' 9\" x 2' 6\"}"),
	inDen("fixed-near", denSize, denSize+"\n    fixed: {shwer: 3' x 3'}"),
	besideDen("outside-size", "outside: {around: 1280 ft}"),
	besideDen("outside-size", "outside: {around: 12' 8\"}"),
	besideDen("outside-size", "outside: {around: 128 ft, wall height: 19 m}"),
	besideDen("outside-size", "outside: {around: 128 ft, wall height: 9 ft, siding: 11,800 sq ft}"),
	besideDen("outside-size", "outside: {roof: [{size: 380' x 26', pitch: 6/12}]}"),
	besideDen("outside-size", "outside: {roof: [{size: 38' x 26', pitch: 6/12}], gutters: 760 ft}"),
	besideDen("outside-size", "outside: {yard: 3.400 sq ft}"),
	besideDen("outside-size", "outside: {deck: 12\" x 16'}"),
	besideDen("outside-size", "outside: {deck: 12' x 16', deck rail: 400 ft}"),
	besideDen("roof-flat", "outside: {roof: [{size: 38' x 26', overhang: 1'}], work: {shingle roof gable: hired}}"),
	besideDen("pitch-steep", "outside: {roof: [{size: 40' x 28', pitch: 70/12}]}"),
	besideDen("edges-missing", "outside: {roof: 1400 sq ft, work: {shingle roof gable: hired}}"),
	besideDen("edges-missing", "outside: {work: {deck frame: {by: hired, count: 168 sq ft}}}"),
	besideDen("own-without-hours", "whole house: {work: {lawn care: own hands}}"),
	besideDen("not-seen-replaced", "whole house: {work: {rewire: hired, panel 200 amp: hired}}"),
	inDen("roll-too-short", "work: {paint walls: hired}", "ceiling: 36 ft\n    work: {hang wallpaper: hired}"),
	besideDen("unknown-trade", "labour: {trades: {plumber: {crew: 2}}}"),
	inDen("trade-twice", "{contingency: 20%}", "{contingency: 20%, lines: [{trade: paint, work: all walls, amount: $2k}]}"),
	inDen("containers-twice", "{contingency: 20%}\nrooms:\n  den:\n    size: 12' x 10'\n    work: {paint walls: hired}", "{contingency: 20%, general: {dumpster: $480/month}}\nrooms:\n  den:\n    size: 12' x 10'\n    work: {strip carpet: hired, paint walls: hired}"),
	inDen("permits-twice", "{contingency: 20%}\nrooms:\n  den:\n    size: 12' x 10'\n    work: {paint walls: hired}", "{contingency: 20%, general: {permits: $1,250, building permit: $90}}\nrooms:\n  den:\n    size: 12' x 10'\n    work: {circuit: hired}"),
	inDen("permits-twice", "{contingency: 20%}\nrooms:\n  den:\n    size: 12' x 10'\n    work: {paint walls: hired}", "{contingency: 20%, general: {permit_fees: $1,250, building permit fee: $90}}\nrooms:\n  den:\n    size: 12' x 10'\n    work: {circuit: hired}"),
	inDen("roll-price", "rooms:\n  den:\n    size: 12' x 10'\n    work: {paint walls: hired}", "local prices: {roll width: 15 ft}\nrooms:\n  den:\n    size: 12' x 10'\n    work: {carpet: hired}"),
	besideDen("rate-unused", "labour: {trades: {paint: {rate: $60/hour}}}"),
	inDen("rate-unused", "{contingency: 20%}", "{contingency: 20%, own labour rate: $40/hour}"),
	inDen("no-rate", "paint walls: hired", "paint walls: {by: hired, by the hour: yes}"),
	besideDen("bad-not-planned", "seen: {water heater: bad}"),
	besideDen("bad-not-planned", "seen: {roof: {state: bad, likely: $4,900, least: $0, most: $14k}}"),
	{"quote-late", "=", strings.Replace(strings.Replace(den, "paint walls: hired", "paint walls: {quote: $400, dated: 2027-10-02}", 1), "purchase: {", "purchase: {date: 2026-11-02, ", 1)},
	besideDen("good-with-amount", "seen: {sewer line: {state: good, likely: $900}}"),
	inDen("contingency-for-age", "20%", "10%"),
	inDen("contingency-for-age", "renovation: {contingency: 20%}\n", ""),
}

// manyWindows is a hall whose casing alone takes 2,000 pieces.
func manyWindows(name string) string {
	return "  hall " + name + ":\n    size: 400' x 400'\n    windows: 500\n    work: {casing: hired}\n"
}
