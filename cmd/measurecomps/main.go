// Command measurecomps measures how near the values of package comps come to real
// sales. It prints the same figures on every run:
//
//	go run ./cmd/measurecomps sales.csv
//
// With -half tuning it measures the half that the package was tuned on; with -few,
// values by a few close sales alone, without a list behind them.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/comps/measure"
)

func main() {
	half := flag.String("half", "measuring", "the half to draw from: measuring or tuning")
	subjects := flag.Int("subjects", 1500, "subjects in a draw")
	draws := flag.Int("draws", 3, "draws, by the seeds 1, 2, …")
	few := flag.Bool("few", false, "value by a few close sales alone")
	flag.Usage = func() {
		fmt.Fprintln(flag.CommandLine.Output(), "usage: measurecomps [flags] sales.csv")
		flag.PrintDefaults()
	}
	flag.Parse()
	halves := map[string]measure.Half{"measuring": measure.Measuring, "tuning": measure.Tuning}
	of, ok := halves[*half]
	if flag.NArg() != 1 || !ok || *subjects < 1 || *draws < 1 {
		flag.Usage()
		os.Exit(2)
	}
	if err := run(os.Stdout, flag.Arg(0), of, *subjects, *draws, *few); err != nil {
		fmt.Fprintln(os.Stderr, "measurecomps: error:", err)
		os.Exit(1)
	}
}

func run(w io.Writer, path string, half measure.Half, subjects, draws int, few bool) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	list, found := comps.Read(f, path, comps.Options{})
	if list == nil {
		return found.Err()
	}
	fmt.Fprintf(w, "%d rows, %d left out, %d remarks\n", list.Rows, len(list.LeftOut), len(found))
	if few {
		return measure.ReportFew(w, list, half, measure.Since, subjects, draws)
	}
	return measure.Report(w, list, half, measure.Since, subjects, draws)
}
