package report

// Pages are the sets of pages to print. The zero value is [UsualPages].
type Pages uint

// The sets, in the order in which they are printed.
const (
	StorePages  Pages = 1 << iota // what to buy and to carry home
	CasePages                     // the case from all sides
	SawPages                      // cutting bill, cautions, and layouts or setups, whichever lead
	LayoutPages                   // the layouts, also where setups lead
	SetupPages                    // the setups, also where layouts lead
	BenchPages                    // milling, marks on the parts, assembly
	StickPages                    // story sticks of slides and pin rows, at full size
	LabelPages                    // labels for pieces and offcuts
	CheckPages                    // how sizes came about, what else it takes, what checks assume
)

const (
	// UsualPages are what most people print.
	UsualPages = StorePages | CasePages | SawPages | BenchPages
	AllPages   = StorePages | CasePages | SawPages | LayoutPages | SetupPages | BenchPages | StickPages | LabelPages | CheckPages
)

// pageNames are the words for the sets, in their order.
var pageNames = [...]string{"store", "case", "saw", "layouts", "setups", "bench", "sticks", "labels", "checks"}

// PageNames are the words that [PagesNamed] knows.
func PageNames() []string { return append(pageNames[:], "all") }

// PagesNamed are the pages of a name, false if it is not known.
func PagesNamed(name string) (Pages, bool) {
	for i, known := range pageNames {
		if name == known {
			return 1 << i, true
		}
	}
	return AllPages, name == "all"
}

// has reports whether any of some sets is to be printed.
func (p Pages) has(any Pages) bool {
	if p == 0 {
		p = UsualPages
	}
	return p&any != 0
}
