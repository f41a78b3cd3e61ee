package modeltest

import (
	"encoding/json"
	"fmt"
	"os"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// Worked is an invented deal whose results were computed independently of this
// program, in exact rationals.
type Worked struct {
	About   string
	Deal    WorkedDeal
	Results map[string]any
}

// WorkedDeal is the deal in the words of the file; shares are fractions.
type WorkedDeal struct {
	Price, ARV, Discount decimal.Decimal
	LenderValue          *decimal.Decimal `json:"lender_value"`
	AsIs                 *decimal.Decimal `json:"as_is"`
	Phases               map[string]decimal.Decimal
	Renovation           struct {
		Base, Contingency decimal.Decimal
		Curve             string
	}
	PurchaseFees []WorkedFee `json:"purchase_fees"`
	Loan         *WorkedLoan
	Holding      []WorkedFee
	SellingFees  []WorkedFee `json:"selling_fees"`
	Targets      map[string]decimal.Decimal
}

// WorkedFee is one charge of a worked deal.
type WorkedFee struct {
	Amount, Share, Min, Max, Per, Each decimal.Decimal
	Of, During                         string
	PerMonth                           decimal.Decimal `json:"per_month"`
	PerQuarter                         decimal.Decimal `json:"per_quarter"`
	PerYear                            decimal.Decimal `json:"per_year"`
	Brackets, Slabs                    [][2]*decimal.Decimal
}

// WorkedLoan is the loan of a worked deal.
type WorkedLoan struct {
	PriceShare      decimal.Decimal `json:"price_share"`
	RenovationShare decimal.Decimal `json:"renovation_share"`
	ARVCap          decimal.Decimal `json:"arv_cap"`
	CostCap         decimal.Decimal `json:"cost_cap"`
	Rate, Points    decimal.Decimal
	Fees            []WorkedFee
	Retainage       decimal.Decimal
	DrawFee         decimal.Decimal `json:"draw_fee"`
	Lag             *decimal.Decimal
	Actual360       bool            `json:"365/360"`
	InterestOn      string          `json:"interest_on"`
	LeastMonths     decimal.Decimal `json:"least_interest_months"`
	Term            decimal.Decimal
	Extension       struct{ Share, Months decimal.Decimal }
	ExitFeeShare    decimal.Decimal `json:"exit_fee_share"`
	Reserve         decimal.Decimal
}

// ReadWorked reads the worked deals of a file.
func ReadWorked(path string) ([]Worked, error) {
	b, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	var all struct{ Deals []Worked }
	if err := json.Unmarshal(b, &all); err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return all.Deals, nil
}

// Member lays the worked deal out as the model takes it.
func (w WorkedDeal) Member() *model.Member {
	d := model.NewDeal("worked deal")
	d.GiveNumber("price", w.Price)
	d.GiveNumber("after_repair_value", w.ARV)
	d.GiveNumber("expected_discount", w.Discount)
	optional(d, "lender_value", w.LenderValue)
	optional(d, "as_is_value", w.AsIs)
	for name, months := range w.Phases {
		d.GiveNumber(name, months)
	}
	d.Add("cost", "", "works").GiveNumber("lump", w.Renovation.Base)
	d.GiveNumber("contingency_share", w.Renovation.Contingency)
	if w.Renovation.Curve != "" {
		d.Give("curve", model.Value{Choice: w.Renovation.Curve})
	}
	fees(d, "purchase_fee", w.PurchaseFees)
	fees(d, "holding_fee", w.Holding)
	fees(d, "selling_fee", w.SellingFees)
	if w.Loan != nil {
		w.Loan.add(d)
	}
	for name, line := range map[string]string{"profit": "target_profit", "margin": "target_margin", "roi": "target_roi", "cash": "cash_available"} {
		if v, ok := w.Targets[name]; ok {
			d.GiveNumber(line, v)
		}
	}
	return d
}

func optional(m *model.Member, line string, v *decimal.Decimal) {
	if v != nil {
		m.GiveNumber(line, *v)
	}
}

func fees(m *model.Member, kind string, all []WorkedFee) {
	for i, f := range all {
		x := m.Add("fee", kind, fmt.Sprintf("%s %d", kind, i+1))
		for line, v := range map[string]decimal.Decimal{
			"fixed": f.Amount, "share": f.Share, "least": f.Min, "most": f.Max, "unit_size": f.Per, "unit_price": f.Each,
			"a_month": f.PerMonth, "a_quarter": f.PerQuarter, "a_year": f.PerYear,
		} {
			x.GiveNumber(line, v)
		}
		if f.Of != "" {
			x.Give("base", model.Value{Refers: map[string]string{"price": "price", "sale": "sale_price"}[f.Of]})
		}
		if f.During != "" {
			x.Give("during", model.Value{Choice: f.During})
		}
		table(x, f.Brackets, 0)
		table(x, f.Slabs, 1)
	}
}

func table(fee *model.Member, rows [][2]*decimal.Decimal, slab int64) {
	if len(rows) == 0 {
		return
	}
	t := fee.Add("table", "", "rates")
	t.GiveNumber("slab", decimal.NewFromInt(slab))
	var lower decimal.Decimal
	for i, r := range rows {
		b := t.Add("bracket", "", fmt.Sprintf("bracket %d", i+1))
		b.GiveNumber("lower", lower)
		optional(b, "upper", r[0])
		b.GiveNumber("rate", *r[1])
		if r[0] != nil {
			lower = *r[0]
		}
	}
}

func (l *WorkedLoan) add(d *model.Member) {
	x := d.Add("loan", "", "loan")
	for line, v := range map[string]decimal.Decimal{
		"price_share": l.PriceShare, "renovation_share": l.RenovationShare, "value_cap": l.ARVCap, "cost_cap": l.CostCap,
		"rate": l.Rate, "points_share": l.Points, "retainage_share": l.Retainage, "draw_fee": l.DrawFee,
		"least_interest_months": l.LeastMonths, "term": l.Term, "extension_months": l.Extension.Months,
		"extension_share": l.Extension.Share, "exit_share": l.ExitFeeShare, "reserve_wanted": l.Reserve,
	} {
		x.GiveNumber(line, v)
	}
	optional(x, "lag", l.Lag)
	if l.Actual360 {
		x.GiveNumber("actual_360", decimal.NewFromInt(1))
	}
	if l.InterestOn != "" {
		x.Give("interest_on", model.Value{Choice: l.InterestOn})
	}
	if l.Reserve.IsPositive() {
		x.Give("interest_paid", model.Value{Choice: "reserve"})
	}
	fees(x, "loan_fee", l.Fees)
}
