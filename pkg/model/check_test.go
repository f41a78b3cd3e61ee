package model_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/model"
)

// sound is a small document without mistakes, to which tests add one.
const sound = `# a comment
set loan of deal; money borrowed
set fee of deal, loan: open_fee, late_fee; a charge
set part of fee; a part of a charge

== Main ==

sale_month | deal | month
  = 3 month
  how long it takes
price | deal | $
  = input
  what is paid
rent | deal by month | $
  = if(month = 0, 0, 100 $)
  what comes in
curve | deal | choice
  = input of straight, front; else "straight"
  how it runs
basis | loan | choice
  = input of balance, commitment; assume "balance", when amount > 0
  what interest runs on
amount | loan | $
  = input, else price
  what is lent
points | loan | $
  = input, assume 5 $, when amount > 0
  what it costs
points | deal | $
  = total(points of loan)
  what all cost
amount | fee | $
  = input, else 1 $ + total(amount of part)
  a charge
wait | late_fee | month
  = input, else 0
  how late it falls due
amount | part | $
  = previous(amount) + 1 $
  a part of it
`

func TestSoundDocument(t *testing.T) {
	d, err := model.Parse(model.Source{Name: "sound", Text: sound})
	require.NoError(t, err)
	require.Equal(t, []string{"deal", "loan", "fee", "part"}, setNames(d))
	require.Equal(t, []string{"open_fee", "late_fee"}, d.Set("fee").Kinds)
	require.Equal(t, d.Set("fee"), d.Set("late_fee"))
	require.Nil(t, d.Set("wall"))
	basis := d.ByID("loan.basis")
	require.Equal(t, []string{"balance", "commitment"}, basis.Choices)
	require.True(t, basis.Input && basis.Assumed)
	require.Equal(t, "amount > 0", basis.When.String())
	require.Equal(t, "Main", basis.Section)
	require.Equal(t, "loan.basis", basis.ID())
	for id, rule := range map[string]string{
		"price": "given by the deal", "loan.amount": "given by the deal, or else: price", "loan.points": "given by the deal, or assumed: 5 $",
		"points": "total(points of loan)", "curve": `given by the deal, or else: "straight"`,
	} {
		require.Equal(t, rule, d.ByID(id).Rule())
	}
	require.Equal(t, "price", d.ByID("price").ID())
	require.Equal(t, d.Line("fee", "amount"), d.Lookup("late_fee", "amount"), "a kind has the lines of its set")
	require.Equal(t, d.ByID("price"), d.Lookup("part", "price"))
	require.Nil(t, d.Lookup("part", "wait"))
}

func setNames(d *model.Document) []string {
	var out []string
	for _, s := range d.Sets {
		out = append(out, s.Name)
	}
	return out
}

// mistakes reads the sound document and more, and returns what was found in the more.
func mistakes(t *testing.T, more string) []string {
	_, err := model.Parse(model.Source{Name: "sound", Text: sound}, model.Source{Name: "more", Text: more})
	if err == nil {
		return nil
	}
	return strings.Split(err.Error(), "\n")
}

func TestMistakes(t *testing.T) {
	tests := []struct{ name, text, want string }{
		// Rows.
		{"a head of two", "one | deal\n", `more:1: a line starts with name | set | unit`},
		{"a row of no line", "  = 1\n", `more:1: an indented row belongs to no line`},
		{"a formula after a set", "set wall of deal; walls\n  = 1\n", `more:2: an indented row belongs to no line`},
		{"no name", "| deal | count\n  = 1\n  x\n", `more:1: a line without a name`},
		{"two formulas", "one | deal | count\n  = 1\n  = 2\n  x\n", `more:3: the line has a formula already`},
		{"an input and a formula", "one | deal | count\n  = input\n  = 2\n  x\n", `more:3: the line has a formula already`},
		{"a formula that does not parse", "one | deal | count\n  = 1 +\n  x\n", `more:2: at character 4: found the end, expected a number, a name or (`},
		{"input and no else", "one | deal | count\n  = input, 5\n  x\n", `more:2: after input comes else or assume with a value, not "5"`},
		{"else and no value", "one | deal | count\n  = input, else\n  x\n", `more:2: after input comes else or assume with a value, not "else"`},
		{"input of what is no choice", "one | deal | count\n  = input of red, blue\n  x\n", `more:2: after input comes else or assume with a value, not "of red, blue"`},
		{"a condition on else", "one | deal | count\n  = input, else 1, when 1 = 1\n  x\n", `more:2: only what is assumed has a condition`},
		{"a condition that does not parse", "one | deal | count\n  = input, assume 1, when 1 =\n  x\n", `more:2: at character 4: found the end, expected a number, a name or (`},
		{"no meaning", "one | deal | count\n  = 1\n", `more:1: line one: has no meaning in words`},
		{"no formula", "one | deal | count\n  x\n", `more:1: line one: has no formula`},

		// Sets.
		{"a set of nothing", "set wall; walls\n", `more:1: set "wall" says not what it belongs to`},
		{"a set of no set", "set wall of house; walls\n", `more:1: set "wall" belongs to "house", which is no set above it`},
		{"a set of itself", "set wall of wall; walls\n", `more:1: set "wall" belongs to "wall", which is no set above it`},
		{"a set twice", "set loan of deal; loans\n", `more:1: set "loan" is there twice`},
		{"a kind that is a set", "set wall of deal: loan; walls\n", `more:1: set "loan" is there twice`},
		{"a line of no set", "one | wall | count\n  = 1\n  x\n", `more:1: unknown set "wall"`},
		{"a line twice", "price | deal | $\n  = 1 $\n  x\n", `more:1: line "price" is there twice`},

		// Units.
		{"an unknown unit", "one | deal | euro\n  = 1\n  x\n", `more:1: unknown unit "euro"`},
		{"an unknown unit in a formula", "one | deal | count\n  = 1 euro\n  x\n", `more:1: line one: unknown unit "euro"`},
		{"dollars as months", "one | deal | month\n  = price\n  x\n", `more:1: line one: is in month, its formula in $`},
		{"a plain number as dollars", "one | deal | $\n  = 5\n  x\n", `more:1: line one: is in $, its formula in a plain number`},
		{"dollars and months", "one | deal | $\n  = price + sale_month\n  x\n", `more:1: line one: $ does not go with month`},
		{"dollars a month", "one | deal | $\n  = price / sale_month\n  x\n", `more:1: line one: is in $, its formula in $/month`},
		{"a condition in dollars", "one | deal | count\n  = input, assume 1, when price\n  x\n", `more:1: line one: its condition is in $, not a yes or no`},
		{"an unknown name in a condition", "one | deal | count\n  = input, assume 1, when pryce > 0\n  x\n", `more:1: line one: unknown line "pryce"`},

		// Names and sets.
		{"an unknown name", "one | deal | $\n  = pryce\n  x\n", `more:1: line one: unknown line "pryce"`},
		{"a name of another set", "one | deal | $\n  = wait\n  x\n", `more:1: line one: unknown line "wait"`},
		{"a name of some members only", "one | fee | $\n  = basis_points\n  x\nbasis_points | loan | $\n  = 1 $\n  x\n", `more:1: line one: basis_points is no line for some members of fee`},
		{"a name of two units", "one | fee | $\n  = limit\n  x\nlimit | loan | $\n  = 1 $\n  x\nlimit | deal | month\n  = 1 month\n  x\n", `more:1: line one: limit means limit or loan.limit, which are not alike`},
		{"a total of no set", "one | deal | $\n  = total(price of wall)\n  x\n", `more:1: line one: total over "wall", which is no set`},
		{"a total of another's set", "one | deal | $\n  = total(price of part)\n  x\n", `more:1: line one: total over part, which does not belong to deal`},
		{"previous in a kind", "one | late_fee | $\n  = previous(amount)\n  x\n", `more:1: line one_of_kind: previous follows the order of fee; say it in a line of that set`},

		// Choices.
		{"a choice of nothing", "one | deal | choice\n  = input\n  x\n", `more:1: line one: is a choice of nothing`},
		{"a choice of one", "one | deal | choice\n  = input of red; else \"red\"\n  x\n", `more:1: line one: is a choice of nothing`},
		{"another word", "one | deal | choice\n  = input of red, blue; else \"green\"\n  x\n", `more:1: line one: "green" is not one of its choices`},
		{"an unknown choice", "one | deal | flag\n  = curve = \"back\"\n  x\n", `more:1: line one: "back" is not a choice of curve`},
		{"a choice of a number", "one | deal | flag\n  = price = \"back\"\n  x\n", `more:1: line one: price is no line of choice, to be compared with a word`},
		{"a choice of nothing known", "one | deal | flag\n  = curb = \"back\"\n  x\n", `more:1: line one: unknown line "curb"`},
		{"a choice of a broken line", "one | deal | flag\n  = two = \"back\"\n  x\ntwo | deal | choice\n  = input of\n  x\n", `more:5: after input comes else or assume with a value, not "of"`},
		{"a choice of an expression", "one | deal | flag\n  = 1 + 1 <> \"back\"\n  x\n", `more:1: line one: only a line of choice is compared with a word`},
		{"a choice as a number", "one | deal | count\n  = curve + 1\n  x\n", `more:1: line one: curve is a choice; compare it with one of its words`},
		{"a word alone", "one | deal | count\n  = 1 + \"front\"\n  x\n", `more:1: line one: "front" stands alone; compare it with a line of choice`},

		// Months.
		{"a month outside", "one | deal | month\n  = month\n  x\n", `more:1: line one: month has no month to stand in`},
		{"prior outside", "one | deal | $\n  = prior(price)\n  x\n", `more:1: line one: prior has no month to stand in`},
		{"running outside", "one | deal | $\n  = running(rent)\n  x\n", `more:1: line one: running has no month to stand in`},
		{"ago outside", "one | deal | $\n  = ago(rent, 1 month)\n  x\n", `more:1: line one: ago has no month to stand in`},
		{"a monthly line outside", "one | deal | $\n  = rent\n  x\n", `more:1: line one: rent has a value for each month; say sum, lowest or at`},
		{"at a month that is none", "one | deal | $\n  = at(rent, month)\n  x\n", `more:1: line one: month has no month to stand in`},
		{"at dollars", "one | deal | $\n  = at(rent, price)\n  x\n", `more:1: line one: expected months, found $`},
		{"first month of dollars", "one | deal | month\n  = first_month(rent)\n  x\n", `more:1: line one: expected a yes or no, found $`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			want := strings.ReplaceAll(tt.want, "one_of_kind", "late_fee.one")
			if strings.Contains(tt.text, "one | fee") {
				want = strings.ReplaceAll(want, "line one:", "line fee.one:")
			}
			assert.Equal(t, want, strings.Join(mistakes(t, tt.text), "\n"))
		})
	}
}

// What a reader may write beside the usual is no mistake.
func TestNoMistakes(t *testing.T) {
	for name, text := range map[string]string{
		"spaces and carriage returns": "one | deal  | $ \r\n   = price \r\n    x\r\n",
		"a meaning of two rows":       "one | deal | $\n  = price\n  the price,\n  said twice\n",
		"input as part of a name":     "one | deal | $\n  = input_tax + 1 $\n  x\ninput_tax | deal | $\n  = 1 $\n  x\n",
		"an input by month":           "one | deal by month | $\n  = input, else 0\n  x\n",
		"months inside sum":           "one | deal | $\n  = sum(prior(rent) + if(month > 1 month, 1 $, 0))\n  x\n",
		"a kind's total":              "one | deal | month\n  = total(wait of late_fee)\n  x\n",
		"a total in a kind":           "one | late_fee | $\n  = total(amount of part)\n  x\n",
		"a name above two sets":       "one | part | $\n  = price + total_points\n  x\ntotal_points | deal | $\n  = points\n  x\n",
		"a choice from a set above":   "one | part | flag\n  = curve <> \"front\"\n  x\n",
		"zero of any unit":            "one | deal | $/month\n  = 0\n  x\n",
		"at a later month":            "one | deal | $\n  = at(rent, sale_month - 1 month)\n  x\n",
	} {
		assert.Empty(t, mistakes(t, text), name)
	}
}

// Every mistake is said at once, those of reading and those of meaning, and what
// follows from one is not said again.
func TestAllMistakesAtOnce(t *testing.T) {
	require.Equal(t, []string{
		`more:1: "ab" is too short a name`,
		`more:5: at character 3: found the end, expected a number, a name or (`,
		`more:7: unknown unit "euro"`,
		`more:10: a line starts with name | set | unit`,
		`more:13: line uses_them: unknown line "pryce"`,
		`more:13: line uses_them: unknown line "rend"`,
		`more:16: line wrong_unit: has no meaning in words`,
		`more:16: line wrong_unit: is in month, its formula in $`,
		`more:18: line chosen: its condition is in $, not a yes or no`,
		`more:18: line chosen: "red" is not one of its choices`,
	}, mistakes(t, `ab | deal | $
  = 1 $
  a name that is too short
broken | deal | $
  = 1+
  a formula cut short
in_euro | deal | euro
  = 1
  a unit that is none
torn | deal
  = 1
  what has no head
uses_them | deal | $
  = pryce + broken + in_euro + sum(rend) + price
  two unknown names and two that are reported already
wrong_unit | deal | month
  = price
chosen | deal | choice
  = input of blue, green; assume "red", when price
  two mistakes in one
`))
}

// What spreadsheets misread, and what the grammar keeps for itself.
func TestNames(t *testing.T) {
	for name, want := range map[string]string{
		"c": `"c" is too short a name`, "r": `"r" is too short a name`, "a1": `"a1" is too short a name`, "pi": `"pi" is too short a name`,
		"A1": `"A1" is not a name: small letters, digits and _ only`, "R1C1": `"R1C1" is not a name: small letters, digits and _ only`,
		"TRUE": `"TRUE" is not a name: small letters, digits and _ only`,
		"true": `"true" means something else in a spreadsheet`, "false": `"false" means something else in a spreadsheet`,
		"ab12": `"ab12" reads as a cell in a spreadsheet`, "tax2026": `"tax2026" reads as a cell in a spreadsheet`, "xfd1048576": `"xfd1048576" reads as a cell in a spreadsheet`,
		"r1c1": `"r1c1" reads as a cell in a spreadsheet`, "r10c": `"r10c" reads as a cell in a spreadsheet`, "rc20": `"rc20" reads as a cell in a spreadsheet`,
		"sum": `"sum" is an operator`, "and": `"and" is an operator`, "month": `"month" is an operator`, "level_payment": `"level_payment" is an operator`,
		"input":    `"input" marks what the deal gives`,
		"1st_loan": `"1st_loan" begins with a digit`,
		"loan-fee": `"loan-fee" is not a name: small letters, digits and _ only`, "naïve": `"naïve" is not a name: small letters, digits and _ only`,
	} {
		assert.Equal(t, []string{"more:1: " + want}, mistakes(t, name+" | deal | count\n  = 1\n  x\n"), name)
	}
	for _, name := range []string{"prices", "loan1_fee", "year1", "r1c1x", "rcx", "_abc", "trueish", "sums", "inputs"} {
		assert.Empty(t, mistakes(t, name+" | deal | count\n  = 1\n  x\n"), name)
	}
}
