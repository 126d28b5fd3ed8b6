package report

import (
	"sawbill/stock"
	"sawbill/stock/casework"
)

// caseFile is a case design in the plan file: its sizes, and what is laid out on
// its parts.
type caseFile struct {
	Sizes []caseSizeFile `json:"sizes"`
	Marks []markFile     `json:"marks"`
}

type caseSizeFile struct {
	Name string `json:"name"`
	Size number `json:"size"`
}

// markFile is one kind of mark on a part. Every position is measured from the
// edge that is named; with across, marks are points, or lie between two lines.
type markFile struct {
	Part string `json:"part"`
	On   string `json:"on"`
	Mark string `json:"mark"`
	measureFile
	Across  *measureFile `json:"across,omitempty"`
	Width   number       `json:"width,omitempty"`
	Depth   number       `json:"depth,omitempty"`
	Spacers []number     `json:"spacers,omitempty"`
	Note    string       `json:"note,omitempty"`
}

type measureFile struct {
	From string   `json:"from"`
	At   []number `json:"at"`
}

func caseOf(c *casework.Case) *caseFile {
	f := &caseFile{Sizes: []caseSizeFile{}, Marks: []markFile{}}
	for _, s := range c.Sizes {
		f.Sizes = append(f.Sizes, caseSizeFile{s.Dimension, mm(s.Sum.Total())})
	}
	for _, k := range c.Marks {
		m := markFile{
			Part: c.Parts[k.Part].Name, On: k.On, Mark: k.What, measureFile: measureOf(k.Measure),
			Width: mmOrNone(k.Width), Depth: mmOrNone(k.Depth), Spacers: allMM(k.Spacers), Note: k.Note,
		}
		if !k.Across.From.None() {
			across := measureOf(k.Across)
			m.Across = &across
		}
		f.Marks = append(f.Marks, m)
	}
	return f
}

func measureOf(m casework.Measure) measureFile { return measureFile{m.From.String(), allMM(m.At)} }

func allMM(lengths []stock.Length) []number {
	var all []number
	for _, l := range lengths {
		all = append(all, mm(l))
	}
	return all
}

func mmOrNone(l stock.Length) number {
	if l == 0 {
		return ""
	}
	return mm(l)
}
