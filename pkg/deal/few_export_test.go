package deal

// FewInRoom are the items by the piece of which a room hardly has more than two.
var FewInRoom = fewInRoom
