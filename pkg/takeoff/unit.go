package takeoff

// PerInch is how many units of length make an inch. A unit is small enough that
// 1/64 inch (127 units) and a millimetre (320 units) are both whole, an inch being
// 25.4 mm exactly (NIST SP 811, from memory).
const PerInch = 8128

// Limits of what CutList takes, so that its work stays bounded.
const (
	maxPieces = 5000
	maxStock  = 32
	maxLength = 1_000_000_000 // units: nearly two miles
	maxPrice  = 100_000_000   // cents: a million dollars
)
