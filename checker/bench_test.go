package checker_test

import (
	"context"
	"testing"

	"trysquare/checker"
	"trysquare/checker/report"
)

func BenchmarkNew(b *testing.B) {
	for b.Loop() {
		if _, err := checker.New(report.HoldError); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCheckFile(b *testing.B) {
	c, err := checker.New(report.HoldError)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := c.CheckFile(context.Background(), "../plans/practice-room.json", nil); err != nil {
			b.Fatal(err)
		}
	}
}
