package deal

// FewInRoom are the items by the piece of which a room hardly has more than two.
var FewInRoom = fewInRoom

// OftenMore is how often its measure the count of some items may well be.
var OftenMore = oftenMore

// MostOf are the items by the piece of which a place may have more than of those.
var MostOf = mostOf

// Most is how many of an item a room and a house hardly have more than.
type Most = mostPieces

// GoWith are the measures that go with what counted work goes by.
var GoWith = goWith
