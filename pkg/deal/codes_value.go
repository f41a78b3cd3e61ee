package deal

import "ledgerboard/pkg/diag"

func valueCodes() []Code {
	return mistakes([][2]string{
		{"unknown-key", "a key that there is not, or not here"},
		{"missing-value", "a key without a value"},
		{"want-value", "a group or list where a single value belongs"},
		{"want-group", "something else where a group of keys belongs"},
		{"want-list", "something else where a list belongs"},
		{"bad-money", "not an amount of dollars"},
		{"bad-percent", "not a percentage"},
		{"bad-duration", "not a length of time"},
		{"bad-date", "not a day"},
		{"bad-number", "not a number"},
		{"bad-hours", "not hours of work"},
		{"bad-hour-rate", "not dollars an hour"},
		{"bad-yes-no", "neither yes nor no"},
		{"bad-choice", "none of the words of a choice"},
		{"below-zero", "an amount below zero"},
		{"zero", "nothing, where something is needed"},
		{"too-small", "less than can be right"},
		{"too-large", "more than can be right"},
		{"not-whole", "a part where a whole number belongs"},
		{"not-whole-months", "a part of a month where whole months belong"},
	})
}

func feeCodes() []Code {
	return mistakes([][2]string{
		{"bad-charge", "a charge in no form that is read"},
		{"share-or-dollars", "a small number that could be dollars or a percentage"},
		{"charge-by-week", "a charge by the day or week"},
		{"charge-by-time-here", "a charge by time for something that falls on one day"},
		{"fee-empty", "a charge without an amount"},
		{"rates-two-ways", "a charge stated in two ways"},
		{"unknown-base", "a share of something that there is not"},
		{"base-not-here", "a share of something that cannot be known there"},
		{"base-twice", "a share of two things"},
		{"base-unused", "a fixed amount of something"},
		{"unknown-phase", "a phase that there is not"},
		{"detail-not-here", "a detail that this kind of charge does not have"},
		{"least-above-most", "a least amount above the greatest"},
		{"paid-ahead-once", "a one-off amount that is paid ahead"},
		{"paid-ahead-with", "a charge paid ahead with what does not go with it"},
		{"kept-without-ahead", "a kept part of a premium that is not paid ahead"},
		{"kept-of-a-bill", "a kept part of a bill that is no premium"},
		{"credit-not-here", "a credit among deposits"},
		{"bracket-words", "an edge of a bracket that cannot be read"},
		{"bracket-order", "brackets out of order"},
		{"bracket-gap", "a bracket that does not begin where the one before ends"},
		{"bracket-after-last", "a bracket after the one without an end"},
		{"bracket-rate", "a bracket or table that charges by time"},
		{"bracket-fixed", "a fixed amount in brackets whose rates are on parts"},
		{"brackets-empty", "brackets or tables without any rate"},
		{"mixed-edges", "edges that belong now to one bracket, now to the other"},
		{"table-words", "totals of a table that cannot be read"},
		{"table-empty", "a table without rates"},
		{"table-dates", "rates in force until before they begin"},
		{"table-overlap", "two tables for one day and total"},
		{"table-gap", "days or totals between tables without a rate"},
		{"dates-without-purchase", "dated rates without the day of the purchase"},
	})
}

func dealCodes() []Code {
	return mistakes([][2]string{
		{"missing-price", "no price"},
		{"missing-after-repair-value", "no after-repair value"},
		{"missing-hold", "a deal that takes no time"},
		{"hold-too-long", "a deal of more than ten years"},
		{"deposit-after-purchase", "a deposit refundable after the purchase"},
		{"deposit-above-price", "an earnest deposit above the price"},
		{"credit-above-price", "a seller's credit above the price"},
		{"low-above-value", "a low value above the after-repair value"},
		{"keep-back-alone", "cash kept back of an unknown amount"},
		{"cost-two-ways", "a renovation line with an amount and its parts"},
		{"line-empty", "a renovation line without a cost"},
		{"spending-zero", "stated spending of nothing"},
		{"price-two-ways", "a loan with a fixed amount and a price share"},
		{"remainder-first", "a first loan of the remainder"},
		{"funded-over-100", "loans that fund more than the whole renovation"},
		{"reserve-unused", "an interest reserve that pays no interest"},
		{"reserve-missing", "interest paid from a reserve that is not there"},
		{"amortising-interest", "level payments with interest paid otherwise"},
		{"extension-incomplete", "an extension without its length or fee"},
		{"extension-without-term", "an extension of a loan without a term"},
		{"partner-incomplete", "a partner without a share"},
		{"tax-two-ways", "tax as a share and by rates"},
		{"tax-incomplete", "details of tax by rates without a rate"},
		{"tax-needs-date", "tax by rates without the day of the purchase"},
		{"tax-year-unknown", "a sale in a year without published figures"},
		{"missing-input", "the model needs something that the file does not give"},
		{"circle", "amounts that each need the other"},
		{"not-bound", "the deal does not fit the model"},
	})
}

func doubtCodes() []Code {
	return codes(diag.Warning, [][2]string{
		{"discount-high", "an unusual discount to the after-repair value"},
		{"contingency-high", "an unusual contingency"},
		{"rate-high", "an unusual rate"},
		{"points-high", "unusual points"},
		{"retainage-high", "unusual retainage"},
		{"preferred-high", "an unusual preferred return"},
		{"rule-unusual", "an unusual share in the rule of thumb"},
		{"slabs-open", "slabs without a last one"},
		{"tax-filing-assumed", "filing single is assumed"},
		{"tax-year-later", "figures of an earlier year"},
	})
}
