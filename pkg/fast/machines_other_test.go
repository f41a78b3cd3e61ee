//go:build !amd64

package fast

func machines() map[string]*machine { return map[string]*machine{"portable": nil} }
