package model

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/formula"
)

// What spreadsheets read as a cell: A1 in one style, R1C1 in the other.
var (
	cellA1   = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[a-z]{1,3}[0-9]+$`) })
	cellR1C1 = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^r[0-9]*c[0-9]*$`) })
)

// goodName refuses names that a spreadsheet would take for a cell, a row or a
// truth value, and those of the grammar.
func goodName(name string) error {
	switch {
	case name == "":
		return errors.New("a line without a name")
	case strings.Trim(name, "abcdefghijklmnopqrstuvwxyz0123456789_") != "":
		return fmt.Errorf("%q is not a name: small letters, digits and _ only", name)
	case name[0] >= '0' && name[0] <= '9':
		return fmt.Errorf("%q begins with a digit", name)
	case len(name) < 3:
		return fmt.Errorf("%q is too short a name", name)
	case name == "true" || name == "false":
		return fmt.Errorf("%q means something else in a spreadsheet", name)
	case cellA1().MatchString(name) || cellR1C1().MatchString(name):
		return fmt.Errorf("%q reads as a cell in a spreadsheet", name)
	case name == "input":
		return fmt.Errorf("%q marks what the deal gives", name)
	case slices.ContainsFunc(formula.Table, func(o *formula.Op) bool { return o.Name == name }):
		return fmt.Errorf("%q is an operator", name)
	}
	return nil
}
