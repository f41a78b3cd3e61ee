package answer

// Partnered reports whether a partner pays a part of what is short, so that the profit of
// the deal and the owner's are two figures.
func (a *Answer) Partnered() bool { return a.Line("partner_share").IsPositive() }

// DealProfit is what pages call the line profit: with a partner it says whose it is.
func (a *Answer) DealProfit() string { return a.whose("profit", "profit of the deal") }

// OwnProfit is what pages call the line owner_profit.
func (a *Answer) OwnProfit() string { return a.whose("profit", "your profit") }

// OwnLoss is what pages call a loss of the owner.
func (a *Answer) OwnLoss() string { return a.whose("the loss", "your loss") }

// DealMargin is what pages call the line margin.
func (a *Answer) DealMargin() string {
	return a.whose("margin, of the sale price", "margin of the deal")
}

func (a *Answer) whose(alone, partnered string) string {
	if a.Partnered() {
		return partnered
	}
	return alone
}
