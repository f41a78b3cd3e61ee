package answer

// Rented names what is rented by the month while the work goes on, in the order of the
// deal.
func (a *Answer) Rented() (names []string) {
	for _, room := range a.Model.Root.In("room") {
		for _, option := range room.In("option") {
			for _, m := range option.In("rental") {
				if a.Of(m, "rent_a_month").IsPositive() {
					names = append(names, m.Label)
				}
			}
		}
	}
	return names
}
