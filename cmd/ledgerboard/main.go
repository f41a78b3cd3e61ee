// Ledgerboard tells whether to bid on a house to renovate and resell, how high,
// with how much cash, and why.
package main

import (
	"os"
	"os/signal"
	"runtime/debug"

	"ledgerboard/pkg/cli"
)

func main() {
	debug.SetGCPercent(400) // a run lasts milliseconds and holds little; collecting it four times costs more
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt)
	go func() {
		<-stop
		os.Exit(cli.Interrupted)
	}()
	os.Exit(cli.Run(os.Args[1:], cli.System()))
}
