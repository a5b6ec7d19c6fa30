package main

import (
	"encoding/json"
	"fmt"

	"trysquare/checker/facts"
	"trysquare/schema"
)

type schemaCmd struct {
	Of string `arg:"" optional:"" default:"plan" enum:"plan,limits,metadata,report,basis,facts" help:"What to describe: plan, limits, metadata, report, basis or facts."`
}

// Run prints a schema.
func (c *schemaCmd) Run(s *streams) error {
	text, err := schema.Text(schema.Name(c.Of))
	if c.Of == "facts" {
		text, err = json.MarshalIndent(facts.Schema(), "", "  ")
		text = append(text, '\n')
	}
	if err != nil {
		return fmt.Errorf("printing the schema: %w", err)
	}
	if _, err := s.out.Write(text); err != nil {
		return fmt.Errorf("printing the schema: %w", err)
	}
	return nil
}
