package deal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// meantKeys are words of the trade and of everyday speech for keys that are called
// otherwise, and the paths of the keys that they may mean: that of the group where the
// word stands, else the first. Never written to.
var meantKeys = map[string][]string{
	"floors": {"house.levels"},

	"earnest money": {"purchase.earnest deposit"}, "good faith deposit": {"purchase.earnest deposit"},

	"buyers premium": {"purchase.auction premium"}, "buyer's premium": {"purchase.auction premium"},
	"sale": {"selling"}, "sale costs": {"selling"}, "selling costs": {"selling"},

	"worst case": {"value.low"}, "lowest": {"value.low"}, "pessimistic": {"value.low"},

	"months": {"time.renovation", "loans[].term", "loans[].extension.each"},
	"rehab":  {"renovation", "time.renovation", "loans[].renovation share"},

	"financing": {"loans"}, "mortgage": {"loans"},
	"lender": {"loans", "loans[].name", "value.lender's value"},
	"ltv":    {"loans[].price share"}, "loan to value": {"loans[].price share"},
	"cap on arv": {"loans[].cap on after-repair value"}, "arv cap": {"loans[].cap on after-repair value"},
	"rehab share": {"loans[].renovation share"}, "holdback": {"loans[].renovation share", "loans[].draws.retainage"},
	"origination": {"loans[].points"}, "origination fee": {"loans[].points"},
	"draw fee": {"loans[].draws.fee"}, "retention": {"loans[].draws.retainage"}, "hold back": {"loans[].draws.retainage"},

	"income": {"holding"}, "rent": {"holding"}, "rental income": {"holding"},

	"price book": {"own book"}, "pricebook": {"own book"},

	"goals": {"targets"}, "goal": {"targets"},
	"bracket": {"tax.income rate"},

	"thrifted": {"<work>.allowance"}, "find": {"<work>.allowance"}, "found": {"<work>.allowance"},
	"pitch": {"outside.roof"}, "overhang": {"outside.roof"},
	"cost": {"renovation.lines[].amount", "<work>.quote"}, "bid": {"<work>.quote"}, "estimate": {"<work>.quote"}, "amount": {"<work>.quote"}, "total": {"<work>.quote"},
	"cnt": {"<work>.count", "<fixed>.count"}, "qty": {"<work>.count", "<fixed>.count"}, "quantity": {"<work>.count", "<fixed>.count"}, "number": {"<work>.count", "<fixed>.count"}, "how many": {"<work>.count", "<fixed>.count"},
	"contractor": {"<work>.from"}, "quoted by": {"<work>.from"}, "date": {"<work>.dated"}, "quoted on": {"<work>.dated"},

	"bathroom": {"quick.baths"}, "bathrooms": {"quick.baths"}, "dining rooms": {"quick.living rooms"},

	"height": {"<room>.ceiling"}, "wall height": {"<room>.ceiling"}, "ceiling height": {"<room>.ceiling"},
	"slope": {"<room>.ceiling"}, "sloped ceiling": {"<room>.ceiling"}, "sloped ceilings": {"<room>.ceiling"}, "slopes": {"<room>.ceiling"},
	"knee wall": {"<room>.ceiling"}, "knee walls": {"<room>.ceiling"}, "ridge": {"<room>.ceiling"}, "peak": {"<room>.ceiling"},
	"length": {"<room>.size"}, "width": {"<room>.size"}, "dimensions": {"<room>.size"},
	"fixtures": {"<room>.fixed"}, "fixture": {"<room>.fixed"}, "fittings": {"<room>.fixed"},

	"min": {"<range>.low"}, "minimum": {"<range>.low"}, "least": {"<range>.low"}, "max": {"<range>.high"}, "maximum": {"<range>.high"}, "most": {"<range>.high"},
	"mode": {"<range>.likely"}, "expected": {"<range>.likely"}, "most likely": {"<range>.likely"},

	"value": {"<option>.adds"}, "value added": {"<option>.adds"}, "adds value": {"<option>.adds"},
}

// slopes is how a ceiling that is not level is written.
const slopes = " where it slopes, write   ceiling: 5' to 9'   across the width, or   ceiling: 5' to 9' both sides   under a ridge"

// noSaleKey tells of what a sold house has no key for and needs none.
func (r *reader) noSaleKey(s scope, e *entry) bool {
	words := strings.Fields(e.name)
	has := func(any ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(any, w) })
	}
	switch key := diag.Quote(e.key.text); {
	case s.group != "<comp>":
		return false
	case has("list", "listed", "listing", "ask", "asking", "asked"):
		r.say("unknown-key", e.key.at, "unknown key %s: what was asked for a house is not what it sold for", key)("leave it out; what it sold for stands as   price")
	case has("note", "notes", "comment", "comments", "remark", "remarks"):
		r.say("unknown-key", e.key.at, "unknown key %s: a sale has no note", key)("write it behind a # on a line of its own or at the end of one, as   # corner lot")
	default:
		return false
	}
	return true
}

// meantHere tells of a word that means a key of this group. What heads a column of a table
// of houses means the key of a house that holds the same.
func (r *reader) meantHere(s scope, e *entry) bool {
	if key := amountMeant(e.key.text); s.group == "comps.amounts" && key != "" {
		r.meant[s.path+key] = true
		r.say("unknown-key", e.key.at, "unknown key %s", diag.Quote(e.key.text))("did you mean %q?", key)
		return true
	}
	for _, path := range meantKeys[e.name] {
		if f := fieldAt(path); f.group() == s.group {
			r.meant[s.path+f.Key()] = true
			tell := r.say("unknown-key", e.key.at, "unknown key %s", diag.Quote(e.key.text))
			switch {
			case path == "<room>.size": // one side of it says too little
				tell("did you mean size? it holds both sides:   size: 8' x 5'")
			case path == "<room>.ceiling" && !strings.HasSuffix(e.name, "height"):
				tell("did you mean ceiling?%s", slopes)
			case path == "outside.roof":
				tell("it belongs to a part of the roof:   roof: [{size: 40' x 28', pitch: 6/12, overhang: 1'}]")
			default:
				tell("did you mean %q?", f.Key())
			}
			return true
		}
	}
	if s.group == "house" || s.group == "<comp>" {
		if f := fieldNamed(s.group, comps.FieldNamed(e.key.text)); f != nil {
			r.meant[s.path+f.Key()] = true
			r.say("unknown-key", e.key.at, "unknown key %s", diag.Quote(e.key.text))("did you mean %q?", f.Key())
			return true
		}
	}
	return false
}

// amountMeant is the key of an amount that goes by what a column of sales would be called, or "".
func amountMeant(text string) string {
	field := comps.FieldNamed(text)
	for _, row := range adjusted {
		if row.key != "" && (field != "" && fieldsOf[row.line] == field || row.line == comps.Time && strings.HasPrefix(plainKey(text), "market")) {
			return row.key
		}
	}
	return ""
}

// meantElsewhere tells of a word that means a key that belongs elsewhere. In a room, an
// option, work or a charge a word says too little of where it would belong.
func (r *reader) meantElsewhere(s scope, e *entry) bool {
	all := meantKeys[e.name]
	if len(all) == 0 || strings.HasPrefix(all[0], "<") || strings.HasPrefix(s.group, "<") {
		return false
	}
	f := fieldAt(all[0])
	r.meant[f.Path] = true
	r.say("unknown-key", e.key.at, "unknown key %s", diag.Quote(e.key.text))("did you mean %q? it belongs %s", f.Key(), f.stands())
	return true
}

// optionMeant tells of what belongs to an option, or of an option itself, that stands beside the options.
func (r *reader) optionMeant(s scope, e *entry) bool {
	name := e.key.text
	switch {
	case fieldNamed(s.group, "options") == nil:
		return false
	case e.name == "adds" && e.value.shape == scalar:
		r.say("unknown-key", e.key.at, "%s belongs to an option", diag.Quote(name))("write it with the work under one, as   options: {fresh: {adds: %s, work: {...}}}", e.value.text)
	case e.value.shape == mapping && (e.value.find("work") != nil || e.value.find("adds") != nil):
		r.say("unknown-key", e.key.at, "%s is an option, and options stand one level further in", diag.Quote(name))("write   options: {%s: {adds: $5k, work: {...}}}", name)
	default:
		return false
	}
	return true
}

// fieldAt is the field of a path of the table.
func fieldAt(path string) *Field {
	for f := range rows() {
		if f.Path == path {
			return f
		}
	}
	return nil
}

// costOfWork tells of what a piece of work costs, by words that are keys elsewhere.
func (r *reader) costOfWork(s scope, e *entry) bool {
	if s.group != "<work>" || e.value.shape != scalar {
		return false
	}
	trade, rate := "paint", "$45/hour"
	if it := r.itemNamed(plainKey(s.member.Label)); it != nil {
		trade = it.Trade
	}
	if _, err := hourly(e.value.text); err == nil {
		rate = e.value.text
	}
	var hint string
	switch v := e.value.text; e.name {
	case "labour":
		hint = fmt.Sprintf("what somebody asks for all of its labour is   quote: %s, covers: labour   ; what a trade charges by the unit is   hired: $9.50 per sq ft", v)
	case "rate", "hourly rate":
		hint = fmt.Sprintf("what a trade charges by the hour is   by the hour: yes   at the work, and   labour: {trades: {%s: {rate: %s}}}   ; by the unit it is   hired: $9.50 per sq ft", trade, rate)
	case "materials", "material":
		hint = fmt.Sprintf("what one pack of its first product costs is   price: $31.20   ; a sum for all of that product is   allowance: %s", v)
	default:
		return false
	}
	r.say("unknown-key", e.key.at, "unknown key %s", diag.Quote(e.key.text))("%s", hint)
	return true
}

// besides tells of what people write beside a room's size or a piece of work that
// stands in a place of its own.
func (r *reader) besides(s scope, e *entry) bool {
	switch {
	case s.group == "<room>" && sortOf(e.name) != "":
		tell := r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))
		if isSizeOrCount(e.value) {
			tell("it belongs under fixed; write   fixed: {%s: %s}", e.key.text, e.value.text)
		} else {
			tell("it belongs under fixed if it stands there, or under work if it is to be done")
		}
	case s.group == "<work>" && e.name == "without":
		r.besideWork(e)
	case e.name == "by" && fieldNamed(s.group, "work") != nil:
		r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))("who does it stands with each piece of work, as   work: {paint walls: %s}", cmp.Or(e.value.text, "hired"))
	case s.group == "<work>" && e.name == "pack":
		r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))(
			"it belongs to the product in a price book of your own, with its price; name the book with   own book: my-prices.yaml")
	default:
		return false
	}
	return true
}

// isSizeOrCount reports whether a value could be that of a fixed part.
func isSizeOrCount(n *node) bool {
	if n.shape != scalar {
		return false
	}
	_, size := quantity.ParseSize(n.text)
	_, count := quantity.ParseCount(n.text)
	return size == nil || count == nil
}
