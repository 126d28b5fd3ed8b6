package report

import (
	"strconv"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// The keys of a case design in the plan file.

type caseFile struct {
	_     struct{}       `about:"a case design"`
	Sizes []caseSizeFile `json:"sizes" about:"given and computed"`
	Marks []markFile     `json:"marks" about:"what is laid out on the parts"`
}

type caseSizeFile struct {
	Name string `json:"name" about:""`
	Size length `json:"size" about:""`
}

type markFile struct {
	_    struct{} `about:"one kind of thing to lay out on a part; with across it is points, or lies between two lines"`
	Part string   `json:"part" about:"name of the part"`
	On   string   `json:"on" about:"the face or edge"`
	What string   `json:"what" about:"what is laid out"`
	measureFile
	Across  *measureFile `json:"across,omitempty" about:"positions in the other direction"`
	Width   length       `json:"width,omitempty" about:"of a groove, a dado or a mortise"`
	Depth   length       `json:"depth,omitempty" about:""`
	Bored   length       `json:"diameter,omitempty" about:"of a bored hole; without a depth it goes right through"`
	Spacers []length     `json:"spacers,omitempty" about:"sizes of spacers that give the positions"`
	Note    string       `json:"note,omitempty" about:""`
}

type measureFile struct {
	From string   `json:"from" about:"the edge from which every position is measured"`
	At   []length `json:"at" about:"positions"`
}

func caseOf(c *casework.Case) *caseFile {
	f := &caseFile{Sizes: []caseSizeFile{}, Marks: []markFile{}}
	for _, s := range c.Sizes {
		f.Sizes = append(f.Sizes, caseSizeFile{s.Dimension, mm(s.Sum.Total())})
	}
	for _, k := range c.Marks {
		m := markFile{
			Part: c.Parts[k.Part].Name, On: k.On, What: k.What, measureFile: measureOf(k.Measure),
			Width: mmOrNone(k.Width), Depth: mmOrNone(k.Depth), Bored: mmOrNone(k.Diameter), Spacers: allMM(k.Spacers), Note: k.Note,
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

func allMM(lengths []stock.Length) []length {
	var all []length
	for _, l := range lengths {
		all = append(all, mm(l))
	}
	return all
}

type takesFile struct {
	_         struct{}       `about:"what a case takes besides its parts: an estimate"`
	Weight    grams          `json:"weight" about:"of the case"`
	Weights   []weightFile   `json:"weights" about:"of its parts"`
	Unweighed []string       `json:"unweighed" about:"materials left out, since their density is not known"`
	Center    []length       `json:"center_of_gravity,omitempty" about:"from the left, the front and the floor, or of a hung case its lower edge"`
	Surfaces  surfacesFile   `json:"surfaces" about:""`
	Finish    finishFile     `json:"finish" about:""`
	Edging    length         `json:"edging" about:""`
	Hardware  []hardwareFile `json:"hardware" about:""`
}

type surfacesFile struct {
	_       struct{}     `about:"what is finished"`
	Outside squareMeters `json:"outside" about:""`
	Inside  squareMeters `json:"inside" about:""`
	Wear    squareMeters `json:"wear" about:"surfaces that wear: tops and shelves"`
}

type finishFile struct {
	Volume   number `json:"volume" about:""`
	Unit     string `json:"unit" about:"of the volume"`
	Outside  int    `json:"coats_outside" about:""`
	Inside   int    `json:"coats_inside" about:""`
	Wear     int    `json:"coats_wear" about:""`
	Coverage int    `json:"coverage" about:"square meters per liter, or square feet per US gallon"`
}

type hardwareFile struct {
	Name  string `json:"name" about:""`
	Count int    `json:"count" about:""`
	How   string `json:"how" about:"how the count came about"`
}

type weightFile struct {
	Part string `json:"part" about:"name of the part"`
	Each grams  `json:"each" about:""`
	All  grams  `json:"all" about:""`
}

func takesOf(c *casework.Case) *takesFile {
	t := c.TakeOff()
	f := &takesFile{Weight: gramsOf(t.Weight), Weights: []weightFile{}, Unweighed: append([]string{}, t.Unweighed...)}
	for _, w := range t.Weights {
		f.Weights = append(f.Weights, weightFile{c.Parts[w.Part].Name, gramsOf(w.Each), gramsOf(w.All)})
	}
	if g := t.Center; g != nil {
		for _, l := range []stock.Length{g[casework.X], g[casework.Y], g[casework.Z]} {
			f.Center = append(f.Center, mm(l))
		}
	}
	squares := func(a casework.Area) squareMeters {
		return squareMeters(strconv.FormatFloat(a.SquareMeters(), 'f', 4, 64))
	}
	f.Surfaces = surfacesFile{Outside: squares(t.Surfaces.Outside), Inside: squares(t.Surfaces.Inside), Wear: squares(t.Surfaces.Wear)}
	f.Finish = finishFile{number(finishVolume(c, t)), c.Finish.Unit(), c.Finish.Outside, c.Finish.Inside, c.Finish.Wear, c.Finish.Coverage}
	f.Edging, f.Hardware = mm(t.Edging), []hardwareFile{}
	for _, h := range c.Hardware {
		f.Hardware = append(f.Hardware, hardwareFile(h))
	}
	return f
}

func gramsOf(g stock.Grams) grams { return grams(fraction(float64(g))) }

type checkFile struct {
	Subject     string       `json:"subject" about:""`
	Of          string       `json:"of" about:"the piece or the case"`
	Verdict     string       `json:"verdict" about:""`
	Text        string       `json:"text" about:"in words"`
	States      []string     `json:"states,omitempty" about:"that were checked one by one"`
	Inputs      []figureFile `json:"inputs" about:""`
	Results     []figureFile `json:"results" about:""`
	Assumptions []string     `json:"assumptions" about:""`
	Source      string       `json:"source" about:"of the rule"`
}

type figureFile struct {
	Name  string `json:"name" about:""`
	Value number `json:"value" about:""`
	Unit  string `json:"unit,omitempty" about:""`
}

func checksOf(c *casework.Case) []checkFile {
	figures := func(of []casework.Figure) []figureFile {
		all := make([]figureFile, len(of))
		for i, f := range of {
			all[i] = figureFile{f.Name, number(f.Value), f.Unit}
		}
		return all
	}
	var all []checkFile
	for _, k := range c.Checks {
		all = append(all, checkFile{k.Subject, k.Of, string(k.Verdict), k.Text, k.States,
			figures(k.Inputs), figures(k.Results), append([]string{}, k.Assumptions...), k.Source})
	}
	return all
}
