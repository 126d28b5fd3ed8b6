package design

import (
	"slices"

	"sawbill/stock"
)

// Context is the rest of the job, as far as a case depends on it.
type Context struct {
	// Ruler prints the lengths of messages and cautions; its units choose
	// between the metric and the inch form of a default.
	Ruler stock.Ruler
	// Materials is all the stock the job offers, by material.
	Materials map[string]Material
	// StockInDoubt: some of the stock could not be read, and what Materials lacks
	// may be there.
	StockInDoubt bool
	// Doubts are the keys and tables of the case that could not be read, named as by [Fault]. No
	// fault that follows from them is reported.
	Doubts []string
	// Kerf is the saw's: a crosscut takes it, and no finger is narrower.
	Kerf stock.Length
	// Tools are those of the shop. Without any, sizes stay exact.
	Tools Tools
}

// Material is the stock of one material that a job offers.
type Material struct {
	Kind stock.Kind
	// Thicknesses lists the thicknesses of the stock, each once, from the thinnest.
	Thicknesses []stock.Length
	Properties
}

// MaterialsOf gathers the materials of a job's stock.
func MaterialsOf(offered []stock.Stock) map[string]Material {
	materials := make(map[string]Material)
	for _, s := range offered {
		m := materials[s.Material]
		m.Kind = s.Kind
		if i, found := slices.BinarySearch(m.Thicknesses, s.Thickness); !found {
			m.Thicknesses = slices.Insert(m.Thicknesses, i, s.Thickness)
		}
		materials[s.Material] = m
	}
	return materials
}
