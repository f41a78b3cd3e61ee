// Ledgerboard tells whether to bid on a house to renovate and resell, how high,
// with how much cash, and why.
package main

import (
	"os"
	"os/signal"

	_ "ledgerboard/cmd/ledgerboard/internal/heap" // first of all
	"ledgerboard/pkg/cli"
)

func main() {
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt)
	go func() {
		<-stop
		os.Exit(cli.Interrupt(cli.System()))
	}()
	os.Exit(cli.Run(os.Args[1:], cli.System()))
}
