package cli_test

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"ledgerboard/pkg/cli"
)

var update = flag.Bool("update", false, "rewrite golden pages and the files in scripts")

// TestMain lets a script's exec ledgerboard run in this test binary.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"ledgerboard": func() { os.Exit(cli.Run(os.Args[1:], cli.System())) },
	})
}

// Each script is one story; scenarios/ lies in its directory.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "../../testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Setup: func(e *testscript.Env) error {
			e.Setenv("NO_COLOR", "1")
			e.Setenv("TZ", "UTC")
			e.Setenv("HOME", e.WorkDir+"/home")
			if err := os.Mkdir(e.WorkDir+"/home", 0o755); err != nil {
				return err
			}
			return os.CopyFS(filepath.Join(e.WorkDir, "scenarios"), os.DirFS(scenarios))
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"json":   jsonHas,
			"sheet":  sheet,
			"narrow": narrow,
		},
	})
}
