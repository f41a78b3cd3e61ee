package report

import (
	"io"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// ScopeObject is the JSON of the work: figures are decimals as strings.
type ScopeObject struct {
	Schema  int                        `json:"schema"`
	Deal    DealObject                 `json:"deal"`
	Rooms   []RoomObject               `json:"rooms"`
	Trades  []TradeObject              `json:"trades"`
	NotSeen []CheckObject              `json:"not_seen"`
	Totals  map[string]decimal.Decimal `json:"totals"`
}

// RoomObject is a room with its work.
type RoomObject struct {
	Room     string                     `json:"room"`
	Option   string                     `json:"option"`
	Measures map[string]decimal.Decimal `json:"measures,omitempty"`
	Figures  map[string]decimal.Decimal `json:"figures"`
	Items    []ItemObject               `json:"items"`
}

// ItemObject is a piece of work.
type ItemObject struct {
	Name      string                     `json:"name"`
	Item      string                     `json:"item"`
	Trade     string                     `json:"trade"`
	Unit      string                     `json:"unit"`
	Who       string                     `json:"who"`
	BroughtBy string                     `json:"brought_by,omitempty"`
	Note      string                     `json:"note,omitempty"`
	Figures   map[string]decimal.Decimal `json:"figures"`
}

// TradeObject is a trade with its figures.
type TradeObject struct {
	Trade   string                     `json:"trade"`
	Figures map[string]decimal.Decimal `json:"figures"`
}

// CheckObject is a part of the house that may hide a repair.
type CheckObject struct {
	Part    string                     `json:"part"`
	Figures map[string]decimal.Decimal `json:"figures"`
}

var (
	roomFigures = []string{"cash_cost", "trade_price", "own_hours", "crew_hours", "contingency", "value_added", "debris", "weight"}
	itemFigures = []string{"quantity", "trade_hours", "own_hours", "crew_hours", "materials", "labour", "labour_at_trade", "cash_cost", "trade_price", "quote_over"}
	houseTotals = []string{"rooms_cost", "rooms_at_trade_price", "disposal", "containers", "rents", "months_of_work", "not_seen", "general_cost", "works_cost", "base_cost", "contingency", "budget",
		"own_hours", "room_own_hours", "room_crew_hours", "own_weeks", "crew_weeks", "waiting_days", "scope_months", "renovation", "house_floor", "house_living_area", "rooms_a_foot"}
	roomMeasures = []string{"floor_area", "open_floor", "ceiling_area", "wall_area", "walls_less_all", "walls_less_large", "perimeter", "base_run", "casing_run",
		"wet_walls", "doors", "windows", "living_area", "cost_a_foot"}
)

// ScopeJSON writes the work as one object.
func ScopeJSON(w io.Writer, a *answer.Answer) error {
	o := ScopeObject{Schema: Schema, Deal: DealObject{a.Deal.Name, a.Deal.Address, a.Deal.Notes}, Totals: lines(a, a.Model.Root, houseTotals),
		Rooms: []RoomObject{}, Trades: []TradeObject{}, NotSeen: []CheckObject{}}
	for _, room := range a.Model.Root.In("room") {
		r := RoomObject{Room: room.Label, Option: optionsOf(room), Figures: lines(a, room, roomFigures), Items: []ItemObject{}}
		if room.Kind == "inside" {
			r.Measures = lines(a, room, roomMeasures)
		}
		for _, m := range itemsOf(a, room, "") {
			k := a.Deal.Work[m]
			r.Items = append(r.Items, ItemObject{m.Label, k.Item.Name, k.Item.Trade, string(k.Item.Unit), who(a, m), k.By, k.Note, lines(a, m, itemFigures)})
		}
		o.Rooms = append(o.Rooms, r)
	}
	for _, t := range a.Model.Root.In("trade") {
		o.Trades = append(o.Trades, TradeObject{t.Label, lines(a, t, []string{"cash_cost", "trade_price", "own_hours", "crew_hours", "weeks"})})
	}
	for _, c := range a.Model.Root.In("check") {
		o.NotSeen = append(o.NotSeen, CheckObject{c.Label, lines(a, c, []string{"set_aside", "made_new", "if_bad", "if_bad_least", "if_bad_most"})})
	}
	return writeJSON(w, o)
}

func lines(a *answer.Answer, m *model.Member, names []string) map[string]decimal.Decimal {
	out := map[string]decimal.Decimal{}
	for _, n := range names {
		out[n] = a.Of(m, n).Round(ratioPlaces)
	}
	return out
}

// BuyObject is the JSON of the shopping list.
type BuyObject struct {
	Schema   int             `json:"schema"`
	Deal     DealObject      `json:"deal"`
	Products []ProductObject `json:"products"`
}

// ProductObject is a product that is bought.
type ProductObject struct {
	Product string                     `json:"product"`
	Aisle   string                     `json:"aisle"`
	Pack    string                     `json:"pack"`
	Buy     string                     `json:"buy"`
	Dated   string                     `json:"price_dated,omitempty"`
	Source  string                     `json:"price_source"`
	Figures map[string]decimal.Decimal `json:"figures"`
	Cuts    []StickObject              `json:"cuts,omitempty"`
}

// StickObject is a stick with the pieces cut from it, in inches.
type StickObject struct {
	Length string   `json:"length"`
	Pieces []string `json:"pieces"`
	Offcut string   `json:"offcut"`
}

// BuyJSON writes the shopping list as one object.
func BuyJSON(w io.Writer, a *answer.Answer) error {
	o := BuyObject{Schema: Schema, Deal: DealObject{a.Deal.Name, a.Deal.Address, a.Deal.Notes}, Products: []ProductObject{}}
	for _, m := range bought(a) {
		p := a.Deal.Products[m]
		pack, figures := p.Pack.String(), []string{"total_bought", "packs", "left_over", "product_cost", "before_tax"}
		switch {
		case p.Roll != nil:
			pack = p.SoldIn()
		case len(p.Sticks) > 0:
			pack, figures = "sticks", slices.DeleteFunc(figures, func(line string) bool { return line == "packs" })
		}
		x := ProductObject{m.Label, p.Aisle, pack, packs(a, m), "", "", lines(a, m, figures), nil}
		x.Dated, x.Source = priceSaid(a, m)
		for _, c := range a.Deal.Cuts {
			if c.Product != m {
				continue
			}
			for _, s := range c.Plan.Sticks {
				k := StickObject{Length: inches(s.Length), Offcut: inches(s.Offcut)}
				for _, piece := range s.Cuts {
					k.Pieces = append(k.Pieces, inches(piece.Length)+" "+piece.ID)
				}
				x.Cuts = append(x.Cuts, k)
			}
		}
		o.Products = append(o.Products, x)
	}
	return writeJSON(w, o)
}

// priceSaid is when and by whom the price of a product was said: the price book, or the deal
// file, with the oldest of the days that it gives to the work at that price.
func priceSaid(a *answer.Answer, m *model.Member) (dated, source string) {
	if m.Given.Of("pack_price").Key == "" {
		p := a.Deal.Products[m]
		return day(p.Dated), p.Source
	}
	source = "the deal file"
	for _, use := range m.In("use") {
		w := a.Deal.Work[use.Parent]
		if w == nil {
			continue
		}
		if w.Dated != "" && (dated == "" || w.Dated < dated) {
			dated = w.Dated
		}
		if w.From != "" {
			source = w.From
		}
	}
	return dated, source
}

// day is a day as text, "" if it is unknown.
func day(d quantity.Date) string {
	if d.IsZero() {
		return ""
	}
	return d.String()
}
