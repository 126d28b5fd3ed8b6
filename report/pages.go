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

// PageSet is a set of pages by its name, with what it holds.
type PageSet struct{ Name, Holds string }

// PageSets lists the sets in the order in which they are printed.
var PageSets = [...]PageSet{
	{"store", "what to buy and to carry home"},
	{"case", "a case design from all sides"},
	{"saw", "cutting bill, cautions, and layouts or setups, whichever lead"},
	{"layouts", "the layouts, also where setups lead"},
	{"setups", "the setups, also where layouts lead"},
	{"bench", "milling, marks on the parts, assembly"},
	{"sticks", "story sticks of slides and pin rows at full size"},
	{"labels", "labels for pieces and offcuts, to print on one side only"},
	{"checks", "how sizes of a case came about, and its checks in full"},
}

// PageNames are the words that [PagesNamed] knows.
func PageNames() []string {
	var names []string
	for _, s := range PageSets {
		names = append(names, s.Name)
	}
	return append(names, "all")
}

// PagesNamed are the pages of a name, false if it is not known.
func PagesNamed(name string) (Pages, bool) {
	for i, known := range PageSets {
		if name == known.Name {
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
