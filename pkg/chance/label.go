package chance

import "ledgerboard/pkg/deal"

// Label names an input in words: first loan, rate; property tax.
func Label(i deal.Input) string { return label(i) }
