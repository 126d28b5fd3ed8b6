package drawing

// Pen is a kind of line. Widths follow the series 0.13, 0.18, 0.25, 0.35, 0.5,
// 0.7 mm and the ratio 2:1 of wide to narrow of ISO 128-2; dashes follow its
// line types in outline (both from memory).
type Pen int

const (
	NoPen     Pen = iota
	Outline       // stock: continuous, extra wide
	Cut           // a cut right across the stock: continuous, wide
	FineCut       // a later cut: continuous, between wide and narrow
	Sectioned     // the outline of a solid that is cut through: continuous, wide
	Visible       // a visible edge: continuous, half-way to narrow
	Narrow        // dimension, extension and leader lines, table rules
	Fine          // hatching, rules between rows
	Dashed        // hidden or removed: the trim
	Hidden        // a hidden edge: dashed, narrow
	TwoDots       // long dash, two dots: what is kept
	WideRule      // below a table's header, under a title
)

// style is how a pen draws, in millimeters.
type style struct {
	width float64
	dash  []float64 // on, off, on, off, ...; nil is continuous
}

var styles = [...]style{
	NoPen:     {},
	Outline:   {width: 0.7},
	Cut:       {width: 0.5},
	FineCut:   {width: 0.35},
	Sectioned: {width: 0.5},
	Visible:   {width: 0.35},
	Narrow:    {width: 0.25},
	Fine:      {width: 0.18},
	Dashed:    {width: 0.25, dash: []float64{2, 1}},
	Hidden:    {width: 0.18, dash: []float64{1.5, 0.9}},
	TwoDots:   {width: 0.35, dash: []float64{5, 0.9, 0.4, 0.9, 0.4, 0.9}},
	WideRule:  {width: 0.5},
}

// Width is the line's width in millimeters.
func (p Pen) Width() float64 { return styles[p].width }
