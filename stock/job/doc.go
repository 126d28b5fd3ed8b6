// Package job reads a job file (TOML) and the part lists it names (CSV) into
// the types of package stock.
//
// The text of every file becomes a small tree of keys and values that knows
// the line of each and keeps numbers as they were written, so that 27.5 is
// never anything but twenty-seven and a half. One schema per table says which
// keys there are and what of each is sensible; a row of a part list is read
// with the schema of [[part]]. Then the whole is checked: that every part is
// offered some material, and that the material is long, wide and thick enough.
//
//	file -> table -> record -> stock.Part, stock.Stock -> stock.Job
//
// A table comes from tree.go or partlist.go, a record from record.go by
// schema.go, parts and stock from parts.go and offers.go; match.go and fit.go
// hold them against each other.
//
// Whatever is wrong is gathered, so that one reading tells all of it:
//
//	bench.toml:31: part "shelf": length 2600 mm is longer than any sheet of birch ply 18 (longest 2440 mm); split the part or add a longer sheet
package job
