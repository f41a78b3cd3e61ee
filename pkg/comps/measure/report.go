package measure

import (
	"fmt"
	"io"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// Draws values the subjects of several draws, by the seeds 1, 2, …, and sums up each.
func Draws(l *comps.List, half Half, since quantity.Date, subjects, draws int) []Figures {
	eligible := Eligible(l, half, since)
	var all []int
	var each [][]int
	for seed := range draws {
		d := Draw(eligible, subjects, uint64(seed+1))
		each, all = append(each, d), append(all, d...)
	}
	outcomes := Value(l, all)
	out := make([]Figures, draws)
	for k, d := range each {
		of := make([]Outcome, len(d))
		for i, s := range d {
			of[i] = outcomes[s]
		}
		out[k] = Sum(of)
	}
	return out
}

// Report prints the figures of several draws and their mean.
func Report(w io.Writer, l *comps.List, half Half, since quantity.Date, subjects, draws int) error {
	if err := heads(w, "draw"); err != nil {
		return err
	}
	of := Draws(l, half, since, subjects, draws)
	for i, f := range of {
		line(w, fmt.Sprint(i+1), f)
	}
	return line(w, "mean", Mean(of))
}

func heads(w io.Writer, first string) error {
	_, err := fmt.Fprintf(w, "%-6s %8s %7s %7s %7s %7s %7s %7s %7s\n%-6s %8s %7s %7s %7s %7s %7s %7s %7s\n",
		first, "subjects", "median", "over", "bias", "inside", "below", "above", "width", "", "", "error", "20%", "", "range", "", "", "")
	return err
}

func line(w io.Writer, name string, f Figures) error {
	_, err := fmt.Fprintf(w, "%-6s %8d %6.2f%% %6.1f%% %+6.1f%% %6.1f%% %6.1f%% %6.1f%% %6.1f%%\n", name, f.Subjects,
		100*f.Median, 100*f.Off20, 100*f.Bias, 100*f.Covered, 100*f.Below, 100*f.Above, 100*f.Width)
	return err
}
