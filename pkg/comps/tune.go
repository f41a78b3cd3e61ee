package comps

// tuning are the figures that were settled on one half of the sales that docs/comps.md
// names, and measured on the other; that document says what was seen of which.
type tuning struct {
	CellSize int // sales in a neighbourhood of the regression
	Near     int // the sale so many places off sets the reach in place
	Pool     int // sales from which local rates and the range are drawn
	Comps    int // sales taken unless another number is wished

	Floor        float64 // metres added to the reach in place
	Months       float64
	Size, Lot    float64 // of the log
	Age, AgeGrow float64 // years, and more for each year of age
	Bath, Beds   float64
	Style, Kind  float64 // what a different word counts, in squared steps
	Wall, Garage float64
	Wide, Narrow float64 // widths of the bell of weights: pool, sales taken
	Robust       int     // how often the regression's weight of a row is taken
	Scatter      float64 // deviation, of the log, at which a sale counts half
	Far          float64 // spreads beyond which a sale is passed over
	Place        float64 // ridges: how many sales the county's rate counts for
	Slopes       float64
	Local        float64 // share of the local spread in the range, the rest county-wide
	Lower, Upper float64 // calibration of the range
}

var tune = tuning{
	CellSize: 60, Near: 20, Pool: 400, Comps: 16,
	Floor: 150, Months: 36, Size: 0.35, Lot: 0.8, Age: 16, AgeGrow: 0.25, Bath: 1, Beds: 1.5,
	Style: 0.5, Kind: 2, Wall: 0.3, Garage: 0.3,
	Wide: 2, Narrow: 0.7, Robust: 1, Scatter: 0.1, Far: 5,
	Place: 5, Slopes: 10, Local: 0.95, Lower: 1.095, Upper: 1.125,
}
