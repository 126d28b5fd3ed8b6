package job

import (
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock"
)

func TestChangesAreSaidInPlainWords(t *testing.T) {
	for _, c := range []struct {
		as    Changes
		units stock.Units
		said  string
		slug  string // up to the digest, if it has one
	}{
		{Changes{}, stock.Millimeters, "", ""},
		{Changes{Smaller: []string{"height=2"}}, stock.Millimeters, "height 2 mm less", "what-if-height-2"},
		{Changes{Smaller: []string{" height = 2 mm"}}, stock.Millimeters, "height 2 mm less", "what-if-height-2"},
		{Changes{Smaller: []string{"height=1", "height=1"}}, stock.Millimeters, "height 2 mm less", "what-if-height-2"},
		{Changes{Smaller: []string{"height=2"}}, stock.Inches, "height 2 in less", "what-if-height-2"},
		{Changes{Smaller: []string{"height=2 mm"}}, stock.Inches, "height 2 mm less", "what-if-height-2-mm-"},
		{Changes{Smaller: []string{"depth=1/2"}}, stock.Inches, "depth 1/2 in less", "what-if-depth-1-2-"},
		{Changes{Smaller: []string{"shelf=20"}}, stock.Millimeters, "shelf 20 mm shorter", "what-if-shelf-20-shorter-"},
		{Changes{Without: []string{"edging", "back"}}, stock.Millimeters, "without back, without edging", "what-if-without-back-without-edging"},
		{Changes{Without: []string{"Tür"}}, stock.Millimeters, "without Tür", "what-if-without-t-r-"},
		{Changes{Counts: []string{"shelf=8", "end=1", "shelf=9"}}, stock.Millimeters, "1 piece of end, 9 pieces of shelf", "what-if-count-end-1-count-shelf-9"},
		{Changes{Spare: 1}, stock.Millimeters, "1 more of each small part", "what-if-spare-1"},
		{Changes{Thicknesses: []string{"birch ply 18=17.6"}}, stock.Millimeters, "birch ply 18 measures 17.6 mm", "what-if-birch-ply-18-is-17-6-"},
		{Changes{Smaller: []string{"width=1"}, Without: []string{"back"}, Spare: 2}, stock.Millimeters,
			"without back, 2 more of each small part, width 1 mm less", "what-if-without-back-spare-2-width-1"},
	} {
		if d := cmp.Diff(c.said, strings.Join(c.as.Said(c.units), ", ")); d != "" {
			t.Errorf("%+v (-want +got):\n%s", c.as, d)
		}
		slug := c.as.Slug(c.units)
		if strings.HasSuffix(c.slug, "-") {
			if !regexp.MustCompile("^" + c.slug + "[0-9][0-9a-f]{4}[a-z]$").MatchString(slug) {
				t.Errorf("%+v: %q, want %q and a digest", c.as, slug, c.slug)
			}
		} else if slug != c.slug {
			t.Errorf("%+v: %q, want %q", c.as, slug, c.slug)
		}
	}
}

// Whatever is changed, a slug can be the name of a folder on any system, and tells the
// change from every other.
func TestSlugsOfDifferentChangesDiffer(t *testing.T) {
	names := []string{"back", "Back", "height", "without", "count", "spare", "shelf 2", "shelf-2", "shelf", "2", "shelf, low", "shelf low", "Böden", "Bäden",
		strings.Repeat("long ", 20), strings.Repeat("long ", 20) + "er", "what-if", "棚", "扉"}
	var all []Changes
	for _, n := range names {
		all = append(all, Changes{Without: []string{n}}, Changes{Without: []string{n}, Spare: 2}, Changes{Without: []string{n, "x"}})
		for _, value := range []string{"2", "20", "2.5"} {
			all = append(all, Changes{Smaller: []string{n + "=" + value}}, Changes{Thicknesses: []string{n + "=" + value}},
				Changes{Smaller: []string{n + "=" + value, "depth=2"}})
		}
		all = append(all, Changes{Counts: []string{n + "=2"}}, Changes{Counts: []string{n + "=20"}})
	}
	seen := make(map[string]string)
	allowed := regexp.MustCompile(`^what-if(-[a-z0-9]+)+$`)
	for _, c := range all {
		said, slug := strings.Join(c.Said(stock.Millimeters), "\n"), c.Slug(stock.Millimeters)
		if !allowed.MatchString(slug) || len(slug) > longestSlug {
			t.Errorf("%q is no name of a folder", slug)
		}
		if other, there := seen[slug]; there && other != said {
			t.Errorf("%q stands for %q and for %q", slug, other, said)
		}
		seen[slug] = said
	}
	if len(seen) != len(all) {
		t.Errorf("%d slugs for %d changes", len(seen), len(all))
	}
}
