// Package caution holds the usual cautions of the trade for a house bought to
// renovate and resell: short, sourced, and ending with whom to ask.
//
// A caution informs, it does not advise. The package never says that a hazard
// is absent; where a fact is missing it takes the more careful reading. A count
// of days that one day more or less would carry over a legal edge is shown as
// such and not decided. There is no clock: every date comes from the caller.
// The example of For shows the cautions of one plan.
//
// It also holds two small tables of figures: the customary contingency by the
// age of the house, and the yearly self-employment tax figures. It computes no
// tax.
package caution
