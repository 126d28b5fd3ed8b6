package design

import (
	"regexp"
	"slices"
	"strings"
)

// Unread reports whether what is written at a path could not be read: with numbers
// there, without them anywhere.
func (r *Reader) Unread(path string) bool {
	return slices.ContainsFunc(r.From.Doubts, func(d string) bool {
		return Covers(d, path) || Covers(Unnumbered(d), path) || Covers(d, Unnumbered(path))
	})
}

// Doubtful reports whether it could not be read, or is missing or no good.
func (r *Reader) Doubtful(path string) bool {
	return r.Unread(path) || slices.ContainsFunc(r.Doubts, func(d string) bool { return d == path || Unnumbered(d) == path })
}

// DoubtfulWithin reports whether a table is in doubt, or anything in it.
func (r *Reader) DoubtfulWithin(table string) bool {
	within := func(d string) bool { return strings.HasPrefix(d, table+".") || strings.HasPrefix(d, table+" ") }
	return r.Doubtful(table) || slices.ContainsFunc(r.From.Doubts, within) || slices.ContainsFunc(r.Doubts, within)
}

// Unnumbered is a path that stands for all of its like: "case.bay.width".
func Unnumbered(path string) string { return number.ReplaceAllString(path, "") }

// Covers reports whether a path names a key or table, or lies under it.
func Covers(table, path string) bool { return path == table || strings.HasPrefix(path, table+".") }

var number = regexp.MustCompile(` \d+`)
