package choose

import "math"

const (
	priceSteps = 200
	priceDecay = 0.95
)

// prices are what a unit more of each tight resource is worth at the margin, in cents,
// nearly: Lagrange's multipliers by subgradient steps that grow ever shorter (Fisher
// 1981, from memory). They choose the weights of a row, which holds with any, so
// that rounding here makes no bound wrong. Products are rounded one by one, so that
// every machine finds the same.
func (a *Additive) prices(tight []int) []float64 {
	g := a.scaled(tight)
	price, best := make([]float64, len(tight)), make([]float64, len(tight))
	slack := make([]float64, len(tight))
	least, step := math.Inf(1), 1.0
	for range priceSteps {
		if worth := g.relaxed(price, slack); worth < least {
			least = worth
			copy(best, price)
		}
		var norm float64
		for _, s := range slack {
			norm += float64(s * s)
		}
		if norm == 0 {
			break
		}
		for n, s := range slack {
			price[n] = max(0, price[n]-float64(step*s/math.Sqrt(norm)))
		}
		step *= priceDecay
	}
	for n := range best {
		best[n] *= g.value / g.unit[n]
	}
	return best
}

// scales are the options with values and uses brought to about 1.
type scales struct {
	value  float64   // cents of one
	unit   []float64 // of each tight resource
	limits []float64
	rooms  [][]scaled
}

type scaled struct {
	value float64
	uses  []float64
}

func (a *Additive) scaled(tight []int) *scales {
	g := &scales{value: 1, unit: make([]float64, len(tight))}
	for _, room := range a.rooms {
		for _, o := range room {
			g.value = max(g.value, math.Abs(float64(o.Value)))
			for n, k := range tight {
				g.unit[n] = max(g.unit[n], 1, math.Abs(float64(o.use(k))))
			}
		}
	}
	for n, k := range tight {
		g.limits = append(g.limits, float64(a.limits[k])/g.unit[n])
	}
	for _, room := range a.rooms {
		list := make([]scaled, 0, len(room))
		for _, o := range room {
			s := scaled{value: float64(o.Value) / g.value, uses: make([]float64, 0, len(tight))}
			for n, k := range tight {
				s.uses = append(s.uses, float64(o.use(k))/g.unit[n])
			}
			list = append(list, s)
		}
		g.rooms = append(g.rooms, list)
	}
	return g
}

// relaxed is the best worth if the limits may be broken at a price, and what is left
// of each limit then.
func (g *scales) relaxed(price, slack []float64) float64 {
	copy(slack, g.limits)
	var worth float64
	for n, l := range g.limits {
		worth += float64(price[n] * l)
	}
	for _, room := range g.rooms {
		best, at := math.Inf(-1), 0
		for o := range room {
			v := room[o].value
			for n, u := range room[o].uses {
				v -= float64(price[n] * u)
			}
			if v > best {
				best, at = v, o
			}
		}
		worth += best
		for n, u := range room[at].uses {
			slack[n] -= u
		}
	}
	return worth
}
