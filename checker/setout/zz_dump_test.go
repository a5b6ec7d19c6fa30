package setout_test

import (
	"encoding/json"
	"fmt"
	"os"
	"testing"
)

func TestZZDump(t *testing.T) {
	file := os.Getenv("DUMP")
	if file == "" {
		t.Skip()
	}
	b, _ := os.ReadFile(file)
	f := setOut(t, string(b))
	for _, p := range f.Pieces {
		j, _ := json.Marshal(p)
		fmt.Println(string(j))
	}
	for _, e := range f.Edges {
		fmt.Printf("%-40s %-10s %v-%v len %v low %v high %v meets %s %s %s %s tr %s\n", e.ID, e.MadeBy, e.From, e.To, e.Length, e.Low, e.High, e.Meets, e.Other, e.Cover, e.CoveredBy, e.Treatment)
	}
	for _, l := range []any{f.Rips, f.Joints, f.CrossJoints, f.Legs, f.Strips, f.Jambs, f.Lines, f.Runs, f.Boards, f.Walls} {
		j, _ := json.Marshal(l)
		fmt.Println(string(j))
	}
}
