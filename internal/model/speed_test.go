package model_test

import (
	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"testing"
)

func BenchmarkPrepare(b *testing.B) {
	d := catalog.Sample()
	for b.Loop() {
		model.Prepare(d.Project)
	}
}
func BenchmarkVariant(b *testing.B) {
	d := catalog.Sample()
	g := model.Prepare(d.Project)
	for b.Loop() {
		g.Evaluate(d.Variants[2])
	}
}
func BenchmarkBattery(b *testing.B) {
	d := catalog.Sample()
	g := model.Prepare(d.Project)
	for b.Loop() {
		g.Evaluate(d.Variants[1])
	}
}
