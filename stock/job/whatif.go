package job

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// Said lists the changes of a what-if in plain words: "without back", "height 2 mm less".
// It is nil if nothing changes. Bare numbers are in units, those of the job. Equal changes
// give equal words, in whatever order and notation they were written. Added, Sizes and
// Kerf are not said: a what-if has none.
func (c Changes) Said(units stock.Units) []string {
	return mapped(c.each(units), func(e change) string { return e.said })
}

// longestSlug is the length limit of a slug. Folder names are read in a list of others.
const longestSlug = 40

// Slug names the changes in letters, digits and dashes, for the name of a folder:
// "what-if-height-2". It is empty if nothing changes, and at most 40 characters long.
// Different changes have different slugs: one that leaves anything out ends in a digest
// of the words.
func (c Changes) Slug(units stock.Units) string {
	all := c.each(units)
	if all == nil {
		return ""
	}
	slug, exact := "what-if", true
	for _, e := range all {
		slug += "-" + e.slug
		exact = exact && e.exact
	}
	if exact && len(slug) <= longestSlug {
		return slug
	}
	digest := digestOf(c.Said(units))
	slug = slug[:min(len(slug), longestSlug-len(digest)-1)]
	return strings.TrimRight(slug, "-") + "-" + digest
}

// digestOf is six characters. The first is a digit and the last a letter, which no word
// of an exact slug has both of.
func digestOf(said []string) string {
	sum := sha256.Sum256([]byte(strings.Join(said, "\n")))
	return strconv.Itoa(int(sum[0])%10) + hex.EncodeToString(sum[1:3]) + string(rune('a'+sum[3]%26))
}

// change is one of the changes in words. The slug is exact if it leaves nothing out.
type change struct {
	said, slug string
	exact      bool
}

// each lists the changes by kind, those of one kind in the order of the alphabet.
func (c Changes) each(units stock.Units) []change {
	var all []change
	add := func(said, slug string, exact bool) {
		all = append(all, change{said, slugOf(slug), exact && slugOf(slug) == slug})
	}
	for _, name := range slices.Compact(slices.Sorted(slices.Values(c.Without))) {
		add("without "+name, "without-"+name, oneWord(name))
	}
	counts := lastOfEach(c.Counts)
	for _, name := range slices.Sorted(maps.Keys(counts)) {
		count, pieces := counts[name], " pieces of "
		if count == "1" {
			pieces = " piece of "
		}
		add(count+pieces+name, "count-"+name+"-"+count, oneWord(name))
	}
	if c.Spare > 0 {
		add(fmt.Sprintf("%d more of each small part", c.Spare), fmt.Sprintf("spare-%d", c.Spare), true)
	}
	less := c.lessOfEach(units)
	for _, name := range slices.Sorted(maps.Keys(less)) {
		length, figure := lengthSaid(less[name], units)
		if slices.Contains([]string{"width", "height", "depth"}, name) {
			add(name+" "+length+" less", name+"-"+figure, whole(figure))
		} else {
			add(name+" "+length+" shorter", name+"-"+figure+"-shorter", false)
		}
	}
	for _, written := range c.Added {
		name, rest := written, ""
		if at := strings.LastIndex(written, ":"); at >= 0 {
			name, rest = written[:at], written[at+1:]
		}
		add("added: "+strings.TrimSpace(name)+", "+strings.TrimSpace(rest), "add-"+strings.TrimSpace(name), false)
	}
	sizes := lastOfEach(c.Sizes)
	for _, name := range slices.Sorted(maps.Keys(sizes)) {
		add(name+" is "+sizes[name], "size-"+name, false)
	}
	if c.Kerf != "" {
		length, figure := lengthSaid(lengthOf(c.Kerf, units), units)
		add("a kerf of "+length, "kerf-"+figure, whole(figure))
	}
	thicknesses := lastOfEach(c.Thicknesses)
	for _, material := range slices.Sorted(maps.Keys(thicknesses)) {
		length, figure := lengthSaid(lengthOf(thicknesses[material], units), units)
		add(material+" measures "+length, material+"-is-"+figure, false)
	}
	return all
}

// lastOfEach is the last value given for each name: it is the one that counts.
func lastOfEach(written []string) map[string]string {
	last := make(map[string]string)
	for _, w := range written {
		name, value := named(w)
		last[name] = value
	}
	return last
}

// lessOfEach adds up the amounts given for each name.
func (c Changes) lessOfEach(units stock.Units) map[string]stock.Length {
	less := make(map[string]stock.Length)
	for _, w := range c.Smaller {
		name, value := named(w)
		less[name] += lengthOf(value, units)
	}
	return less
}

func named(written string) (name, value string) {
	name, value, _ = strings.Cut(written, "=")
	return strings.TrimSpace(name), strings.TrimSpace(value)
}

// lengthOf reads a length. The job has refused one that cannot be read; here it is 0.
func lengthOf(written string, units stock.Units) stock.Length {
	l, _ := typedLength(written, units)
	return l
}

// typedLength reads a length from a flag. A figure without a unit is in units, even a
// fraction.
func typedLength(written string, units stock.Units) (stock.Length, fault.Fault) {
	if bare(written) {
		written += " " + units.String()
	}
	l, err := stock.ParseLength(written, units)
	if err != nil {
		return 0, unreadable(written, err)
	}
	return l, fault.Fault{}
}

// lengthSaid is a length with its unit, exact, and the same for a slug, where the job's
// unit goes without saying.
func lengthSaid(l stock.Length, units stock.Units) (said, figure string) {
	if r := (stock.Ruler{Units: units}); r.Exact(l) {
		return r.PrintUnit(l), r.Print(l)
	}
	return l.Decimal() + " mm", l.Decimal() + "-mm"
}

// whole reports whether a figure is a plain whole number.
func whole(figure string) bool {
	_, err := strconv.ParseUint(figure, 10, 32)
	return err == nil
}

// oneWord reports whether a name is of small letters alone, so that it stays what it is
// in a slug.
func oneWord(name string) bool {
	return !strings.ContainsFunc(name, func(r rune) bool { return r < 'a' || r > 'z' })
}

// slugOf is s in small letters, digits and single dashes.
func slugOf(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	}), "-")
}
