//go:build !amd64

package fast

import "ledgerboard/pkg/formula"

func quickest() map[formula.Code]form { return portable }
