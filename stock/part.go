package stock

// Part is a finished piece, as often as it is wanted.
type Part struct {
	Name     string
	Material string
	// Length runs along the grain unless Grain says otherwise.
	Length, Width, Thickness Length
	Count                    int
	Grain                    Grain
	Allowance                Allowance
	Resaw                    bool // thin pieces out of a thick board
	Alone                    bool // never ganged, however short
	DryFit                   bool // best cut after what it goes into was put together dry
	// From says where the part is wanted: "potting-bench.toml:31", or "case".
	From string
	// How says how the sizes came about, for parts that were derived.
	How []Derivation
	// Note is the maker's own remark, printed and otherwise left alone.
	Note string
}

// Allowance is added to a part before it is cut, so that milling can
// take it off again.
type Allowance struct {
	Edge Length // per edge trued on the fence or the jointer
	Face Length // per planed face; boards only
	End  Length // per end squared
	// Miter is per mitered end. The part's length is then measured to the long
	// points. A blade at 45 degrees takes 1.414 kerfs along the piece.
	Miter Length

	Edges, Faces, Ends, Miters int // how many of each: 0, 1 or 2
}
