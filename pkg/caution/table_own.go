package caution

import "slices"

// habit is the cite of what is common practice, without a source.
const habit = "CAU-7"

// ownRows are what can kill in work by own hands: gas, wiring, what carries the house, heights.
func ownRows() []row {
	return []row{
		{
			id:      "own-gas",
			title:   "gas by own hands: leaks and bad vents kill; ask a licensed trade",
			applies: func(h House) bool { return len(ownGas(h)) > 0 },
			text: "Own hands are planned on or near gas: {own-gas}. " +
				"Leaks and bad vents kill, and gas is commonly reserved for licensed trades; check locally and ask the gas supplier.",
			cites: []string{habit, "CAU-1"},
		},
		{
			id:      "own-wiring",
			title:   "wiring by own hands: shocks and fires kill; ask a licensed trade",
			applies: func(h House) bool { return len(ownWiring(h)) > 0 },
			text: "Own hands are planned on wiring: {own-wiring}. " +
				"Shocks and fires kill, a switched-off main leaves live parts, and the work is commonly reserved for licensed trades; check locally and ask an electrician.",
			cites: []string{habit, "CAU-1"},
		},
		{
			id:      "own-structure",
			title:   "what carries the house by own hands: ask an engineer before a cut",
			applies: func(h House) bool { return len(ownStructure(h)) > 0 },
			text: "Own hands are planned on what carries loads: {own-structure}. " +
				"A load without props comes down, and sizes and permits may need an engineer before any cut; check locally and ask an engineer.",
			cites: []string{habit, "CAU-1"},
		},
		{
			id:      "own-height",
			title:   "own hands on roofs, ladders or scaffold: falls cripple and kill",
			applies: func(h House) bool { return len(ownHeight(h)) > 0 },
			text: "Own hands are planned at height: {own-height}. " +
				"Falls from roofs and ladders cripple and kill; price scaffold and a second person, and ask the insurer whether own falls are covered.",
			cites: []string{habit},
		},
	}
}

// What own hands do of each: by what the plan says of the work itself, and by the trades
// of lines with own hours.
func ownGas(h House) []string       { return slices.Concat(h.OwnGas, ownTrades(h, gas)) }
func ownWiring(h House) []string    { return slices.Concat(h.OwnWiring, ownTrades(h, electrical)) }
func ownStructure(h House) []string { return slices.Concat(h.OwnStructure, ownTrades(h, structure)) }
func ownHeight(h House) []string    { return slices.Concat(h.OwnHeight, ownTrades(h, roof, siding)) }

func ownTrades(h House, kinds ...kind) (out []string) {
	for _, t := range h.OwnTrades {
		if len(plannedIn([]string{t}, kinds)) > 0 {
			out = append(out, t)
		}
	}
	return out
}
