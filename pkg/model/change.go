package model

import "github.com/shopspring/decimal"

// A Change gives a cell another value than the deal does, for one question to a reader.
type Change struct {
	Cell  *Cell
	Value decimal.Decimal
}
