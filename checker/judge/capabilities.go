package judge

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"github.com/open-policy-agent/opa/v1/ast"
)

// builtins.txt is the checked-in list of what a rule may call: nothing that
// reaches the network, the clock, the environment or chance, and nothing that
// does not heed a cancelled context.
//
//go:embed builtins.txt
var builtinsText string

// Builtins gives the names of the functions that a rule may call.
func Builtins() []string { return strings.Fields(builtinsText) }

// capabilities is the engine's own list cut down to what is allowed.
var capabilities = sync.OnceValue(func() *ast.Capabilities {
	c := ast.CapabilitiesForThisVersion()
	allowed := Builtins()
	c.Builtins = slices.DeleteFunc(slices.Clone(c.Builtins), func(b *ast.Builtin) bool { return !slices.Contains(allowed, b.Name) })
	c.AllowNet = []string{}
	return c
})
