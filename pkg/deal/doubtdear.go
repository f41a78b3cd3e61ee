package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// What all work of a trade in a whole house is rarely over, in dollars, by the words that lines call it: of a
// house that sells for usualValue, or has usualArea of living area, and of a greater or dearer one so much
// more. Common practice, no source.
var (
	usualValue = decimal.NewFromInt(400_000)
	usualArea  = decimal.NewFromInt(2000)
)

// dear is what lines call work of a trade, and what it is rarely over.
type dear struct {
	words *regexp.Regexp
	most  decimal.Decimal
	alone bool            // of this one piece of its trade, where a line names nothing else
	goods bool            // which cost more than it takes to put them in
	stuff decimal.Decimal // what all that such work buys is rarely over, where it is mostly labour; else 0
}

var dearWork = sync.OnceValue(func() (out []dear) {
	for _, x := range []struct {
		words        string
		most, stuff  int64
		alone, goods bool
	}{
		{words: `(?:electrical |breaker )?panel(?: upgrade)?|service upgrade`, most: 20_000, alone: true},
		{words: `water heater`, most: 12_000, alone: true},
		{words: `garage doors?`, most: 15_000, alone: true},
		{words: `final clean(?:ing)?(?: crew)?|clean(?:ing|ers?)`, most: 5000},
		{words: `gutters?|downspouts?`, most: 15_000},
		{words: `insulation`, most: 30_000},
		{words: `doors?`, most: 35_000, goods: true},
		{words: `appliances?`, most: 40_000, goods: true},
		{words: `paint(?:ing|ers?)?`, most: 50_000, stuff: 8000},
		{words: `finish carpentry|trim|millwork`, most: 45_000},
		{words: `demo(?:lition)?|tear-?out`, most: 45_000, stuff: 4000},
		{words: `til(?:e|es|ing|ers?)`, most: 50_000, stuff: 15_000},
		{words: `electric(?:al|ian|ians|ity)?|wiring|rewir(?:e|ing)`, most: 50_000},
		{words: `plumb(?:ing|ers?)|repip(?:e|ing)`, most: 50_000},
		{words: `heating|cooling|hvac|furnace|air conditioning`, most: 55_000},
		{words: `floor(?:s|ing)?|carpet(?:s|ing)?`, most: 55_000},
		{words: `landscap(?:e|ing|ers?)|yard|lawn|planting`, most: 55_000},
		{words: `drywall|plaster(?:ing|ers?)?|wall ?board|sheetrock`, most: 60_000, stuff: 15_000},
		{words: `roof(?:s|ing|ers?)?|shingles?`, most: 60_000},
		{words: `deck|porch|fenc(?:e|es|ing)`, most: 60_000},
		{words: `kitchens?|cabinet(?:s|ry)?|counter ?tops?|counters?|tops`, most: 65_000, goods: true},
		{words: `windows?`, most: 70_000, goods: true},
		{words: `bath(?:s|rooms?)?`, most: 75_000},
		{words: `siding|stucco|cladding`, most: 80_000},
	} {
		out = append(out, dear{regexp.MustCompile(`\b(?:` + x.words + `)\b`), decimal.NewFromInt(x.most), x.alone, x.goods, decimal.NewFromInt(x.stuff)})
	}
	return out
})

// moreThanATrade are in lines of which no trade tells what they come to: what holds all of the work or builds
// on, what lasts, and what lies under or around a house. doneOverOf are so but of a kitchen or a
// bath, which is done over by itself. skilled are in those of work that is mostly labour.
var moreThanATrade, doneOverOf, skilled = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(every\w*|all of (it|the work)|all work|all trades|turnkey|rehab\w*|works|contract\w*|general|gc|builders?|builds?|building|addition\w*|extension|extend\w*|stor(e?y|ies)|dormers?|attic|basement|apartments?|units?|adu|structur\w*|fram(e|ing)|beams?|masonry|foundation|slate|copper|clay|metal|standing seam|cedar|shakes?|geothermal|solar|lift|pool|retaining|drive(way)?|septic|sewer|well|fire|flood|mou?ld|asbestos|lead|abatement|trash|clean-?out|hoard\w*|custom|restor\w*|historic\w*)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(renovat\w*|remodel\w*|gut(s|ted|ting)?|refurb\w*)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(repair\w*|refinish\w*|refac\w*|rebuil\w*|re-?glaz\w*|strip\w*|paint\w*|plumb\w*|electric\w*|wir\w*|demo\w*|til\w*|remodel\w*|renovat\w*|gut(s|ted|ting)?|mov(e|ed|ing)|open(ed)?)\b`)
})

// wetRoom are the rooms whose names stand for all of the work in them.
var wetRoom = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\b(kitchens?|bath(s|rooms?)?)\b`) })

// sizeOfHouse is how many times a usual house this one is, by its value, its living area or its units;
// one of smaller ones.
func (r *reader) sizeOfHouse() decimal.Decimal {
	times := one
	for _, line := range []string{"after_repair_value", "price"} {
		if x, known := r.worked(r.deal.Root, line); known {
			times = decimal.Max(times, x.DivRound(usualValue, 4))
		}
	}
	if c := r.deal.Comps; c != nil && c.Subject.Area.Known {
		times = decimal.Max(times, decimal.NewFromFloat(c.Subject.Area.Value).DivRound(usualArea, 4))
	}
	return decimal.Max(times, decimal.NewFromInt(int64(r.deal.Units)))
}

// mostForWork is what a line of a trade is rarely over: what its trade is with that of others which it names;
// false where its trade is none of them, or it names more than a trade.
func mostForWork(label string) (most decimal.Decimal, goods, is bool) {
	name := plainKey(label)
	who, what, both := strings.Cut(name, ":")
	if !both {
		what = who
	}
	if moreThanATrade().MatchString(name) || doneOverOf().MatchString(name) && !wetRoom().MatchString(who) {
		return most, false, false
	}
	goods = !skilled().MatchString(name)
	for _, x := range dearWork() {
		named := x.words.MatchString(name)
		if x.alone && x.words.MatchString(what) && ofNew().ReplaceAllString(x.words.ReplaceAllString(what, ""), "") == "" {
			return x.most, false, true
		}
		if x.alone || !named || both && ofTrade(who) && !x.words.MatchString(wetRoom().ReplaceAllString(name, "")) { // a room says where
			continue
		}
		is = is || x.words.MatchString(who)
		goods = goods && x.goods
		most = most.Add(x.most)
	}
	return most, goods, is
}

// mostStuff is what all that a line of a trade buys is rarely over; 0 where it names a trade of which that is
// not known.
func mostStuff(label string) (most decimal.Decimal) {
	name := plainKey(label)
	if who, _, both := strings.Cut(name, ":"); both && ofTrade(who) { // what it is for may be a room
		name = who
	}
	for _, x := range dearWork() {
		switch named := x.words.MatchString(name); {
		case named && x.stuff.IsZero():
			return decimal.Zero
		case named:
			most = most.Add(x.stuff)
		}
	}
	return most
}

// ofTrade reports whether a name tells a trade, and no room.
func ofTrade(who string) bool {
	return !wetRoom().MatchString(who) && slices.ContainsFunc(dearWork(), func(x dear) bool { return !x.alone && x.words.MatchString(who) })
}

// ofNew are words that say no more than that one thing is new, and how large it is.
var ofNew = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(new|an?|the|one|\d+|amps?|gallons?|gas|tank|replaced|replacement)\b| `)
})

// doubtDearLines doubts lines of work of which a nought is too many.
func (r *reader) doubtDearLines() {
	size := r.sizeOfHouse()
	for _, l := range r.lines() {
		if l.member == nil {
			continue
		}
		most, goods, is := mostForWork(l.member.Label)
		if !is {
			continue
		}
		var sum decimal.Decimal
		var top *reading
		paid := map[string]decimal.Decimal{}
		for _, key := range []string{"amount", "materials", "labour"} {
			g := r.good(l.path + key)
			if g == nil {
				continue
			}
			sum, paid[key] = sum.Add(g.number), g.number
			if top == nil || g.number.GreaterThan(top.number) {
				top = g
			}
		}
		switch most = most.Mul(size).Round(-3); {
		case sum.GreaterThan(most):
			r.say("work-large", top.at(), "%s comes to %s; such work is rarely over %s in a house like this", diag.Quote(l.member.Label), quantity.FormatDollars(sum), quantity.FormatDollars(most))("check it, for a nought too many; if it holds more than such work, say so, e.g.   work: all of the work   ; it is used as it stands")
		case mostStuff(l.member.Label).IsPositive() && paid["materials"].GreaterThan(mostStuff(l.member.Label).Mul(size)):
			g := r.good(l.path + "materials")
			r.say("work-large", g.at(), "%s: the materials are %s; such work rarely takes over %s of them in a house like this", diag.Quote(l.member.Label), g.dollars(), quantity.FormatDollars(mostStuff(l.member.Label).Mul(size).Round(-3)))("check it, for a nought too many; if it holds more than such work, say so, e.g.   work: all of the work   ; it is used as it stands")
		case goods && paid["labour"].GreaterThan(labourForGoods.Mul(size)) && paid["labour"].GreaterThan(paid["materials"].Mul(timesTheGoods)) && paid["materials"].IsPositive():
			r.say("work-large", top.at(), "%s: the labour is %s, and the materials are %s; to put such goods in rarely costs over %s times what they do", diag.Quote(l.member.Label), top.dollars(), quantity.FormatDollars(paid["materials"]), timesTheGoods)("check both, for a nought too many or one left out; if it holds more than such work, say so, e.g.   work: all of the work   ; they are used as they stand")
		}
	}
}

// Labour is much beside goods from so many dollars and so many times what the goods cost on; common practice,
// no source.
var labourForGoods, timesTheGoods = decimal.NewFromInt(20_000), decimal.New(25, -1)
