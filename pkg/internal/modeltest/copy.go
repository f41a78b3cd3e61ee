package modeltest

import "ledgerboard/pkg/model"

// Copy returns a deal anew, and for each member that it keeps the one that stands
// for it. Arrange says which of a member's children stand in the copy, and in which
// order; nil keeps all. A member that points to one that is left out is left out too.
func Copy(deal *model.Member, arrange func([]*model.Member) []*model.Member) (*model.Member, map[*model.Member]*model.Member) {
	if arrange == nil {
		arrange = func(all []*model.Member) []*model.Member { return all }
	}
	kept := map[*model.Member]bool{}
	keep(deal, arrange, kept)
	to := map[*model.Member]*model.Member{deal: model.NewDeal(deal.Label)}
	copyInto(deal, arrange, kept, to)
	link(deal, arrange, to)
	return to[deal], to
}

func keep(m *model.Member, arrange func([]*model.Member) []*model.Member, kept map[*model.Member]bool) {
	kept[m] = true
	for _, c := range arrange(m.Children) {
		keep(c, arrange, kept)
	}
}

func copyInto(m *model.Member, arrange func([]*model.Member) []*model.Member, kept map[*model.Member]bool, to map[*model.Member]*model.Member) {
	for _, g := range m.Given {
		to[m].Give(g.Line, *g.Value)
	}
	for _, c := range arrange(m.Children) {
		for _, l := range c.Links {
			if !kept[l] {
				c = nil
				break
			}
		}
		if c != nil {
			to[c] = to[m].Add(c.Set, c.Kind, c.Label)
			copyInto(c, arrange, kept, to)
		}
	}
}

// link links the copies in the order in which they stand.
func link(m *model.Member, arrange func([]*model.Member) []*model.Member, to map[*model.Member]*model.Member) {
	for _, l := range m.Links {
		to[m].Link(to[l])
	}
	for _, c := range arrange(m.Children) {
		if to[c] != nil {
			link(c, arrange, to)
		}
	}
}
