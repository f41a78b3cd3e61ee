package cli

import (
	"errors"
	"fmt"
)

// Exit codes.
const (
	Fine        = 0
	BadData     = 1
	BadUsage    = 2
	CheckFailed = 3
	Interrupted = 130
)

// exitCodes is the table that `help exit-codes` and the docs print.
var exitCodes = []struct {
	Code    int
	Meaning string
}{
	{Fine, "all went well"},
	{BadData, "a file cannot be read, holds a mistake, or (new) is already there"},
	{BadUsage, "the command was not used as it can be"},
	{CheckFailed, "check found a mistake"},
	{Interrupted, "interrupted"},
}

// ExitCodes prints the table.
func ExitCodes() string {
	out := "Exit codes:\n"
	for _, e := range exitCodes {
		out += fmt.Sprintf("  %3d  %s\n", e.Code, e.Meaning)
	}
	return out
}

// A usageError is a command that was not used as it can be.
type usageError struct {
	err  error
	hint string
}

func (e *usageError) Error() string { return e.err.Error() }
func (e *usageError) Unwrap() error { return e.err }

// A dataError is a file that cannot be used for what is asked.
type dataError struct {
	err  error
	hint string
}

func (e *dataError) Error() string { return e.err.Error() }
func (e *dataError) Unwrap() error { return e.err }

func (e *usageError) tip() string { return e.hint }
func (e *dataError) tip() string  { return e.hint }

// A toldError was already told to the user; only its exit code is left.
type toldError struct{ code int }

func (e *toldError) Error() string { return fmt.Sprintf("exit code %d", e.code) }

func exitCode(err error) int {
	var told *toldError
	var usage *usageError
	switch {
	case err == nil:
		return Fine
	case errors.As(err, &told):
		return told.code
	case errors.As(err, &usage):
		return BadUsage
	}
	return BadData
}
