package comps

import "math"

// plane brings places to metres. Degrees are laid flat around a point of the list.
type plane struct{ lon, lat float64 }

// degree is a degree of a great circle of a sphere of 6,371 km, metres.
const degree = 6_371_000 * math.Pi / 180

// newPlane lays the plane around the south-western corner of the places.
func newPlane(sales []*Sold) plane {
	p := plane{math.Inf(1), math.Inf(1)}
	for _, s := range sales {
		if s.Place.Known && s.Place.Degrees {
			p.lon, p.lat = min(p.lon, s.Place.X), min(p.lat, s.Place.Y)
		}
	}
	return p
}

func (p plane) metres(at Place) (east, north float64, known bool) {
	if !at.Known || !at.Degrees {
		return at.X, at.Y, at.Known
	}
	if math.IsInf(p.lon, 0) {
		return 0, 0, false
	}
	return (at.X - p.lon) * degree * math.Cos(p.lat*math.Pi/180), (at.Y - p.lat) * degree, true
}
