package model_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

func number(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// laid lays a deal over the sound document and more.
func laid(t *testing.T, d *model.Member, more string) (*model.Model, error) {
	doc, err := model.Parse(model.Source{Name: "sound", Text: sound}, model.Source{Name: "more", Text: more})
	require.NoError(t, err)
	return model.Bind(doc, d)
}

func priced() *model.Member {
	d := model.NewDeal("test")
	d.GiveNumber("price", number("1000"))
	return d
}

func TestNamesAreLookedUpOutward(t *testing.T) {
	d := priced()
	first := d.Add("loan", "", "first loan")
	second := d.Add("loan", "", "second loan")
	second.GiveNumber("amount", number("70"))
	second.GiveNumber("points", number("3"))
	late := second.Add("fee", "late_fee", "late fee")
	late.GiveNumber("wait", number("2"))
	late.Add("part", "", "part one")
	late.Add("part", "", "part two")
	m, err := laid(t, d, "of_price | part | $\n  = price / 10\n  x\nbefore_all | deal | $\n  = previous(price)\n  x\n")
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	for _, tt := range []struct {
		from       *model.Member
		name, want string // by hand
	}{
		{d, "points", "8"},     // the first loan's default of 5, the second's 3
		{d, "before_all", "0"}, // there is one deal
		{first, "points", "5"},
		{first, "amount", "1000"}, // the price, from the deal
		{second, "amount", "70"},
		{late, "amount", "4"}, // 1 and the parts' 1 and 2
		{late, "points", "3"}, // of the loan that it belongs to
		{late, "basis", "1"},  // the first choice
		{late, "price", "1000"},
		{late, "wait", "2"},
		{late.Children[0], "amount", "1"},
		{late.Children[1], "amount", "2"}, // previous, and 1
		{late.Children[1], "of_price", "100"},
	} {
		assert.Equal(t, tt.want, v.Of(m.Find(tt.from, tt.name)).String(), "%s from %q", tt.name, tt.from.Path())
	}
	assert.Nil(t, m.Find(late, "nothing_such"))
	assert.Nil(t, m.Cell(d, m.Doc.ByID("loan.amount")))
	assert.Equal(t, "second loan, late fee, part two: amount", m.Find(late.Children[1], "amount").Name())
	assert.Equal(t, "price", m.Find(late, "price").Name())
	assert.Equal(t, []*model.Member{late}, second.In("late_fee"))
	assert.Equal(t, []*model.Member{late}, second.In("fee"))
	assert.Empty(t, second.In("open_fee"))
}

func TestBoundForSomeLinesAlone(t *testing.T) {
	d := model.NewDeal("test") // without its price
	d.Add("loan", "", "loan").GiveNumber("points", number("3"))
	doc, err := model.Parse(model.Source{Name: "sound", Text: sound}, model.Source{Name: "more", Text: "twice | loan | $\n  = 2 * points\n  x\nof_price | loan | $\n  = price / 10\n  x\n"})
	require.NoError(t, err)
	wanting := func(name string) (*model.Model, error) {
		return model.BindFor(doc, d, func(l *model.Line) bool { return l.Name == name })
	}
	m, err := wanting("twice")
	require.NoError(t, err)
	loan := d.In("loan")[0]
	k := walk.NewKnown(m)
	require.NoError(t, k.Work(m.Find(loan, "twice").Index))
	require.Equal(t, "6", k.Values.Scalar[m.Find(loan, "twice").Index].String())
	require.Nil(t, m.Find(loan, "of_price").Expr)
	_, err = wanting("of_price")
	require.ErrorContains(t, err, "price is not given")
	_, err = model.Bind(doc, d)
	require.ErrorContains(t, err, "price is not given")
}

func TestGivenValues(t *testing.T) {
	d := priced()
	d.Give("curve", model.Value{Choice: "front"})
	loan := d.Add("loan", "", "loan")
	loan.Give("amount", model.Value{Refers: "price"})
	m, err := laid(t, d, "")
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	assert.Equal(t, "2", v.Of(m.Find(d, "curve")).String(), "the second choice")
	assert.Equal(t, "1000", v.Of(m.Find(loan, "amount")).String())
	assert.Equal(t, "front", m.Find(d, "curve").Given.Choice)
	assert.Nil(t, m.Find(loan, "points").Given)
	assert.NotNil(t, m.Find(loan, "points").When())
}

func TestBadValues(t *testing.T) {
	tests := []struct {
		name string
		give func(d, loan *model.Member)
		want string
	}{
		{"no such line", func(d, _ *model.Member) { d.GiveNumber("pryce", number("1")) }, "pryce is given and is no input of deal"},
		{"no input", func(d, _ *model.Member) { d.GiveNumber("sale_month", number("1")) }, "sale_month is given and is no input of deal"},
		{"another set's", func(_, loan *model.Member) { loan.GiveNumber("price", number("1")) }, "price is given and is no input of loan"},
		{"another kind's", func(d, _ *model.Member) { d.Add("fee", "open_fee", "fee").GiveNumber("wait", number("1")) }, "wait is given and is no input of fee"},
		{"two strangers", func(d, _ *model.Member) { d.GiveNumber("bbb", number("1")); d.GiveNumber("aaa", number("1")) }, "aaa is given and is no input of deal\nbbb is given and is no input of deal"},
		{"no such set", func(d, _ *model.Member) { d.Add("wall", "", "north wall") }, `the deal has no place for "north wall" of wall `},
		{"no such kind", func(d, _ *model.Member) { d.Add("fee", "early_fee", "early") }, `the deal has no place for "early" of fee early_fee`},
		{"a kind as a set", func(d, _ *model.Member) { d.Add("late_fee", "", "late") }, `the deal has no place for "late" of late_fee `},
		{"no such place", func(_, loan *model.Member) { loan.Add("part", "", "half") }, `loan has no place for "half" of part `},
		{"no such choice", func(d, _ *model.Member) { d.Give("curve", model.Value{Choice: "back"}) }, `curve: "back" is not a choice`},
		{"refers to nothing", func(_, loan *model.Member) { loan.Give("amount", model.Value{Refers: "pryce"}) }, `loan: amount refers to "pryce", which is no line`},
		{"refers to months", func(_, loan *model.Member) { loan.Give("amount", model.Value{Refers: "sale_month"}) }, `loan: amount refers to "sale_month", which is in month`},
		{"refers to a line by month", func(_, loan *model.Member) { loan.Give("amount", model.Value{Refers: "rent"}) }, `loan: amount refers to "rent", which is in $ by month`},
		{"refers to a choice", func(d, _ *model.Member) {
			d.GiveNumber("price", number("1"))
			d.Give("curve", model.Value{Refers: "price"})
		}, `curve refers to "price", which is in $`},
	}
	for _, tt := range tests {
		d := priced()
		tt.give(d, d.Add("loan", "", "loan"))
		_, err := laid(t, d, "")
		assert.EqualError(t, err, tt.want, tt.name)
	}
}

func TestMissingInputsAreAllNamed(t *testing.T) {
	d := model.NewDeal("test")
	d.Add("loan", "", "first loan")
	_, err := laid(t, d, "term | loan | month\n  = input\n  when it falls due\n")
	require.EqualError(t, err, "price is not given: what is paid\nfirst loan: term is not given: when it falls due")
	var missing *model.MissingError
	require.True(t, errors.As(err, &missing))
	require.Equal(t, "price", missing.Cell.Line.Name)
}

func TestCircles(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"itself", "one | deal | $\n  = one + 1 $\n  x\n", "these need each other: one"},
		{"itself by month", "one | deal by month | $\n  = one + 1 $\n  x\n", "these need each other: one"},
		{"two", "one | deal | $\n  = two\n  x\ntwo | deal | $\n  = one\n  x\n", "these need each other: one, two"},
		{"two by month", "one | deal by month | $\n  = two\n  x\ntwo | deal by month | $\n  = one\n  x\n", "these need each other: one, two"},
		{"across members", "one | deal | $\n  = total(two of loan)\n  x\ntwo | loan | $\n  = one\n  x\n", "these need each other: one, first loan: two"},
		{"prior of a sum", "one | deal by month | $\n  = prior(sum(one))\n  x\n", "these need each other: one"},
		{"sum of a prior", "one | deal by month | $\n  = sum(prior(one))\n  x\n", "these need each other: one"},
		{"at another month", "one | deal by month | $\n  = at(one, 1 month)\n  x\n", "these need each other: one"},
		{"so many months ago, which may be none", "one | deal by month | $\n  = ago(one, 1 month)\n  x\n", "these need each other: one"},
		{"running", "one | deal by month | $\n  = running(one)\n  x\n", "these need each other: one"},
		{"through a line of one value", "one | deal by month | $\n  = prior(one) + two\n  x\ntwo | deal | $\n  = sum(one)\n  x\n", "these need each other: one, two"},
		{"two circles", "one | deal | $\n  = one\n  x\ntwo | deal | $\n  = two\n  x\n", "these need each other: one\nthese need each other: two"},
	}
	for _, tt := range tests {
		d := priced()
		d.Add("loan", "", "first loan")
		_, err := laid(t, d, strings.NewReplacer("one", "line_one", "two", "line_two").Replace(tt.text))
		want := strings.NewReplacer("one", "line_one", "two", "line_two").Replace(tt.want)
		assert.EqualError(t, err, want, tt.name)
		var circle *model.CircleError
		assert.True(t, errors.As(err, &circle), tt.name)
	}
}

// An input that the deal points back at itself is a circle too.
func TestCircleOfReferences(t *testing.T) {
	d := priced()
	d.Add("loan", "", "first loan").Give("amount", model.Value{Refers: "amount"})
	_, err := laid(t, d, "")
	require.EqualError(t, err, "these need each other: first loan: amount")
}

func TestCirclesThroughTheMonthBeforeAreFine(t *testing.T) {
	m, err := laid(t, priced(), `balance | deal by month | $
  = prior(balance) + interest + if(month = 0, price, 0)
  what is owed
interest | deal by month | $
  = prior(balance) / 10
  a tenth of what was owed
owed_last | deal | $
  = at(balance, sale_month)
  what is owed in the end
`)
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	assert.Equal(t, "1331", v.Of(m.Find(m.Root, "owed_last")).String()) // by hand: 1000 × 1.1³
	blocks := 0
	for _, s := range m.Needed() {
		if len(s.Cells) > 1 {
			blocks++
			assert.Equal(t, []string{"interest", "balance"}, names(m, s.Cells), "interest first, for it looks back only")
		}
	}
	assert.Equal(t, 1, blocks)
}

func names(m *model.Model, cells []int) []string {
	var out []string
	for _, c := range cells {
		out = append(out, m.Cells[c].Name())
	}
	return out
}

// A deal is one of the document's members and stands at the top.
func TestDealAtTheTop(t *testing.T) {
	_, err := laid(t, &model.Member{Set: "loan", Label: "loan"}, "")
	require.ErrorContains(t, err, `the document has no place for "loan" of loan `)
}

func TestDocumentWithoutAHorizon(t *testing.T) {
	doc, err := model.Parse(model.Source{Name: "none", Text: "price | deal | $\n  = 1 $\n  x\n"})
	require.NoError(t, err)
	_, err = model.Bind(doc, model.NewDeal("test"))
	require.EqualError(t, err, "the document has no line sale_month")
}
