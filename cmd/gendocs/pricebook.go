package main

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/report"
)

// parts stand in hand-written pages between a line that says what is made there and one
// that ends it.
var parts = regexp.MustCompile(`(?ms)^<!-- make docs: (.*?) -->\n.*?^<!-- to here -->\n`)

func priceBookPage(root string) (string, error) { return partsOf(root, "price-book.md") }
func measuringPage(root string) (string, error) { return partsOf(root, "measuring.md") }

// partsOf renews the parts of a hand-written page that are made.
func partsOf(root, name string) (string, error) {
	old, err := os.ReadFile(filepath.Join(root, "docs", name))
	if err != nil {
		return "", err
	}
	var failed error
	text := parts.ReplaceAllStringFunc(string(old), func(part string) string {
		asked := parts.FindStringSubmatch(part)[1]
		made, err := made(asked)
		if err != nil && failed == nil {
			failed = err
		}
		return "<!-- make docs: " + asked + " -->\n\n" + made + "\n<!-- to here -->\n"
	})
	return text, failed
}

// made is a part by its name.
func made(asked string) (string, error) {
	what, rest, _ := strings.Cut(asked, ": ")
	switch what {
	case "keys of a product":
		return bookKeys(pricebook.ProductKeys()), nil
	case "keys of an item":
		return bookKeys(pricebook.ItemKeys()), nil
	case "keys of a material":
		return bookKeys(pricebook.MaterialKeys()), nil
	case "measures":
		return measureTable()
	case "conditions":
		return conditionTable(), nil
	case "columns":
		return columnTable(), nil
	case "json":
		return jsonFields(), nil
	case "not seen":
		return notSeenTable(), nil
	case "by age":
		return ageTable(), nil
	case "lines":
		return lineList(strings.Fields(rest))
	}
	return "", fmt.Errorf("nothing is called %q that could be made", asked)
}

func bookKeys(all []pricebook.Key) string {
	var b strings.Builder
	b.WriteString("| key | without it | example |\n|---|---|---|\n")
	for _, k := range all {
		without := k.Without
		if without == "" {
			without = "nothing"
		}
		fmt.Fprintf(&b, "| `%s`<br>%s | %s | %s |\n", k.Name, cell(k.Meaning), cell(without), code(k.Example))
	}
	return b.String()
}

// measureTable lists the measures with what the model's lines say of them.
func measureTable() (string, error) {
	doc, err := model.Standard()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	b.WriteString("| measure | of | in | what it is |\n|---|---|---|---|\n")
	for _, m := range pricebook.Measures {
		l := lineOf(doc, m)
		if l == nil {
			return "", fmt.Errorf("no line is the measure %q", m.Name)
		}
		of := map[string]string{"inside": "a room", "outside": "the outside", "house": "the house", "": "any"}[m.Of]
		fmt.Fprintf(&b, "| `%s` | %s | %s | %s |\n", m.Name, of, m.Unit, cell(l.Meaning))
	}
	return b.String(), nil
}

// lineOf is the model's line of a measure.
func lineOf(doc *model.Document, m pricebook.Measure) *model.Line {
	for _, set := range []string{m.Of + ".", "room.", ""} {
		if l := doc.ByID(set + m.Line); l != nil && l.ID() == set+m.Line {
			return l
		}
	}
	return nil
}

func conditionTable() string {
	var b strings.Builder
	b.WriteString("| `if` | it comes along where |\n|---|---|\n")
	for _, c := range pricebook.Conditions {
		fmt.Fprintf(&b, "| `%s` | %s |\n", c.Name, cell(c.Meaning))
	}
	return b.String()
}

func columnTable() string {
	var b strings.Builder
	b.WriteString("| column | what is in it |\n|---|---|\n")
	for _, c := range pricebook.Columns {
		fmt.Fprintf(&b, "| `%s` | %s |\n", c.Name, cell(c.Meaning))
	}
	return b.String()
}

// jsonFields lists the names in the JSON of prices, by what they stand in.
func jsonFields() string {
	var b strings.Builder
	for _, x := range []struct {
		of string
		in reflect.Type
	}{
		{"an item", reflect.TypeFor[report.ItemPrice]()},
		{"a material of an item", reflect.TypeFor[report.Material]()},
		{"what an item brings", reflect.TypeFor[report.Brought]()},
		{"a product", reflect.TypeFor[report.ProductPrice]()},
		{"a stick of a product", reflect.TypeFor[report.StickPrice]()},
	} {
		var names []string
		for i := range x.in.NumField() {
			names = append(names, "`"+x.in.Field(i).Tag.Get("json")+"`")
		}
		fmt.Fprintf(&b, "- %s: %s\n", x.of, strings.Join(names, ", "))
	}
	return b.String()
}

// notSeenTable lists what is set aside for parts of the house that were not seen, and what makes them new.
func notSeenTable() string {
	var made []string
	var b strings.Builder
	b.WriteString("| part | year built | likely | least | most | source |\n|---|---|---|---|---|---|\n")
	for _, c := range pricebook.Checks() {
		for _, row := range c.Rows {
			fmt.Fprintf(&b, "| %s | %s | %s | %s | %s | %s |\n", c.Name, row.Years, quantity.FormatDollars(row.Likely), quantity.FormatDollars(row.Least), quantity.FormatDollars(row.Most), c.Source)
		}
		if c.New {
			made = append(made, c.Name+" (`"+strings.Join(c.Mends(), "`, `")+"`)")
		}
	}
	fmt.Fprintf(&b, "\nWork that makes all of a part new: %s.\n", strings.Join(made, ", "))
	return b.String()
}

// ageTable lists the shares that go by the year built.
func ageTable() string {
	var b strings.Builder
	b.WriteString("| year built | contingency | with utilities off | subfloor to mend | roof deck to mend |\n|---|---|---|---|---|\n")
	for i, row := range pricebook.Checks()[0].Rows {
		year := []int{1900, 1960, 1985, 2000}[i]
		percent := func(x pricebook.Shares) string { return quantity.FormatPercent(x.For(year), 1) }
		fmt.Fprintf(&b, "| %s | %s | %s | %s | %s |\n", row.Years,
			quantity.FormatPercent(pricebook.Contingency(year, false), 1), quantity.FormatPercent(pricebook.Contingency(year, true), 1),
			percent(pricebook.SubfloorRepair()), percent(pricebook.RoofDeckRepair()))
	}
	fmt.Fprintf(&b, "\nSource: %s.\n", pricebook.SubfloorRepair().Source)
	return b.String()
}

// lineList shows lines of the model by their names, with their rules.
func lineList(ids []string) (string, error) {
	doc, err := model.Standard()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	for _, id := range ids {
		l := doc.ByID(id)
		if l == nil {
			return "", fmt.Errorf("there is no line %q", id)
		}
		fmt.Fprintf(&b, "- `%s` (%s): %s  \n  %s\n", l.ID(), per(l), l.Meaning, rule(l))
	}
	return b.String(), nil
}
