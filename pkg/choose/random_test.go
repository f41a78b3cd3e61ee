package choose

import (
	"hash/fnv"
	"math/rand/v2"
	"slices"

	"pgregory.net/rapid"
)

// every calls f with each whole choice, the earlier options first.
func every(sizes []int, f func(choice []int)) {
	choice := make([]int, len(sizes))
	var deeper func(int)
	deeper = func(i int) {
		if i == len(sizes) {
			f(choice)
			return
		}
		for o := range sizes[i] {
			choice[i] = o
			deeper(i + 1)
		}
	}
	deeper(0)
}

// tried are the choices that keep the limits, the best first, by trying all.
func tried(p Problem) []*Choice {
	var out []*Choice
	every(p.Rooms(), func(c []int) {
		if v, ok, tie := p.Worth(c); ok {
			out = append(out, &Choice{slices.Clone(c), v, tie})
		}
	})
	slices.SortFunc(out, (*Choice).order)
	return out
}

// table is a problem with any worth at all for each choice. Its bound is the best
// completion and some more; it says "not possible" of some that are not.
type table struct {
	sizes []int
	value []int64
	ok    []bool
	tie   [][2]int64
	salt  uint64
	loose int64 // up to so much above the best completion
	calls int   // of Worth
}

func (p *table) Rooms() []int { return p.sizes }

func (p *table) at(choice []int) int {
	n := 0
	for i, o := range choice {
		n = n*p.sizes[i] + o
	}
	return n
}

func (p *table) Worth(choice []int) (int64, bool, [2]int64) {
	p.calls++
	n := p.at(choice)
	return p.value[n], p.ok[n], p.tie[n]
}

func (p *table) Bound(partial []int) (int64, bool) {
	best, possible := int64(never), false
	every(p.sizes, func(c []int) {
		for i, o := range partial {
			if o >= 0 && o != c[i] {
				return
			}
		}
		if n := p.at(c); p.ok[n] {
			possible, best = true, max(best, p.value[n])
		}
	})
	h := fnv.New64a()
	h.Write([]byte(key(partial)))
	salt := int64((h.Sum64() ^ p.salt) % 1024)
	if !possible {
		return salt, salt%2 == 0
	}
	return best + salt%(p.loose+1), true
}

// drawnTable has few worths and ties, so that many choices are equal.
func drawnTable(t *rapid.T) *table {
	p := &table{
		sizes: rapid.SliceOfN(rapid.IntRange(1, 4), 0, 4).Draw(t, "options"),
		loose: rapid.Int64Range(0, 10).Draw(t, "loose"),
		salt:  rapid.Uint64().Draw(t, "salt"),
	}
	worths := rapid.Int64Range(1, 30).Draw(t, "worths")
	inTen := rapid.IntRange(0, 10).Draw(t, "of ten that keep the limits")
	random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
	every(p.sizes, func([]int) {
		p.value = append(p.value, random.Int64N(worths)-worths/2)
		p.ok = append(p.ok, random.IntN(10) < inTen)
		p.tie = append(p.tie, [2]int64{random.Int64N(3), random.Int64N(3)})
	})
	return p
}

// packs is a problem like the real one: the worth of what is chosen, less packs
// bought for all rooms together, less a cost that grows with the longest way. The
// bound leaves packs unrounded and the longest way out.
type packs struct {
	*Additive
	need [][]int64 // pieces, of each option
	days [][]int64
	pack int64 // pieces in one
	cost int64 // of one pack
	rent int64 // a day
}

func (p *packs) Worth(choice []int) (int64, bool, [2]int64) {
	value, ok, tie := p.Additive.Worth(choice)
	var need, days int64
	for i, o := range choice {
		value += p.need[i][o] * p.cost / p.pack // the bound took as much
		need += p.need[i][o]
		days = max(days, p.days[i][o])
	}
	return value - (need+p.pack-1)/p.pack*p.cost - days*p.rent, ok, tie
}

// newPacks makes such a house; amounts up to unit, so that a small one has ties. The
// rent of nine days is what the bound may be off, save for a part of a pack.
func newPacks(random *rand.Rand, rooms, options, resources int, unit, rent int64) *packs {
	p := &packs{pack: 1 + random.Int64N(9), cost: random.Int64N(unit), rent: rent}
	list, limits := additive(random, rooms, options, resources, unit)
	for i := range list {
		p.need, p.days = append(p.need, nil), append(p.days, nil)
		for o := range list[i] {
			p.need[i] = append(p.need[i], random.Int64N(20))
			p.days[i] = append(p.days[i], random.Int64N(10))
			list[i][o].Value -= p.need[i][o] * p.cost / p.pack
		}
	}
	p.Additive, _ = NewAdditive(list, limits)
	return p
}

// additive makes rooms whose dearer options are worth more, more or less, and
// limits that hold back.
func additive(random *rand.Rand, rooms, options, resources int, unit int64) ([][]Option, []int64) {
	list, limits := make([][]Option, rooms), make([]int64, resources)
	for i := range list {
		for o := range options {
			size := int64(o) * (1 + random.Int64N(unit))
			made := Option{Value: size + random.Int64N(unit) - unit/4}
			for range resources {
				made.Uses = append(made.Uses, size/2+random.Int64N(unit)*int64(o))
			}
			list[i] = append(list[i], made)
		}
	}
	for k := range limits {
		for i := range list {
			limits[k] += list[i][options-1].Uses[k]
		}
		limits[k] = limits[k] * (20 + random.Int64N(60)) / 100
	}
	return list, limits
}

// alike makes the hard case: every option is worth nearly what it uses and a little
// more, so that a great many choices come close to the best.
func alike(random *rand.Rand, rooms, options, resources int, unit int64) ([][]Option, []int64) {
	list, limits := make([][]Option, rooms), make([]int64, resources)
	for i := range list {
		list[i] = []Option{{}}
		for range options - 1 {
			var made Option
			for range resources {
				use := 1 + random.Int64N(unit)
				made.Uses = append(made.Uses, use)
				made.Value += use * 13 / 10 / int64(resources)
			}
			made.Value += unit/10 + random.Int64N(unit/20+1)
			list[i] = append(list[i], made)
		}
	}
	for k := range limits {
		limits[k] = unit * int64(rooms) * (20 + random.Int64N(20)) / 100
	}
	return list, limits
}
