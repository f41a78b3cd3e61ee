package cli

import (
	"io"

	"ledgerboard/pkg/report"
)

// show works something out and writes it: as one object with --json, else as a page.
func show[T any](c *common, work func() (T, error), object func(io.Writer, T) error, page func(io.Writer, T, report.Style) error) error {
	style, err := c.style()
	if err != nil {
		return err
	}
	x, err := work()
	if err != nil {
		return err
	}
	if c.json {
		return object(c.Out, x)
	}
	return page(c.Out, x, style)
}
