package deal

import (
	_ "embed" // the starter file
	"encoding/json"
	"strings"
)

//go:embed starter.yaml
var starter string

// Starter returns a commented deal file that runs as it is. Its numbers are
// invented, and it says so; the name is the deal's.
func Starter(name string) string {
	name = strings.Join(strings.Fields(name), " ")
	if name == "" {
		name = "My first deal"
	}
	quoted, _ := json.Marshal(name) // a string of JSON is one of YAML
	return strings.Replace(starter, "{name}", string(quoted), 1)
}
