// Package pricebook holds what work takes and costs: products with what a pack holds
// and costs, and items of work with hours, prices, materials, companions, cautions and
// the source of each figure. A starter book ships with the program; an owner's own
// book, in the same form, adds to it and stands before it.
//
//	book, found := pricebook.Read("mine.yaml", text, pricebook.Starter())
//	item := book.Item("tile floor")
//
// The starter's prices are invented and dated; its yields, waste and hours come from
// published tables where there are some, and are marked as common practice elsewhere.
// The package holds no arithmetic: what an item costs is for the model to say.
package pricebook
