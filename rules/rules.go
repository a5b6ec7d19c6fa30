// Package rules holds the rules that ship with the program, and their limits,
// as files: a folder a rule, registered by standing here.
package rules

import "embed"

// Files has every family's rules, the library that they share, and limits.json.
//
//go:embed lib/*.rego */*/rule.rego limits.json
var Files embed.FS

// Packed is the same made ready to be compiled fast; a test holds it to Files,
// and writes it anew: go test ./rules -run TestPack -write.
//
//go:embed pack.json
var Packed []byte

// LimitsFile is the name of the limits in Files.
const LimitsFile = "limits.json"
